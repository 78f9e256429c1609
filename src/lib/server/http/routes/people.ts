/** One's own account and data; for stewards, everybody's, and the audit trail. */
import { Readable } from 'node:stream';
import { z } from '$lib/server/zod';
import { auditSchema, peopleSchema } from '$lib/protocol/answers';
import { note, readAudit, trailLines, trailName } from '../../people/audit';
import { hashPassword, isPassword, LONGEST, passwordProblem } from '../../people/passwords';
import {
	dataOf,
	listPeople,
	personByEmail,
	personById,
	removePerson,
	type Removal
} from '../../people/people';
import { setPassword } from '../../people/resets';
import { endSessions, seenBy } from '../../people/sessions';
import { guessed } from '../guess';
import { noted } from '../noting';
import { noSuchAccount } from '../permission';
import { problem } from '../problem';
import { empty, json, route, type Call } from '../route';

const group = 'people';
const password = z.string().min(1).max(LONGEST);

export const peopleRoutes = [
	route({
		method: 'PUT',
		path: '/api/v1/me/password',
		needs: 'person',
		group,
		summary: 'Changes one’s password, and ends all other sessions',
		body: z.strictObject({ old: password, new: z.string().max(1000) }),
		answers: {
			204: { description: 'Changed' },
			401: { description: 'The old one is wrong' },
			429: { description: 'Too many wrong ones; Retry-After says how long to wait' },
			422: { description: 'The new one is too easy' }
		},
		handle: async (call) => {
			const { services, who, body, address } = call;
			const { db } = services.store;
			const { id: personId, email } = who.person!;
			const refused = await confirmed(call, body.old, 'The old password is wrong. Check it.');
			if (refused) return refused;
			const bad = await passwordProblem(body.new, email);
			if (bad) return problem('wrong-content', bad);
			const hash = await hashPassword(body.new);
			await setPassword(db, personId, hash, { session: who.session });
			await note(db, { now: services.now(), event: 'password_changed', personId, address });
			return empty();
		}
	}),
	route({
		method: 'GET',
		path: '/api/v1/me/data',
		needs: 'person',
		group,
		summary: 'Everything that is kept of oneself',
		answers: { 200: { description: 'To take away', type: 'application/json' } },
		handle: async ({ services, who, address }) => {
			const { db } = services.store;
			const personId = who.person!.id;
			await note(db, { now: services.now(), event: 'data_exported', personId, address });
			return json(await dataOf(db, personId), {
				headers: { 'content-disposition': 'attachment; filename="metrewright-my-data.json"' }
			});
		}
	}),
	route({
		method: 'DELETE',
		path: '/api/v1/me',
		needs: 'person',
		group,
		summary: 'Removes one’s account; revisions stay without the name',
		body: z.strictObject({ password: z.string().max(LONGEST) }),
		answers: {
			204: { description: 'Removed' },
			401: { description: 'The password is wrong' },
			429: { description: 'Too many wrong ones; Retry-After says how long to wait' },
			409: { description: 'Something would be left without an owner or a steward' }
		},
		handle: async (call) => {
			const { services, who, body, address } = call;
			const { db } = services.store;
			const { id } = who.person!;
			const refused = await confirmed(call, body.password, 'The password is wrong. Check it.');
			if (refused) return refused;
			const removal = await removePerson(db, id);
			if (!removal.ok) return notRemoved(removal);
			await note(db, {
				now: services.now(),
				event: 'account_removed',
				personId: id,
				personName: trailName(who.person!),
				subject: id,
				subjectName: trailName(who.person!),
				address
			});
			return empty();
		}
	}),
	route({
		method: 'GET',
		path: '/api/v1/people',
		needs: 'steward',
		group,
		summary: 'Everybody with an account',
		answers: { 200: { description: 'By age of the account', schema: peopleSchema } },
		handle: async ({ services }) => {
			const { db } = services.store;
			const [people, seen] = await Promise.all([listPeople(db), seenBy(db, services.now())]);
			return json({
				people: people.map((one) => ({
					...one,
					...(seen.get(one.id) ?? { sessions: 0, seenAt: null })
				}))
			});
		}
	}),
	route({
		method: 'DELETE',
		path: '/api/v1/people/{person}',
		needs: 'steward',
		group,
		summary: 'Removes an account; revisions stay without the name',
		answers: {
			204: { description: 'Removed' },
			404: { description: 'No such account' },
			409: { description: 'Something would be left without an owner or a steward' }
		},
		handle: async ({ services, who, path, address }) => {
			const { db } = services.store;
			const leaver = await personById(db, path('person'));
			if (!leaver) return noSuchAccount();
			const removal = await removePerson(db, path('person'));
			if (!removal.ok) return notRemoved(removal);
			await note(db, {
				now: services.now(),
				event: 'account_removed',
				personId: who.person!.id,
				personName: trailName(who.person!),
				subject: leaver.id,
				subjectName: trailName(leaver),
				address
			});
			return empty();
		}
	}),
	route({
		method: 'DELETE',
		path: '/api/v1/people/{person}/sessions',
		needs: 'steward',
		group,
		summary: 'Ends all sessions of a person',
		answers: { 204: { description: 'Ended' } },
		handle: async ({ services, who, path, address }) => {
			const count = await endSessions(services.store.db, path('person'), { except: null });
			await note(services.store.db, {
				now: services.now(),
				event: 'sessions_ended',
				personId: who.person!.id,
				subject: path('person'),
				detail: String(count),
				address
			});
			return empty();
		}
	}),
	route({
		method: 'GET',
		path: '/api/v1/audit',
		needs: 'steward',
		group,
		summary: 'Sign-ins and changes of permissions, newest first',
		query: z.object({
			/** The number of the last entry of the page before. */
			before: z.coerce.number().int().positive().optional(),
			limit: z.coerce.number().int().min(1).max(500).default(100)
		}),
		answers: { 200: { description: 'A page of the trail', schema: auditSchema } },
		handle: async ({ services, query }) =>
			json({ entries: await readAudit(services.store.db, query.before, query.limit) })
	}),
	route({
		method: 'GET',
		path: '/api/v1/audit/export',
		needs: 'steward',
		group,
		summary:
			'The whole trail, one JSON object a line, oldest first, with the digests that chain its entries',
		answers: { 200: { description: 'JSON lines', type: 'application/x-ndjson' } },
		handle: async (call) => {
			await noted(call, 'trail_exported');
			const lines = Readable.from(trailLines(call.services.store.db), { objectMode: false });
			return new Response(Readable.toWeb(lines) as ReadableStream, {
				headers: {
					'content-type': 'application/x-ndjson; charset=utf-8',
					'content-disposition': 'attachment; filename="metrewright-trail.jsonl"'
				}
			});
		}
	})
];

/** Whoever changes what protects the account gives its password once more; null where it is right. */
async function confirmed(
	call: Pick<Call, 'services' | 'request' | 'address' | 'who'>,
	given: string,
	words: string
): Promise<Response | null> {
	const { email, id: personId } = call.who.person!;
	const kept = (await personByEmail(call.services.store.db, email))?.password ?? null;
	// Who signs in elsewhere has none here.
	if (kept === null) return null;
	const { session } = call.who;
	const tried = await guessed(call, { email, personId, session, where: 'confirmation' }, () =>
		isPassword(kept, given)
	);
	if (tried.is === 'refused') return tried.answer;
	return tried.is === 'wrong' ? problem('wrong-sign-in', words) : null;
}

function notRemoved(removal: Extract<Removal, { ok: false }>): Response {
	return problem(
		'conflict',
		removal.lastSteward
			? 'This is the last administrator, and others have accounts here. Make another one first.'
			: 'Workbooks would be left without an owner. Hand them over, give each another owner, or remove it, first.',
		{ fields: { workbooks: removal.workbooks } }
	);
}
