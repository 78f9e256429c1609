/**
 * Whether a password is among those that are tried first: 49,000 that leaked most often, with the usual additions,
 * turns of letters, rows of keys, dates and repetitions. List and estimate come with the packages of zxcvbn-ts
 * (MIT); nothing is asked of anyone. They are fetched with the first new password: most processes never need one.
 */
import type { ZxcvbnFactory } from '@zxcvbn-ts/core';

/** Fewer guesses than ten to this: hours for whoever has stolen the hashes. */
const LEAST_DIGITS = 9;
/** Longer ones are judged by their beginning: the time that it takes grows faster than the length. */
const JUDGED = 64;

let estimate: Promise<ZxcvbnFactory> | undefined;

async function fetchEstimate(): Promise<ZxcvbnFactory> {
	const [{ ZxcvbnFactory }, { adjacencyGraphs, dictionary }] = await Promise.all([
		import('@zxcvbn-ts/core'),
		import('@zxcvbn-ts/language-common')
	]);
	return new ZxcvbnFactory({ dictionary, graphs: adjacencyGraphs });
}

/** Why it is easy to guess, as the end of a sentence; null where it is not. */
export async function whyGuessable(
	password: string,
	own: readonly string[]
): Promise<string | null> {
	estimate ??= fetchEstimate();
	const judged = password.slice(0, JUDGED);
	const { guessesLog10, sequence } = (await estimate).check(judged, [...own]);
	if (guessesLog10 >= LEAST_DIGITS) return null;
	const [most] = sequence
		.filter(({ pattern }) => pattern !== 'bruteforce')
		.sort((a, b) => b.token.length - a.token.length);
	switch (most?.pattern) {
		case 'dictionary':
			return most['dictionaryName'] === 'userInputs'
				? `“${most.token}” stands in your name or address`
				: `“${most.token}” is among the words that are tried first`;
		case 'repeat':
			return 'it repeats the same piece';
		case 'spatial':
			return `“${most.token}” is a row of neighbouring keys`;
		case 'sequence':
			return `“${most.token}” goes on letter by letter`;
		case 'date':
		case 'regex':
			return `“${most.token}” is a date or a year`;
		default:
			return 'it is made of few different pieces';
	}
}
