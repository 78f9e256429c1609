/**
 * Random numbers that come again: the same seed gives the same numbers everywhere. The generator is
 * sfc32, small and fast, of period 2^32 at the least; not for secrets.
 */
export class RandomStream {
	#a: number;
	#b: number;
	#c: number;
	#counter = 1;

	constructor(seed: number) {
		this.#a = 0x9e3779b9;
		this.#b = 0x243f6a88;
		this.#c = seed >>> 0;
		// The first numbers still show how near two seeds are.
		for (let i = 0; i < 15; i++) this.word();
	}

	/** A whole number from 0 to 2^32 − 1. */
	word(): number {
		const sum = (this.#a + this.#b + this.#counter) | 0;
		this.#counter = (this.#counter + 1) | 0;
		this.#a = this.#b ^ (this.#b >>> 9);
		this.#b = (this.#c + (this.#c << 3)) | 0;
		this.#c = (this.#c << 21) | (this.#c >>> 11);
		this.#c = (this.#c + sum) | 0;
		return sum >>> 0;
	}

	/** From 0 up to, never at, 1, on a grid of 2^53 steps. */
	next(): number {
		return ((this.word() >>> 5) * 67108864 + (this.word() >>> 6)) / 9007199254740992;
	}

	/** A whole number from 0 to `sides` − 1. */
	below(sides: number): number {
		return Math.floor(this.next() * sides);
	}
}
