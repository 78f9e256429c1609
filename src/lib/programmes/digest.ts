/** A fingerprint of linear programmes: alike only where every number is, so that what is unchanged is not solved again. */
import type { LinearProgramme } from './linear';

export function digestOf(programmes: readonly LinearProgramme[]): string {
	const fingerprint = new Fingerprint();
	for (const programme of programmes) {
		fingerprint.take(programme.maximise ? 1 : 0);
		fingerprint.takeAll([programme.offset]);
		for (const list of [programme.cost, programme.lower, programme.upper, programme.whole])
			fingerprint.takeAll(list);
		for (const list of [programme.starts, programme.columns, programme.values])
			fingerprint.takeAll(list);
		fingerprint.takeAll(programme.rowLower);
		fingerprint.takeAll(programme.rowUpper);
	}
	return fingerprint.text();
}

export function digestOfNumbers(lists: readonly ArrayLike<number>[]): string {
	const fingerprint = new Fingerprint();
	for (const list of lists) fingerprint.takeAll(list);
	return fingerprint.text();
}

/** FNV-1a with 32 bits (Fowler, Noll and Vo), twice from different starts. */
class Fingerprint {
	#one = 0x811c9dc5;
	#other = 0x01000193;

	take(word: number): void {
		this.#one = Math.imul(this.#one ^ word, 0x01000193);
		this.#other = Math.imul(this.#other ^ ((word << 16) | (word >>> 16)), 0x85ebca6b);
	}

	takeAll(list: ArrayLike<number>): void {
		this.take(list.length);
		const exact = Float64Array.from(list);
		// Minus zero is zero.
		for (let at = 0; at < exact.length; at++) exact[at]! += 0;
		for (const word of new Uint32Array(exact.buffer)) this.take(word);
	}

	text(): string {
		return [this.#one, this.#other]
			.map((half) => (half >>> 0).toString(16).padStart(8, '0'))
			.join('');
	}
}
