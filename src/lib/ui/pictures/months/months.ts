/**
 * A result month by month, in the scenario in hand and in what it is measured against: the months, which are closed, sums of
 * the year so far and of whole years. Sentences are in `months-words.ts`.
 */
import type { Picture, Quantity } from '$lib/workbook/schema';
import { monthNumber } from '$lib/workbook/months';
import { read, type Reading, type Source } from '../../figure/read';

export type MonthsPicture = Extract<Picture, { kind: 'months' }>;

export interface Month {
	readonly id: string;
	readonly label: string;
	readonly year: number;
	readonly isClosed: boolean;
	readonly here: Reading;
	/** In what it is measured against; null where that is itself. */
	readonly there: Reading | null;
	/** The same month of the year before, where that is among them. */
	readonly before: Reading | null;
}

/** A sum over months; `there` of what it is measured against. */
export interface Sum {
	readonly here: number;
	readonly there: number | null;
}

export interface YearSum extends Sum {
	readonly year: number;
}

export interface Months {
	readonly name: string;
	readonly label: string;
	readonly quantity: Quantity | undefined;
	readonly months: readonly Month[];
	readonly referenceTitle: string | null;
	/** Of a result whose months add up: up to the last month that is closed, in its year. */
	readonly toDate: (Sum & { readonly month: string }) | null;
	/** Years of which all twelve months have a value. */
	readonly years: readonly YearSum[];
	/** Where open months are planned on what the closed ones of their year left: which they are. */
	readonly onClose: { readonly first: Month; readonly last: Month; readonly next: Month } | null;
}

export interface Asked {
	readonly picture: MonthsPicture;
	readonly hand: Source;
	/** Null where the scenario is measured against itself. */
	readonly reference: { readonly title: string; readonly source: Source } | null;
	/** Which of the results. */
	readonly result: string;
}

export function monthsOf({ picture, hand, reference, result }: Asked): Months {
	const { layout } = hand;
	const { period, closed } = picture;
	const quantity = layout.byName.get(result)?.quantity;
	const at = (i: number) => ({ [period]: i });
	const all = (layout.sets.get(period)?.members ?? []).map(({ id, label }, i): Month => ({
		...{ id, label: label ?? id, year: Math.floor((monthNumber(id) ?? 0) / 12) },
		isClosed: closed !== undefined && read(hand, closed, at(i)).value === 1,
		here: read(hand, result, at(i)),
		there: reference && read(reference.source, result, at(i)),
		before: i >= 12 ? read(hand, result, at(i - 12)) : null
	}));
	const adds = picture.added?.includes(result) ?? false;
	const last = all.findLast(({ isClosed }) => isClosed);
	const soFar = last ? all.filter(({ year, id }) => year === last.year && id <= last.id) : [];
	const years = [...new Set(all.map(({ year }) => year))].flatMap((year) => {
		const months = all.filter((month) => month.year === year);
		const sum = months.length === 12 ? sumOf(months) : null;
		return sum ? [{ year, ...sum }] : [];
	});
	const toDate = adds && last ? sumOf(soFar) : null;
	return {
		...{ name: result, label: quantity?.label ?? result, quantity, months: all },
		referenceTitle: reference?.title ?? null,
		toDate: toDate && last ? { ...toDate, month: last.label } : null,
		years: adds ? years : [],
		onClose: plannedOnClose(all, picture.planned_on_close, hand)
	};
}

function plannedOnClose(
	months: readonly Month[],
	says: string | undefined,
	hand: Source
): Months['onClose'] {
	if (says === undefined || read(hand, says, {}).value !== 1) return null;
	const at = months.findLastIndex(({ isClosed }) => isClosed);
	const [last, next] = [months[at], months[at + 1]];
	const first = months.find(({ year }) => year === last?.year);
	return first && last && next ? { first, last, next } : null;
}

/** Null where one of them has no value. */
function sumOf(months: readonly Month[]): Sum | null {
	const total = (readings: readonly (Reading | null)[]) =>
		readings.every((one) => one?.kind === 'value')
			? readings.reduce((sum, one) => sum + (one?.value ?? 0), 0)
			: null;
	const here = total(months.map((month) => month.here));
	return here === null ? null : { here, there: total(months.map((month) => month.there)) };
}

/** The largest figure drawn, without its sign. */
export const largestOf = ({ months }: Months): number =>
	Math.max(
		0,
		...months.flatMap(({ here, there }) =>
			[here, there].flatMap((one) => (one?.kind === 'value' ? [Math.abs(one.value)] : []))
		)
	);
