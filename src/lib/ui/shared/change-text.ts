/** A line of a change list as this reader writes numbers and dates. */
import { dateText } from '$lib/workbook/date-text';
import type { Change } from '$lib/workbook/compare/change';
import { changeWords } from '$lib/workbook/compare/change-words';
import { formatInFull } from '../format';

export const changeText = (change: Change, locale: string): string =>
	changeWords(change, (value, shown) => {
		if (shown === 'date') return dateText(value);
		return shown === 'year' ? String(value) : formatInFull(value, locale);
	});
