/** Calendar, patterns, and the hours that lines, rewinders and chambers offer or need. */
import { given, plant, sum, type Item, type Line, type Product, type Roster } from './plant';

const DAY = 86_400_000;
const patterns: Readonly<
	Record<string, { starts_per_week: number; hours_on: readonly (readonly number[][])[] }>
> = plant.shift_patterns;

/** The days on which the plant works: month from 0, weekday from Monday. */
const workingDays: readonly { readonly month: number; readonly weekday: number }[] = (() => {
	const { year, shutdown, public_holidays } = plant.calendar;
	const [closes = '', opens = ''] = shutdown;
	const days: { month: number; weekday: number }[] = [];
	for (let day = Date.UTC(year, 0, 1); day < Date.UTC(year + 1, 0, 1); day += DAY) {
		const iso = new Date(day).toISOString().slice(0, 10);
		const closed = public_holidays.includes(iso) || (iso >= closes && iso <= opens);
		const at = new Date(day);
		if (!closed) days.push({ month: at.getUTCMonth(), weekday: (at.getUTCDay() + 6) % 7 });
	}
	return days;
})();

type Week = readonly (readonly number[])[];
const weeks = new Map<string, Week>();

/** For each weekday, the hours of the day at which the pattern works. */
export function weekOf(pattern: string): Week {
	const known = weeks.get(pattern);
	if (known) return known;
	const week = given(patterns, pattern).hours_on.map((day) =>
		Array.from({ length: 24 }, (_, hour) => hour).filter((hour) =>
			day.some(([from = 0, to = 0]) => hour >= from && hour < to)
		)
	);
	weeks.set(pattern, week);
	return week;
}

export const scheduledHours = (roster: Roster): number => sum(hoursByMonth(roster, () => 1));

/** What the hours of a year come to, by month, day by day: each hour counts as `worth` says. */
export function hoursByMonth(
	roster: Roster,
	worth: (weekday: number, hour: number) => number
): readonly number[] {
	return roster.map((pattern, month) => {
		const days = weekOf(pattern).map((hours, weekday) =>
			sum(hours.map((hour) => worth(weekday, hour)))
		);
		const own = workingDays.filter((day) => day.month === month);
		return sum(own.map(({ weekday }) => days[weekday] ?? 0));
	});
}

/** Restarts by month: the weeks run fall on the months as their working days from Monday to Friday do. */
function restartsByMonth(roster: Roster): readonly number[] {
	const weekdays = workingDays.filter((day) => day.weekday < 5);
	return roster.map((pattern, month) => {
		const share = weekdays.filter((day) => day.month === month).length / weekdays.length;
		return given(patterns, pattern).starts_per_week * plant.time_model.weeks_run * share;
	});
}

export const restarts = (roster: Roster): number => sum(restartsByMonth(roster));

/** A line: its roster, and its own times where it has them. */
type Timed = Pick<Line, 'pm_h_per_month' | 'restart_h'> & { readonly roster: Roster };

/** Scheduled hours less maintenance, which goes by them, and less restarts. */
export function netLineHoursByMonth(line: Timed): readonly number[] {
	const { roster, pm_h_per_month, restart_h } = { ...plant.time_model, ...line };
	const scheduled = hoursByMonth(roster, () => 1);
	const starts = restartsByMonth(roster);
	const maintained = (12 * pm_h_per_month) / sum(scheduled);
	return scheduled.map(
		(hours, month) => hours * (1 - maintained) - (starts[month] ?? NaN) * restart_h
	);
}

/** Practical capacity of a line: scheduled less planned maintenance less restarts. */
export function netLineHours(line: Timed): number {
	const { roster, pm_h_per_month, restart_h } = { ...plant.time_model, ...line };
	return scheduledHours(roster) - 12 * pm_h_per_month - restarts(roster) * restart_h;
}

/** A figure of each month's pattern, weighed by the hours scheduled in the month. */
export function overMonths(roster: Roster, figure: (pattern: string) => number): number {
	const hours = hoursByMonth(roster, () => 1);
	return sum(roster.map((pattern, month) => figure(pattern) * (hours[month] ?? 0))) / sum(hours);
}

/** Average over the hours of a pattern's week of a figure that depends on weekday and hour. */
export function weekAverage(pattern: string, figure: (weekday: number, hour: number) => number) {
	const hours = weekOf(pattern).flatMap((day, weekday) => day.map((hour) => figure(weekday, hour)));
	return hours.reduce((total, hour) => total + hour, 0) / hours.length;
}

/** Scheduled rewinder hours per metre: of all coils of its items over their metres; null where the line coils. */
export function rewindHours(product: Product): number | null {
	if (product.route === 'inline') return null;
	const hours = product.items.map(
		(item) => (item.demand_m / item.coil_m) * coilHours(product, item)
	);
	return sum(hours) / product.demand_m;
}

/** Scheduled rewinder hours of one coil of an item, on a drum's pipe. */
export function coilHours(product: Product, item: Item): number {
	const { speed_m_min, accel_s, doff_wrap_s } = product.rewind;
	const seconds =
		(60 * item.coil_m) / speed_m_min +
		accel_s +
		doff_wrap_s +
		(product.drum_change_s * item.coil_m) / product.drum_m;
	return seconds / (3600 * plant.rewinder_oee);
}

/** Chamber hours per metre; null where nothing is cross-linked. */
export function chamberHours(product: Product, wallSetPoint: number): number | null {
	if (!product.crosslink) return null;
	const { drums_per_chamber, availability } = plant.crosslink;
	return batchHours(wallSetPoint) / (drums_per_chamber * product.drum_m * availability);
}

export const batchHours = (wallSetPoint: number): number =>
	plant.crosslink.h_per_mm2 * wallSetPoint ** 2 + plant.crosslink.load_heat_unload_h;

/** Chamber hours on offer by month: while somebody is there, and a batch of middling length that runs on alone at each stop. */
export function chamberHoursByMonth(roster: Roster, batch: number): readonly number[] {
	const manned = hoursByMonth(roster, () => 1);
	const stops = restartsByMonth(roster);
	const { chambers, uptime } = plant.crosslink;
	return manned.map((hours, month) => chambers * (hours + (stops[month] ?? NaN) * batch) * uptime);
}
