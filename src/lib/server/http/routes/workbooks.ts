/** Workbooks: which there are, reading and saving. */
import type { FileProblem } from '$lib/workbook/load';
import { begunSchema, savedSchema, workbooksSchema } from '$lib/protocol/answers';
import { note } from '../../people/audit';
import { may } from '../../people/rights';
import { isFor } from '../../people/tokens';
import type { Saved } from '../../saving';
import type { Author } from '../../store/revisions';
import { headOf, listWorkbooks, removeWorkbook } from '../../store/workbooks';
import { notedReading, notedSave, notedWork } from '../noting';
import { noSuchWorkbook } from '../permission';
import { problem } from '../problem';
import { empty, json, jsonText, route, type Who } from '../route';

const group = 'workbooks';

/** Why a save was made: a header, so that the body is the workbook itself. Percent-encoded UTF-8. */
const REASON_HEADER = 'metrewright-reason';
const LONGEST_REASON = 500;

export const etagOf = (number: number): string => `"${number}"`;

/** The revision that an If-Match header names; null for anything else. */
export function numberOf(etag: string | null): number | null {
	const match = /^"([1-9]\d{0,8})"$/.exec(etag?.trim() ?? '');
	return match ? Number(match[1]) : null;
}

/** On a machine without accounts whoever sits there is the author. */
export const authorOf = ({ person, token }: Who): Author =>
	person
		? { id: person.id, name: token ? `${person.name}, by ${token.name}` : person.name }
		: { id: null, name: 'You' };

function reasonOf(request: Request): string {
	const given = request.headers.get(REASON_HEADER) ?? '';
	try {
		return decodeURIComponent(given).slice(0, LONGEST_REASON);
	} catch {
		return given.slice(0, LONGEST_REASON);
	}
}

