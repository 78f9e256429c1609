/** How a scenario looks in a chart: as it has looked, whoever comes and goes beside it. */

/** By scenario: its place among the looks, 1 first. */
export type Colouring = Readonly<Record<string, number>>;

/** Colours that are told apart, by whatever eyes. */
const COLOURS = 5;
/** Marks on the lines of those that share a colour: the first five need none. */
const MARKS = [null, 'rect', 'triangle', 'rectRot'] as const;
export type LineMark = NonNullable<(typeof MARKS)[number]>;
/** Looks there are; scenarios beyond them begin again, told by their names alone. */
const LOOKS = COLOURS * MARKS.length;

/** Of a place: which of the colours, from 1. */
export const colourOf = (place: number): number => ((place - 1) % COLOURS) + 1;

/** Of a place: what its lines are marked with. */
export const markOf = (place: number): LineMark | null =>
	MARKS[Math.floor(((place - 1) % LOOKS) / COLOURS)] ?? null;

/** Each newcomer takes the first place that none of those shown has. */
export function coloured(before: Colouring, shown: readonly string[]): Colouring {
	const next: Record<string, number> = { ...before };
	const used = new Set(shown.flatMap((id) => (Object.hasOwn(before, id) ? [before[id]!] : [])));
	for (const id of shown) {
		if (Object.hasOwn(next, id)) continue;
		let place = 1;
		while (used.has(place)) place++;
		next[id] = place;
		used.add(place);
	}
	return next;
}

const MOST_KEPT = 1000;

/** As it was kept, as far as it can be read. */
export function colouringFrom(kept: unknown): Colouring {
	if (typeof kept !== 'object' || kept === null) return {};
	const isPlace = (value: unknown) =>
		Number.isInteger(value) && Number(value) >= 1 && Number(value) <= MOST_KEPT;
	return Object.fromEntries(Object.entries(kept).filter(([, place]) => isPlace(place)));
}
