/**
 * A hair's breadth inside every "at most" and "at least", so that the comparisons of the workbook, which know no
 * tolerance, say yes to a plan that lies at them. Prices and the proof are of the rows as they were derived.
 */
import { TOLERANCE } from './highs';

/** Of scaled numbers: more than the solver may be off, far less than the proof allows. */
const HAIR = 4 * TOLERANCE;
/** How far a row that must be tight may stay away, so that several that meet in one corner find room. */
const STRAND = 12 * TOLERANCE;

export interface Bounds {
	readonly lower: number;
	readonly upper: number;
}

/** Equal sides, and sides as near as that, have no inside. */
export function inside({ lower, upper }: Bounds): Bounds {
	if (upper - lower <= 1e3 * STRAND) return { lower, upper };
	return { lower: lower + HAIR, upper: upper - HAIR };
}

/** The same at one of the bounds. */
export function insideAt(bounds: Bounds, at: number): Bounds {
	const { lower, upper } = bounds;
	if (upper - lower <= 1e3 * STRAND) return { lower: at, upper: at };
	return at === upper
		? { lower: at - STRAND, upper: at - HAIR }
		: { lower: at + HAIR, upper: at + STRAND };
}
