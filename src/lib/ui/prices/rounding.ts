/**
 * Rounding prices by a stated rule. The two rules for a number midway between two multiples are those of ISO 80000-1:2009,
 * annex B: to the even multiple (rule A), or to the larger one (rule B); both from memory of the standard, as is its advice to
 * round in one step. Up to the next is common practice for price lists, no source.
 */
export const ROUNDINGS = ['half_larger', 'half_even', 'up'] as const;
export type Rounding = (typeof ROUNDINGS)[number];

/** Quotients that come this close to the middle, or to a multiple, are there: decimals have no binary digits of their own. */
const HAIR = 1e-9;

/** Of a price, which is never negative, to a multiple of a step. */
export function rounded(value: number, step: number, way: Rounding): number {
	const count = value / step;
	const below = Math.floor(count + HAIR);
	const rest = count - below;
	const isMidway = Math.abs(rest - 0.5) <= HAIR;
	const more =
		way === 'up' ? rest > HAIR : isMidway ? way === 'half_larger' || below % 2 === 1 : rest > 0.5;
	// A multiple as a decimal of the step's own digits.
	return Number(((below + (more ? 1 : 0)) * step).toFixed(decimalsOf(step)));
}

/** Digits behind the point of a step: 0.001 has three, 0.05 two. */
export function decimalsOf(step: number): number {
	let decimals = 0;
	while (decimals < 9 && Math.abs(step * 10 ** decimals - Math.round(step * 10 ** decimals)) > 1e-9)
		decimals++;
	return decimals;
}
