/** An entry as its field holds it: all digits by the reader's locale, a choice by its id. */
import { dateText } from '$lib/workbook/date-text';
import type { Scalar } from '$lib/workbook/schema';
import type { FieldSpec } from '../entry';
import { formatInFull } from '../format';

export function entryText(
	value: Scalar | undefined,
	{ date, locale }: Pick<FieldSpec, 'date' | 'locale'>
): string {
	if (value === undefined || value === null) return '';
	if (typeof value === 'boolean') return value ? 'yes' : 'no';
	if (typeof value === 'string') return value;
	return date ? dateText(value) : formatInFull(value, locale);
}
