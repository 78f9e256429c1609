/** Revisions: browsing, comparing, naming, bringing back. */
import { z } from '$lib/server/zod';
import {
	comparedSchema,
	historySchema,
	revisionSchema,
	revisionsSchema,
	savedSchema
} from '$lib/protocol/answers';
import { listRevisions, nameRevision, readRevision, valueHistory } from '../../store/revisions';
import { headOf } from '../../store/workbooks';
import { noted, notedReading, notedSave } from '../noting';
import { noSuchWorkbook } from '../permission';
import { problem } from '../problem';
import { empty, json, jsonText, route, type Call } from '../route';
import { answerOf, authorOf, etagOf } from './workbooks';

const group = 'revisions';
const number = z.coerce.number().int().min(1).max(999_999_999);
const limit = z.coerce.number().int().min(1).max(500).default(50);

const noSuchRevision = () => problem('not-found', 'There is no such revision of this workbook.');

/** The revision that the path names; null where it names none. */
function numberIn({ path }: Pick<Call, 'path'>): number | null {
	const parsed = number.safeParse(path('revision'));
	return parsed.success ? parsed.data : null;
}

export const revisionRoutes = [
	route({
		method: 'GET',
		path: '/api/v1/workbooks/{workbook}/revisions',
		needs: 'viewer',
		group,
		summary: 'Revisions with author, time, reason and change list, newest first',
		query: z.object({
			before: number.optional(),
			limit,
			/** Only those with a name. */
			named: z.enum(['yes', 'no']).default('no')
		}),
		answers: { 200: { description: 'A page of them', schema: revisionsSchema } },
		handle: async ({ services, path, query }) => {
			const { before, limit, named } = query;
			const revisions = await listRevisions(services.store.db, path('workbook'), {
				...(before !== undefined && { before }),
				limit,
				named: named === 'yes'
			});
			return json({ revisions });
		}
	}),
	route({
		method: 'GET',
		path: '/api/v1/workbooks/{workbook}/revisions/{revision}',
		needs: 'viewer',
		group,
		summary: 'One revision with its change list',
		answers: { 200: { description: 'It', schema: revisionSchema }, 404: { description: 'None' } },
		handle: async (call) => {
			const at = numberIn(call);
			const { services, path } = call;
			const found =
				at === null ? null : await readRevision(services.store.db, path('workbook'), at);
			return found ? json(found) : noSuchRevision();
		}
	}),
	route({
		method: 'GET',
		path: '/api/v1/workbooks/{workbook}/revisions/{revision}/workbook',
		needs: 'viewer',
		group,
		summary: 'The workbook as it was saved then',
		answers: { 200: { description: 'It', schema: 'workbook' }, 404: { description: 'None' } },
		handle: async (call) => {
			const at = numberIn(call);
			const { services, path } = call;
			const text = at === null ? null : await services.saver.text(path('workbook'), at);
			if (text === null || at === null) return noSuchRevision();
			await notedReading(call, 'revision_read', `revision ${at}`);
			return jsonText(text, { headers: { etag: etagOf(at) } });
		}
	}),
	route({
		method: 'GET',
		path: '/api/v1/workbooks/{workbook}/compare',
		needs: 'viewer',
		group,
		summary: 'What changed from one revision to another, in words and as values',
		query: z.object({ from: number, to: number.optional() }),
		answers: {
			200: { description: 'The differences', schema: comparedSchema },
			404: { description: 'No such revision' }
		},
		handle: async ({ services, path, query }) => {
			const workbook = path('workbook');
			const to = query.to ?? (await headOf(services.store.db, workbook)) ?? 0;
			const differences = await services.saver.compare(workbook, query.from, to);
			if (differences === null) return noSuchRevision();
			return jsonText(`{"from":${query.from},"to":${to},${differences.slice(1)}`);
		}
	}),
	route({
		method: 'POST',
		path: '/api/v1/workbooks/{workbook}/revisions/{revision}/restore',
		needs: 'editor',
		group,
		summary: 'Brings a revision back, as a new one',
		answers: {
			200: { description: 'Saved as `revision`', schema: savedSchema },
			404: { description: 'No such revision' }
		},
		handle: async (call) => {
			const at = numberIn(call);
			const { services, path, who } = call;
			const workbookId = path('workbook');
			const text = at === null ? null : await services.saver.text(workbookId, at);
			const head = await headOf(services.store.db, workbookId);
			if (head === null) return noSuchWorkbook();
			if (text === null || at === null) return noSuchRevision();
			const named = (await readRevision(services.store.db, workbookId, at))?.name;
			const saved = await services.saver.save({
				workbookId,
				base: head,
				text,
				author: authorOf(who),
				reason: `back to revision ${at}${named ? ` (${named})` : ''}`,
				now: services.now(),
				restores: at
			});
			await notedSave(call, saved, `, back to ${at}`);
			return answerOf(saved);
		}
	}),
	route({
		method: 'PUT',
		path: '/api/v1/workbooks/{workbook}/revisions/{revision}/name',
		needs: 'editor',
		group,
		summary: 'Names a revision, and locks the name to it if so asked; only an owner unlocks',
		body: z.strictObject({
			name: z.string().trim().min(1).max(120),
			locked: z.boolean().default(false)
		}),
		answers: {
			204: { description: 'Named' },
			404: { description: 'No such revision' },
			409: { description: 'The revision is locked, or the name is taken' }
		},
		handle: (call) => name(call, call.body)
	}),
	route({
		method: 'DELETE',
		path: '/api/v1/workbooks/{workbook}/revisions/{revision}/name',
		needs: 'owner',
		group,
		summary: 'Takes a revision’s name and lock away',
		answers: { 204: { description: 'Taken away' }, 404: { description: 'No such revision' } },
		handle: (call) => name(call, null)
	}),
	route({
		method: 'GET',
		path: '/api/v1/workbooks/{workbook}/history',
		needs: 'viewer',
		group,
		summary: 'Who changed a quantity’s entered values, when, from what',
		query: z.object({
			quantity: z.string().min(1).max(64),
			/** Member ids as a JSON list; left out: all of them. */
			at: z.string().max(2000).optional(),
			scenario: z.string().max(64).optional(),
			limit
		}),
		answers: { 200: { description: 'Newest first', schema: historySchema } },
		handle: async ({ services, path, query }) => {
			const at = query.at === undefined ? undefined : membersIn(query.at);
			if (at === null)
				return problem('wrong-content', 'at is a JSON list of member ids, such as ["PX15B"].');
			const found = await valueHistory(services.store.db, path('workbook'), {
				quantity: query.quantity,
				limit: query.limit,
				...(at !== undefined && { at }),
				...(query.scenario !== undefined && { scenario: query.scenario })
			});
			return json({
				changes: found.map(({ was, now, ...one }) => ({
					...one,
					...(was !== null && { was: JSON.parse(was) as unknown }),
					...(now !== null && { now: JSON.parse(now) as unknown })
				}))
			});
		}
	})
];

function membersIn(text: string): string[] | null {
	try {
		const parsed = z.array(z.string().max(64)).max(5).safeParse(JSON.parse(text));
		return parsed.success ? parsed.data : null;
	} catch {
		return null;
	}
}

async function name(
	call: Pick<Call, 'services' | 'path' | 'who' | 'address'>,
	to: { readonly name: string; readonly locked: boolean } | null
): Promise<Response> {
	const { services, path } = call;
	const at = numberIn(call);
	if (at === null) return noSuchRevision();
	const { db } = services.store;
	const done = await nameRevision(db, path('workbook'), at, {
		name: to?.name ?? null,
		locked: to?.locked ?? false,
		unlock: to === null
	});
	if (done === 'missing') return noSuchRevision();
	if (done === 'locked')
		return problem('conflict', 'This revision is locked. An owner can take its name away first.');
	if (done === 'taken')
		return problem('conflict', 'Another revision has this name. Choose another name.');
	await noted(call, 'revision_named', {
		subject: path('workbook'),
		detail: `${at} ${to ? `${to.locked ? 'locked ' : ''}${to.name}` : 'no name'}`
	});
	return empty();
}
