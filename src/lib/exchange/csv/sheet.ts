/**
 * A sheet of the workbook as a table, one value a row and one scenario a column, with all digits. What is
 * written here can be brought in again (`import-table.ts`): quantities and members stand by their names.
 */
import { membersOf, type Layout, type QuantityLayout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { isError, NOT_ENTERED, NOTHING_KINDS, OK } from '$lib/engine/state';
import type { StaleCells } from '$lib/engine/stale';
import { STALE_WORDS } from '$lib/engine/stale-words';
import type { Entry, PlainTable } from './write';

/** What parts the members of one value: none of them can hold it. */
export const MEMBER_MARK = '; ';

/** The head of the column that says what is out of date. */
export const OUT_OF_DATE = 'out of date';
/** Stands where a value failed. */
const FAILED = 'no value';
const wordsFor = (state: number) => NOTHING_KINDS[state]!.replace('-', ' ');

/** What stands in a cell that holds no value; not to be read as one. */
export const NO_VALUE_WORDS: ReadonlySet<string> = new Set([
	FAILED,
	...Object.keys(NOTHING_KINDS).map((state) => wordsFor(Number(state)))
]);

/**
 * `results` of each scenario, or frozen copy, that has a column; `sheet` is a place, null takes all sheets. Where figures are out of
 * date, a column at the end says of which scenarios and why.
 */
export function sheetTable(
	layout: Layout,
	results: readonly Results[],
	sheet: number | null,
	stale: Pick<StaleCells, 'of'> | null = null
): PlainTable {
	const { workbook } = layout;
	const staleWords = (cell: number): string =>
		results
			.flatMap(({ scenario }) => {
				const because = stale?.of(scenario, cell);
				return because ? [`${scenario}: ${STALE_WORDS[because]}`] : [];
			})
			.join(MEMBER_MARK);
	const rows: Entry[][] = [];
	for (const quantity of layout.quantities) {
		if (sheet !== null && quantity.sheet !== sheet) continue;
		for (let cell = quantity.base; cell < quantity.base + quantity.count; cell++)
			rows.push([
				quantity.quantity.name,
				quantity.quantity.label,
				membersOf(layout, cell).join(MEMBER_MARK),
				quantity.quantity.unit ?? '',
				quantity.quantity.formula === undefined ? 'input' : 'result',
				...results.map((result) => entryOf(layout, quantity, result, cell)),
				...(stale ? [staleWords(cell)] : [])
			]);
	}
	return {
		caption: sheet === null ? workbook.title : (workbook.sheets[sheet]?.title ?? ''),
		columns: [
			...['name', 'quantity', 'for', 'unit', 'kind', ...results.map(({ scenario }) => scenario)],
			...(stale ? [OUT_OF_DATE] : [])
		],
		rows
	};
}

function entryOf(
	layout: Layout,
	{ quantity }: QuantityLayout,
	{ values, states }: Results,
	cell: number
): Entry {
	const state = states[cell]!;
	if (isError(state)) return FAILED;
	if (state !== OK) return state === NOT_ENTERED ? null : wordsFor(state);
	const value = values[cell]!;
	if (quantity.type === 'yes_no') return value === 0 ? 'no' : 'yes';
	if (typeof quantity.type === 'object')
		return layout.sets.get(quantity.type.member_of)?.members[value]?.id ?? '';
	return value;
}
