/** A frozen copy as a sheet of plain values: nothing in it recalculates. */
import type { Frozen } from '$lib/workbook/schema';
import { flatten } from '$lib/workbook/values';
import { at, type FileCell, type FileSheet } from './cell';

const HEADS = ['Quantity', 'For', 'Unit', 'Value', 'Formula on that day'];
const HEAD_ROWS = 3;

export function frozenSheet(copy: Frozen, name: string): FileSheet {
	const cells = new Map<string, FileCell>();
	const put = (row: number, column: number, cell: FileCell) => cells.set(at(row, column), cell);
	put(0, 0, { value: copy.title, look: 'title' });
	const by = copy.by === undefined ? '' : `, by ${copy.by}`;
	const revision = copy.revision === undefined ? '' : `, revision ${copy.revision}`;
	const note = copy.note === undefined ? '' : ` ${copy.note}`;
	put(1, 0, {
		value: `Frozen ${copy.date}, of ${copy.of}${by}${revision}.${note}`,
		look: 'words'
	});
	HEADS.forEach((value, column) => put(HEAD_ROWS - 1, column, { value, look: 'head' }));
	let row = HEAD_ROWS;
	for (const { label, unit, formula, value } of copy.quantities)
		for (const { at: members, value: scalar } of flatten(value)) {
			put(row, 0, { value: label, look: 'label' });
			if (members.length > 0) put(row, 1, { value: members.join('; '), look: 'label' });
			if (unit !== undefined) put(row, 2, { value: unit, look: 'unit' });
			put(row, 3, {
				value: typeof scalar === 'boolean' ? Number(scalar) : scalar,
				look: formula === undefined ? 'input' : 'result',
				...(typeof scalar === 'boolean' && { yesNo: true })
			});
			if (formula !== undefined) put(row, 4, { value: formula, look: 'words' });
			row++;
		}
	return { name, widths: [46, 24, 14, 18, 80], frozenRows: HEAD_ROWS, cells };
}
