/** Which colour a scenario has in a chart: the one that it has had, whoever comes and goes beside it. */

/** By scenario: the place of its colour, 1 first. */
export type Colouring = Readonly<Record<string, number>>;

/** Colours that are told apart; one more stands for all scenarios beyond them. */
const COLOURS = 5;

/** Each newcomer takes the first colour that none of those shown has. */
export function coloured(before: Colouring, shown: readonly string[]): Colouring {
	const next: Record<string, number> = { ...before };
	const used = new Set(shown.flatMap((id) => (Object.hasOwn(before, id) ? [before[id]!] : [])));
	for (const id of shown) {
		if (Object.hasOwn(next, id)) continue;
		let colour = 1;
		while (colour <= COLOURS && used.has(colour)) colour++;
		next[id] = colour;
		used.add(colour);
	}
	return next;
}

/** As it was kept, as far as it can be read. */
export function colouringFrom(kept: unknown): Colouring {
	if (typeof kept !== 'object' || kept === null) return {};
	const isColour = (value: unknown) =>
		Number.isInteger(value) && Number(value) >= 1 && Number(value) <= COLOURS + 1;
	return Object.fromEntries(Object.entries(kept).filter(([, colour]) => isColour(colour)));
}
