/** People: signing in, guessing, invitations, what open viewers see, revocation, removal. */
import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { saveWorkbook } from '$lib/workbook/save';
import type { Workbook } from '$lib/workbook/schema';
import { plant } from '../workbook/plant';
import { Client, PASSWORD, person, startServer, type Server } from './api';
import { TABLES } from '$lib/server/store/tables';
import { onEachStore } from './stores';

const text = saveWorkbook(plant);

onEachStore('People', ({ fresh }) => {
	let server: Server;
	let owner: Awaited<ReturnType<typeof person>>;
	beforeAll(async () => {
		server = await startServer(fresh());
		owner = await person(server, 'ada', { steward: true });
	});
	afterAll(() => server.stop());
	const begin = async (content = text) =>
		(await owner.json<{ id: string }>('POST', '/api/v1/workbooks', { text: content })).id;
	const invited = async (path: string, body: object) =>
		(await owner.json<{ token: string }>('POST', path, { body })).token;

	it('get a cookie that scripts cannot read and other sites do not send', async () => {
		const answer = await new Client(server).signIn(owner.email);
		const [cookie] = answer.headers.getSetCookie();
		expect(cookie).toMatch(
			/^metrewright=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict; Max-Age=86400$/
		);
		expect(JSON.stringify(await answer.json())).not.toContain('argon2');
	});

	it('wait longer after each wrong password, but only from where it was guessed', async () => {
		const attacker = new Client(server, '203.0.113.66');
		for (let i = 0; i < 4; i++)
			expect((await attacker.signIn(owner.email, 'wrong')).status).toBe(401);
		const refused = await attacker.signIn(owner.email, PASSWORD);
		expect(refused.status).toBe(429);
		expect(Number(refused.headers.get('retry-after'))).toBeGreaterThan(0);
		// From elsewhere the owner gets in; and so does their own browser, even beside the attacker.
		expect((await new Client(server, '192.0.2.77').signIn(owner.email)).status).toBe(200);
		const known = new Client(server, '203.0.113.66');
		known.cookies.set('metrewright_browser', owner.cookies.get('metrewright_browser')!);
		expect((await known.signIn(owner.email)).status).toBe(200);
		server.pass(16 * 60_000);
		expect((await attacker.signIn(owner.email, 'wrong')).status).toBe(401);
	});

	it('cannot be tried one after the other from one address', async () => {
		const sprayer = new Client(server, '203.0.113.99');
		const statuses: number[] = [];
		await server.atOnce(async () => {
			for (let i = 0; i < 31; i++)
				statuses.push((await sprayer.signIn(`somebody${i}@plant.example`, 'wrong')).status);
		});
		expect(statuses.slice(0, 30)).toEqual(Array.from({ length: 30 }, () => 401));
		expect(statuses[30]).toBe(429);
	});

	it('stay outside once their invitation is withdrawn, by an owner of its workbook alone', async () => {
		const path = `/api/v1/workbooks/${await begin()}`;
		const elsewhere = `/api/v1/workbooks/${await begin()}`;
		const token = await invited(`${path}/invitations`, {
			email: 'late@b.example',
			role: 'editor'
		});
		const open = (await owner.json('GET', `${path}/invitations`)) as {
			invitations: { id: string }[];
		};
		const { id } = open.invitations[0]!;
		expect((await owner.ask('DELETE', `${elsewhere}/invitations/${id}`)).status).toBe(404);
		expect((await owner.ask('DELETE', `${path}/invitations/${id}`)).status).toBe(204);
		const late = new Client(server, '192.0.2.77');
		const accept = { body: { token, name: 'Late', password: PASSWORD } };
		expect((await late.ask('POST', '/api/v1/invitations/accept', accept)).status).toBe(404);
	});

	it('come in by an invitation, once, with the role that it names', async () => {
		const id = await begin();
		const path = `/api/v1/workbooks/${id}`;
		const token = await invited(`${path}/invitations`, {
			email: 'Grace@b.example',
			role: 'editor'
		});
		const grace = new Client(server, '192.0.2.5');
		const accept = { body: { token, name: 'Grace', password: 'short' } };
		expect((await grace.ask('POST', '/api/v1/invitations/accept', accept)).status).toBe(422);
		accept.body.password = PASSWORD;
		expect((await grace.ask('POST', '/api/v1/invitations/accept', accept)).status).toBe(200);
		expect((await grace.ask('POST', '/api/v1/invitations/accept', accept)).status).toBe(404);
		const saved = await grace.ask('PUT', path, {
			text: text.replace('1.95', '2.05'),
			headers: { 'if-match': '"1"' }
		});
		expect(saved.status).toBe(200);
		expect(await owner.json('GET', `${path}/revisions/2`)).toMatchObject({
			author: { name: 'Grace' }
		});
		const { people } = await owner.json<{ people: { id: string; name: string }[] }>(
			'GET',
			`${path}/people`
		);
		const her = people.find(({ name }) => name === 'Grace')!.id;
		await owner.json('PUT', `${path}/people/${her}`, { body: { role: 'viewer' } });
		expect((await grace.ask('DELETE', path)).status).toBe(403);
		await owner.json('DELETE', `${path}/people/${her}`);
		expect((await grace.ask('GET', path)).status).toBe(404);
	});

	it('cannot leave a workbook without an owner', async () => {
		const id = await begin();
		const place = `/api/v1/workbooks/${id}/people/${owner.id}`;
		expect((await owner.ask('DELETE', place)).status).toBe(409);
		expect((await owner.ask('PUT', place, { body: { role: 'editor' } })).status).toBe(409);
	});

	it('who may see only what is open get open values, and nothing that feeds them', async () => {
		const shop = JSON.parse(readFileSync('scenarios/one-line-shop.json', 'utf8')) as Workbook;
		const all = shop.sheets.flatMap(({ quantities }) => quantities);
		const shown = all.find(({ formula, unit }) => typeof formula === 'string' && unit)!;
		const opened = {
			...shop,
			sheets: shop.sheets.map((sheet) => ({
				...sheet,
				quantities: sheet.quantities.map((quantity) =>
					quantity.name === shown.name ? { ...quantity, open: true } : quantity
				)
			}))
		};
		const id = await begin(JSON.stringify(opened));
		const path = `/api/v1/workbooks/${id}`;
		const guest = await person(server, 'guest');
		await owner.json('POST', `${path}/invitations`, {
			body: { email: guest.email, role: 'open_viewer' }
		});
		const answer = await guest.json<{ quantities: { name: string }[] }>('GET', `${path}/open`);
		expect(answer.quantities.map(({ name }) => name)).toEqual([shown.name]);
		const said = JSON.stringify(answer);
		for (const { name, note } of all) {
			if (name !== shown.name) expect(said).not.toContain(`"${name}"`);
			if (note) expect(said).not.toContain(note);
		}
		expect(said).not.toMatch(/formula|reason|from|scenario/);
		for (const closed of ['', '/revisions', '/revisions/1/workbook', '/compare?from=1', '/events'])
			expect((await guest.ask('GET', `${path}${closed}`)).status, closed).toBe(403);
		expect((await guest.ask('POST', `${path}/evaluate`, { body: {} })).status).toBe(403);
		expect((await guest.ask('GET', `${path}/revisions/1/papers/investment`)).status).toBe(403);
		expect(JSON.stringify(await guest.json('GET', '/api/v1/workbooks'))).not.toContain('savedBy');
	});

	it('end other sessions, by hand and by a new password', async () => {
		const leaver = await person(server, 'leaver');
		const other = new Client(server, '192.0.2.8');
		await other.signIn(leaver.email);
		expect((await other.ask('GET', '/api/v1/sessions')).status).toBe(200);
		await leaver.json('DELETE', '/api/v1/sessions');
		expect((await other.ask('GET', '/api/v1/sessions')).status).toBe(401);
		await other.signIn(leaver.email);
		const changed = 'another pipe of nine metres';
		await leaver.json('PUT', '/api/v1/me/password', { body: { old: PASSWORD, new: changed } });
		expect((await other.ask('GET', '/api/v1/sessions')).status).toBe(401);
		expect((await leaver.ask('GET', '/api/v1/sessions')).status).toBe(200);
		expect((await other.signIn(leaver.email)).status).toBe(401);
		expect((await other.signIn(leaver.email, changed)).status).toBe(200);
		server.pass(25 * 3_600_000);
		expect((await other.ask('GET', '/api/v1/sessions')).status).toBe(401);
		await owner.signIn(owner.email);
	});

	it('stop hearing news of a workbook when their part in it ends', async () => {
		const id = await begin();
		const path = `/api/v1/workbooks/${id}`;
		const reader = await person(server, 'listener');
		await owner.json('POST', `${path}/invitations`, {
			body: { email: reader.email, role: 'viewer' }
		});
		const stream = (await reader.ask('GET', `${path}/events`)).body!;
		const news = stream.pipeThrough(new TextDecoderStream()).getReader();
		await news.read();
		await owner.json('DELETE', `${path}/people/${reader.id}`);
		await owner.ask('PUT', path, {
			text: text.replace('1.95', '9'),
			headers: { 'if-match': '"1"' }
		});
		let heard = '';
		for (let piece = await news.read(); !piece.done; piece = await news.read())
			heard += piece.value;
		expect(heard).not.toContain('revision\n');
	});

	it('take their data away, and are removed with their name', async () => {
		const id = await begin();
		const path = `/api/v1/workbooks/${id}`;
		const leaver = await person(server, 'gone');
		await owner.json('POST', `${path}/invitations`, {
			body: { email: leaver.email, role: 'editor' }
		});
		await leaver.ask('PUT', path, {
			text: text.replace('1.95', '3'),
			headers: { 'if-match': '"1"' }
		});
		const data = await leaver.json('GET', '/api/v1/me/data');
		expect(data).toMatchObject({
			person: { email: leaver.email },
			roles: [{ workbook_id: id, role: 'editor' }],
			revisions: [{ workbook_id: id, number: 2 }]
		});
		// An invitation of theirs is still open when they go.
		await owner.json('PUT', `${path}/people/${leaver.id}`, { body: { role: 'owner' } });
		await leaver.json('POST', `${path}/invitations`, {
			body: { email: 'next@plant.example', role: 'viewer' }
		});
		const wrong = await leaver.ask('DELETE', '/api/v1/me', { body: { password: 'wrong' } });
		expect(wrong.status).toBe(401);
		await leaver.json('DELETE', '/api/v1/me', { body: { password: PASSWORD } });
		expect((await leaver.ask('GET', '/api/v1/sessions')).status).toBe(401);
		expect(await owner.json('GET', `${path}/revisions/2`)).toMatchObject({
			author: { id: null, name: 'a removed person' }
		});
		// The trail still tells who it was, and whom it was done to.
		const { entries } = await owner.json<{ entries: Record<string, unknown>[] }>(
			'GET',
			'/api/v1/audit?limit=500'
		);
		expect(entries[0]).toMatchObject({
			event: 'account_removed',
			personName: `gone <${leaver.email}>`,
			subjectName: `gone <${leaver.email}>`
		});
		for (const table of TABLES.filter((name) => name !== 'audit')) {
			const rows = await server.services.store.db.selectFrom(table).selectAll().execute();
			expect(JSON.stringify(rows), table).not.toMatch(`${leaver.id}|${leaver.email}`);
		}
		// The owner would leave a workbook, and the installation, alone.
		expect((await owner.ask('DELETE', '/api/v1/me', { body: { password: PASSWORD } })).status).toBe(
			409
		);
	});
});

