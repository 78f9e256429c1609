/** The HTTP interface as the browser uses it: what is asked, and what each answer is taken for. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import { ask, mayPass } from '$lib/browser/sync/api';
import { HttpRemote } from '$lib/browser/sync/remote';
import { Refused } from '$lib/browser/sync/sync';
import { loadWorkbook } from '$lib/workbook/load';
import { saveWorkbook } from '$lib/workbook/save';
import shop from '../../scenarios/one-line-shop.json?raw';

const loaded = loadWorkbook(shop, 'shop.json');
if (!loaded.ok) throw new Error(loaded.problem.line);
const { workbook } = loaded;
const text = saveWorkbook(workbook);
const link = { id: 'w1', number: 7, base: workbook };

/** Answers the next request; gives what was asked. */
function serve(answer: Response | Error) {
	const asked: { path: string; init: RequestInit; headers: Headers }[] = [];
	vi.stubGlobal('fetch', async (path: string, init: RequestInit) => {
		asked.push({ path, init, headers: new Headers(init.headers) });
		if (answer instanceof Error) throw answer;
		return answer;
	});
	return asked;
}
const problem = (status: number, code: string, detail: string, more: object = {}) =>
	new Response(JSON.stringify({ type: `/api/problems/${code}`, status, code, detail, ...more }), {
		status
	});
afterEach(() => vi.unstubAllGlobals());

describe('asking the server', () => {
	it('marks every request as the app’s own and sends bodies as JSON', async () => {
		const asked = serve(new Response('{"id":"p"}'));
		const answer = await ask<{ id: string }>('/session', {
			method: 'POST',
			body: { email: 'anna@plant.example' }
		});
		expect(answer).toMatchObject({ ok: true, value: { id: 'p' } });
		expect(asked[0]).toMatchObject({
			path: '/api/v1/session',
			init: { method: 'POST', body: '{"email":"anna@plant.example"}', credentials: 'same-origin' }
		});
		expect(asked[0]?.headers.get('x-metrewright')).not.toBeNull();
		expect(asked[0]?.headers.get('content-type')).toBe('application/json');
	});
	it('takes an answer without a body for done', async () => {
		serve(new Response(null, { status: 204 }));
		expect(await ask('/session', { method: 'DELETE' })).toMatchObject({ ok: true });
	});
	it('gives the server’s own sentence and what stands beside it', async () => {
		serve(problem(409, 'conflict', 'A workbook needs an owner.', { workbooks: ['w1'] }));
		expect(await ask('/x')).toMatchObject({
			ok: false,
			problem: {
				code: 'conflict',
				status: 409,
				message: 'A workbook needs an owner.',
				more: { workbooks: ['w1'] }
			}
		});
	});
	it.each([
		['no connection', new TypeError('failed'), /cannot be reached/],
		['no answer in time', new DOMException('late', 'TimeoutError'), /did not answer in time/],
		['a page of something else', new Response('<html>', { status: 502 }), /Something other/],
		['a page where data should be', new Response('<html>'), /Something other/]
	])('says what to do after %s', async (_what, answer, words) => {
		serve(answer);
		const result = await ask('/x');
		expect(result.ok).toBe(false);
		if (result.ok) return;
		expect(result.problem.code).toBe('unreachable');
		expect(result.problem.message).toMatch(words);
	});
	it('knows what may pass by itself', () => {
		const of = (status: number) => mayPass({ code: 'x', status, message: '', more: {} });
		expect([0, 429, 500, 503].map(of)).toEqual([true, true, true, true]);
		expect([401, 403, 404, 412, 422].map(of)).toEqual([false, false, false, false, false]);
	});
});

describe('the server as an open document keeps in step with it', () => {
	it('saves from the revision that it started from, with the reason in any letters', async () => {
		const asked = serve(new Response('{"revision":8,"merged":false,"changes":[]}'));
		const answer = await new HttpRemote().save(link, workbook, 'Preis für März');
		expect(answer).toEqual({ kind: 'saved', number: 8, workbook });
		expect(asked[0]).toMatchObject({ path: '/api/v1/workbooks/w1', init: { method: 'PUT' } });
		expect(asked[0]?.init.body).toBe(text);
		expect(asked[0]?.headers.get('if-match')).toBe('"7"');
		expect(decodeURIComponent(asked[0]?.headers.get('metrewright-reason') ?? '')).toBe(
			'Preis für März'
		);
	});
	it('takes the merged workbook where others’ changes are in it', async () => {
		const merged = { ...workbook, title: 'Another title' };
		serve(new Response(`{"revision":9,"merged":true,"workbook":${saveWorkbook(merged)}}`));
		const answer = await new HttpRemote().save(link, workbook, '');
		expect(answer).toMatchObject({ kind: 'saved', number: 9 });
		expect(answer.kind === 'saved' && answer.workbook.title).toBe('Another title');
	});
	it('takes the newest revision of a conflict', async () => {
		serve(
			problem(412, 'newer-revision', 'Others changed it.', {
				revision: 9,
				conflicts: [],
				workbook: JSON.parse(text) as unknown
			})
		);
		expect(await new HttpRemote().save(link, workbook, '')).toMatchObject({
			kind: 'conflict',
			number: 9,
			workbook: { title: workbook.title }
		});
	});
	it('tells a refusal from what may pass', async () => {
		serve(problem(403, 'not-allowed', 'You are a viewer.'));
		expect(await new HttpRemote().save(link, workbook, '')).toEqual({
			kind: 'refused',
			message: 'You are a viewer.'
		});
		serve(problem(503, 'busy', 'Others are saving.'));
		await expect(new HttpRemote().save(link, workbook, '')).rejects.not.toBeInstanceOf(Refused);
		serve(problem(401, 'sign-in-needed', 'Sign in, then try again.'));
		await expect(new HttpRemote().read('w1')).rejects.toEqual(
			new Refused('Sign in, then try again.')
		);
	});
	it('reads the newest revision with its number', async () => {
		serve(new Response(text, { headers: { etag: '"12"' } }));
		expect(await new HttpRemote().read('w1')).toEqual({ number: 12, workbook });
	});
	it('refuses a workbook of a newer version rather than read it by halves', async () => {
		const newer = JSON.stringify({ ...(JSON.parse(text) as object), version: 9999 });
		serve(new Response(newer, { headers: { etag: '"12"' } }));
		await expect(new HttpRemote().read('w1')).rejects.toBeInstanceOf(Refused);
	});
	it('says so when one’s part in the workbook is gone', async () => {
		serve(new Response('{"workbooks":[]}'));
		await expect(new HttpRemote().entry('w1')).rejects.toThrow(/no longer on the server/);
	});
});
