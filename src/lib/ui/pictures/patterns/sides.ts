/**
 * Figures side by side: a row for each quantity, a column for each shift pattern or scenario, and what
 * each differs by from the one chosen to compare with. Read from results; drawing is `SideTable.svelte`'s.
 */
import { cellAt } from '$lib/engine/layout';
import type { PlainTable } from '$lib/exchange/csv/write';
import { isClose } from '../../cells';
import {
	decimalsFor,
	decimalsWritten,
	formatDifference,
	formatNumber,
	formatRelative,
	formatUnit
} from '../../format';
import { figureText } from '../../show';
import { plain, read, WITHOUT_VALUE, type At, type Reading, type Source } from '../../figure/read';

export interface Side {
	readonly id: string;
	readonly title: string;
	readonly aside: string;
	readonly source: Source;
	readonly at: At;
	/** The scenario whose cells these are. */
	readonly scenario: string;
}

export interface SideCell {
	readonly reading: Reading;
	readonly text: string;
	/** Null in the column that the others are compared with, and where there is nothing to compare. */
	readonly same: boolean | null;
	readonly difference: string;
	readonly relative: string;
	readonly cell: number | null;
}

export interface SideRow {
	readonly name: string;
	readonly label: string;
	readonly unit: string;
	readonly note: string;
	readonly cells: readonly SideCell[];
}

const DIGITS = 4;

/** Of the columns, those that are shown: what the others are compared with always is. */
export const shownSides = (
	sides: readonly Side[],
	against: string,
	isLeftOut: (id: string) => boolean
): readonly Side[] => sides.filter(({ id }) => id === against || !isLeftOut(id));

/** As many columns beside the one compared with have room on paper upright. */
const ON_PAPER = 4;

/** The columns of each table on paper: the one compared with first, then as many others as fit, until all have stood. */
export function onPaper(sides: readonly Side[], against: string): number[][] {
	const own = sides.findIndex(({ id }) => id === against);
	const others = sides.flatMap((_, at) => (at === own ? [] : [at]));
	const parts: number[][] = [];
	for (let from = 0; from === 0 || from < others.length; from += ON_PAPER)
		parts.push([...(own < 0 ? [] : [own]), ...others.slice(from, from + ON_PAPER)]);
	return parts;
}

/** `against` is the id of the column that the others are compared with. */
export function sideRows(
	sides: readonly Side[],
	names: readonly string[],
	against: string,
	locale: string
): SideRow[] {
	const from = sides.findIndex((side) => side.id === against);
	return names.map((name) => {
		const readings = sides.map((side) => read(side.source, name, side.at));
		const quantity = readings[0]?.quantity?.quantity;
		const decimals = decimalsOf(readings, quantity?.digits ?? DIGITS);
		return {
			name,
			label: quantity?.label ?? name,
			unit: formatUnit(quantity?.unit),
			note: quantity?.note ?? '',
			cells: readings.map((reading, i) => ({
				reading,
				text: textOf(reading, sides[i], decimals, locale),
				...differenceOf(reading, i === from ? undefined : readings[from], decimals, locale),
				cell: placeOf(reading, sides[i])
			}))
		};
	});
}

function decimalsOf(readings: readonly Reading[], digits: number): number {
	const values = readings.flatMap(({ kind, value }) => (kind === 'value' ? [value] : []));
	const fitting = decimalsFor(Math.max(0, ...values.map(Math.abs)), digits);
	return Math.min(fitting, Math.max(0, ...values.map((value) => decimalsWritten(value, 6))));
}

const isNumber = ({ quantity }: Reading) => (quantity?.quantity.type ?? 'number') === 'number';

function textOf(reading: Reading, side: Side | undefined, decimals: number, locale: string) {
	if (reading.kind !== 'value' || !reading.quantity || !side) return WITHOUT_VALUE[reading.kind];
	if (isNumber(reading)) return formatNumber(reading.value, decimals, locale);
	return figureText(side.source.layout, reading.quantity, reading.value, locale);
}

function differenceOf(
	reading: Reading,
	from: Reading | undefined,
	decimals: number,
	locale: string
): Pick<SideCell, 'same' | 'difference' | 'relative'> {
	const none = { same: null, difference: '', relative: '' };
	if (reading.kind !== 'value' || from?.kind !== 'value') return none;
	if (isClose(reading.value, from.value)) return { ...none, same: true };
	if (!isNumber(reading)) return { ...none, same: false };
	return {
		same: false,
		difference: formatDifference(reading.value - from.value, decimals, locale),
		// A percentage of a percentage would be taken for points.
		relative:
			reading.quantity?.quantity.unit === '%'
				? ''
				: formatRelative(reading.value, from.value, locale)
	};
}

function placeOf({ quantity }: Reading, side: Side | undefined): number | null {
	if (!quantity || !side) return null;
	const cell = cellAt(
		quantity,
		quantity.axes.map(({ set }, i) => side.at[set] ?? (quantity.sizes[i] === 1 ? 0 : -1))
	);
	return cell < 0 ? null : cell;
}

/** All figures, as text where they are words. */
export function sideTable(
	caption: string,
	sides: readonly Side[],
	rows: readonly SideRow[]
): PlainTable {
	return {
		caption,
		columns: ['Quantity', 'Unit', ...sides.map(({ title }) => title)],
		rows: rows.map(({ label, unit, cells }) => [
			label,
			unit,
			...cells.map(({ reading, text }) => (isNumber(reading) ? plain(reading) : text))
		])
	};
}
