/**
 * What lies under each subject, as coils do under a pipe: the members that a choice ties to it, each with its figures. Of one
 * subject on the page, of all in the table that is taken along: a price list.
 */
import type { PlainTable } from '$lib/exchange/csv/write';
import type { Picture } from '$lib/workbook/schema';
import { formatUnit } from '../../format';
import { plain, read, shown, type Reading, type Source } from '../../figure/read';
import { columnDecimals } from '../build-up/build-up';

export type ItemsPicture = Extract<Picture, { kind: 'items' }>;

export interface Column {
	readonly label: string;
	/** As printed. */
	readonly unit: string;
	readonly decimals: number;
}

export interface ItemRow {
	readonly id: string;
	readonly label: string;
	/** Id of what it lies under; empty where nobody said. */
	readonly under: string;
	readonly readings: readonly Reading[];
}

export interface Items {
	/** The set of items, and what one is called. */
	readonly set: string;
	readonly setLabel: string;
	readonly subjectLabel: string;
	readonly columns: readonly Column[];
	readonly rows: readonly ItemRow[];
}

export function itemsOf(picture: ItemsPicture, source: Source): Items {
	const { layout } = source;
	const set = layout.byName.get(picture.of)?.axes[0]?.set ?? '';
	const subjects = layout.sets.get(picture.subject);
	const members = layout.sets.get(set)?.members ?? [];
	const rows = members.map(({ id, label }, ordinal): ItemRow => {
		const at = { [set]: ordinal };
		const under = read(source, picture.of, at);
		return {
			...{ id, label: label ?? '' },
			under: under.kind === 'value' ? (subjects?.members[under.value]?.id ?? '') : '',
			readings: picture.columns.map((name) => read(source, name, at))
		};
	});
	const columns = picture.columns.map((name, i): Column => {
		const quantity = layout.byName.get(name)?.quantity;
		const values = rows.flatMap(({ readings }) =>
			readings[i]?.kind === 'value' ? [readings[i].value] : []
		);
		return {
			label: quantity?.label ?? name,
			unit: formatUnit(quantity?.unit),
			// Lengths as they are entered.
			decimals: values.every(Number.isInteger) ? 0 : columnDecimals(values, quantity?.digits ?? 4)
		};
	});
	const labels = { setLabel: layout.sets.get(set)?.label ?? set };
	return { set, ...labels, subjectLabel: subjects?.label ?? picture.subject, columns, rows };
}

export const rowsUnder = (items: Items, subject: string): readonly ItemRow[] =>
	items.rows.filter(({ under }) => under === subject);

/** The figure of a row as it is printed. */
export const figureText = (items: Items, row: ItemRow, column: number, locale: string): string =>
	shown(row.readings[column]!, items.columns[column]!.decimals, locale);

/** All of them, in full. */
export const itemsTable = (items: Items): PlainTable => ({
	caption: items.setLabel,
	columns: [
		items.subjectLabel,
		items.setLabel,
		'',
		...items.columns.map(({ label, unit }) => (unit ? `${label}, ${unit}` : label))
	],
	rows: items.rows.map(({ under, id, label, readings }) => [
		under,
		id,
		label,
		...readings.map((reading) => plain(reading))
	])
});
