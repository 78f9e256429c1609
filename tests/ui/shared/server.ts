/** A server in memory as `fetch` and `EventSource` meet it: saves that merge, a list, news of others' saves. */
import type { Change } from '$lib/workbook/compare/change';
import { vi } from 'vitest';
import type { Role } from '$lib/protocol/roles';
import { loadWorkbook } from '$lib/workbook/load';
import { mergeWorkbooks } from '$lib/workbook/merge';
import { saveWorkbook } from '$lib/workbook/save';
import type { Workbook } from '$lib/workbook/schema';

export class FakeServer {
	readonly revisions: Workbook[];
	readonly reasons: string[] = [];
	asked: string[] = [];
	reachable = true;
	signedIn = true;
	role: Role | null = null;
	readonly #streams = new Set<EventTarget>();

	constructor(first: Workbook) {
		this.revisions = [first];
		vi.stubGlobal('fetch', (path: string, init: RequestInit) => this.#answer(path, init));
		const streams = this.#streams;
		vi.stubGlobal(
			'EventSource',
			class extends EventTarget {
				readyState = 0;
				constructor() {
					super();
					streams.add(this);
					queueMicrotask(() => this.dispatchEvent(new Event('open')));
				}
				close() {
					streams.delete(this);
				}
			}
		);
	}

	get newest(): Workbook {
		return this.revisions.at(-1)!;
	}
	get listeners(): number {
		return this.#streams.size;
	}

	/** Somebody else saves. */
	savedBy(name: string, workbook: Workbook, ...changes: Change[]): void {
		this.revisions.push(workbook);
		const number = this.revisions.length;
		const revision = { number, madeAt: 1000 * number, author: { id: 'x', name }, changes };
		const data = JSON.stringify({ ...revision, reason: '' });
		for (const stream of this.#streams)
			stream.dispatchEvent(new MessageEvent('revision', { data }));
	}

	async #answer(path: string, init: RequestInit): Promise<Response> {
		await Promise.resolve();
		const method = init.method ?? 'GET';
		this.asked.push(`${method} ${path}`);
		if (!this.reachable) throw new TypeError('failed to fetch');
		if (!this.signedIn) return problem(401, 'sign-in-needed', 'Sign in, then try again.');
		const head = this.revisions.length;
		const etag = { headers: { etag: `"${head}"` } };
		if (method === 'PUT') return this.#save(init);
		if (path === '/api/v1/workbooks') {
			const entry = { id: 'w1', title: 'Shop', head, savedAt: 1000 * head, role: this.role };
			return new Response(JSON.stringify({ workbooks: [entry] }));
		}
		return new Response(saveWorkbook(this.newest), etag);
	}

	#save(init: RequestInit): Response {
		const headers = new Headers(init.headers);
		const base = this.revisions[Number(headers.get('if-match')?.slice(1, -1)) - 1]!;
		const sent = loadWorkbook(String(init.body), 'sent');
		if (!sent.ok) return problem(422, 'wrong-content', sent.problem.line);
		const merged = mergeWorkbooks({ base, mine: sent.workbook, theirs: this.newest });
		if (merged.conflicts.length > 0) {
			const workbook = JSON.parse(saveWorkbook(this.newest)) as unknown;
			const more = { revision: this.revisions.length, workbook };
			return problem(412, 'newer-revision', 'Others changed the same.', more);
		}
		this.revisions.push(merged.workbook);
		this.reasons.push(decodeURIComponent(headers.get('metrewright-reason') ?? ''));
		const workbook = saveWorkbook(merged.workbook);
		return new Response(`{"revision":${this.revisions.length},"workbook":${workbook}}`);
	}
}

const problem = (status: number, code: string, detail: string, more: object = {}) =>
	new Response(JSON.stringify({ code, detail, ...more }), { status });
