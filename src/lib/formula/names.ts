/**
 * Names as formulas write them: what is one, which words are taken, when a member needs quotes, and
 * which known name is nearest to a mistyped one.
 *
 * Whether a name exists is for resolution; changing names inside formulas is `rename.ts`.
 */

import { editDistance } from '$lib/units/edit-distance';

/** Words of the language: no quantity, set, axis or index bears them, and a member so named goes in quotes. */
export const RESERVED: ReadonlySet<string> = new Set([
	'base',
	'reference',
	'over',
	'where',
	'in',
	'else',
	'yes',
	'no'
]);

/** A letter of any script, then letters, digits or underscores. Reserved words pass: ask RESERVED as well. */
export function isName(text: string): boolean {
	return /^\p{L}[\p{L}\p{N}_]*$/u.test(text);
}

/** A member as it stands in a formula: bare if it reads as a name, else in single quotes ('5x24'). */
export function quoteIfNeeded(memberId: string): string {
	return isName(memberId) && !RESERVED.has(memberId) ? memberId : `'${memberId}'`;
}

/** `wanted` if nobody has it, else `wanted_2`, `wanted_3` … */
export function freshName(wanted: string, taken: ReadonlySet<string>): string {
	let name = wanted;
	for (let number = 2; taken.has(name) || RESERVED.has(name); number++) {
		name = `${wanted}_${number}`;
	}
	return name;
}

/**
 * The candidate that a mistyped word most likely means, or undefined if none is near: at most a third of
 * its letters (one of two), and never more than three, wrong, missing, added or swapped. Case counts only
 * in a tie.
 */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
	const wanted = word.toLowerCase();
	const limit = word.length < 3 ? word.length - 1 : Math.min(3, Math.floor(word.length / 3));
	let best: string | undefined;
	let bestScore = limit + 0.5;
	for (const candidate of candidates) {
		if (Math.abs(candidate.length - word.length) > limit) continue;
		const distance = editDistance(wanted, candidate.toLowerCase(), limit);
		const score = distance + (candidate === word || distance > 0 ? 0 : 0.1);
		if (score < bestScore) {
			best = candidate;
			bestScore = score;
		}
	}
	return best;
}
