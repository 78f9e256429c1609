/** One entered value in words: yes or no, a date as one, a member by its name. How a number is written is the asker's. */
import { dateText } from '$lib/workbook/date-text';
import { findSet } from '$lib/workbook/lookup';
import type { Quantity, Scalar, Workbook } from '$lib/workbook/schema';
import { decimalsWritten, formatNumber } from './format';
import { memberName } from './member-name';

export interface ScalarWriting {
	/** Where nothing is entered. */
	readonly nothing: string;
	readonly number: (value: number) => string;
	/** Where a member is looked up, the first that knows it; a member that none knows stands by its id. */
	readonly workbooks: readonly Workbook[];
}

export function scalarWords(
	value: Scalar,
	quantity: Pick<Quantity, 'type' | 'shown'> | null,
	{ nothing, number, workbooks }: ScalarWriting
): string {
	if (value === null) return nothing;
	if (typeof value === 'boolean') return value ? 'yes' : 'no';
	if (typeof value === 'number')
		return quantity?.shown === 'date' ? dateText(value) : number(value);
	const type = quantity?.type;
	if (typeof type !== 'object') return value;
	for (const workbook of workbooks) {
		const set = findSet(workbook, type.member_of);
		const member = set?.members.find(({ id }) => id === value);
		if (set && member) return memberName(set, member);
	}
	return value;
}

/** A number with the digits that it was entered with, nine of them at most. */
export const asEntered = (value: number, locale: string): string =>
	formatNumber(value, decimalsWritten(Number(value.toPrecision(9)), 9), locale);
