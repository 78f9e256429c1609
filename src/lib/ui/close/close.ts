/** What a month is closed with: what of it is entered, what is missing, and which kept table brings it. */
import { cellAt, type QuantityLayout } from '$lib/engine/layout';
import { headingsCompared } from '$lib/exchange/table/kept';
import { axesOf } from '$lib/workbook/axes';
import type { KeptTable, Quantity, Workbook } from '$lib/workbook/schema';
import { placesOf, read, type At, type Source } from '../figure/read';
import type { WaterfallPicture } from '../pictures/waterfall/waterfall';

export interface Kind {
	readonly quantity: Quantity;
	/** The first cell of the month. */
	readonly first: number;
	/** Cells of the month, and how many of them are entered. */
	readonly cells: number;
	readonly entered: number;
	/** Labels of members that lack a value while others of the kind have one. */
	readonly missing: readonly string[];
	/** Titles of kept tables that bring it. */
	readonly broughtBy: readonly string[];
}

export function kindsOf(
	{ entered, month }: WaterfallPicture,
	source: Source,
	monthId: string
): Kind[] {
	const { workbook } = source.layout;
	const at = source.layout.sets.get(month)?.members.findIndex(({ id }) => id === monthId) ?? -1;
	return entered.flatMap((name) => {
		const place = source.layout.byName.get(name);
		if (!place) return [];
		const sets = place.axes.map(({ set }) => set).filter((set) => set !== month);
		const cells = placesOf(sets, source).flatMap((members) => {
			const { kind } = read(source, name, { ...members, [month]: at });
			return kind === 'absent' ? [] : [{ members, isEntered: kind === 'value' }];
		});
		const missing = cells.filter(({ isEntered }) => !isEntered);
		const count = cells.length - missing.length;
		return [
			{
				quantity: place.quantity,
				first: firstCell(place, month, at),
				cells: cells.length,
				entered: count,
				missing: count === 0 ? [] : missing.map(({ members }) => labelsOf(members, source)),
				broughtBy: tablesFor(workbook, name)
			}
		];
	});
}

const firstCell = (place: QuantityLayout, month: string, at: number): number =>
	cellAt(
		place,
		place.axes.map(({ set }) => (set === month ? at : 0))
	);

const labelsOf = (members: At, { layout }: Source): string =>
	Object.entries(members)
		.map(([set, i]) => layout.sets.get(set)?.members[i]?.id ?? '')
		.join(' ');

const tablesFor = ({ tables = [] }: Workbook, name: string): string[] =>
	tables.flatMap(({ title, quantity, columns, log }) =>
		quantity === name ||
		columns.some((column) => column.is === 'value' && column.quantity === name) ||
		log?.sums.some((sum) => sum.quantity === name)
			? [title]
			: []
	);

/** The kept table whose headings the file has, all and no others. */
export const keptFor = (head: readonly string[], { tables = [] }: Workbook): KeptTable | null =>
	tables.find((table) => {
		const { fresh, gone } = headingsCompared(head, table);
		return !table.pairs && fresh.length + gone.length === 0;
	}) ?? null;

/** The months that values are of, by their ids; none for values that are of no month. */
export const monthsIn = (
	changes: readonly { readonly quantity: Quantity; readonly at: readonly string[] }[],
	month: string
): string[] => [
	...new Set(
		changes.flatMap(({ quantity, at }) => {
			const axis = axesOf(quantity).findIndex(({ set }) => set === month);
			return axis < 0 ? [] : [at[axis] ?? ''];
		})
	)
];
