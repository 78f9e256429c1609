/**
 * The draws of a risk study by Latin hypercube sampling: as many equally likely strata as draws for each input,
 * each met once, in an order of the input's own (McKay, Beckman and Conover, Technometrics 21, 1979, 239).
 *
 * A draw follows from the seed and its number alone, so any part of a study can be drawn anywhere. Only
 * correlated inputs have their strata laid out beforehand.
 */
import type { CorrelatedGroup } from './rank-correlation';
import { correlatedStrata } from './rank-correlation';
import type { Quantile } from './distributions';
import { keyOf, Permutation, uniformAt } from './jumping-random';

const STRATA = 1;
const WITHIN = 2;

/** For inputs whose strata are laid out: those of all draws, or of a part that starts at a known draw. */
export type LaidOut = ReadonlyMap<number, Uint32Array>;

export class Sampling {
	readonly #quantiles: readonly Quantile[];
	readonly #permutations: readonly Permutation[];
	readonly #within: readonly number[];
	readonly #laidOut: LaidOut;
	readonly #start: number;

	/** `start`: the draw of the first stratum that is laid out. */
	constructor(
		quantiles: readonly Quantile[],
		readonly draws: number,
		readonly seed: number,
		laidOut: LaidOut = new Map(),
		start = 0
	) {
		this.#start = start;
		this.#quantiles = quantiles;
		this.#permutations = quantiles.map((_, i) => new Permutation(keyOf(seed, i, STRATA), draws));
		this.#within = quantiles.map((_, i) => keyOf(seed, i, WITHIN));
		this.#laidOut = laidOut;
	}

	/** Which of the strata, from the lowest, a draw of an input falls in. */
	stratum(input: number, draw: number): number {
		return this.#laidOut.get(input)?.[draw - this.#start] ?? this.#permutations[input]!.at(draw);
	}

	/** The values of draws `from` to `from + count`, input by input. */
	values(from: number, count: number): Float64Array[] {
		return this.#quantiles.map((quantile, input) => {
			const own = new Float64Array(count);
			const laidOut = this.#laidOut.get(input);
			const permutation = this.#permutations[input]!;
			const within = this.#within[input]!;
			for (let i = 0; i < count; i++) {
				const stratum = laidOut ? laidOut[from - this.#start + i]! : permutation.at(from + i);
				own[i] = quantile.at(this.#probability(stratum, within));
			}
			return own;
		});
	}

	/** Somewhere within a stratum; the same for every draw that falls in it. */
	#probability(stratum: number, key: number): number {
		const p = (stratum + uniformAt(key, stratum)) / this.draws;
		// The very ends have no value in an unbounded distribution.
		return Math.min(1 - 2 ** -53, Math.max(2 ** -60, p));
	}
}

/** Lays out the strata of all correlated inputs. */
export function layOutGroups(
	groups: readonly CorrelatedGroup[],
	inputs: number,
	draws: number,
	seed: number
): LaidOut {
	const permutations = Array.from(
		{ length: inputs },
		(_, input) => new Permutation(keyOf(seed, input, STRATA), draws)
	);
	const laidOut = new Map<number, Uint32Array>();
	for (const group of groups) {
		const strata = correlatedStrata(group, draws, (input, draw) => permutations[input]!.at(draw));
		group.inputs.forEach((input, i) => laidOut.set(input, strata[i]!));
	}
	return laidOut;
}

/** The part of the laid-out strata that draws `from` to `from + count` need. */
export function partOf(laidOut: LaidOut, from: number, count: number): Map<number, Uint32Array> {
	return new Map([...laidOut].map(([input, strata]) => [input, strata.slice(from, from + count)]));
}
