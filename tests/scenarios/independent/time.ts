/** Calendar, patterns, and the hours that lines, rewinders and chambers offer or need. */
import { given, plant, type Product } from './plant';

const DAY = 86_400_000;
const patterns: Readonly<
	Record<string, { starts_per_week: number; hours_on: readonly (readonly number[][])[] }>
> = plant.shift_patterns;

/** Weekdays (0 = Monday) of the days on which the plant works. */
const workingWeekdays: readonly number[] = (() => {
	const { year, shutdown, public_holidays } = plant.calendar;
	const [closes = '', opens = ''] = shutdown;
	const weekdays: number[] = [];
	for (let day = Date.UTC(year, 0, 1); day < Date.UTC(year + 1, 0, 1); day += DAY) {
		const iso = new Date(day).toISOString().slice(0, 10);
		const closed = public_holidays.includes(iso) || (iso >= closes && iso <= opens);
		if (!closed) weekdays.push((new Date(day).getUTCDay() + 6) % 7);
	}
	return weekdays;
})();

/** For each weekday, the hours of the day at which the pattern works. */
export function weekOf(pattern: string): readonly (readonly number[])[] {
	const spells = given(patterns, pattern).hours_on;
	return spells.map((day) =>
		Array.from({ length: 24 }, (_, hour) => hour).filter((hour) =>
			day.some(([from = 0, to = 0]) => hour >= from && hour < to)
		)
	);
}

export function scheduledHours(pattern: string): number {
	const week = weekOf(pattern);
	return workingWeekdays.reduce((hours, weekday) => hours + (week[weekday]?.length ?? 0), 0);
}

/** Restarts a year. */
export function restarts(pattern: string): number {
	return given(patterns, pattern).starts_per_week * plant.time_model.weeks_run;
}

/** Practical capacity of a line: scheduled less planned maintenance less restarts. */
export function netLineHours(pattern: string): number {
	const { pm_h_per_month, restart_h } = plant.time_model;
	return scheduledHours(pattern) - 12 * pm_h_per_month - restarts(pattern) * restart_h;
}

/** Average over the hours of a pattern's week of a figure that depends on weekday and hour. */
export function weekAverage(pattern: string, figure: (weekday: number, hour: number) => number) {
	const hours = weekOf(pattern).flatMap((day, weekday) => day.map((hour) => figure(weekday, hour)));
	return hours.reduce((total, one) => total + one, 0) / hours.length;
}

/** Scheduled rewinder hours per metre; null where the line coils. */
export function rewindHours(product: Product): number | null {
	if (product.route === 'inline') return null;
	const { speed_m_min, accel_s, doff_wrap_s } = product.rewind;
	const seconds =
		(60 * product.coil_m) / speed_m_min +
		accel_s +
		doff_wrap_s +
		(product.drum_change_s * product.coil_m) / product.drum_m;
	return seconds / (3600 * product.coil_m * plant.rewinder_oee);
}

/** Chamber hours per metre; null where nothing is cross-linked. */
export function chamberHours(product: Product, wallSetPoint: number): number | null {
	if (!product.crosslink) return null;
	const { h_per_mm2, load_heat_unload_h, drums_per_chamber, availability } = plant.crosslink;
	const batch = h_per_mm2 * wallSetPoint ** 2 + load_heat_unload_h;
	return batch / (drums_per_chamber * product.drum_m * availability);
}

/** Chamber hours on offer in a year of twelve months of 730 h. */
export function chamberHoursOffered(): number {
	return plant.crosslink.chambers * 730 * 12 * plant.crosslink.uptime_of_calendar;
}
