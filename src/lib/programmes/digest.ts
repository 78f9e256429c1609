/** A fingerprint of linear programmes: alike only where every number is, so that what is unchanged is not solved again. */
import type { LinearProgramme } from './linear';

/** FNV-1a with 32 bits (Fowler, Noll and Vo), twice from different starts. */
export function digestOf(programmes: readonly LinearProgramme[]): string {
	let one = 0x811c9dc5;
	let other = 0x01000193;
	const take = (word: number) => {
		one = Math.imul(one ^ word, 0x01000193);
		other = Math.imul(other ^ ((word << 16) | (word >>> 16)), 0x85ebca6b);
	};
	const takeAll = (list: Float64Array | Int32Array | Uint8Array) => {
		const exact = list instanceof Float64Array ? list : Float64Array.from(list);
		take(list.length);
		// Minus zero is zero.
		for (const word of new Uint32Array(exact.map((value) => value + 0).buffer)) take(word);
	};
	for (const programme of programmes) {
		take(programme.maximise ? 1 : 0);
		takeAll(Float64Array.of(programme.offset));
		for (const list of [programme.cost, programme.lower, programme.upper, programme.whole])
			takeAll(list);
		for (const list of [programme.starts, programme.columns, programme.values]) takeAll(list);
		takeAll(programme.rowLower);
		takeAll(programme.rowUpper);
	}
	return [one, other].map((half) => (half >>> 0).toString(16).padStart(8, '0')).join('');
}
