/**
 * A hair's breadth inside every "at most" and "at least", so that the comparisons of the workbook, which know no
 * tolerance, say yes to a plan that lies at them. Prices and the proof are of the rows as they were derived.
 */
import { TOLERANCE } from './highs';
import type { LinearProgramme } from './linear';

/** Of scaled numbers: more than the solver may be off, far less than the proof allows. */
const HAIR = 8 * TOLERANCE;

export function insideMargins(programme: LinearProgramme): LinearProgramme {
	const rowLower = programme.rowLower.slice();
	const rowUpper = programme.rowUpper.slice();
	rowLower.forEach((lower, row) => {
		const upper = rowUpper[row]!;
		// Equal sides, and sides as near as that, have no inside.
		if (upper - lower <= 1e3 * HAIR) return;
		rowUpper[row] = upper - HAIR;
		rowLower[row] = lower + HAIR;
	});
	return { ...programme, rowLower, rowUpper };
}
