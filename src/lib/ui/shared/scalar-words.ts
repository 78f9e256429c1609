/** One entered value in words: with its unit, a member by its label. */
import { dateText } from '$lib/workbook/date-text';
import { findSet } from '$lib/workbook/lookup';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { formatInFull, unitShown } from '../format';

/** `workbooks` are where a member's label is looked up, the first that knows it. */
export function scalarWords(
	value: number | string | boolean | null | undefined,
	quantity: Quantity | null,
	workbooks: readonly Workbook[],
	locale: string
): string {
	if (value === undefined) return 'nothing entered';
	if (value === null) return 'not entered';
	if (typeof value === 'boolean') return value ? 'yes' : 'no';
	if (typeof value === 'number') {
		if (quantity?.shown === 'date') return dateText(value);
		const unit = quantity ? unitShown(quantity) : '';
		return [formatInFull(value, locale), unit].filter(Boolean).join(' ');
	}
	const type = quantity?.type;
	if (typeof type !== 'object') return value;
	for (const workbook of workbooks) {
		const member = findSet(workbook, type.member_of)?.members.find(({ id }) => id === value);
		if (member) return member.label || value;
	}
	return value;
}
