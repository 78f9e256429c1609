/** In which order cases stand: by what they are worth, a year or in all, or by how soon they are back. */
import type { Case } from './payback';

export const RANKS = [
	{ value: 'npv', text: 'net present value' },
	{ value: 'annualValue', text: 'annual value' },
	{ value: 'payback', text: 'payback' }
] as const;
export type Rank = (typeof RANKS)[number]['value'];

export const isRank = (text: string): text is Rank => RANKS.some(({ value }) => value === text);

/** By what is comparable: the worth a year where lives differ. */
export function rankFor(cases: readonly Case[]): Rank {
	const lives = new Set(cases.flatMap(({ life }) => (life.kind === 'value' ? [life.value] : [])));
	return lives.size > 1 ? 'annualValue' : 'npv';
}

/** The best first; cases without the figure last, in their own order, and so are those that are none to read. */
export function ranked(cases: readonly Case[], by: Rank): Case[] {
	const sign = by === 'payback' ? 1 : -1;
	const worth = (one: Case) =>
		one[by].kind === 'value' && !one.doubt ? sign * one[by].value : Infinity;
	return [...cases].sort((a, b) => {
		const [first, second] = [worth(a), worth(b)];
		return first === second ? 0 : first - second;
	});
}
