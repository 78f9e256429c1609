/** What is to be minded before a fitted figure is used. Codes with their data; words are the screen's. */
import type { Calibration } from '$lib/workbook/calibration-schema';
import type { Candidate } from './candidates';
import type { MemberFit } from './members';

export type Warning =
	| { readonly kind: 'few'; readonly points: number }
	/** x today lies outside of where there are points; in the unit of x. */
	| {
			readonly kind: 'out_of_reach';
			readonly today: number;
			readonly low: number;
			readonly high: number;
	  }
	| { readonly kind: 'negative'; readonly parameter: Candidate['parameter'] }
	/** The interval holds 0. */
	| { readonly kind: 'may_be_nought'; readonly parameter: Candidate['parameter'] }
	/** x = 0 lies far from the points. */
	| { readonly kind: 'far_from_nought'; readonly low: number }
	| { readonly kind: 'explains_little'; readonly share: number }
	| { readonly kind: 'one_group' }
	| { readonly kind: 'far'; readonly points: number };

/** Common practice, no source. */
const ENOUGH = 8;
const EXPLAINS = 0.5;

export function warningsOf(
	{ form }: Calibration,
	one: MemberFit,
	candidates: readonly Candidate[],
	/** In the unit of x; null: not known. */
	today: number | null
): Warning[] {
	const warnings: Warning[] = [];
	const { fit, shares, points } = one;
	if (shares?.every(({ error }) => error === null)) warnings.push({ kind: 'one_group' });
	if (!fit) return warnings;
	if (fit.points < ENOUGH) warnings.push({ kind: 'few', points: fit.points });
	const xs = points.flatMap(({ x }) => (x === undefined ? [] : [x]));
	if (today !== null && xs.length > 0) {
		const [low, high] = [Math.min(...xs), Math.max(...xs)];
		if (today < low || today > high) warnings.push({ kind: 'out_of_reach', today, low, high });
	}
	for (const { parameter, value, low, high } of candidates) {
		if (value < 0) warnings.push({ kind: 'negative', parameter });
		else if (low !== null && high !== null && low <= 0 && high >= 0)
			warnings.push({ kind: 'may_be_nought', parameter });
	}
	if (form === 'line' && xs.length > 0) {
		const [low, high] = [Math.min(...xs), Math.max(...xs)];
		if (low > high - low && candidates.some(({ parameter }) => parameter === 'intercept'))
			warnings.push({ kind: 'far_from_nought', low });
		if (fit.explained !== null && fit.explained < EXPLAINS)
			warnings.push({ kind: 'explains_little', share: fit.explained });
	}
	if (fit.far.length > 0) warnings.push({ kind: 'far', points: fit.far.length });
	return warnings;
}
