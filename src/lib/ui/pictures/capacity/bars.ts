/**
 * How a load is drawn: a bar up to the hours on offer, what is above them on top of it, and the line at
 * 100 %. In units of the drawing, from the top.
 */
import { FULL, isAbove, type MonthLoad } from './capacity';

export const BAR_HEIGHT = 46;
const ROOM = 2;

export interface Bar {
	/** Within the hours on offer. */
	readonly within: Span;
	/** Above them; null where there is no such part. */
	readonly above: Span | null;
	/** Where the bar would end in the scenario that it is compared with; null where it is the same. */
	readonly before: number | null;
	/** Whether the bar was cut because it does not fit. */
	readonly cut: boolean;
}
interface Span {
	readonly y: number;
	readonly height: number;
}

/** The height of a load, from the top of the drawing. */
const topOf = (load: number, most: number) =>
	BAR_HEIGHT - (Math.min(Math.max(load, 0), most) / most) * (BAR_HEIGHT - ROOM);

export const fullLine = (most: number) => topOf(FULL, most);

/** Null where there is no load to draw. */
export function barOf({ load, before }: MonthLoad, most: number): Bar | null {
	if (load.kind !== 'value') return null;
	const top = topOf(load.value, most);
	const full = fullLine(most);
	const above = isAbove(load);
	const start = above ? full : top;
	const moved =
		before?.kind === 'value' && Math.abs(before.value - load.value) >= 0.5 ? before.value : null;
	return {
		within: { y: start, height: BAR_HEIGHT - start },
		above: above ? { y: top, height: full - top } : null,
		before: moved === null ? null : topOf(moved, most),
		cut: load.value > most
	};
}
