/** Chance that comes out the same for the same seed. */
import { RandomStream } from '$lib/studies/random/random-stream';

export class Dice extends RandomStream {
	chance(share: number): boolean {
		return this.next() < share;
	}

	pick<T>(list: readonly T[]): T | undefined {
		return list[this.below(list.length)];
	}
}
