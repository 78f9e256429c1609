/**
 * What the next unit of a constraint is worth. At a kink the unit more and the unit less are worth different amounts,
 * and a solver gives any between the two; here each is found for itself, with how far it holds.
 *
 * "More" is more room: a higher bound of "at most", a lower one of "at least", a higher right side of "equal". Where the
 * solver's basis is a corner that several rows share, it proves nothing about one of the two directions: then the
 * programme is solved again with a little more, and the new basis must reach back to where it started.
 */
import type { Basis, Solver } from './highs';
import { rowValues, type LinearProgramme } from './linear';
import { Entries, reach, type Direction } from './ray';

/** The objective's change by one unit, and over how many units it holds. */
export interface Slope {
	readonly price: number;
	readonly until: number;
}

export interface RowPrice {
	readonly row: number;
	/** With one unit more; null where the programme has no plan then, as may be where two sides must be equal. */
	readonly more: Slope | null;
	/** With one unit less: what it takes away; null where the programme has no plan then. */
	readonly less: Slope | null;
}

type Way = 1 | -1;
const opposite = (way: Way): Way => (way === 1 ? -1 : 1);

const BASIC = 1;
/** First step of a programme solved again, in scaled units, and how often it is made smaller. */
const STEP = 1 / 64;
const SMALLER = 1 / 64;
const TRIES = 3;
const NEAR = 1e-8;

/** Right after the programme was solved; leaves the solver with it. All numbers are scaled ones. */
export class ShadowPrices {
	readonly #solver: Solver;
	readonly #programme: LinearProgramme;
	readonly #basis: Basis;
	readonly #chosen: Float64Array;
	readonly #sums: Float64Array;
	readonly #dual: Float64Array;
	readonly #entries: Entries;
	#last: { readonly row: number; readonly direction: Direction } | null = null;

	constructor(
		solver: Solver,
		programme: LinearProgramme,
		chosen: Float64Array,
		rowDual: Float64Array
	) {
		this.#solver = solver;
		this.#programme = programme;
		this.#basis = solver.basis();
		this.#chosen = chosen;
		this.#sums = rowValues(programme, chosen);
		this.#dual = rowDual;
		this.#entries = new Entries(programme);
	}

	/** Of these rows, in their order. */
	of(rows: ArrayLike<number>): RowPrice[] {
		const proven = Array.from(rows, (row) => ({
			row,
			more: this.#proven(row, this.#room(row)),
			less: this.#proven(row, opposite(this.#room(row)))
		}));
		return proven.map(({ row, more, less }) => ({
			row,
			more: more !== undefined ? more : this.#again(row, this.#room(row)),
			less: less !== undefined ? less : this.#again(row, opposite(this.#room(row)))
		}));
	}

	/** In which direction the row's bound goes when there is more room. */
	#room(row: number): Way {
		const { rowLower, rowUpper } = this.#programme;
		if (rowUpper[row] === Infinity) return -1;
		if (rowLower[row] === -Infinity || rowLower[row] === rowUpper[row]) return 1;
		return this.#sums[row]! - rowLower[row]! < rowUpper[row]! - this.#sums[row]! ? -1 : 1;
	}

	/** What the basis at hand says of this direction; undefined where it says nothing. */
	#proven(row: number, way: Way): Slope | undefined {
		if (this.#basis.rowStatus[row] === BASIC) {
			// A row that costs nothing now costs nothing with more room.
			if (way === this.#room(row) && !isEqual(this.#programme, row))
				return { price: 0, until: Infinity };
			const slack = this.#slack(row);
			return slack > NEAR ? { price: 0, until: slack } : undefined;
		}
		const plan = { chosen: this.#chosen, sums: this.#sums };
		const direction = this.#direction(row);
		const until = reach(this.#programme, this.#entries, plan, direction, row, way);
		return until > NEAR ? { price: way * this.#dual[row]!, until } : undefined;
	}

	#slack(row: number): number {
		const { rowLower, rowUpper } = this.#programme;
		return Math.min(rowUpper[row]! - this.#sums[row]!, this.#sums[row]! - rowLower[row]!);
	}

	/** Both ways of a row go along one direction, forth and back. */
	#direction(row: number): Direction {
		if (this.#last?.row !== row) this.#last = { row, direction: this.#solver.directionOf(row) };
		return this.#last.direction;
	}

	/** Solves with a little more or less; null where there is no plan then. */
	#again(row: number, way: Way): Slope | null {
		let step = STEP;
		let found: Slope | null = null;
		for (let tries = 0; tries < TRIES; tries++, step *= SMALLER) {
			const moved = withRowMoved(this.#programme, row, way * step);
			const answer = this.#solver.solveWithRow(moved, row, boundsOf(moved, row), {
				basis: this.#basis,
				seconds: 10,
				gap: 0
			});
			if (answer.status !== 'optimal' || !answer.chosen) {
				found = null;
				continue;
			}
			const plan = { chosen: answer.chosen, sums: rowValues(moved, answer.chosen) };
			const isTight = this.#solver.basis().rowStatus[row] !== BASIC;
			const along = isTight ? this.#solver.directionOf(row) : null;
			const onward = (way: Way) => reach(moved, this.#entries, plan, along!, row, way);
			const back = along ? onward(opposite(way)) : Infinity;
			found = {
				price: way * answer.rowDual[row]!,
				until: step + (along ? onward(way) : 0)
			};
			if (back >= step * (1 - NEAR)) break;
		}
		this.#restore(row);
		return found;
	}

	#restore(row: number): void {
		const bounds = boundsOf(this.#programme, row);
		this.#solver.solveWithRow(this.#programme, row, bounds, {
			basis: this.#basis,
			seconds: 10,
			gap: 0
		});
	}
}

const isEqual = ({ rowLower, rowUpper }: LinearProgramme, row: number): boolean =>
	rowLower[row] === rowUpper[row];

const boundsOf = ({ rowLower, rowUpper }: LinearProgramme, row: number) => ({
	lower: rowLower[row]!,
	upper: rowUpper[row]!
});

/** The programme with the bound that leaves room moved by so much; both where they are equal. */
export function withRowMoved(programme: LinearProgramme, row: number, by: number): LinearProgramme {
	const rowLower = programme.rowLower.slice();
	const rowUpper = programme.rowUpper.slice();
	const both = isEqual(programme, row);
	if (rowUpper[row] !== Infinity) rowUpper[row]! += by;
	if (rowLower[row] !== -Infinity && (both || rowUpper[row] === Infinity)) rowLower[row]! += by;
	return { ...programme, rowLower, rowUpper };
}
