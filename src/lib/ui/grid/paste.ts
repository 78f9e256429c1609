/** A text from the clipboard into the grid: fetched once the first numbers are there, as nobody pastes before. */
import { cellsDown, filledBlock } from '../block';
import { Paste, readBlock } from './paste-block';
import type { GridControl } from './control.svelte';

/** Lines read of a pasted block before the page may draw again. */
const CELLS_AT_ONCE = 4000;

/** Takes the values that can be taken from the first cell that is marked on, in one step, and says what could not. */
export async function pasteText(control: GridControl, text: string): Promise<void> {
	const { session } = control;
	const { layout } = session;
	if (!layout) return;
	if (session.readOnly) {
		session.said = 'This workbook can only be read here.';
		return;
	}
	const [low, high, left, right] = control.block;
	const marked = cellsDown(control.rows.slice(low, high + 1), 0, layout.cells).length;
	const isMarked = control.anchor !== null;
	const read = readBlock(text);
	const block = isMarked ? filledBlock(read, marked, right - Math.max(left, 1) + 1) : read;
	const paste = new Paste({
		layout,
		block,
		cells: cellsDown(control.rows, low, block.length),
		scenarios: control.columns.slice(Math.max(left, 1) - 1),
		base: session.baseId,
		specOf: (quantity) => control.specOf(quantity)
	});
	while (!paste.read(CELLS_AT_ONCE)) {
		session.said = 'Reading what was pasted';
		await new Promise((resume) => setTimeout(resume));
	}
	if (session.layout?.workbook.sets !== layout.workbook.sets) {
		session.said = 'Nothing was pasted: the workbook changed meanwhile.';
		return;
	}
	const { commands, taken, all, bad, badCount } = paste.result;
	const problem = commands.length > 0 ? session.apply(...commands) : null;
	const count = new Intl.NumberFormat(session.locale);
	session.said = `${count.format(problem ? 0 : taken)} of ${count.format(all)} values pasted`;
	if (problem) session.notice = { tone: 'error', text: problem };
	else if (badCount > 0)
		session.notice = {
			tone: 'caution',
			text: `${count.format(taken)} of ${count.format(all)} values were pasted; ${count.format(badCount)} could not be taken, and what stood there was kept.`,
			details: bad.map(
				(badCell) =>
					`Line ${badCell.line}, column ${badCell.column}, "${badCell.text}": ${badCell.message}`
			)
		};
}
