/** What stewards do for people: rights, a new password, and the workbooks of whoever leaves. */
import { z } from '$lib/server/zod';
import { handedOverSchema, ownedSchema, resetLinkSchema } from '$lib/protocol/answers';
import { handOver, handOverWords, ownedBy } from '../../people/hand-over';
import { personById } from '../../people/people';
import { makeReset } from '../../people/resets';
import { setRights } from '../../people/rights';
import { noted } from '../noting';
import { noSuchAccount } from '../permission';
import { problem } from '../problem';
import { empty, json, route } from '../route';

const group = 'people';

export const stewardRoutes = [
	route({
		method: 'PUT',
		path: '/api/v1/people/{person}',
		needs: 'steward',
		group,
		summary:
			'Sets what a person may do: manage the installation, begin workbooks, invite people without an account; invitations end with the right to make them',
		body: z
			.strictObject({
				steward: z.boolean().optional(),
				mayBegin: z.boolean().optional(),
				mayInvite: z.boolean().optional()
			})
			.refine((rights) => Object.keys(rights).length > 0, 'name at least one right'),
		answers: {
			204: { description: 'Set' },
			404: { description: 'No such account' },
			409: { description: 'The installation would be left without a steward' }
		},
		handle: async (call) => {
			const { services, path, body } = call;
			const { steward, mayBegin, mayInvite } = body;
			const done = await setRights(services.store.db, path('person'), {
				...(steward !== undefined && { steward }),
				...(mayBegin !== undefined && { mayBegin }),
				...(mayInvite !== undefined && { mayInvite })
			});
			if (done === 'missing') return noSuchAccount();
			if (done === 'last_steward')
				return problem(
					'conflict',
					'This is the last administrator. Make another person one first.'
				);
			const detail = Object.entries(body)
				.map(([right, value]) => `${right} ${value ? 'yes' : 'no'}`)
				.join(', ');
			await noted(call, 'rights_changed', { subject: path('person'), detail });
			return empty();
		}
	}),
	route({
		method: 'POST',
		path: '/api/v1/people/{person}/reset',
		needs: 'steward',
		group,
		summary:
			'Makes a link by which a person sets their password anew: once, within a day; earlier links of theirs end',
		answers: {
			201: {
				description: 'The link’s secret is in the answer, this once',
				schema: resetLinkSchema
			},
			404: { description: 'No such account' }
		},
		handle: async (call) => {
			const { services, path } = call;
			const { db } = services.store;
			if (!(await personById(db, path('person')))) return noSuchAccount();
			const made = await makeReset(db, path('person'), services.now());
			await noted(call, 'reset_made', { subject: path('person') });
			return json(made, { status: 201 });
		}
	}),
	route({
		method: 'GET',
		path: '/api/v1/people/{person}/workbooks',
		needs: 'steward',
		group,
		summary: 'Which workbooks a person owns: their titles, and nothing of what is in them',
		answers: {
			200: { description: 'By title', schema: ownedSchema },
			404: { description: 'No such account' }
		},
		handle: async ({ services, path }) => {
			const { db } = services.store;
			if (!(await personById(db, path('person')))) return noSuchAccount();
			return json({ workbooks: await ownedBy(db, path('person')) });
		}
	}),
	route({
		method: 'POST',
		path: '/api/v1/people/{person}/hand-over',
		needs: 'steward',
		group,
		summary:
			'Makes another person owner of all workbooks that this one owns, and takes this one out',
		body: z.strictObject({ to: z.string().min(1).max(64) }),
		answers: {
			200: { description: 'Which were handed over', schema: handedOverSchema },
			404: { description: 'No such account' },
			422: { description: 'To themselves, or to nobody here' }
		},
		handle: async (call) => {
			const { services, path, body } = call;
			const { db } = services.store;
			const [from, to] = [path('person'), body.to];
			const leaver = await personById(db, from);
			if (!leaver) return noSuchAccount();
			if (from === to)
				return problem('wrong-content', 'Workbooks are handed over to another person. Choose one.');
			const taker = await personById(db, to);
			if (!taker)
				return problem(
					'wrong-content',
					'The person who is to take the workbooks has no account here. Choose another.'
				);
			const workbooks = await handOver(db, from, to);
			for (const workbook of workbooks)
				await noted(call, 'handed_over', {
					subject: workbook,
					detail: handOverWords(leaver, taker)
				});
			return json({ workbooks });
		}
	})
];
