/** The whole review list of a workbook, quantity by quantity, so that a page can look up in between. */
import { PLAIN, type Writing } from '$lib/engine/number-words';
import { findQuantity } from '$lib/workbook/lookup';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { amongFormulasLine, changeLines, entryLines } from './entries';
import { readFormulas } from './formulas';
import { leavesOutLine } from './leaves-out';
import { KIND_NAMES, lineId, type Line } from './line';
import { literalLine } from './literals';
import { loneChangeLines } from './lone-changes';
import { scenarioLines } from './scenarios';
import { takenNames, unreadLine } from './unread';
import { templateLines } from './template';
import { copyLine, twiceLine } from './wordings';

/** Hands over the lines of one quantity or scenario at a time; `template`: what the workbook was begun from, where it is at hand. */
export function* reviewSteps(
	workbook: Workbook,
	writing = PLAIN,
	template: Workbook | null = null
): Generator<readonly Line[]> {
	if (template) yield* templateLines(workbook, template);
	// Reading them for the first time takes longest.
	for (const { quantities } of workbook.sheets)
		for (const quantity of quantities) {
			readFormulas(quantity);
			yield [];
		}
	const taken = takenNames(workbook);
	for (const { quantities } of workbook.sheets)
		for (const quantity of quantities) yield linesOf(workbook, taken, quantity, writing);
	yield [...scenarioLines(workbook)];
	for (const scenario of workbook.scenarios) {
		const lines = scenario.changes.flatMap(({ quantity: name, value }) => {
			const quantity = findQuantity(workbook, name);
			return quantity ? changeLines(workbook, scenario, quantity, value, writing) : [];
		});
		yield [...lines, ...loneChangeLines(workbook, scenario)];
	}
}

/** In the order of their kinds, then of the sheets. */
export function reviewLines(workbook: Workbook, template: Workbook | null = null): Line[] {
	return inOrder([...reviewSteps(workbook, PLAIN, template)].flat());
}

export const inOrder = (lines: readonly Line[]): Line[] =>
	[...lines].sort((a, b) => KIND_NAMES.indexOf(a.kind) - KIND_NAMES.indexOf(b.kind));

function linesOf(
	workbook: Workbook,
	taken: ReadonlySet<string>,
	quantity: Quantity,
	writing: Writing
): Line[] {
	const unread = unreadLine(workbook, taken, quantity);
	const own = ownLines(workbook, quantity, writing);
	return unread ? [...own, unread] : own;
}

/** What follows from a quantity and the sets alone, found once: an edit leaves the others the same objects. */
interface Known {
	readonly sets: Workbook['sets'];
	readonly writing: Writing;
	readonly lines: Line[];
}
const known = new WeakMap<Quantity, Known>();

function ownLines(workbook: Workbook, quantity: Quantity, writing: Writing): Line[] {
	const before = known.get(quantity);
	if (before?.sets === workbook.sets && before.writing === writing) return before.lines;
	const lines = [
		...entryLines(quantity, writing),
		...[
			amongFormulasLine(workbook, quantity),
			literalLine(quantity),
			leavesOutLine(workbook, quantity),
			copyLine(workbook, quantity),
			twiceLine(quantity)
		].filter((line) => line !== null)
	];
	known.set(quantity, { sets: workbook.sets, writing, lines });
	return lines;
}

/** By id what each line speaks of: two reviews differ where this does. */
export const marksOf = (lines: readonly Line[]): ReadonlyMap<string, string> =>
	new Map(lines.map((line) => [lineId(line), line.speaksOf]));
