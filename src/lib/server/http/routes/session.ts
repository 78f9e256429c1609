/** Signing in and out, and one's own sessions. */
import { z } from '$lib/server/zod';
import { personSchema, sessionsSchema, whoSchema } from '$lib/protocol/answers';
import { rememberDevice } from '../../people/attempts';
import { note } from '../../people/audit';
import { isPassword, LONGEST } from '../../people/passwords';
import { asPerson, personByEmail } from '../../people/people';
import { endSessions, listSessions, startSession } from '../../people/sessions';
import { newToken } from '../../store/ids';
import { cookieLine, cookieNames } from '../cookies';
import { guessed } from '../guess';
import { problem } from '../problem';
import { empty, json, route, type Call } from '../route';

const group = 'session';
const YEAR_SECONDS = 365 * 24 * 3600;

/** Sets the cookies of a session that begins now. */
export async function signedIn(
	call: Pick<Call, 'services' | 'request' | 'address'>,
	person: { readonly id: string; readonly email: string },
	device: string | null
): Promise<Headers> {
	const { services, request, address } = call;
	const { settings, store } = services;
	const now = services.now();
	const names = cookieNames(settings, request);
	const agent = request.headers.get('user-agent') ?? '';
	const { token, seconds } = await startSession(store.db, person.id, agent, now, settings);
	const browser = device ?? newToken();
	await rememberDevice(store.db, person.id, browser, now);
	await note(store.db, { now, event: 'signed_in', personId: person.id, address });
	const { secure } = names;
	const headers = new Headers();
	headers.append('set-cookie', cookieLine(names.session, token, { secure, seconds }));
	headers.append(
		'set-cookie',
		cookieLine(names.device, browser, { secure, seconds: YEAR_SECONDS })
	);
	return headers;
}

export const sessionRoutes = [
	route({
		method: 'GET',
		path: '/api/v1/session',
		needs: 'anyone',
		group,
		summary: 'Who is signed in here, and whether anyone needs to',
		answers: { 200: { description: 'Who', schema: whoSchema } },
		handle: async ({ who }) => json({ mode: who.mode, person: who.person })
	}),
	route({
		method: 'POST',
		path: '/api/v1/session',
		needs: 'anyone',
		group,
		summary: 'Signs in with address and password',
		body: z.strictObject({
			email: z.string().min(3).max(254),
			password: z.string().min(1).max(LONGEST)
		}),
		answers: {
			200: { description: 'Signed in; the answer sets a cookie', schema: personSchema },
			401: { description: 'Address or password is wrong' },
			429: { description: 'Too many wrong passwords from here; Retry-After says how long to wait' }
		},
		handle: async (call) => {
			const { services, body, who } = call;
			const { store } = services;
			if (who.mode === 'single')
				return problem('no-accounts', 'This server has no accounts; nobody needs to sign in.');
			const known = await personByEmail(store.db, body.email);
			const tried = await guessed(
				call,
				{ email: body.email, personId: known?.id ?? null, where: 'sign-in' },
				() => isPassword(known?.password ?? null, body.password)
			);
			if (tried.is === 'refused') return tried.answer;
			if (tried.is === 'wrong' || !known)
				return problem('wrong-sign-in', 'Address or password is wrong. Check both.');
			const headers = await signedIn(call, known, tried.device);
			return json(asPerson(known), { headers });
		}
	}),
	route({
		method: 'DELETE',
		path: '/api/v1/session',
		needs: 'person',
		group,
		summary: 'Signs out',
		answers: { 204: { description: 'Signed out' } },
		handle: async ({ services, request, who, address }) => {
			const { store, settings } = services;
			const personId = who.person!.id;
			await endSessions(store.db, personId, { only: who.session! });
			await note(store.db, { now: services.now(), event: 'signed_out', personId, address });
			const { session, secure } = cookieNames(settings, request);
			return empty({ headers: { 'set-cookie': cookieLine(session, '', { secure, seconds: 0 }) } });
		}
	}),
	route({
		method: 'GET',
		path: '/api/v1/sessions',
		needs: 'person',
		group,
		summary: 'One’s own sessions',
		answers: {
			200: {
				description: 'Newest first',
				schema: sessionsSchema
			}
		},
		handle: async ({ services, who }) => {
			const all = await listSessions(services.store.db, who.person!.id, services.now());
			return json({ sessions: all.map((one) => ({ ...one, current: one.id === who.session })) });
		}
	}),
	route({
		method: 'DELETE',
		path: '/api/v1/sessions',
		needs: 'person',
		group,
		summary: 'Ends all of one’s sessions but this one',
		answers: { 204: { description: 'Ended' } },
		handle: async ({ services, who, address }) => {
			const personId = who.person!.id;
			const count = await endSessions(services.store.db, personId, { except: who.session });
			await note(services.store.db, {
				now: services.now(),
				event: 'sessions_ended',
				personId,
				detail: String(count),
				address
			});
			return empty();
		}
	}),
	route({
		method: 'DELETE',
		path: '/api/v1/sessions/{session}',
		needs: 'person',
		group,
		summary: 'Ends one of one’s sessions',
		answers: { 204: { description: 'Ended' }, 404: { description: 'No such session' } },
		handle: async ({ services, who, path, address }) => {
			const personId = who.person!.id;
			const count = await endSessions(services.store.db, personId, { only: path('session') });
			if (count === 0) return problem('not-found', 'You have no such session; it may have ended.');
			await note(services.store.db, {
				now: services.now(),
				event: 'sessions_ended',
				personId,
				detail: '1',
				address
			});
			return empty();
		}
	})
];
