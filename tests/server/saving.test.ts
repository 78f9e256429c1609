/** Saving over HTTP on a machine without accounts: revisions, preconditions, merges, conflicts, results. */
import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { getDocumentProxy } from 'unpdf';
import { loadWorkbook } from '$lib/workbook/load';
import { saveWorkbook } from '$lib/workbook/save';
import type { Workbook } from '$lib/workbook/schema';
import { after, plant } from '../workbook/plant';
import { Client, startServer, type Server } from './api';
import { onEachStore } from './stores';

const base = plant.scenarios[0]!.id;
const enter = (workbook: Workbook, quantity: string, value: number, at: string[] = []) =>
	after(workbook, { kind: 'set_inputs', scenario: base, entries: [{ quantity, at, value }] });
const text = saveWorkbook(plant);
const dearer = (now: number) => ({
	kind: 'value',
	label: 'Resin price',
	at: [],
	was: 1.95,
	now,
	unit: 'EUR/kg'
});

onEachStore('Saving', ({ fresh }) => {
	let server: Server;
	let client: Client;
	beforeAll(async () => {
		server = await startServer(fresh());
		client = new Client(server);
	});
	afterAll(() => server.stop());

	const begin = async (content = text) =>
		(await client.json<{ id: string }>('POST', '/api/v1/workbooks', { text: content })).id;
	const save = (id: string, revision: number, workbook: Workbook, reason = '') =>
		client.ask('PUT', `/api/v1/workbooks/${id}`, {
			text: saveWorkbook(workbook),
			headers: { 'if-match': `"${revision}"`, 'metrewright-reason': encodeURIComponent(reason) }
		});

	it('gives a workbook back as it was saved, with its revision as ETag', async () => {
		const id = await begin();
		const answer = await client.ask('GET', `/api/v1/workbooks/${id}`);
		expect(answer.headers.get('etag')).toBe('"1"');
		expect(await answer.text()).toBe(text);
		const again = await client.ask('GET', `/api/v1/workbooks/${id}`, {
			headers: { 'if-none-match': '"1"' }
		});
		expect(again.status).toBe(304);
	});

	it('makes each save a revision with reason and change list', async () => {
		const id = await begin();
		const saved = await save(id, 1, enter(plant, 'resin_price', 2.1), 'new contract, März');
		expect(saved.headers.get('etag')).toBe('"2"');
		expect(await saved.json()).toEqual({
			revision: 2,
			merged: false,
			changes: [dearer(2.1)]
		});
		const { revisions } = await client.json<{ revisions: object[] }>(
			'GET',
			`/api/v1/workbooks/${id}/revisions`
		);
		expect(revisions).toMatchObject([
			{ number: 2, reason: 'new contract, März', author: { id: null, name: 'You' } },
			{ number: 1, changes: [{ kind: 'begun', title: plant.title }] }
		]);
	});

	it('makes no revision of plans that follow, and one of a plan that somebody keeps', async () => {
		const programme = {
			name: 'mix',
			title: 'Who makes what',
			each: ['product'],
			maximise: 'first_line_speed',
			decisions: ['top_speed'],
			constraints: []
		};
		const plan = (digest: string, kept?: string) => ({
			programme: 'mix',
			scenario: base,
			digest,
			objective: 1,
			...(kept !== undefined && { kept }),
			values: []
		});
		const planned = { ...plant, programmes: [programme], plans: [plan('a')] };
		const id = await begin(saveWorkbook(planned));
		const anew = await save(id, 1, { ...planned, plans: [plan('b')] });
		expect(anew.headers.get('etag')).toBe('"1"');
		const edited = enter({ ...planned, plans: [plan('c')] }, 'resin_price', 2.1);
		expect(await (await save(id, 1, edited)).json()).toMatchObject({
			revision: 2,
			changes: [dearer(2.1)]
		});
		const kept = { ...edited, plans: [plan('c', '2026-11-02')] };
		expect(await (await save(id, 2, kept)).json()).toMatchObject({
			revision: 3,
			changes: [{ kind: 'plan', scenario: plant.scenarios[0]!.title, kept: '2026-11-02' }]
		});
	});

	it('asks for the revision that a save was made from', async () => {
		const id = await begin();
		const path = `/api/v1/workbooks/${id}`;
		expect((await client.ask('PUT', path, { text })).status).toBe(428);
		for (const wrong of ['*', 'W/"1"', '1', '"0"', '"1", "2"'])
			expect(
				(await client.ask('PUT', path, { text, headers: { 'if-match': wrong } })).status,
				wrong
			).toBe(400);
		expect((await save(id, 7, plant)).status).toBe(412);
	});

	it('merges what was saved from an older revision where it fits', async () => {
		const id = await begin();
		await save(id, 1, enter(plant, 'resin_price', 2.1));
		const saved = await save(id, 1, enter(plant, 'mass_per_metre', 0.2, ['PX20']));
		const body = (await saved.json()) as { revision: number; merged: boolean; workbook: Workbook };
		expect(body).toMatchObject({ revision: 3, merged: true });
		const both = enter(enter(plant, 'resin_price', 2.1), 'mass_per_metre', 0.2, ['PX20']);
		expect(body.workbook).toEqual(JSON.parse(saveWorkbook(both)));
	});

	it('answers 412 with both values and the newest revision where it does not', async () => {
		const id = await begin();
		await save(id, 1, enter(plant, 'resin_price', 2.1));
		const refused = await save(id, 1, enter(plant, 'resin_price', 2.2));
		expect(refused.status).toBe(412);
		expect(refused.headers.get('content-type')).toBe('application/problem+json; charset=utf-8');
		const problem = (await refused.json()) as { workbook: Workbook };
		expect(problem).toMatchObject({
			code: 'newer-revision',
			status: 412,
			revision: 2,
			conflicts: [
				{ path: ['quantities', 'resin_price', 'value'], base: 1.95, mine: 2.2, theirs: 2.1 }
			]
		});
		expect(problem.workbook).toEqual(JSON.parse(saveWorkbook(enter(plant, 'resin_price', 2.1))));
		expect((await save(id, 2, enter(plant, 'resin_price', 2.2))).status).toBe(200);
	});

	it('takes a save that is sent again, because its answer was lost, for what it is', async () => {
		const id = await begin();
		const mine = enter(plant, 'resin_price', 2.1);
		await save(id, 1, mine);
		const again = await save(id, 1, mine);
		expect(await again.json()).toMatchObject({ revision: 2, changes: [] });
		expect(again.headers.get('etag')).toBe('"2"');
	});

	it('refuses what is no workbook and says where', async () => {
		const id = await begin();
		const refused = await client.ask('PUT', `/api/v1/workbooks/${id}`, {
			text: text.replace('"resin_price"', '"9price"'),
			headers: { 'if-match': '"1"' }
		});
		expect(refused.status).toBe(422);
		expect(await refused.json()).toMatchObject({ code: 'wrong-content', reason: 'wrong-shape' });
	});

	it('compares two revisions, brings one back as a new one, and tells a value’s history', async () => {
		const id = await begin();
		const path = `/api/v1/workbooks/${id}`;
		await save(id, 1, enter(plant, 'resin_price', 2.1), 'first');
		await save(id, 2, enter(plant, 'resin_price', 2.2), 'second');
		expect(await client.json('GET', `${path}/compare?from=1&to=3`)).toMatchObject({
			changes: [dearer(2.2)],
			values: [{ quantity: 'resin_price', at: [], was: 1.95, now: 2.2 }]
		});
		const { changes } = await client.json<{ changes: object[] }>(
			'GET',
			`${path}/history?quantity=resin_price&at=[]&scenario=${base}`
		);
		expect(changes).toMatchObject([
			{ number: 3, was: 2.1, now: 2.2, reason: 'second' },
			{ number: 2, was: 1.95, now: 2.1, reason: 'first' }
		]);
		const back = await client.json('POST', `${path}/revisions/1/restore`);
		expect(back).toMatchObject({ revision: 4 });
		expect(await (await client.ask('GET', path)).text()).toBe(text);
		expect(await client.json('GET', `${path}/revisions/4`)).toMatchObject({
			restores: 1,
			reason: 'back to revision 1'
		});
	});

	it('names a revision once, keeps a locked name, and says what changed since', async () => {
		const id = await begin();
		const path = `/api/v1/workbooks/${id}/revisions`;
		const body = { name: 'budget 2027, approved', locked: true };
		expect((await client.ask('PUT', `${path}/1/name`, { body })).status).toBe(204);
		expect((await client.ask('PUT', `${path}/1/name`, { body: { name: 'x' } })).status).toBe(409);
		await save(id, 1, enter(plant, 'resin_price', 3));
		expect((await client.ask('PUT', `${path}/2/name`, { body })).status).toBe(409);
		const named = await client.json<{ revisions: { number: number }[] }>(
			'GET',
			`${path}?named=yes`
		);
		expect(named.revisions.map(({ number }) => number)).toEqual([1]);
		expect((await client.ask('DELETE', `${path}/1/name`)).status).toBe(204);
		expect((await client.ask('PUT', `${path}/2/name`, { body })).status).toBe(204);
	});

	it('computes what is asked for, in a thread of its own', async () => {
		const shop = readFileSync('scenarios/one-line-shop.json', 'utf8');
		const id = await begin(shop);
		const loaded = loadWorkbook(shop, 'shop');
		if (!loaded.ok) throw new Error(loaded.problem.line);
		const path = `/api/v1/workbooks/${id}/evaluate`;
		const answer = await client.json<{ scenarios: { id: string; quantities: object }[] }>(
			'POST',
			path,
			{ body: { scenarios: ['second_shift'], quantities: ['shifts'] } }
		);
		expect(answer).toMatchObject({
			revision: 1,
			scenarios: [{ id: 'second_shift', quantities: { shifts: { value: 2 } } }]
		});
		const wrong = await client.ask('POST', path, { body: { quantities: ['constructor'] } });
		expect(wrong.status).toBe(422);
	});

	it('makes a paper of a revision as PDF, and says what keeps it from one', async () => {
		const shop = readFileSync('scenarios/one-line-shop.json', 'utf8');
		const id = await begin(shop);
		const path = `/api/v1/workbooks/${id}/revisions/1/papers`;
		const made = await client.ask('GET', `${path}/investment?author=A.%20Person&format=letter`);
		expect(made.status).toBe(200);
		expect(made.headers.get('content-type')).toBe('application/pdf');
		expect(made.headers.get('etag')).toBe('"1"');
		const doc = await getDocumentProxy(new Uint8Array(await made.arrayBuffer()));
		const { items } = await (await doc.getPage(1)).getTextContent();
		const text = items.map((item) => ('str' in item ? item.str : '')).join(' ');
		for (const words of ['Second shift', 'A. Person', 'revision 1']) expect(text).toContain(words);
		const refused = async (rest: string) => {
			const answer = await client.ask('GET', `${path}/${rest}`);
			return [answer.status, await answer.text()] as const;
		};
		expect((await refused('investement'))[1]).toContain('did you mean investment?');
		expect((await refused('investment?scenarios=nowhere'))[0]).toBe(422);
		expect((await refused('investment?format=a5'))[0]).toBe(422);
		const later = `/api/v1/workbooks/${id}/revisions/9/papers/investment`;
		expect((await client.ask('GET', later)).status).toBe(404);
	});

	it('tells of new revisions as they happen, and goes on from the last one heard of', async () => {
		const id = await begin();
		const open = async (last?: string) => {
			const answer = await client.ask('GET', `/api/v1/workbooks/${id}/events`, {
				headers: last === undefined ? {} : { 'last-event-id': last }
			});
			expect(answer.headers.get('content-type')).toBe('text/event-stream; charset=utf-8');
			return answer.body!.pipeThrough(new TextDecoderStream()).getReader();
		};
		const until = async (reader: ReadableStreamDefaultReader<string>, words: string) => {
			let heard = '';
			while (!heard.includes(words)) heard += (await reader.read()).value ?? '';
			return heard;
		};
		const reader = await open();
		await until(reader, 'listening');
		await save(id, 1, enter(plant, 'resin_price', 2.1), 'as it happens');
		const heard = await until(reader, 'as it happens');
		expect(heard).toContain('id: 2\nevent: revision');
		expect(heard).toContain(JSON.stringify(dearer(2.1)));
		await reader.cancel();
		const later = await open('1');
		expect(await until(later, 'id: 2')).toContain('event: revision');
		await later.cancel();
		expect(server.services.hub.watchers).toBe(0);
	});

	it('tells of what another process on the same store saved', async () => {
		const where =
			server.services.store.kind === 'postgres'
				? { url: server.services.settings.databaseUrl! }
				: { folder: server.services.settings.folder };
		const other = await startServer(where);
		const id = await begin();
		const answer = await client.ask('GET', `/api/v1/workbooks/${id}/events`);
		const reader = answer.body!.pipeThrough(new TextDecoderStream()).getReader();
		const elsewhere = new Client(other);
		const saved = await elsewhere.ask('PUT', `/api/v1/workbooks/${id}`, {
			text: saveWorkbook(enter(plant, 'resin_price', 2.5)),
			headers: { 'if-match': '"1"' }
		});
		expect(saved.status).toBe(200);
		let heard = '';
		while (!heard.includes('id: 2')) heard += (await reader.read()).value ?? '';
		await reader.cancel();
		await other.stop();
	});

	it('hides a removed workbook', async () => {
		const id = await begin();
		expect((await client.ask('DELETE', `/api/v1/workbooks/${id}`)).status).toBe(204);
		expect((await client.ask('GET', `/api/v1/workbooks/${id}`)).status).toBe(404);
		expect((await save(id, 1, plant)).status).toBe(404);
	});
});