describe('requests that must not get in', () => {
	onEachStore('Guards', ({ fresh }) => {
		it('are those of other sites and under other names', async () => {
			const where = fresh();
			const before = await startServer(where);
			await person(before, 'ada', { signIn: false });
			await before.stop();
			const server = await startServer(where, { ORIGIN: 'https://plant.example' });
			const at = (host: string) => new Client(server, '192.0.2.1', host);
			const client = at('https://plant.example');
			const signed = await client.signIn('ada@plant.example');
			expect(signed.headers.getSetCookie()[0]).toMatch(/^__Host-metrewright=.*; Secure$/);
			const create = (headers: Record<string, string>) =>
				client.ask('POST', '/api/v1/workbooks', { text, headers });
			expect((await create({ origin: 'https://plant.example' })).status).toBe(201);
			expect((await create({ origin: 'https://evil.example' })).status).toBe(403);
			expect((await create({ origin: 'null' })).status).toBe(403);
			expect((await create({ 'sec-fetch-site': 'cross-site' })).status).toBe(403);
			expect((await create({ 'content-type': 'text/plain' })).status).toBe(415);
			expect((await create({ 'content-encoding': 'gzip' })).status).toBe(415);
			expect((await at('https://evil.example').ask('GET', '/api/v1/workbooks')).status).toBe(421);
			const bare = new Request('https://plant.example/api/v1/workbooks', { method: 'POST' });
			expect((await server.app.handle(bare, '192.0.2.1')).status).toBe(403);
			await server.stop();
		});

		it('are those beyond the rate, the size and the depth', async () => {
			const server = await startServer(fresh(), {
				METREWRIGHT_REQUESTS_PER_MINUTE: '10',
				METREWRIGHT_BODY_MB: '1'
			});
			const ask = (body: string) =>
				new Client(server, `192.0.2.${Math.random()}`).ask('POST', '/api/v1/workbooks', {
					text: body
				});
			expect((await ask('x'.repeat(1024 * 1024 + 1))).status).toBe(413);
			expect((await ask('['.repeat(100_000))).status).toBe(422);
			const client = new Client(server);
			const statuses = [];
			for (let i = 0; i < 11; i++) statuses.push((await client.ask('GET', '/api/health')).status);
			expect(statuses.filter((status) => status === 429)).toHaveLength(1);
			server.pass(6000);
			expect((await client.ask('GET', '/api/health')).status).toBe(200);
			await server.stop();
		});
	});
});
