/** Of which columns it has to be said whether the day or the month comes first: of dates, where the file leaves it open. */
import { findQuantity } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import type { Mapping } from './mapping';

/** Whether the column's values are dates that can be read in two ways; of a mixed column some may be. */
export function takesOrder(
	{ quantity, columns }: Mapping,
	column: number,
	openDates: readonly boolean[],
	workbook: Workbook
): boolean {
	const meaning = columns[column]?.meaning;
	if (meaning?.is !== 'value' || !openDates[column]) return false;
	const name = meaning.quantity ?? quantity;
	return name === null || findQuantity(workbook, name)?.shown === 'date';
}

/** Those of which nobody has said it yet. */
export const orderAsked = (
	mapping: Mapping,
	openDates: readonly boolean[],
	workbook: Workbook
): number[] =>
	mapping.columns.flatMap(({ dayFirst }, column) =>
		dayFirst === null && takesOrder(mapping, column, openDates, workbook) ? [column] : []
	);
