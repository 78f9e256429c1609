/**
 * Passwords: what is kept of one, and what a new one must be. Length counts, not what it is made of.
 */
import { hash, verify } from '@node-rs/argon2';

/** The least that a new password needs, in characters. */
export const SHORTEST = 12;
export const LONGEST = 200;

/** Argon2id with the cost that OWASP recommends: 19 MiB, two passes, one lane. */
const COST = { memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

/** So common that length does not help; compared without case. */
const COMMON =
	/^(?:(.)\1+|(?:password|passwort|metrewright|qwertyuiop|1234567890|0123456789)+\W*\d*)$/i;

/** Why a new password is refused; null where it is good. */
export function passwordProblem(password: string, email: string): string | null {
	if ([...password].length < SHORTEST)
		return `The password is too short. Choose one of at least ${SHORTEST} characters; several words are fine.`;
	if (password.length > LONGEST)
		return `The password is longer than ${LONGEST} characters. Choose a shorter one.`;
	if (COMMON.test(password) || password.toLowerCase().includes(email.toLowerCase()))
		return 'The password is too easy to guess. Choose another; several words are fine.';
	return null;
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
