/**
 * Which sheet of the second engine is whose while scenarios come and go: each keeps its own, a new one takes one that is
 * free or one more, and the sheet of one that is gone holds nothing until it is taken.
 */
import type { Source } from '$lib/engine/cells/reach';

/** Of no scenario. */
export const FREE = '';

export interface Slots {
	/** By sheet; parents and references are sheets. */
	readonly sources: readonly Source[];
	/** The sheets that are another scenario's than before, or start from or are measured against another. */
	readonly moved: readonly number[];
}

/** `next` in the order of the workbook, its parents and references places in it. */
export function slotsAfter(before: readonly Source[], next: readonly Source[]): Slots {
	const ids = new Set(next.map(({ id }) => id));
	const slotOf = new Map<string, number>();
	before.forEach(({ id }, slot) => ids.has(id) && slotOf.set(id, slot));
	const free = before.flatMap(({ id }, slot) => (ids.has(id) ? [] : [slot]));
	const base = before.findIndex(({ parent }) => parent < 0);
	let count = before.length;
	for (const { id, parent } of next) {
		if (slotOf.has(id)) continue;
		// The base stays where it is, whatever it is called.
		const slot = parent < 0 && free.includes(base) ? base : free.find((one) => one !== base);
		if (slot !== undefined) free.splice(free.indexOf(slot), 1);
		slotOf.set(id, slot ?? count++);
	}
	const slot = (place: number) => (place < 0 ? -1 : slotOf.get(next[place]!.id)!);
	const root = slot(next.findIndex(({ parent }) => parent < 0));
	const nobody: Source = { id: FREE, parent: root, reference: -1, entered: new Map() };
	const sources: Source[] = Array.from({ length: count }, () => nobody);
	for (const source of next)
		sources[slotOf.get(source.id)!] = {
			...source,
			parent: slot(source.parent),
			reference: slot(source.reference)
		};
	// Nothing of a free sheet may differ from what it would read.
	const rest = { ...nobody, reference: sources[root]!.reference };
	const whole = sources.map((source) => (source === nobody ? rest : source));
	const moved = whole.flatMap((source, at) => (isSame(before[at], source) ? [] : [at]));
	return { sources: whole, moved };
}

const isSame = (a: Source | undefined, b: Source): boolean =>
	a?.id === b.id && a.parent === b.parent && a.reference === b.reference && a.copy === b.copy;
