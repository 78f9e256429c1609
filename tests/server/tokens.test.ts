/** API tokens: what a program may do with one, and for how long. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { saveWorkbook } from '$lib/workbook/save';
import type { Where } from '$lib/server/store/open';
import { storeCommand } from '../../src/cli/store-commands';
import { plant } from '../workbook/plant';
import { Client, person, startServer, type Server } from './api';
import { onEachStore } from './stores';

const text = saveWorkbook(plant);
const day = 24 * 3_600_000;

onEachStore('API tokens', ({ fresh }) => {
	let where: Where;
	let server: Server;
	let ada: Awaited<ReturnType<typeof person>>;
	let one: string;
	let other: string;
	beforeAll(async () => {
		where = fresh();
		server = await startServer(where);
		ada = await person(server, 'ada', { steward: true });
		const begin = async () =>
			(await ada.json<{ id: string }>('POST', '/api/v1/workbooks', { text })).id;
		one = await begin();
		other = await begin();
	});
	afterAll(() => server.stop());
	const make = (body: object, client: Client = ada) =>
		client.json<{ id: string; secret: string }>('POST', '/api/v1/tokens', {
			body: { name: 'import', scope: 'read', days: 30, ...body }
		});
	/** A program: it has no cookies, and no header of the app's own pages. */
	const by = (secret: string) => {
		const program = new Client(server, '192.0.2.60');
		return (
			method: string,
			path: string,
			more: { text?: string; body?: object; match?: string } = {}
		) =>
			program.ask(method, path, {
				...(more.text !== undefined && { text: more.text }),
				...(more.body && { body: more.body }),
				headers: {
					authorization: `Bearer ${secret}`,
					...(more.match && { 'if-match': more.match })
				}
			});
	};
	const at = (id: string) => `/api/v1/workbooks/${id}`;

	it('that read do not save, and see one workbook alone where they are for it', async () => {
		const { secret } = await make({ workbooks: [one] });
		const ask = by(secret);
		expect((await ask('GET', at(one))).status).toBe(200);
		const evaluated = await ask('POST', `${at(one)}/evaluate`, {
			body: { quantities: ['resin_price'] }
		});
		expect(evaluated.status).toBe(200);
		expect((await ask('GET', at(other))).status).toBe(404);
		expect(await (await ask('GET', '/api/v1/workbooks')).json()).toMatchObject({
			workbooks: [{ id: one }]
		});
		const saved = await ask('PUT', at(one), { text, match: '"1"' });
		expect(saved.status).toBe(403);
		expect(await saved.json()).toMatchObject({ detail: expect.stringContaining('may only read') });
		expect((await ask('POST', '/api/v1/workbooks', { text })).status).toBe(403);
	});

	it('that save are named beside the person, in the trail and the revision', async () => {
		const { secret } = await make({ name: 'price feed', scope: 'write' });
		const changed = text.replace('1.95', '2.15');
		expect((await by(secret)('PUT', at(one), { text: changed, match: '"1"' })).status).toBe(200);
		expect(await ada.json('GET', `${at(one)}/revisions/2`)).toMatchObject({
			author: { name: 'ada, by price feed' }
		});
		const { entries } = await ada.json<{ entries: object[] }>('GET', '/api/v1/audit?limit=1');
		expect(entries).toMatchObject([{ event: 'workbook_saved', token: 'price feed' }]);
		expect((await by(secret)('POST', '/api/v1/workbooks', { text })).status).toBe(201);
	});

	it('do nothing that concerns people, and nothing that only owners may', async () => {
		const { secret } = await make({ scope: 'write' });
		const ask = by(secret);
		for (const [method, path] of [
			['GET', '/api/v1/people'],
			['GET', '/api/v1/audit'],
			['GET', '/api/v1/tokens'],
			['GET', '/api/v1/me/data'],
			['DELETE', '/api/v1/sessions'],
			['GET', `${at(one)}/people`],
			['DELETE', at(one)]
		] as const)
			expect((await ask(method, path)).status, path).toBe(403);
		const more = await ask('POST', '/api/v1/tokens', {
			body: { name: 'x', scope: 'write', days: 1 }
		});
		expect(more.status).toBe(403);
	});

	it('are no more than the person: without their part there is none', async () => {
		const bob = await person(server, 'bob');
		await ada.json('POST', `${at(one)}/invitations`, {
			body: { email: bob.email, role: 'viewer' }
		});
		const { secret } = await make({ scope: 'write', workbooks: [one] }, bob);
		expect((await by(secret)('GET', at(one))).status).toBe(200);
		expect((await by(secret)('PUT', at(one), { text, match: '"2"' })).status).toBe(403);
		await ada.json('DELETE', `${at(one)}/people/${bob.id}`);
		expect((await by(secret)('GET', at(one))).status).toBe(404);
		const stranger = await bob.ask('POST', '/api/v1/tokens', {
			body: { name: 'x', scope: 'read', days: 1, workbooks: [other] }
		});
		expect(stranger.status).toBe(422);
	});

	it('end by hand, by a steward, with a reset, and on their day; kept as hashes', async () => {
		const carl = await person(server, 'carl');
		const [a, b, c] = [await make({}, carl), await make({}, carl), await make({ days: 2 }, carl)];
		const works = async ({ secret }: { secret: string }) =>
			(await by(secret)('GET', '/api/v1/workbooks')).status;
		const rows = await server.services.store.db.selectFrom('tokens').selectAll().execute();
		expect(JSON.stringify(rows)).not.toContain(a.secret);
		expect(JSON.stringify(await carl.json('GET', '/api/v1/tokens'))).not.toContain(a.secret);
		await carl.json('DELETE', `/api/v1/tokens/${a.id}`);
		expect(await works(a)).toBe(401);
		expect((await ada.ask('DELETE', `/api/v1/tokens/${b.id}`)).status).toBe(404);
		expect(await works(b)).toBe(200);
		await ada.json('DELETE', `/api/v1/people/${carl.id}/tokens`);
		expect(await works(b)).toBe(401);
		expect(await works(c)).toBe(401);
		const d = await make({ days: 2 }, carl);
		const e = await make({}, carl);
		server.pass(2 * day + 1);
		expect(await works(d)).toBe(401);
		expect(await works(e)).toBe(200);
		await ada.signIn(ada.email);
		const link = await ada.json<{ token: string }>('POST', `/api/v1/people/${carl.id}/reset`);
		await carl.json('POST', '/api/v1/reset', {
			body: { token: link.token, password: 'nine herons in one row' }
		});
		expect(await works(e)).toBe(401);
		expect(await works({ secret: 'mwt_nothing' })).toBe(401);
	});

	it('are made, listed and ended on the command line', async () => {
		const command = (...words: string[]) =>
			storeCommand(
				words,
				'url' in where ? { DATABASE_URL: where.url } : { METREWRIGHT_DATA: where.folder },
				async () => null
			);
		const add = ['token', 'add', ada.email, 'nightly'];
		expect(await command(...add)).toMatchObject({ code: 2 });
		expect(await command(...add, '--days', '400')).toMatchObject({ code: 2 });
		const nowhere = await command(...add, '--days', '7', '--workbook', 'nowhere');
		expect(nowhere.err).toContain('has no part in the workbook "nowhere"');
		const made = await command(...add, '--days', '7', '--workbook', one);
		expect(made.code).toBe(0);
		const secret = made.out.trim();
		expect((await by(secret)('GET', at(one))).status).toBe(200);
		const listed = await command('token', 'list', ada.email);
		expect(listed.out).toContain(`nightly\tread\t${one}`);
		const id = listed.out
			.split('\n')
			.find((line) => line.includes('nightly'))!
			.split('\t')[0]!;
		expect(await command('token', 'end', ada.email, id)).toMatchObject({ code: 0 });
		expect((await by(secret)('GET', at(one))).status).toBe(401);
		expect(await command('token', 'end', ada.email, id)).toMatchObject({ code: 2 });
	});
});
