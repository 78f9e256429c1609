/** What is written around the week: its finding, each hour in words, figures per pattern, and the table. */
import type { Layout } from '$lib/engine/layout';
import type { PlainTable } from '$lib/exchange/csv/write';
import { decimalsFor, decimalsWritten, formatNumber, formatUnit } from '../../format';
import { plain, read, shown, type Reading, type Source } from '../../figure/read';
import {
	costOf,
	dayCost,
	HOURS,
	meanCost,
	workedIn,
	type Day,
	type Hour,
	type Week,
	type WeekPicture
} from './week';
import { blockOf, changedBy, type Brush, type Spot, type Stroke } from './week-stroke';

const unitOf = (layout: Layout, name: string | undefined) =>
	formatUnit(layout.byName.get(name ?? '')?.quantity.unit);

/** So many digits, but none that are not written. */
const decimalsOf = ({ kind, value }: Reading, digits: number) =>
	kind === 'value' ? Math.min(decimalsFor(value, digits), decimalsWritten(value, 6)) : 0;

/** The unit of the cost of an hour: "EUR/h". */
export const costUnit = (layout: Layout, picture: WeekPicture) => unitOf(layout, picture.costs[0]);

/** The unit of a day's cost: "EUR". */
export const dayUnit = (layout: Layout, picture: WeekPicture) =>
	costUnit(layout, picture).replace(/\/h$/, '');

export const clock = (hour: number) => `${String(hour).padStart(2, '0')}:00`;

/** "120 of 168 hours worked on three shifts, five days; an hour costs 412 EUR". */
export function weekTitle(
	week: Week,
	layout: Layout,
	picture: WeekPicture,
	locale: string
): string {
	const all = week.days.length * HOURS;
	const hours = `${week.hoursWorked} of ${all} hours worked on ${week.patternLabel}`;
	const mean = meanCost(week);
	if (mean === null || picture.costs.length === 0) return hours;
	const cost = formatNumber(mean, decimalsFor(mean, 3), locale);
	return `${hours}; an hour costs ${cost} ${dayUnit(layout, picture)}`;
}

/** One hour for somebody who cannot see it: "Mon 06:00 to 07:00, worked, premium 25 %, …". */
export function hourWords(
	week: Week,
	spot: Spot,
	layout: Layout,
	picture: WeekPicture,
	locale: string
): string {
	const hour = week.days[spot.day]?.hours[spot.hour];
	if (!hour) return '';
	const when = `${week.days[spot.day]?.label} ${clock(spot.hour)} to ${clock(spot.hour + 1)}`;
	const crew = week.crews.length > 1 && hour.worked ? `, ${week.crews[hour.crew] ?? ''}` : '';
	return [
		`${when}, ${hour.worked ? 'worked' : 'nobody'}${crew}`,
		...overHour(hour, layout, picture, locale)
	].join(', ');
}

/** What lies over an hour: premium, price, and the parts of its cost if it is worked. */
export function overHour(
	hour: Hour,
	layout: Layout,
	picture: WeekPicture,
	locale: string
): string[] {
	const say = (label: string, reading: Reading | null, unit: string) =>
		reading === null ? [] : [`${label} ${shown(reading, decimalsOf(reading, 3), locale)} ${unit}`];
	const label = (name: string) => layout.byName.get(name)?.quantity.label.toLowerCase() ?? name;
	return [
		...say('premium', hour.premium, unitOf(layout, picture.premium)),
		...say('energy price', hour.price, unitOf(layout, picture.price)),
		...picture.costs.flatMap((name, i) =>
			say(label(name), hour.costs[i] ?? null, unitOf(layout, name))
		)
	];
}

/** What a stroke would do: "Sunday 18:00 to 24:00, +6 h". */
export function strokeWords(week: Week, stroke: Stroke, brush: Brush): string {
	const { firstDay, lastDay, firstHour, lastHour } = blockOf(stroke);
	const days =
		firstDay === lastDay
			? (week.days[firstDay]?.label ?? '')
			: `${week.days[firstDay]?.short} to ${week.days[lastDay]?.short}`;
	const count = changedBy(week, stroke, brush).length;
	const change = count === 0 ? 'as it is' : `${brush === 'worked' ? '+' : '−'}${count} h`;
	return `${days} ${clock(firstHour)} to ${clock(lastHour + 1)}, ${change}`;
}

export interface DayFigures {
	readonly least: string;
	readonly most: string;
	readonly total: string;
}

export function dayFigures(day: Day, locale: string): DayFigures {
	const cost = dayCost(day);
	const figure = (value: number | null) => (value === null ? '–' : formatNumber(value, 0, locale));
	if (!cost) return { least: 'No value', most: 'No value', total: 'No value' };
	return { least: figure(cost.least), most: figure(cost.most), total: figure(cost.total) };
}

/** The largest cost of any hour, worked or not, so that the days' lines share one scale. */
export const largestCost = (week: Week): number =>
	Math.max(0, ...week.days.flatMap((day) => day.hours.map((hour) => costOf(hour) ?? 0)));

export interface Fact {
	readonly label: string;
	readonly text: string;
	readonly unit: string;
	readonly because: string;
}

export function weekFacts(
	picture: WeekPicture,
	source: Source,
	pattern: string,
	locale: string
): Fact[] {
	const ordinal = source.layout.ordinals.get(picture.pattern)?.get(pattern) ?? -1;
	return picture.facts.map((name) => {
		const reading = read(source, name, { [picture.pattern]: ordinal });
		const digits = reading.quantity?.quantity.digits ?? 4;
		return {
			label: reading.quantity?.quantity.label ?? name,
			text: shown(reading, decimalsOf(reading, Math.min(digits, 4)), locale),
			unit: reading.kind === 'value' ? unitOf(source.layout, name) : '',
			because: reading.because
		};
	});
}

/** In words, day by day. */
export function weekSummary(week: Week, unit: string, locale: string): string {
	const days = week.days.map((day) => {
		const hours = workedIn(day);
		const cost = dayCost(day);
		const money = hours > 0 && cost ? `, ${formatNumber(cost.total, 0, locale)} ${unit}` : '';
		return `${day.label} ${hours} h${money}`;
	});
	return `${week.hoursWorked} hours a week on ${week.patternLabel}: ${days.join('; ')}.`;
}

/** All 168 hours, to take along. */
export function weekTable(
	week: Week,
	layout: Layout,
	picture: WeekPicture,
	whose: string
): PlainTable {
	const head = (name: string | undefined) => {
		const quantity = layout.byName.get(name ?? '')?.quantity;
		const unit = formatUnit(quantity?.unit);
		return name === undefined ? [] : [`${quantity?.label ?? name}${unit ? `, ${unit}` : ''}`];
	};
	return {
		caption: [`${picture.title}: ${week.patternLabel}`, whose].filter(Boolean).join('. '),
		columns: [
			...['Day', 'From', 'Worked'],
			...(week.crews.length > 1 ? ['Crew'] : []),
			...head(picture.premium),
			...head(picture.price),
			...picture.costs.flatMap(head)
		],
		rows: week.days.flatMap((day) =>
			day.hours.map((hour) => [
				...[day.label, clock(hour.place % HOURS), hour.worked ? 'yes' : 'no'],
				...(week.crews.length > 1 ? [week.crews[hour.crew] ?? ''] : []),
				...[hour.premium, hour.price, ...hour.costs].flatMap((one) => (one ? [plain(one)] : []))
			])
		)
	};
}
