/** Which scenarios stand beside the base where the window has no room for all of them. */

/** As many columns of `least` as fit beside the `fixed` width; one at least. */
export const roomFor = (width: number, fixed: number, least: number): number =>
	Math.max(1, Math.floor((width - fixed) / least));

export interface Window {
	readonly shown: readonly string[];
	/** How many do not fit, to the left and to the right. */
	readonly before: number;
	readonly after: number;
}

/** Those from `first` on, or earlier ones where the last would leave room. */
export function windowOf(beside: readonly string[], room: number, first: number): Window {
	const from = Math.max(0, Math.min(first, beside.length - room));
	const shown = beside.slice(from, from + room);
	return { shown, before: from, after: beside.length - from - shown.length };
}

/** The first that is shown, so that the one at a place is among them. */
export function firstToShow(at: number, room: number, first: number): number {
	if (at < 0) return first;
	return at < first ? at : at >= first + room ? at - room + 1 : first;
}
