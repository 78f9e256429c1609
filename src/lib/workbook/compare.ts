/**
 * What changed between two versions of a workbook, in words ("resin price: 1.95 to 2.10 EUR/kg") and, for the history
 * of each value, as values. It compares what stands there, however it came about.
 */
import { compareLists } from './compare/lists';
import { compareQuantities } from './compare/quantities';
import { compareValues, type ValueDifference } from './compare/values';
import type { ShowNumber } from './describe';
import type { Workbook } from './schema';

export interface Comparison {
	/** In the order in which a reader wants them: values, quantities, then the rest. */
	readonly lines: readonly string[];
	/** Every entered value that differs, those of new quantities and scenarios as well. */
	readonly values: readonly ValueDifference[];
}

/** Cells of one quantity in one scenario that are told one by one; more are told by their number. */
const MOST_CELLS = 8;

export function compareWorkbooks(before: Workbook, after: Workbook, show?: ShowNumber): Comparison {
	const values = compareValues(before, after);
	return {
		lines: [
			...values.lines(MOST_CELLS, show),
			...compareQuantities(before, after),
			...compareLists(before, after)
		],
		values: values.all
	};
}
