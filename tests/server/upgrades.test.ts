/** A store that an older version filled is brought up, and what stood in it stands there afterwards. */
import { expect, it } from 'vitest';
import { sql, type Kysely } from 'kysely';
import { openEmbedded } from '$lib/server/store/embedded';
import { hashOf } from '$lib/server/store/ids';
import { trailEnd, wholeTrail } from '$lib/server/people/audit';
import { verifyChain } from '$lib/server/people/audit-chain';
import { MIGRATIONS } from '$lib/server/store/migrations';
import type { Where } from '$lib/server/store/open';
import { pack } from '$lib/server/store/packing';
import { openPostgres } from '$lib/server/store/postgres';
import { hashPassword } from '$lib/server/people/passwords';
import { saveWorkbook } from '$lib/workbook/save';
import { plant } from '../workbook/plant';
import { Client, PASSWORD, startServer } from './api';
import { onEachStore } from './stores';

const text = saveWorkbook(plant);
/** The sets of tables that were released, each by the step that it ends with. */
const RELEASED = MIGRATIONS.slice(0, -1).map(({ name }) => name);

/** A store as it was after a step, with two people, a workbook, an invitation and a trail. */
async function fillOlder(where: Where, last: string): Promise<void> {
	const db = 'url' in where ? openPostgres(where.url) : openEmbedded(where.folder);
	const bare = db as unknown as Kysely<unknown>;
	const kind = 'url' in where ? 'postgres' : 'embedded';
	await bare.schema
		.createTable('migrations')
		.addColumn('name', 'text', (column) => column.primaryKey())
		.addColumn('taken_at', 'bigint', (column) => column.notNull())
		.execute();
	const insert = (table: string, row: Record<string, unknown>) =>
		sql`insert into ${sql.table(table)} (${sql.join(Object.keys(row).map((name) => sql.ref(name)))})
			values (${sql.join(Object.values(row).map((value) => sql`${value}`))})`.execute(bare);
	const at = 1_790_000_000_000;
	let filled = false;
	for (const { name, up } of MIGRATIONS) {
		await up(bare, kind);
		await insert('migrations', { name, taken_at: at });
		if (!filled) {
			filled = true;
			const password = await hashPassword(PASSWORD);
			const people = [
				['p1', 'ada@plant.example', 'Ada', 1],
				['p2', 'bob@plant.example', 'Bob', 0]
			] as const;
			for (const [id, email, who, steward] of people)
				await insert('people', { id, email, name: who, password, steward, created_at: at });
			await insert('workbooks', { id: 'w1', title: plant.title, head: 1, created_at: at });
			await insert('revisions', {
				workbook_id: 'w1',
				number: 1,
				made_at: at,
				author_id: 'p2',
				author_name: 'Bob',
				reason: '',
				document: pack(text),
				changes: '[]',
				locked: 0
			});
			await insert('memberships', { workbook_id: 'w1', person_id: 'p2', role: 'owner' });
			await insert('invitations', {
				id: 'i1',
				token_hash: hashOf('an invitation of the older version'),
				email: 'new@plant.example',
				workbook_id: 'w1',
				role: 'viewer',
				invited_by: 'p2',
				created_at: at,
				expires_at: 4_000_000_000_000
			});
			for (const [id, event, who] of [
				['a1', 'signed_in', 'p1'],
				['a2', 'signed_in', 'p2'],
				['a3', 'sign_in_refused', null]
			] as const)
				await insert('audit', {
					id,
					at,
					event,
					person_id: who,
					subject: '',
					detail: '',
					address: '192.0.2.1'
				});
		}
		if (name === last) break;
	}
	await db.destroy();
}

onEachStore('An older store', ({ fresh }) => {
	it.each(RELEASED)('that ends with %s is brought up with what is in it', async (last) => {
		const where = fresh();
		await fillOlder(where, last);
		const server = await startServer(where);
		const [ada, bob] = [new Client(server), new Client(server, '192.0.2.2')];
		expect((await ada.signIn('ada@plant.example')).status).toBe(200);
		expect((await bob.signIn('bob@plant.example')).status).toBe(200);
		// Whoever had an account may what they could.
		expect((await bob.ask('POST', '/api/v1/workbooks', { text })).status).toBe(201);
		expect(await (await bob.ask('GET', '/api/v1/workbooks/w1')).text()).toBe(text);
		expect(await ada.json('GET', '/api/v1/people')).toMatchObject({
			people: [
				{ name: 'Ada', steward: true, mayBegin: true },
				{ name: 'Bob', mayInvite: true }
			]
		});
		const accepted = await new Client(server, '192.0.2.3').ask(
			'POST',
			'/api/v1/invitations/accept',
			{ body: { token: 'an invitation of the older version', password: PASSWORD } }
		);
		expect(accepted.status).toBe(200);
		const { entries } = await ada.json<{ entries: { id: string }[] }>(
			'GET',
			'/api/v1/audit?limit=500'
		);
		// They are the first of the chain, by the names of those who are still here.
		expect(entries.slice(-3)).toMatchObject([
			{ id: 'a3', seq: 3, personName: '' },
			{ id: 'a2', seq: 2, personName: 'Bob <bob@plant.example>' },
			{ id: 'a1', seq: 1, personName: 'Ada <ada@plant.example>' }
		]);
		const { db } = server.services.store;
		expect(await verifyChain(wholeTrail(db), { end: await trailEnd(db) })).toMatchObject({
			ok: true
		});
		await server.stop();
	});
});
