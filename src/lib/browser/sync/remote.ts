/**
 * The server as `sync.ts` needs it, over the HTTP interface: reading the newest revision, saving with the revision that
 * one started from.
 */
import { loadWorkbook } from '$lib/workbook/load';
import { saveWorkbook } from '$lib/workbook/save';
import type { Workbook } from '$lib/workbook/schema';
import { ask as askServer, mayPass, type ApiResult, type ApiProblem, type Ask } from './api';
import type { SavedAnswer, SharedEntry, Workbooks } from '$lib/protocol/answers';
import { Refused, type Link, type Remote, type RemoteSaved } from './sync';

/** A whole workbook travels, over whatever line there is. */
const PATIENCE_MS = 60_000;

/** A header holds no line breaks and no letters beyond Latin. */
export const reasonHeader = (reason: string): Record<string, string> =>
	reason === '' ? {} : { 'metrewright-reason': encodeURIComponent(reason) };

export interface Read {
	readonly number: number;
	readonly workbook: Workbook;
}

export class HttpRemote implements Remote {
	constructor(readonly ask: Ask = askServer) {}

	/** The newest revision. Rejects with `Refused` where asking again would not help. */
	async read(id: string): Promise<Read> {
		const answer = await this.ask<unknown>(`/workbooks/${id}`, { patienceMs: PATIENCE_MS });
		if (!answer.ok) throw failure(answer.problem);
		const number = numberIn(answer);
		if (number === null) throw new Error('the answer names no revision');
		return { number, workbook: opened(answer.value) };
	}

	async revision(id: string, number: number): Promise<Workbook> {
		const path = `/workbooks/${id}/revisions/${number}/workbook`;
		const answer = await this.ask<unknown>(path, { patienceMs: PATIENCE_MS });
		if (!answer.ok) throw failure(answer.problem);
		return opened(answer.value);
	}

	/** What the server's list says of it: its newest revision, and what one may do. */
	async entry(id: string): Promise<SharedEntry> {
		const answer = await this.ask<Workbooks>('/workbooks');
		if (!answer.ok) throw failure(answer.problem);
		const entry = answer.value.workbooks.find((workbook) => workbook.id === id);
		if (entry && entry.role !== 'open_viewer') return entry;
		throw new Refused(
			entry
				? 'You may now see only the values of this workbook that are not confidential. Ask its owner.'
				: 'This workbook is no longer on the server, or you have no part in it any more. Ask its owner, or keep a copy of your own.'
		);
	}

	async save(link: Link, workbook: Workbook, reason: string): Promise<RemoteSaved> {
		const answer = await this.ask<SavedAnswer>(`/workbooks/${link.id}`, {
			method: 'PUT',
			body: saveWorkbook(workbook),
			headers: { 'if-match': `"${link.number}"`, ...reasonHeader(reason) },
			patienceMs: PATIENCE_MS
		});
		if (answer.ok) {
			const { revision: number, workbook: merged } = answer.value;
			return {
				kind: 'saved',
				number,
				workbook: merged === undefined ? workbook : opened(merged)
			};
		}
		const { problem } = answer;
		const { revision, workbook: theirs } = problem.more;
		if (problem.code === 'newer-revision' && typeof revision === 'number' && theirs !== undefined)
			return { kind: 'conflict', number: revision, workbook: opened(theirs) };
		if (mayPass(problem)) throw failure(problem);
		return { kind: 'refused', message: problem.message };
	}
}

const failure = (problem: ApiProblem): Error =>
	mayPass(problem) ? new Error(problem.message) : new Refused(problem.message);

function numberIn(answer: Extract<ApiResult<unknown>, { ok: true }>): number | null {
	const match = /^(?:W\/)?"([1-9]\d*)"$/.exec(answer.headers.get('etag') ?? '');
	return match ? Number(match[1]) : null;
}

function opened(document: unknown): Workbook {
	const loaded = loadWorkbook(JSON.stringify(document), 'the workbook on the server');
	// Saved by a newer version of the app: the page must be loaded again before it can be read.
	if (!loaded.ok) throw new Refused(loaded.problem.line);
	return loaded.workbook;
}
