/**
 * Passwords: what is kept of one, and what a new one must be. Length counts, not what it is made of.
 */
import { hash, verify } from '@node-rs/argon2';
import { whyGuessable } from './guessable';

/** The least that a new password needs, in characters. */
export const SHORTEST = 12;
export const LONGEST = 200;

/** Argon2id with the cost that OWASP recommends: 19 MiB, two passes, one lane. */
const COST = { memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

/** Words that stand for this server as much as for the person. */
const OURS = ['metrewright', 'passwort'];

/** Why a new password is refused; null where it is good. */
export async function passwordProblem(password: string, email: string): Promise<string | null> {
	if ([...password].length < SHORTEST)
		return `The password is too short. Choose one of at least ${SHORTEST} characters; several words are fine.`;
	if (password.length > LONGEST)
		return `The password is longer than ${LONGEST} characters. Choose a shorter one.`;
	const own = [email, ...email.split(/[@.]/).filter((part) => part.length > 2), ...OURS];
	const why = password.toLowerCase().includes(email.toLowerCase())
		? 'it holds your address'
		: await whyGuessable(password, own);
	return why === null
		? null
		: `The password is too easy to guess: ${why}. Choose another; several words are fine.`;
}

export const hashPassword = (password: string): Promise<string> =>
	hash(password.normalize('NFKC'), COST);

/** The hash of nobody's password: to take as long for an unknown address as for a known one. */
let nobodys: Promise<string> | undefined;

export async function isPassword(kept: string | null, password: string): Promise<boolean> {
	nobodys ??= hashPassword('nobody signs in with this');
	const matches = await verify(kept ?? (await nobodys), password.normalize('NFKC'));
	return kept !== null && matches;
}
