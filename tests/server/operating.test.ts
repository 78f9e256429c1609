/** Settings, starting, accounts on the command line, back-up and restore. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { saveWorkbook } from '$lib/workbook/save';
import { storeCommand } from '../../src/cli/store-commands';
import { openLog } from '$lib/server/log';
import { readSettings, VARIABLE_NAMES } from '$lib/server/settings';
import { openStoreOf, settingsFrom } from '$lib/server/start';
import { openStore, type Where } from '$lib/server/store/open';
import { plant } from '../workbook/plant';
import { Client, PASSWORD, startServer } from './api';
import { onEachStore } from './stores';

const folder = mkdtempSync(join(tmpdir(), 'metrewright-operating-'));
afterAll(() => rmSync(folder, { recursive: true }));
const environmentOf = (where: Where): Record<string, string> =>
	'url' in where ? { DATABASE_URL: where.url } : { METREWRIGHT_DATA: where.folder };
const command = (where: Where, ...words: string[]) =>
	storeCommand(words, environmentOf(where), async () => PASSWORD);

describe('settings', () => {
	it('need nothing: this machine alone, an embedded folder', () => {
		const read = readSettings({});
		expect(read).toMatchObject({
			ok: true,
			settings: { host: '127.0.0.1', port: 5180, databaseUrl: null, logLevel: 'warn' }
		});
	});

	it('are refused together, each by name, without repeating a secret', () => {
		const read = readSettings({
			PORT: '70000',
			METREWRIGHT_LOG: 'loud',
			DATABASE_URL: 'mysql://root:hunter2@db/x',
			ORIGIN: 'plant.example/path'
		});
		if (read.ok) throw new Error('They were taken.');
		expect(read.problems.map((line) => line.split(' ')[0])).toEqual([
			'PORT',
			'DATABASE_URL',
			'ORIGIN',
			'METREWRIGHT_LOG'
		]);
		expect(read.problems.join()).not.toContain('hunter2');
	});

	it('that are mistyped are not passed over', () => {
		const read = readSettings({ METREWRIGHT_BODYMB: '8' });
		if (read.ok) throw new Error('It was taken.');
		expect(read.problems).toEqual([
			'METREWRIGHT_BODYMB is no setting. Did you mean METREWRIGHT_BODY_MB?'
		]);
	});

	it('name a folder that can never be made: said at once', async () => {
		const settings = settingsFrom({ METREWRIGHT_DATA: '/proc/nowhere/data' });
		await expect(openStoreOf(settings, 0)).rejects.toThrow(
			'The folder "/proc/nowhere/data" cannot hold the data'
		);
	});

	it('are all in the table of DEVELOPERS.md', () => {
		const table = readFileSync('DEVELOPERS.md', 'utf8');
		for (const name of VARIABLE_NAMES) expect(table).toContain(`| \`${name}\` |`);
	});
});

describe('the log', () => {
	it('is one JSON object a line, from the level up that is set', () => {
		const lines: string[] = [];
		const log = openLog(
			'warn',
			() => 0,
			(line) => void lines.push(line)
		);
		log.write('info', { event: 'request' });
		log.write('error', { event: 'fault', message: 'a\nb' });
		expect(lines.map((line) => JSON.parse(line) as unknown)).toEqual([
			{ at: '1970-01-01T00:00:00.000Z', level: 'error', event: 'fault', message: 'a\nb' }
		]);
	});
});

onEachStore('Operating', ({ fresh }) => {
	it('does not listen to others while nobody has an account, and does once there is one', async () => {
		const where = fresh();
		const open = { HOST: '0.0.0.0' };
		await expect(startServer(where, open)).rejects.toThrow(/account add-owner/);
		const made = await command(where, 'account', 'add-owner', 'Ada@Plant.example');
		expect(made).toMatchObject({ code: 0 });
		const server = await startServer(where, open);
		const client = new Client(server, '192.0.2.9', 'http://plant.example');
		expect((await client.ask('GET', '/api/v1/workbooks')).status).toBe(401);
		expect((await client.signIn('ada@plant.example')).status).toBe(200);
		expect((await client.ask('GET', '/api/v1/workbooks')).status).toBe(200);
		expect(server.logged.join()).not.toContain(PASSWORD);
		await server.stop();
	});

	it.each([
		{ ORIGIN: 'https://plant.example' },
		{ METREWRIGHT_PROXIES: '1' },
		// As the unit of src/ops is written.
		{ HOST: '127.0.0.1', METREWRIGHT_PROXIES: '1', ORIGIN: 'https://plant.example' }
	])('does not start behind a proxy while nobody has an account: %o', async (behind) => {
		const where = fresh();
		await expect(startServer(where, behind)).rejects.toThrow(
			/others can reach this server, but nobody has an account/
		);
		await command(where, 'account', 'add-owner', 'ada@plant.example');
		const server = await startServer(where, behind);
		const client = new Client(server, '192.0.2.9', 'https://plant.example');
		expect((await client.ask('GET', '/api/v1/workbooks')).status).toBe(401);
		const warned = server.logged.some((line) => line.includes('plain_http'));
		expect(warned).toBe(!('ORIGIN' in behind));
		await server.stop();
	});

	it.each(['x-forwarded-for', 'x-forwarded-proto', 'x-real-ip', 'forwarded', 'via'])(
		'takes nobody for the one person of the machine once %s has shown a proxy',
		async (header) => {
			const server = await startServer(fresh());
			const client = new Client(server);
			expect((await client.ask('GET', '/api/v1/workbooks')).status).toBe(200);
			const passed = await client.ask('GET', '/api/v1/workbooks', {
				headers: { [header]: '203.0.113.7' }
			});
			expect(passed.status).toBe(403);
			expect(await passed.json()).toMatchObject({ code: 'accounts-needed' });
			expect((await client.ask('GET', '/api/v1/workbooks')).status).toBe(403);
			expect((await client.ask('GET', '/api/health')).status).toBe(200);
			await server.stop();
		}
	);

	it('starts for this machine alone without a word where its own address is a loopback one', async () => {
		const server = await startServer(fresh(), { ORIGIN: 'http://localhost:5180' });
		expect((await new Client(server).ask('GET', '/api/v1/workbooks')).status).toBe(200);
		expect(server.logged.join()).not.toContain('plain_http');
		await server.stop();
	});

	it('gives the first owner what was made before there were accounts', async () => {
		const where = fresh();
		const alone = await startServer(where);
		await new Client(alone).json('POST', '/api/v1/workbooks', { text: saveWorkbook(plant) });
		await alone.stop();
		await command(where, 'account', 'add-owner', 'ada@plant.example');
		const server = await startServer(where);
		const client = new Client(server);
		await client.signIn('ada@plant.example');
		expect(await client.json('GET', '/api/v1/workbooks')).toMatchObject({
			workbooks: [{ title: plant.title, role: 'owner' }]
		});
		await server.stop();
	});

	it('refuses a weak password, a second account of an address, and words that make no sense', async () => {
		const where = fresh();
		const weak = await storeCommand(
			['account', 'add-owner', 'a@b.example'],
			environmentOf(where),
			async () => 'password1234'
		);
		expect(weak).toMatchObject({ code: 2, err: expect.stringContaining('too easy') });
		await command(where, 'account', 'add-owner', 'a@b.example');
		expect(await command(where, 'account', 'add-owner', 'A@b.example')).toMatchObject({ code: 2 });
		expect(await command(where, 'account', 'add-owner', 'nobody')).toMatchObject({ code: 2 });
		expect(await command(where, 'account', 'list')).toMatchObject({
			out: 'a@b.example\ta\tadministrator\n'
		});
	});

	it('backs up and restores everything into an empty store, of either kind', async () => {
		const where = fresh();
		await command(where, 'account', 'add-owner', 'ada@plant.example');
		const server = await startServer(where);
		const ada = new Client(server);
		await ada.signIn('ada@plant.example');
		const text = saveWorkbook(plant);
		const { id } = await ada.json<{ id: string }>('POST', '/api/v1/workbooks', { text });
		const file = join(folder, `${id}.gz`);
		// The server may run meanwhile.
		expect(await command(where, 'backup', file)).toMatchObject({ code: 0 });
		await server.stop();
		expect(await command(where, 'restore', file)).toMatchObject({
			code: 2,
			err: expect.stringContaining('holds data already')
		});

		const other = mkdtempSync(join(tmpdir(), 'metrewright-restored-'));
		for (const place of [fresh(), { folder: other }]) {
			expect(await command(place, 'restore', file)).toMatchObject({ code: 0 });
			const restored = await startServer(place);
			const again = new Client(restored);
			expect((await again.signIn('ada@plant.example')).status).toBe(200);
			expect(await (await again.ask('GET', `/api/v1/workbooks/${id}`)).text()).toBe(text);
			await restored.stop();
		}
		rmSync(other, { recursive: true });
	});

	it('restores nothing of a file that is not whole', async () => {
		const where = fresh();
		const store = await openStore(where, 1);
		await store.close();
		const good = join(folder, `whole-${store.kind}.gz`);
		await command(where, 'account', 'add-owner', 'ada@plant.example');
		await command(where, 'backup', good);
		const cut = join(folder, `cut-${store.kind}.gz`);
		writeFileSync(cut, readFileSync(good).subarray(0, -40));
		const empty = fresh();
		const broken = await command(empty, 'restore', cut);
		expect(broken).toMatchObject({ code: 2, err: expect.stringMatching(/broke off|not whole/) });
		const wrong = join(folder, `wrong-${store.kind}.gz`);
		writeFileSync(wrong, 'no back-up');
		const other = await command(empty, 'restore', wrong);
		expect(other).toMatchObject({ code: 2, err: expect.stringContaining('no back-up of') });
		expect(await command(empty, 'account', 'list')).toMatchObject({
			out: 'Nobody has an account.\n'
		});
	});

	it('answers health, and readiness only until it stops', async () => {
		const server = await startServer(fresh());
		const client = new Client(server, '192.0.2.1', 'http://balancer.internal');
		expect((await client.ask('GET', '/api/health')).status).toBe(200);
		expect((await client.ask('GET', '/api/ready')).status).toBe(200);
		server.beginStop();
		expect((await client.ask('GET', '/api/ready')).status).toBe(503);
		await server.stop();
	});
});