export const workbookRoutes = [
	route({
		method: 'GET',
		path: '/api/v1/workbooks',
		needs: 'worker',
		group,
		summary: 'The workbooks that one has a part in',
		answers: { 200: { description: 'Newest save first', schema: workbooksSchema } },
		handle: async ({ services, who }) => {
			const { token } = who;
			const part = await listWorkbooks(services.store.db, who.person?.id ?? null);
			const all = token ? part.filter(({ id }) => isFor(token, id)) : part;
			return json({
				workbooks: all.map(({ savedBy, ...one }) =>
					// Who works on it is not among what is open.
					one.role === 'open_viewer' ? one : { ...one, savedBy }
				)
			});
		}
	}),
	route({
		method: 'POST',
		path: '/api/v1/workbooks',
		needs: 'worker',
		group,
		summary: 'Begins a workbook; the one who does owns it',
		body: 'workbook',
		answers: {
			201: { description: 'Begun, as revision 1', schema: begunSchema },
			403: { description: 'This person may not begin workbooks' },
			422: { description: 'It does not open as a workbook; the problem says where' }
		},
		handle: async (call) => {
			const { services, who, text, request } = call;
			const { token } = who;
			if (token && (token.scope !== 'write' || token.workbooks !== null))
				return problem(
					'not-allowed',
					`The API token “${token.name}” may not begin workbooks: that takes one that may read and save, in all workbooks.`
				);
			if (who.person && !may(who.person, 'mayBegin'))
				return problem(
					'not-allowed',
					'You may not put new workbooks on this server. Ask an administrator to allow it, or ask an owner to invite you to theirs.'
				);
			const reason = reasonOf(request);
			const made = await services.saver.create(text, authorOf(who), reason, services.now());
			if (!made.ok) return notAWorkbook(made.problem);
			await notedWork(call, 'workbook_begun', made.id);
			const headers = { location: `/api/v1/workbooks/${made.id}`, etag: etagOf(1) };
			return json({ id: made.id, revision: 1 }, { status: 201, headers });
		}
	}),
	route({
		method: 'GET',
		path: '/api/v1/workbooks/{workbook}',
		needs: 'viewer',
		group,
		summary: 'The newest revision of a workbook, as a file; its ETag is the revision',
		answers: {
			200: { description: 'The workbook', schema: 'workbook' },
			304: { description: 'Still the revision that If-None-Match names' }
		},
		handle: async (call) => {
			const { services, path, request } = call;
			const head = await headOf(services.store.db, path('workbook'));
			if (head === null) return noSuchWorkbook();
			const headers = { etag: etagOf(head), 'cache-control': 'private, no-cache' };
			if (request.headers.get('if-none-match') === headers.etag)
				return new Response(null, { status: 304, headers });
			const text = await services.saver.text(path('workbook'), head);
			if (text === null) return noSuchWorkbook();
			await notedReading(call, 'workbook_read', `revision ${head}`);
			return jsonText(text, { headers });
		}
	}),
	route({
		method: 'PUT',
		path: '/api/v1/workbooks/{workbook}',
		needs: 'editor',
		group,
		summary:
			'Saves; changes of others since the named revision are merged, and those to the same things asked about',
		body: 'workbook',
		precondition: true,
		answers: {
			200: {
				description:
					'Saved as `revision`, with the change list; `workbook` is the merged one where others’ changes are in it',
				schema: savedSchema
			},
			412: {
				description:
					'Others changed the same: `conflicts`, and the newest `revision` and `workbook`'
			},
			422: { description: 'It does not open as a workbook; the problem says where' }
		},
		handle: async (call) => {
			const { services, path, who, text, request } = call;
			const base = numberOf(request.headers.get('if-match'));
			if (base === null)
				return problem('bad-request', 'If-Match takes one ETag of this workbook, such as "12".');
			const saved = await services.saver.save({
				workbookId: path('workbook'),
				base,
				text,
				author: authorOf(who),
				reason: reasonOf(request),
				now: services.now()
			});
			await notedSave(call, saved);
			return answerOf(saved);
		}
	}),
	route({
		method: 'DELETE',
		path: '/api/v1/workbooks/{workbook}',
		needs: 'owner',
		group,
		summary: 'Removes a workbook from everybody’s list',
		answers: { 204: { description: 'Removed' } },
		handle: async ({ services, path, who, address }) => {
			const { db } = services.store;
			const now = services.now();
			await removeWorkbook(db, path('workbook'), now);
			await note(db, {
				now,
				event: 'workbook_removed',
				personId: who.person?.id ?? null,
				subject: path('workbook'),
				address
			});
			return empty();
		}
	})
];

/** The same for a save and for bringing an older revision back. */
export function answerOf(saved: Saved): Response {
	switch (saved.kind) {
		case 'saved': {
			const { number, merged, changes, document } = saved;
			const head = JSON.stringify({ revision: number, merged, changes });
			// The document is JSON text already.
			const text = merged ? `${head.slice(0, -1)},"workbook":${document}}` : head;
			return jsonText(text, { headers: { etag: etagOf(number) } });
		}
		case 'unchanged': {
			const { number, document } = saved;
			const head = JSON.stringify({ revision: number, merged: false, changes: [] });
			return jsonText(`${head.slice(0, -1)},"workbook":${document}}`, {
				headers: { etag: etagOf(number) }
			});
		}
		case 'conflict': {
			const { count, conflicts, document } = saved;
			return problem(
				'newer-revision',
				`Revision ${saved.number} has other changes to the same ${count === 1 ? 'thing' : `${count} things`}. Choose which stand, then save from that revision.`,
				{
					fields: { revision: saved.number },
					json: `"conflicts":${conflicts},"workbook":${document}`,
					headers: { etag: etagOf(saved.number) }
				}
			);
		}
		case 'refused':
			return notAWorkbook(saved.problem);
		case 'missing':
			return noSuchWorkbook();
		case 'unknown_base':
			return problem(
				'newer-revision',
				'The revision that If-Match names does not exist. Read the workbook again.'
			);
		case 'too_busy':
			return problem('busy', 'Many are saving at this moment. Try again.', {
				headers: { 'retry-after': '1' }
			});
	}
}

function notAWorkbook({ code, place, path, line, others }: FileProblem): Response {
	return problem('wrong-content', line, { fields: { reason: code, place, path, others } });
}
