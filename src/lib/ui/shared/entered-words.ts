/** A value of a revision in words: every digit, with its unit. */
import type { Quantity, Scalar, Workbook } from '$lib/workbook/schema';
import { formatInFull, unitShown } from '../format';
import { scalarWords } from '../scalar-words';

/** Undefined: the revision has no such entry. */
export function enteredWords(
	value: Scalar | undefined,
	quantity: Quantity | null,
	workbooks: readonly Workbook[],
	locale: string
): string {
	if (value === undefined) return 'nothing entered';
	const unit = quantity ? unitShown(quantity) : '';
	const number = (entered: number) =>
		[formatInFull(entered, locale), unit].filter(Boolean).join(' ');
	return scalarWords(value, quantity, { nothing: 'not entered', number, workbooks });
}
