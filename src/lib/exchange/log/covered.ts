/** The period that a log covers, and how many hours, days, weeks, months or years of it fall to each member. */
import { firstOfMonth, monthOf, yearOf } from '$lib/workbook/dates';
import { pairKey } from '$lib/workbook/axes';
import type { LogSum } from '$lib/workbook/schema';
import type { Log } from './log';

export interface Period {
	/** Both days are of it. */
	readonly from: number;
	readonly to: number;
}

/** Null where nobody has said it. */
export function coveredBy(rows: Period, covers: Log['covers']): Period | null {
	if (covers === null || typeof covers === 'object') return covers;
	const [firstYear, lastYear] = [yearOf(rows.from), yearOf(rows.to)];
	if (covers === 'rows') return rows;
	return covers === 'years'
		? { from: firstOfMonth(firstYear, 1), to: firstOfMonth(lastYear + 1, 1) - 1 }
		: {
				from: firstOfMonth(firstYear, monthOf(rows.from)),
				to: firstOfMonth(lastYear, monthOf(rows.to) + 1) - 1
			};
}

export const daysOf = ({ from, to }: Period): number => to - from + 1;

/** Further back and forth nothing is counted day by day. */
export const MOST_DAYS = 36_600;

type Lengths = Readonly<Record<NonNullable<LogSum['per']>, number>>;

/** A whole calendar month counts as one month, a whole calendar year as one year, however many days they have. */
export function lengthsOf(
	days: Iterable<{ readonly date: number; readonly share: number }>
): Lengths {
	const sums = { hour: 0, day: 0, week: 0, month: 0, year: 0 };
	const perDay = new Map<number, { month: number; year: number }>();
	for (const { date, share } of days) {
		const [year, month] = [yearOf(date), monthOf(date)];
		const key = 12 * year + month;
		let counts = perDay.get(key);
		if (!counts) {
			const first = firstOfMonth(year, month);
			counts = {
				month: firstOfMonth(year, month + 1) - first,
				year: firstOfMonth(year + 1, 1) - firstOfMonth(year, 1)
			};
			perDay.set(key, counts);
		}
		sums.hour += 24 * share;
		sums.day += share;
		sums.week += share / 7;
		sums.month += share / counts.month;
		sums.year += share / counts.year;
	}
	return roundedOff(sums);
}

/** A year made of 365 parts is a year, and not a hair less. */
const roundedOff = (sums: Record<keyof Lengths, number>): Lengths =>
	Object.fromEntries(
		Object.entries(sums).map(([name, sum]) => [name, Number(sum.toPrecision(12))])
	) as Lengths;

/** By the members that a date chooses, the days of the period that are theirs; with hours, parts of days. */
export function coverage(
	{ from, to }: Period,
	membersAt: (date: number, hour: number) => readonly string[] | null,
	byHour: boolean
): Map<string, { date: number; share: number }[]> {
	const found = new Map<string, { date: number; share: number }[]>();
	const steps = byHour ? 24 : 1;
	for (let date = from; date <= to; date++)
		for (let hour = 0; hour < steps; hour++) {
			const at = membersAt(date, hour);
			if (!at) continue;
			const key = pairKey(at);
			const days = found.get(key);
			if (days) days.push({ date, share: 1 / steps });
			else found.set(key, [{ date, share: 1 / steps }]);
		}
	return found;
}

export interface Gaps {
	/** Days of the period on which nothing happened. */
	readonly days: number;
	/** The longest first, at most three. */
	readonly longest: readonly Period[];
}

export function gapsIn(period: Period, dates: ReadonlySet<number>): Gaps {
	const runs: Period[] = [];
	let days = 0;
	for (let date = period.from; date <= period.to; date++) {
		if (dates.has(date)) continue;
		days++;
		const run = runs.at(-1);
		if (run && run.to === date - 1) runs[runs.length - 1] = { ...run, to: date };
		else runs.push({ from: date, to: date });
	}
	return { days, longest: runs.sort((a, b) => daysOf(b) - daysOf(a)).slice(0, 3) };
}
