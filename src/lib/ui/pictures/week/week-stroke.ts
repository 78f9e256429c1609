/**
 * Painting the week: the block of hours between where a stroke began and where it is, how keys move it, and
 * the one command that paints it. Nothing here knows of the mouse or the screen.
 */
import type { Command, InputEntry } from '$lib/workbook/commands';
import type { QuantityLayout } from '$lib/engine/layout';
import { DAYS, HOURS, type Hour, type Week } from './week';

/** An hour of the week by day and hour of the day. */
export interface Spot {
	readonly day: number;
	readonly hour: number;
}

/** From one corner to the other, in any direction. */
export interface Stroke {
	readonly from: Spot;
	readonly to: Spot;
}

export type Brush = 'worked' | 'nobody';

export const placeOf = ({ day, hour }: Spot): number => day * HOURS + hour;
export const spotOf = (place: number): Spot => ({
	day: Math.floor(place / HOURS),
	hour: place % HOURS
});

export interface Block {
	readonly firstDay: number;
	readonly lastDay: number;
	readonly firstHour: number;
	readonly lastHour: number;
}

export const blockOf = ({ from, to }: Stroke): Block => ({
	firstDay: Math.min(from.day, to.day),
	lastDay: Math.max(from.day, to.day),
	firstHour: Math.min(from.hour, to.hour),
	lastHour: Math.max(from.hour, to.hour)
});

export const isIn = (block: Block, { day, hour }: Spot): boolean =>
	day >= block.firstDay &&
	day <= block.lastDay &&
	hour >= block.firstHour &&
	hour <= block.lastHour;

/** Where a key leads; null for a key that moves nothing. Days run down and hours across, or the other way. */
export function moved(spot: Spot, key: string, daysRunDown: boolean): Spot | null {
	const turned: Readonly<Record<string, string>> = daysRunDown
		? {}
		: {
				ArrowUp: 'ArrowLeft',
				ArrowDown: 'ArrowRight',
				ArrowLeft: 'ArrowUp',
				ArrowRight: 'ArrowDown'
			};
	const { day, hour } = spot;
	switch (turned[key] ?? key) {
		case 'ArrowLeft':
			return { day, hour: Math.max(0, hour - 1) };
		case 'ArrowRight':
			return { day, hour: Math.min(HOURS - 1, hour + 1) };
		case 'ArrowUp':
			return { day: Math.max(0, day - 1), hour };
		case 'ArrowDown':
			return { day: Math.min(DAYS - 1, day + 1), hour };
		case 'Home':
			return { day, hour: 0 };
		case 'End':
			return { day, hour: HOURS - 1 };
		case 'PageUp':
			return { day: 0, hour };
		case 'PageDown':
			return { day: DAYS - 1, hour };
		default:
			return null;
	}
}

/** The hours that a stroke changes: those it covers that are not so already. */
export function changedBy(week: Week, stroke: Stroke, brush: Brush): Hour[] {
	const block = blockOf(stroke);
	return week.days.flatMap((day, d) =>
		day.hours.filter(
			(one, hour) => isIn(block, { day: d, hour }) && one.worked !== (brush === 'worked')
		)
	);
}

/** One command for the whole stroke, so that one undo takes it back; null where it changes nothing. */
export function strokeCommand(
	week: Week,
	stroke: Stroke,
	brush: Brush,
	worked: QuantityLayout,
	hourSet: string,
	scenario: string
): Command | null {
	const entries = changedBy(week, stroke, brush).map(({ id }): InputEntry => ({
		quantity: worked.quantity.name,
		at: worked.axes.map(({ set }) => (set === hourSet ? id : week.pattern)),
		value: brush === 'worked'
	}));
	return entries.length > 0 ? { kind: 'set_inputs', scenario, entries } : null;
}
