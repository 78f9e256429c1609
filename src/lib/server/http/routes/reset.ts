/** Setting a password anew by a link that a steward made. */
import { z } from '$lib/server/zod';
import { note } from '../../people/audit';
import { hashPassword, passwordProblem } from '../../people/passwords';
import { findReset, setPassword, useReset } from '../../people/resets';
import { networkOf } from '../../people/attempts';
import { waiting } from '../guess';
import { problem } from '../problem';
import { empty, route } from '../route';

const unknown = () =>
	problem(
		'not-found',
		'This link is unknown, used or more than a day old. Ask an administrator for another one.'
	);

export const resetRoutes = [
	route({
		method: 'POST',
		path: '/api/v1/reset',
		needs: 'anyone',
		group: 'session',
		summary: 'Sets a password anew by the secret of a link, and signs the person out everywhere',
		body: z.strictObject({
			token: z.string().min(20).max(200),
			password: z.string().min(1).max(1000)
		}),
		answers: {
			204: { description: 'Set; sign in with it' },
			404: { description: 'No such link' },
			422: { description: 'The new password is too easy' },
			429: { description: 'Too many tries from this address' }
		},
		handle: async ({ services, body, address }) => {
			const { db } = services.store;
			const now = services.now();
			const crowd = services.signIns.take(networkOf(address), now);
			if (crowd > 0) return waiting(`Too many tries from this address. Wait ${crowd} s.`, crowd);
			const reset = await findReset(db, body.token, now);
			if (!reset) return unknown();
			const bad = await passwordProblem(body.password, reset.email);
			if (bad) return problem('wrong-content', bad);
			const hash = await hashPassword(body.password);
			if (!(await useReset(db, reset.id))) return unknown();
			await setPassword(db, reset.person, hash, { session: null });
			await note(db, { now, event: 'password_reset', personId: reset.person, address });
			return empty();
		}
	})
];
