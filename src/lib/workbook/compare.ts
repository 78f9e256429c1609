/**
 * What changed between two versions of a workbook, as lines that are worded where they are shown and, for the
 * history of each value, as values. It compares what stands there, however it came about.
 */
import type { Change } from './compare/change';
import { compareLists } from './compare/lists';
import { compareQuantities } from './compare/quantities';
import { compareValues, type ValueDifference } from './compare/values';
import type { Workbook } from './schema';

export interface Comparison {
	/** In the order in which a reader wants them: values, quantities, then the rest. */
	readonly lines: readonly Change[];
	/** Every entered value that differs, those of new quantities and scenarios as well. */
	readonly values: readonly ValueDifference[];
}

/** Cells of one quantity in one scenario that are told one by one; more are told by their number. */
const MOST_CELLS = 8;

export function compareWorkbooks(before: Workbook, after: Workbook): Comparison {
	const values = compareValues(before, after);
	return {
		lines: [
			...values.lines(MOST_CELLS),
			...compareQuantities(before, after),
			...compareLists(before, after)
		],
		values: values.all
	};
}
