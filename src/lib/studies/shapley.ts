/**
 * The Shapley value: what each of several changes contributes to a difference that they make together.
 *
 * Exact over all subsets while there are few changes. With more, the average over seeded orders, each of
 * which shares out the whole difference, so that the parts always add up to it; how far each part may be
 * off is said as a standard error. What a subset is worth is the caller's to say.
 */
import { RandomStream } from './random/random-stream';

/** Most changes of which every subset is taken: 4,096 of them. */
export const MOST_EXACT = 12;
/** Orders drawn when nobody says how many. */
export const DEFAULT_ORDERS = 500;

/** 1 for each change that has been made. */
export type Subset = Uint8Array;
/** The worth of each subset, in turn; NaN where it has no answer. */
export type WorthOf = (subsets: readonly Subset[]) => ArrayLike<number>;

export interface Shares {
	/** By change; they add up to the worth of all less that of none. */
	readonly parts: readonly number[];
	/** By change; null where every subset was taken. */
	readonly standardErrors: readonly number[] | null;
	/** How many subsets were computed, and the first few without an answer. */
	readonly subsets: number;
	readonly without: number;
	readonly firstWithout: Subset | null;
}

export function shares(
	changes: number,
	worthOf: WorthOf,
	orders: { readonly samples?: number | undefined; readonly seed?: number | undefined } = {}
): Shares {
	return changes <= MOST_EXACT
		? exactShares(changes, worthOf)
		: sampledShares(changes, worthOf, orders.samples ?? DEFAULT_ORDERS, orders.seed ?? 1);
}

export function exactShares(changes: number, worthOf: WorthOf): Shares {
	const subsets = Array.from({ length: 2 ** changes }, (_, bits) =>
		Uint8Array.from({ length: changes }, (_, change) => (bits >> change) & 1)
	);
	const worth = worthOf(subsets);
	const weights = weightsFor(changes);
	const parts = Array.from({ length: changes }, (_, change) => {
		const terms: number[] = [];
		subsets.forEach((subset, bits) => {
			if (subset[change] === 1) return;
			const gain = worth[bits + 2 ** change]! - worth[bits]!;
			terms.push(weights[countOf(subset)]! * gain);
		});
		return exactSum(terms);
	});
	return { parts, standardErrors: null, ...tally(subsets, worth) };
}

/** By size of the subset before: |S|! (n − |S| − 1)! / n!, the share of orders that begin with it. */
function weightsFor(changes: number): number[] {
	const weights = [1 / Math.max(changes, 1)];
	for (let size = 1; size < changes; size++)
		weights.push((weights[size - 1]! * size) / (changes - size));
	return weights;
}

/** An order and its reverse are drawn together: what one overstates the other tends to understate. */
export function sampledShares(
	changes: number,
	worthOf: WorthOf,
	samples: number,
	seed: number
): Shares {
	const random = new RandomStream(seed);
	const place = new Map<string, number>();
	const subsets: Subset[] = [];
	const placeOf = (subset: Subset): number => {
		const key = subset.join('');
		const known = place.get(key);
		if (known !== undefined) return known;
		place.set(key, subsets.length);
		return subsets.push(subset.slice()) - 1;
	};
	const pairs = Math.max(2, Math.ceil(samples / 2));
	/** By order, by step: the subset before it; the whole comes last. */
	const walks: { order: readonly number[]; steps: readonly number[] }[] = [];
	for (let pair = 0; pair < pairs; pair++) {
		const order = shuffled(changes, random);
		for (const one of [order, [...order].reverse()]) {
			const subset = new Uint8Array(changes);
			const steps = [placeOf(subset)];
			for (const change of one) {
				subset[change] = 1;
				steps.push(placeOf(subset));
			}
			walks.push({ order: one, steps });
		}
	}
	const worth = worthOf(subsets);
	const gains = Array.from({ length: changes }, () => new Float64Array(walks.length));
	walks.forEach(({ order, steps }, walk) =>
		order.forEach((change, step) => {
			gains[change]![walk] = worth[steps[step + 1]!]! - worth[steps[step]!]!;
		})
	);
	const parts = gains.map((own) => exactSum(own) / own.length);
	const standardErrors = gains.map((own, change) => errorOf(own, parts[change]!));
	return { parts, standardErrors, ...tally(subsets, worth) };
}

/** Of the mean of pairs, because the two orders of a pair are not independent. */
function errorOf(gains: Float64Array, mean: number): number {
	const pairs = gains.length / 2;
	let squares = 0;
	for (let pair = 0; pair < pairs; pair++)
		squares += ((gains[2 * pair]! + gains[2 * pair + 1]!) / 2 - mean) ** 2;
	return Math.sqrt(squares / (pairs - 1) / pairs);
}

function shuffled(count: number, random: RandomStream): number[] {
	const order = Array.from({ length: count }, (_, i) => i);
	for (let i = count - 1; i > 0; i--) {
		const other = random.below(i + 1);
		[order[i], order[other]] = [order[other]!, order[i]!];
	}
	return order;
}

const countOf = (subset: Subset): number => subset.reduce((sum, made) => sum + made, 0);

/** Sums with the rounding carried along, so that parts of very different size still add up. */
function exactSum(terms: ArrayLike<number>): number {
	let sum = 0;
	let lost = 0;
	for (let i = 0; i < terms.length; i++) {
		const term = terms[i]!;
		const next = sum + term;
		lost += Math.abs(sum) >= Math.abs(term) ? sum - next + term : term - next + sum;
		sum = next;
	}
	return sum + lost;
}

function tally(subsets: readonly Subset[], worth: ArrayLike<number>) {
	const without = subsets.filter((_, i) => Number.isNaN(worth[i]));
	return {
		subsets: subsets.length,
		without: without.length,
		firstWithout: without[0] ?? null
	};
}
