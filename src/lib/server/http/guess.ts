/**
 * The one way by which a route looks whether a password, or a code in its place, is right. Whatever asks is slowed
 * down alike, each wrong one is in the trail, and whoever sends many at once gets no more tries than by turns.
 */
import { attemptKey, forgetFailures, isKnownDevice, networkOf, takeTry } from '../people/attempts';
import { note } from '../people/audit';
import { cookieNames, readCookie } from './cookies';
import { problem } from './problem';
import type { Call } from './route';

type Asking = Pick<Call, 'services' | 'request' | 'address'>;

export interface Guess {
	/** The account that is guessed at; the id is null where there is none. */
	readonly email: string;
	readonly personId: string | null;
	/** The session in which somebody confirms who they are; left out where nobody is signed in yet. */
	readonly session?: string | null;
	/** Where it was asked, for the trail. */
	readonly where: string;
}

export type Guessed =
	| {
			readonly is: 'right';
			/** The secret of a browser that the person is known by. */ readonly device: string | null;
	  }
	| { readonly is: 'wrong' }
	| { readonly is: 'refused'; readonly answer: Response };

export async function guessed(
	{ services, request, address }: Asking,
	{ email, personId, session, where }: Guess,
	isRight: () => Promise<boolean>
): Promise<Guessed> {
	const { db } = services.store;
	const now = services.now();
	const secret = readCookie(request, cookieNames(services.settings, request).device);
	const device =
		secret !== null && personId !== null && (await isKnownDevice(db, personId, secret))
			? secret
			: null;
	// Neither a colleague behind the same proxy nor a stranger there uses up the tries of a browser that is known.
	const from = session ?? device ?? address;
	const crowd = services.signIns.take(networkOf(from), now);
	if (crowd > 0)
		return {
			is: 'refused',
			answer: waiting(`Too many passwords are tried from this address. Wait ${crowd} s.`, crowd)
		};
	const key = attemptKey(from, email);
	const seconds = Math.ceil((await takeTry(db, key, now)) / 1000);
	if (seconds > 0)
		return {
			is: 'refused',
			answer: waiting(
				`There were several wrong passwords for this account from here. Wait ${seconds} s, then try again.`,
				seconds
			)
		};
	if (await isRight()) {
		await forgetFailures(db, key);
		return { is: 'right', device };
	}
	await note(db, { now, event: 'password_refused', personId, detail: where, address });
	return { is: 'wrong' };
}

export function waiting(words: string, seconds: number): Response {
	return problem('too-many', words, { headers: { 'retry-after': String(seconds) } });
}
