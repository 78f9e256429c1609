/**
 * The week as shapes: hours worked as fields, premium and price as bars along them whose height is their size,
 * and the cost of each day's hours as a stepped line. Days run down where there is room, else across.
 */
import { costOf, DAYS, HOURS, type Day, type Hour, type Week } from './week';

export interface Box {
	readonly x: number;
	readonly y: number;
	readonly width: number;
	readonly height: number;
}

export interface Field extends Box {
	readonly tone: 'day' | 'night' | 'crew';
}

export interface Frame {
	/** Whether days run down and hours across. */
	readonly daysRunDown: boolean;
	readonly width: number;
	readonly height: number;
	/** One hour along the day, and the thickness of a field. */
	readonly hour: number;
	readonly field: number;
	/** From one day to the next. */
	readonly pitch: number;
	/** Room for the premium before the field. */
	readonly before: number;
	/** Room for the price behind it. */
	readonly behind: number;
}

const PREMIUM = 12;
const PRICE = 14;

/** For a drawing as wide as its place on the page. */
export function frameOf(width: number, daysRunDown: boolean): Frame {
	if (daysRunDown) {
		const pitch = 24 + PREMIUM + PRICE + 6;
		return {
			...{ daysRunDown, width, height: DAYS * pitch },
			...{ hour: width / HOURS, field: 24, pitch, before: PREMIUM, behind: PRICE }
		};
	}
	const pitch = width / DAYS;
	return {
		...{ daysRunDown, width, height: HOURS * 24, hour: 24, pitch },
		...{ field: Math.max(24, pitch - 18), before: 7, behind: 8 }
	};
}

/** `hours` from an hour on, `across` from the near edge of the day's field, so thick. */
function boxAt(
	frame: Frame,
	day: number,
	from: number,
	hours: number,
	across: number,
	thick: number
): Box {
	const along = from * frame.hour;
	const start = day * frame.pitch + frame.before + across;
	const length = hours * frame.hour;
	return frame.daysRunDown
		? { x: along, y: start, width: length, height: thick }
		: { x: start, y: along, width: thick, height: length };
}

export const fieldBox = (frame: Frame, day: number, hour: number, hours = 1): Box =>
	boxAt(frame, day, hour, hours, 0, frame.field);

const toneOf = (hour: Hour): Field['tone'] =>
	hour.crew > 0 ? 'crew' : hour.night ? 'night' : 'day';

/** The hours worked, one field each, so that single hours can be told apart. */
export function fieldsOf(week: Week, frame: Frame): Field[] {
	return week.days.flatMap((day, d) =>
		day.hours
			.filter((hour) => hour.worked)
			.map((hour) => ({ ...fieldBox(frame, d, hour.place % HOURS), tone: toneOf(hour) }))
	);
}

/** Runs of equal value along the days, each as thick as its size against the largest. */
function barsOf(
	week: Week,
	frame: Frame,
	valueOf: (hour: Hour) => number,
	room: number,
	side: 'before' | 'behind'
): Box[] {
	const all = week.days.flatMap((day) => day.hours.map(valueOf)).filter(Number.isFinite);
	const largest = Math.max(0, ...all);
	if (largest === 0) return [];
	return week.days.flatMap((day, d) =>
		runs(day, valueOf).flatMap(({ from, hours, value }) => {
			const thick = (value / largest) * (room - 2);
			if (!(thick > 0)) return [];
			const across = side === 'before' ? -thick - 1 : frame.field + 1;
			return [boxAt(frame, d, from, hours, across, thick)];
		})
	);
}

function runs(day: Day, valueOf: (hour: Hour) => number) {
	const found: { from: number; hours: number; value: number }[] = [];
	day.hours.forEach((hour, at) => {
		const value = valueOf(hour);
		const last = found.at(-1);
		if (last && Object.is(last.value, value)) last.hours++;
		else found.push({ from: at, hours: 1, value });
	});
	return found;
}

export const premiumBars = (week: Week, frame: Frame): Box[] =>
	barsOf(week, frame, (hour) => hour.premium?.value ?? NaN, frame.before, 'before');

export const priceBars = (week: Week, frame: Frame): Box[] =>
	barsOf(week, frame, (hour) => hour.price?.value ?? NaN, frame.behind, 'behind');

/** Small squares in a box, as one path: a crew of its own. */
export function dots({ x, y, width, height }: Box, step = 5): string {
	const path: string[] = [];
	for (let row = y + step / 2; row < y + height - 1; row += step)
		for (let column = x + step / 2; column < x + width - 1; column += step)
			path.push(`M${round(column)} ${round(row)}h1.6v1.6h-1.6z`);
	return path.join('');
}

/** Diagonal strokes in a box, as one path: what is paid on top. */
export function strokes({ x, y, width, height }: Box, step = 5): string {
	const path: string[] = [];
	for (let at = x - height; at < x + width; at += step) {
		const left = Math.max(at, x);
		const right = Math.min(at + height, x + width);
		if (right <= left) continue;
		path.push(`M${round(left)} ${round(y + height - (left - at))}`);
		path.push(`L${round(right)} ${round(y + height - (right - at))}`);
	}
	return path.join('');
}

const round = (value: number) => Math.round(value * 10) / 10;

/** The cost of a day's hours as steps, from zero at the bottom; broken where nobody works. */
export function costSteps(day: Day, largest: number, width: number, height: number): string {
	if (!(largest > 0)) return '';
	const step = width / HOURS;
	let path = '';
	let open = false;
	day.hours.forEach((hour, at) => {
		const cost = hour.worked ? costOf(hour) : null;
		if (cost === null) {
			open = false;
			return;
		}
		const y = round(height - 1 - (cost / largest) * (height - 2));
		path += `${open ? 'L' : 'M'}${round(at * step)} ${y}H${round((at + 1) * step)}`;
		open = true;
	});
	return path;
}
