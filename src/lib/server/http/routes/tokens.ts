/** API tokens: one's own, and for stewards those of others. */
import { z } from '$lib/server/zod';
import { tokenMadeSchema, tokensSchema } from '$lib/protocol/answers';
import { TOKEN_SCOPES } from '$lib/protocol/roles';
import { roleOf } from '../../people/memberships';
import { personById } from '../../people/people';
import { endTokens, listTokens, makeToken, tokenWords } from '../../people/tokens';
import { noted } from '../noting';
import { noSuchAccount } from '../permission';
import { problem } from '../problem';
import { empty, json, route } from '../route';

const group = 'tokens';
/** Nobody keeps track of more. */
const MOST = 50;

export const tokenRoutes = [
	route({
		method: 'GET',
		path: '/api/v1/tokens',
		needs: 'person',
		group,
		summary: 'One’s own API tokens, without their secrets',
		answers: { 200: { description: 'Oldest first', schema: tokensSchema } },
		handle: async ({ services, who }) =>
			json({ tokens: await listTokens(services.store.db, who.person!.id, services.now()) })
	}),
	route({
		method: 'POST',
		path: '/api/v1/tokens',
		needs: 'person',
		group,
		summary:
			'Makes an API token, sent as “Authorization: Bearer …”: it reads, or reads and saves, in all of one’s workbooks or in those named, until its day',
		body: z.strictObject({
			name: z.string().trim().min(1).max(60),
			scope: z.enum(TOKEN_SCOPES),
			/** Left out: all in which one has a part. */
			workbooks: z.array(z.string().max(64)).min(1).max(100).optional(),
			days: z.number().int().min(1).max(366)
		}),
		answers: {
			201: { description: 'The secret is in the answer, this once', schema: tokenMadeSchema },
			409: { description: 'There are too many' },
			422: { description: 'One has no part in a workbook that is named' }
		},
		handle: async (call) => {
			const { services, who, body } = call;
			const { db } = services.store;
			const personId = who.person!.id;
			const now = services.now();
			for (const workbook of body.workbooks ?? [])
				if ((await roleOf(db, workbook, personId)) === null)
					return problem(
						'wrong-content',
						`You have no part in the workbook "${workbook}". Name those in which you have one.`
					);
			const all = await listTokens(db, personId, now);
			if (all.length >= MOST)
				return problem('conflict', `You have ${MOST} tokens. End one that is not used any more.`);
			const { name, scope, days } = body;
			const workbooks = body.workbooks ?? null;
			const made = await makeToken(db, { personId, name, scope, workbooks, days, now });
			const detail = tokenWords({ name, scope, workbooks, days });
			await noted(call, 'token_made', { subject: made.id, detail });
			return json(made, { status: 201 });
		}
	}),
	route({
		method: 'DELETE',
		path: '/api/v1/tokens/{token}',
		needs: 'person',
		group,
		summary: 'Ends one of one’s own tokens',
		answers: { 204: { description: 'Ended' }, 404: { description: 'No such token' } },
		handle: async (call) => {
			const { services, who, path } = call;
			if ((await endTokens(services.store.db, who.person!.id, path('token'))) === 0)
				return problem('not-found', 'You have no such token; it may have ended.');
			await noted(call, 'token_ended', { subject: path('token') });
			return empty();
		}
	}),
	route({
		method: 'GET',
		path: '/api/v1/people/{person}/tokens',
		needs: 'steward',
		group,
		summary: 'The API tokens of a person, without their secrets',
		answers: {
			200: { description: 'Oldest first', schema: tokensSchema },
			404: { description: 'No such account' }
		},
		handle: async ({ services, path }) => {
			const { db } = services.store;
			if (!(await personById(db, path('person')))) return noSuchAccount();
			return json({ tokens: await listTokens(db, path('person'), services.now()) });
		}
	}),
	route({
		method: 'DELETE',
		path: '/api/v1/people/{person}/tokens',
		needs: 'steward',
		group,
		summary: 'Ends all API tokens of a person',
		answers: { 204: { description: 'Ended' }, 404: { description: 'No such account' } },
		handle: async (call) => {
			const { services, path } = call;
			const { db } = services.store;
			if (!(await personById(db, path('person')))) return noSuchAccount();
			const count = await endTokens(db, path('person'));
			await noted(call, 'tokens_ended', { subject: path('person'), detail: String(count) });
			return empty();
		}
	})
];
