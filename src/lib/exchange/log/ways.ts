/**
 * How a date chooses a member: by a part of the date that is a whole number, such as the month. The member is the one of
 * that number; in a set without numbers that has as many members as there are such parts, the one at that place.
 */
import { monthCount, monthCountOf } from '../table/dated-months';
import { dayOf, firstOfMonth, isoWeek, monthOf, weekday, yearOf } from '$lib/workbook/dates';
import { kept } from '$lib/workbook/kept';
import type { DateWay, SetDefinition } from '$lib/workbook/schema';

interface Part {
	readonly first: number;
	readonly last: number;
	/** How many members a set has that holds them all. */
	readonly whole: readonly number[];
	readonly needsHour: boolean;
}

const PARTS: Readonly<Record<DateWay, Part>> = {
	year: { first: 1900, last: 9999, whole: [], needsHour: false },
	year_month: { first: 12 * 1900, last: 12 * 9999 + 11, whole: [], needsHour: false },
	month: { first: 1, last: 12, whole: [12], needsHour: false },
	iso_week: { first: 1, last: 53, whole: [52, 53], needsHour: false },
	weekday: { first: 1, last: 7, whole: [7], needsHour: false },
	day_of_year: { first: 1, last: 366, whole: [365, 366], needsHour: false },
	day_of_month: { first: 1, last: 31, whole: [31], needsHour: false },
	hour_of_day: { first: 0, last: 23, whole: [24], needsHour: true },
	hour_of_week: { first: 0, last: 167, whole: [168], needsHour: true }
};
export const DATE_WAYS = Object.keys(PARTS) as DateWay[];
export const needsHour = (way: DateWay): boolean => PARTS[way].needsHour;

/** Weeks are those of ISO 8601 and begin on Monday; hours count from 0. */
export function partOf(way: DateWay, date: number, hour: number): number {
	switch (way) {
		case 'year':
			return yearOf(date);
		case 'year_month':
			return monthCount(date);
		case 'month':
			return monthOf(date);
		case 'iso_week':
			return isoWeek(date);
		case 'weekday':
			return weekday(date, 2);
		case 'day_of_year':
			return date - firstOfMonth(yearOf(date), 1) + 1;
		case 'day_of_month':
			return dayOf(date);
		case 'hour_of_day':
			return hour;
		case 'hour_of_week':
			return 24 * weekday(date, 3) + hour;
	}
}

/** Members by the part of the date that chooses them; null where the set cannot be chosen from in this way. */
export const membersBy = (set: SetDefinition, way: DateWay): ReadonlyMap<number, string> | null =>
	byWay(set)[way];

const byWay = kept(
	(set: SetDefinition) =>
		Object.fromEntries(DATE_WAYS.map((way) => [way, listed(set, way)])) as Readonly<
			Record<DateWay, ReadonlyMap<number, string> | null>
		>
);

function listed({ members }: SetDefinition, way: DateWay): Map<number, string> | null {
	const { first, last, whole } = PARTS[way];
	const isPart = (number: number) => Number.isInteger(number) && number >= first && number <= last;
	const numbers = members.map(({ id, label, number }) => {
		const written =
			way === 'year' ? [id, label].find((text) => /^\d{4}$/.test(text ?? '')) : undefined;
		// A dated month is what it is called; its number may count otherwise.
		if (way === 'year_month') return monthCountOf(id);
		return number ?? (written === undefined ? NaN : Number(written));
	});
	const byNumber = members.length > 0 && numbers.every(isPart);
	if (byNumber && new Set(numbers).size === members.length)
		return new Map(members.map(({ id }, at) => [numbers[at]!, id]));
	const areBare = members.every(({ number }) => number === undefined);
	return areBare && whole.includes(members.length)
		? new Map(members.map(({ id }, at) => [first + at, id]))
		: null;
}

/** Ways that a set can be chosen from; `sure` where it holds all such parts and does so in one way alone. */
export function waysFor(set: SetDefinition): {
	readonly ways: DateWay[];
	readonly sure: DateWay | null;
} {
	const ways = DATE_WAYS.filter((way) => membersBy(set, way));
	const wholly = ways.filter(
		(way) => way === 'year' || way === 'year_month' || PARTS[way].whole.includes(set.members.length)
	);
	return { ways, sure: wholly.length === 1 ? wholly[0]! : null };
}
