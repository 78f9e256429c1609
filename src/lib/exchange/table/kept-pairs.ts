/**
 * Which column of a table named which members of a relation, kept with its headings and given to the next file that has
 * them. What that file has no more is asked about.
 */
import { findRelation } from '$lib/workbook/lookup';
import type { KeptTable, Workbook } from '$lib/workbook/schema';
import { placesIn, shortened, type HeadingsCompared } from './kept';
import { isWhole, type PairColumn, type PairMapping } from './pair-mapping';

/** Null while it is not said which column names which. */
export function keptPairsOf(
	title: string,
	head: readonly string[],
	mapping: PairMapping
): KeptTable | null {
	if (!isWhole(mapping)) return null;
	const [first, second] = mapping.of;
	return {
		title,
		columns: head.map((heading) => ({ heading: shortened(heading), is: 'nothing' })),
		pairs: {
			relation: mapping.relation,
			...(typeof first === 'number' && { first }),
			...(typeof second === 'number' && { second }),
			...(mapping.mark !== null && { mark: mapping.mark })
		}
	};
}

export interface ReusedPairs extends HeadingsCompared {
	readonly mapping: PairMapping;
}

/** Null where the table holds no pairs, or where the workbook has their relation no more. */
export function reusePairs(
	table: KeptTable,
	head: readonly string[],
	workbook: Workbook
): ReusedPairs | null {
	const { pairs } = table;
	if (!pairs || !findRelation(workbook, pairs.relation)) return null;
	const { places, fresh, gone } = placesIn(head, table);
	const here = (place: number): number | null => {
		const at = places.indexOf(place);
		return at < 0 ? null : at;
	};
	const column = (place: number | undefined): PairColumn =>
		place === undefined ? 'heads' : here(place);
	const mark = pairs.mark === undefined ? null : here(pairs.mark);
	// Without its marks a row that says no would count as a pair: then it is asked what names what.
	const hasMarks = pairs.mark === undefined || mark !== null;
	return {
		mapping: {
			relation: pairs.relation,
			of: hasMarks ? [column(pairs.first), column(pairs.second)] : [null, null],
			mark
		},
		fresh,
		gone
	};
}
