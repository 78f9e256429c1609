/** Chance that comes out the same for the same seed: mulberry32, a public domain generator of 32 bits. */
export class Dice {
	#state: number;

	constructor(seed: number) {
		this.#state = seed >>> 0;
	}

	/** From 0 to 1, 1 left out. */
	next(): number {
		this.#state = (this.#state + 0x6d2b79f5) >>> 0;
		let t = this.#state;
		t = Math.imul(t ^ (t >>> 15), t | 1);
		t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
		return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
	}

	below(count: number): number {
		return Math.floor(this.next() * count);
	}

	chance(share: number): boolean {
		return this.next() < share;
	}

	pick<T>(list: readonly T[]): T | undefined {
		return list[this.below(list.length)];
	}
}
