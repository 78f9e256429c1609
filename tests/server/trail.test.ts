/** The audit trail: what is in it, that it is only ever added to, and that a change or a hole in it shows. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createHash } from 'node:crypto';
import { sql } from 'kysely';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { saveWorkbook } from '$lib/workbook/save';
import { note, wholeTrail } from '$lib/server/people/audit';
import { verifyChain, type Chained } from '$lib/server/people/audit-chain';
import type { Where } from '$lib/server/store/open';
import { storeCommand } from '../../src/cli/store-commands';
import { plant } from '../workbook/plant';
import { Client, PASSWORD, person, startServer, type Server } from './api';
import { onEachStore } from './stores';

const text = saveWorkbook(plant);
const folder = mkdtempSync(join(tmpdir(), 'metrewright-trail-'));
afterAll(() => rmSync(folder, { recursive: true }));

interface Entry {
	readonly seq: number;
	readonly event: string;
	readonly personName: string;
	readonly subjectName: string;
	readonly detail: string;
}

onEachStore('The trail', ({ fresh }) => {
	let where: Where;
	let server: Server;
	let ada: Awaited<ReturnType<typeof person>>;
	beforeAll(async () => {
		where = fresh();
		server = await startServer(where);
		ada = await person(server, 'ada', { steward: true });
	});
	afterAll(() => server.stop());
	const command = (...words: string[]) =>
		storeCommand(
			words,
			'url' in where ? { DATABASE_URL: where.url } : { METREWRIGHT_DATA: where.folder },
			async () => PASSWORD
		);
	const page = async (query: string) =>
		(await ada.json<{ entries: Entry[] }>('GET', `/api/v1/audit${query}`)).entries;
	async function everything(): Promise<Chained[]> {
		const all: Chained[] = [];
		for await (const entry of wholeTrail(server.services.store.db)) all.push(entry);
		return all;
	}

	it('tells saves, reads of whole workbooks and exports, with the names of then', async () => {
		const bob = await person(server, 'bob');
		const { id } = await bob.json<{ id: string }>('POST', '/api/v1/workbooks', { text });
		const path = `/api/v1/workbooks/${id}`;
		await bob.ask('PUT', path, {
			text: text.replace('1.95', '3'),
			headers: { 'if-match': '"1"' }
		});
		// An open page reads again and again: an entry an hour tells it.
		for (let i = 0; i < 3; i++) await bob.ask('GET', path);
		await bob.ask('GET', `${path}/revisions/1/workbook`);
		await bob.json('POST', `${path}/revisions/1/restore`);
		await bob.json('GET', '/api/v1/me/data');
		await ada.ask('GET', '/api/v1/audit/export').then((answer) => answer.text());
		const told = (await page('?limit=500')).map(
			({ event, personName, subjectName, detail }) =>
				`${event} | ${personName} | ${subjectName} | ${detail}`
		);
		const his = 'bob <bob@plant.example>';
		expect(told.slice(0, 7)).toEqual([
			'trail_exported | ada <ada@plant.example> |  | ',
			`data_exported | ${his} |  | `,
			`workbook_saved | ${his} | ${plant.title} | revision 3, back to 1`,
			`revision_read | ${his} | ${plant.title} | revision 1`,
			`workbook_read | ${his} | ${plant.title} | revision 2`,
			`workbook_saved | ${his} | ${plant.title} | revision 2`,
			`workbook_begun | ${his} | ${plant.title} | `
		]);
	});

	it('keeps who did it, though they remove the workbook and themselves', async () => {
		const eve = await person(server, 'eve');
		const { id } = await eve.json<{ id: string }>('POST', '/api/v1/workbooks', { text });
		await eve.json('DELETE', `/api/v1/workbooks/${id}`);
		await eve.json('DELETE', '/api/v1/me', { body: { password: PASSWORD } });
		const [removed, workbook] = await page('?limit=2');
		const hers = 'eve <eve@plant.example>';
		expect(removed).toMatchObject({ event: 'account_removed', personName: hers });
		expect(workbook).toMatchObject({
			event: 'workbook_removed',
			personName: hers,
			subjectName: plant.title
		});
	});

	it('pages without loss, though many entries are of one millisecond', async () => {
		const { db } = server.services.store;
		const at = server.services.now();
		await Promise.all(
			Array.from({ length: 40 }, (_, i) =>
				note(db, { now: at, event: 'signed_out', personId: null, detail: String(i), address: '' })
			)
		);
		const whole = await page('?limit=500');
		const paged: Entry[] = [];
		for (let before = ''; ; before = `&before=${paged.at(-1)!.seq}`) {
			const some = await page(`?limit=7${before}`);
			if (some.length === 0) break;
			paged.push(...some);
		}
		expect(paged).toEqual(whole);
		// Written by many at once, and yet numbered without a gap and in one chain.
		expect(whole.map(({ seq }) => seq)).toEqual(whole.map((_, i) => whole.length - i));
		expect(await verifyChain(wholeTrail(db))).toMatchObject({ ok: true, entries: whole.length });
	});

	it('is refused any change by the database itself', async () => {
		const { db } = server.services.store;
		const refusal = /only ever added to/;
		await expect(db.updateTable('audit').set({ detail: 'x' }).execute()).rejects.toThrow(refusal);
		await expect(db.deleteFrom('audit').execute()).rejects.toThrow(refusal);
		if ('url' in where) await expect(sql`truncate audit`.execute(db)).rejects.toThrow(refusal);
	});

	it('is exported as lines whose digests anybody can work out', async () => {
		const file = join(folder, `${server.services.store.kind}.jsonl`);
		expect(await command('audit', 'export', file)).toMatchObject({ code: 0 });
		expect(await command('audit', 'export', file)).toMatchObject({ code: 2 });
		const lines = readFileSync(file, 'utf8').trimEnd().split('\n');
		const fetched = await (await ada.ask('GET', '/api/v1/audit/export')).text();
		expect(fetched.startsWith(lines.join('\n'))).toBe(true);
		// By hand, and by no code of ours: SHA-256 over the digest before and the fields in their order.
		const fields =
			'seq id at event person_id person_name token subject subject_name detail address';
		let before = '';
		for (const line of lines) {
			const entry = JSON.parse(line) as Record<string, unknown>;
			const said = JSON.stringify([before, ...fields.split(' ').map((name) => entry[name])]);
			before = createHash('sha256').update(said).digest('hex');
			expect(entry['digest']).toBe(before);
		}
		const verified = await command('audit', 'verify', file);
		expect(verified).toMatchObject({ code: 0, out: expect.stringContaining(before) });

		const spoil = async (change: (all: string[]) => string[]) => {
			const spoiled = join(folder, 'spoiled.jsonl');
			writeFileSync(spoiled, change([...lines]).join('\n'));
			return command('audit', 'verify', spoiled, '--anchor', `${lines.length}:${before}`);
		};
		const changed = await spoil((all) =>
			all.with(4, all[4]!.replace('192.0.2', '192.0.3').replace('198.51', '198.52'))
		);
		expect(changed).toMatchObject({
			code: 1,
			err: expect.stringContaining('Entry 5 is not as it was')
		});
		const hole = await spoil((all) => all.toSpliced(2, 1));
		expect(hole).toMatchObject({ code: 1, err: 'Entry 3 is missing.' });
		const cut = await spoil((all) => all.slice(0, -2));
		expect(cut).toMatchObject({ code: 1, err: expect.stringContaining('was noted once') });
		const no = await spoil(() => ['{"a":1}']);
		expect(no).toMatchObject({ code: 2, err: expect.stringContaining('line 1: this is no entry') });
	});

	it('shows what somebody with the database in hand did to it', async () => {
		expect(await command('audit', 'verify')).toMatchObject({ code: 0 });
		const { db } = server.services.store;
		const all = await everything();
		const end = all.at(-1)!;
		if ('url' in where) await sql`alter table audit disable trigger user`.execute(db);
		else await sql`drop trigger audit_no_delete`.execute(db);
		await db.deleteFrom('audit').where('seq', '=', end.seq).execute();
		expect(await command('audit', 'verify')).toMatchObject({
			code: 1,
			err: expect.stringContaining('The end is missing')
		});
		// Whoever writes the whole trail anew is found by what was noted elsewhere.
		const anchor = `${end.seq - 1}:${'0'.repeat(64)}`;
		expect(await command('audit', 'verify', '--anchor', anchor)).toMatchObject({
			code: 1,
			err: expect.stringContaining('not the one that was noted')
		});
	});

	it('stays apart from those who may not see it', async () => {
		const client = new Client(server, '192.0.2.77');
		expect((await client.ask('GET', '/api/v1/audit/export')).status).toBe(401);
	});
});
