/** Quantities and sheets that differ between two versions; their values are told elsewhere. */
import { quantityChange } from '../describe';
import { findQuantity, quantityPlaces } from '../lookup';
import { takeApart } from '../merge/parts';
import { fieldOf, same, type Fields, type Node } from '../merge/same';
import type { Quantity, Workbook } from '../schema';
import type { Change } from './change';

export function compareQuantities(before: Workbook, after: Workbook): Change[] {
	const old = takeApart(before);
	const now = takeApart(after, before);
	const lines: Change[] = [];
	for (const [name, { quantity, sheet }] of quantityPlaces(after)) {
		const was = findQuantity(before, name);
		const title = after.sheets[sheet]?.title ?? '';
		if (!was) {
			lines.push({ kind: 'quantity_added', label: quantity.label, sheet: title });
			continue;
		}
		if (!sameButValue(was, quantity)) {
			const value = was.value !== undefined && { value: was.value };
			lines.push(quantityChange(before, name, { ...quantity, ...value }));
		}
		if (fieldOf(old.sheetOf, name) !== fieldOf(now.sheetOf, name))
			lines.push({ kind: 'quantity_moved', label: quantity.label, sheet: title });
	}
	for (const [name, { quantity }] of quantityPlaces(before))
		if (!findQuantity(after, name)) lines.push({ kind: 'quantity_removed', label: quantity.label });
	return [...lines, ...compareSheets(old.sheets, now.sheets)];
}

/** The value is compared apart, and one that is nothing but a value needs no further line. */
function sameButValue(was: Quantity, now: Quantity): boolean {
	const { value: _was, ...before } = was;
	const { value: _now, ...after } = now;
	return same(before as Node, after as Node);
}

function compareSheets(
	before: ReadonlyMap<string, Fields>,
	after: ReadonlyMap<string, Fields>
): Change[] {
	const lines: Change[] = [];
	const title = (sheet: Fields) => String(fieldOf(sheet, 'title'));
	for (const [key, sheet] of after) {
		const was = before.get(key);
		if (!was) lines.push({ kind: 'added', list: 'sheets', name: title(sheet) });
		else if (title(was) !== title(sheet))
			lines.push({ kind: 'renamed', list: 'sheets', from: title(was), to: title(sheet) });
		else if (!same(was, sheet)) lines.push({ kind: 'changed', list: 'sheets', name: title(sheet) });
	}
	for (const [key, sheet] of before)
		if (!after.has(key)) lines.push({ kind: 'removed', list: 'sheets', name: title(sheet) });
	const order = (sheets: ReadonlyMap<string, Fields>, other: ReadonlyMap<string, Fields>) =>
		[...sheets.keys()].filter((key) => other.has(key)).join('\u0001');
	if (order(before, after) !== order(after, before))
		lines.push({ kind: 'reordered', list: 'sheets' });
	return lines;
}
