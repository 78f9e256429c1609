/** A value as the look before an import writes it. */
import { dateText } from '$lib/workbook/date-text';
import type { Quantity, Scalar } from '$lib/workbook/schema';
import { decimalsWritten, formatNumber } from '../format';
import { texts } from './texts';

export function scalarText(
	value: Scalar,
	{ shown }: Pick<Quantity, 'shown'>,
	locale = 'en'
): string {
	if (value === null) return texts.none;
	if (typeof value === 'boolean') return value ? texts.yes : texts.no;
	if (typeof value !== 'number') return value;
	return shown === 'date'
		? dateText(value)
		: formatNumber(value, decimalsWritten(value, 9), locale);
}
