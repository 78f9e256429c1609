/**
 * Random numbers by place: the number of a draw follows from the seed, the input and the draw alone, so that
 * anyone may compute any part of a study and all get the same. Also a permutation by place, for
 * the strata of Latin hypercube sampling. Not for secrets.
 */

/** Mixes a word until every bit depends on every bit (the finalizer of MurmurHash3). */
function mixed(word: number): number {
	let h = word | 0;
	h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
	h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
	return h ^ (h >>> 16);
}

/** A key of a seed and what it is for. */
export const keyOf = (seed: number, input: number, use: number): number =>
	mixed(mixed(mixed(seed ^ 0x9e3779b9) + Math.imul(input + 1, 0x7f4a7c15)) + use);

/** From 0 up to, never at, 1, for each place. */
export function uniformAt(key: number, place: number): number {
	const high = mixed(key ^ mixed(place + 0x68e31da4)) >>> 0;
	const low = mixed(high + Math.imul(place, 0x2545f491) + key) >>> 0;
	return ((high >>> 5) * 67108864 + (low >>> 6)) / 9007199254740992;
}

const ROUNDS = 6;

/**
 * A permutation of the places 0 … count − 1: a Feistel network on the next power of two, walked until it comes
 * back below the count.
 */
export class Permutation {
	readonly #count: number;
	readonly #keys = new Int32Array(ROUNDS);
	readonly #left: number;
	readonly #right: number;

	constructor(key: number, count: number) {
		this.#count = count;
		const bits = Math.max(2, 32 - Math.clz32(Math.max(0, count - 1)));
		this.#left = bits >> 1;
		this.#right = bits - this.#left;
		for (let round = 0; round < ROUNDS; round++)
			this.#keys[round] = mixed(key + Math.imul(round + 1, 0x51ed270b));
	}

	at(place: number): number {
		let here = place;
		do here = this.#once(here);
		while (here >= this.#count);
		return here;
	}

	#once(place: number): number {
		let leftBits = this.#left;
		let rightBits = this.#right;
		let left = place >>> rightBits;
		let right = place & ((1 << rightBits) - 1);
		// The halves change places each round, and their widths with them.
		for (let round = 0; round < ROUNDS; round++) {
			const next = (left ^ mixed(right ^ this.#keys[round]!)) & ((1 << leftBits) - 1);
			left = right;
			right = next;
			[leftBits, rightBits] = [rightBits, leftBits];
		}
		return ((left << rightBits) | right) >>> 0;
	}
}
