/** Quantities and sheets that differ between two versions, in words; their values are told elsewhere. */
import { describeCommand } from '../describe';
import { findQuantity, quantityPlaces } from '../lookup';
import { takeApart } from '../merge/parts';
import { fieldOf, same, type Fields, type Node } from '../merge/same';
import type { Quantity, Workbook } from '../schema';

export function compareQuantities(before: Workbook, after: Workbook): string[] {
	const old = takeApart(before);
	const now = takeApart(after, before);
	const lines: string[] = [];
	for (const [name, { quantity, sheet }] of quantityPlaces(after)) {
		const was = findQuantity(before, name);
		if (!was) {
			const title = after.sheets[sheet]?.title ?? '';
			lines.push(`add ${quantity.label} to ${title}`);
			continue;
		}
		const changed = sameButValue(was, quantity)
			? null
			: describeCommand(before, {
					kind: 'replace_quantity',
					name,
					quantity: { ...quantity, ...(was.value !== undefined && { value: was.value }) }
				});
		if (changed !== null) lines.push(changed);
		if (fieldOf(old.sheetOf, name) !== fieldOf(now.sheetOf, name))
			lines.push(`${quantity.label}: moved to ${after.sheets[sheet]?.title ?? ''}`);
	}
	for (const [name, { quantity }] of quantityPlaces(before))
		if (!findQuantity(after, name)) lines.push(`remove ${quantity.label}`);
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
): string[] {
	const lines: string[] = [];
	const title = (sheet: Fields) => String(fieldOf(sheet, 'title'));
	for (const [key, sheet] of after) {
		const was = before.get(key);
		if (!was) lines.push(`add sheet ${title(sheet)}`);
		else if (title(was) !== title(sheet))
			lines.push(`sheet ${title(was)}: renamed to ${title(sheet)}`);
		else if (!same(was, sheet)) lines.push(`describe sheet ${title(sheet)}`);
	}
	for (const [key, sheet] of before)
		if (!after.has(key)) lines.push(`remove sheet ${title(sheet)}`);
	const order = (sheets: ReadonlyMap<string, Fields>, other: ReadonlyMap<string, Fields>) =>
		[...sheets.keys()].filter((key) => other.has(key)).join('\u0001');
	if (order(before, after) !== order(after, before)) lines.push('sheets put in another order');
	return lines;
}
