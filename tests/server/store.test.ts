/** Workbooks and revisions in the store: the same sentences hold on both databases. */
import { describe, expect, it } from 'vitest';
import { sql } from 'kysely';
import { faultOf } from '$lib/server/store/faults';
import { newId } from '$lib/server/store/ids';
import { MIGRATIONS, NewerSchemaError } from '$lib/server/store/migrations';
import { openStore } from '$lib/server/store/open';
import { pack, unpack } from '$lib/server/store/packing';
import {
	addRevision,
	createWorkbook,
	listRevisions,
	nameRevision,
	readDocument,
	readRevision,
	ROWS,
	valueHistory,
	type NewRevision
} from '$lib/server/store/revisions';
import type { Change } from '$lib/workbook/compare/change';
import { headOf, listWorkbooks, removeWorkbook } from '$lib/server/store/workbooks';
import { onEachStore } from './stores';

const revision = (document: string, more: Partial<NewRevision> = {}): NewRevision => ({
	title: 'Two-line shop',
	author: { id: null, name: 'Ada' },
	madeAt: 1_790_000_000_000,
	reason: '',
	packed: pack(document),
	changes: [],
	values: [],
	...more
});

const dearer: Change = { kind: 'value', label: 'a', at: [], was: null, now: 1 };

onEachStore('The store', ({ store, fresh }) => {
	const begin = async (document = '{}') => {
		const id = newId();
		await createWorkbook(store().db, id, revision(document), null);
		return id;
	};

	it('gives a document back as it was saved, whatever is in it', async () => {
		const text = '{"note": "Gießkanne ☂ \\u0000 \'; drop table people; --"}\n'.repeat(2000);
		const id = await begin(text);
		expect(unpack((await readDocument(store().db, id, 1))!)).toBe(text);
		expect(await readDocument(store().db, id, 2)).toBeNull();
		expect(await readDocument(store().db, 'nobody', 1)).toBeNull();
	});

	it('adds a revision after the one it was made from, and refuses one made from an older', async () => {
		const { db } = store();
		const id = await begin();
		const changed = revision('{"a":1}', { title: 'Renamed', changes: [dearer] });
		expect(await addRevision(db, id, 1, changed)).toBe(true);
		expect(await addRevision(db, id, 1, revision('{"a":2}'))).toBe(false);
		expect(await headOf(db, id)).toBe(2);
		expect(unpack((await readDocument(db, id, 2))!)).toBe('{"a":1}');
		expect((await readRevision(db, id, 2))?.changes).toEqual([dearer]);
		expect(
			(await listWorkbooks(db, null)).find((listWorkbook) => listWorkbook.id === id)?.title
		).toBe('Renamed');
		expect(await addRevision(db, 'nobody', 0, revision('{}'))).toBe(false);
	});

	it('still tells the changes that were once kept as sentences', async () => {
		const { db } = store();
		const id = await begin();
		const kept = JSON.stringify(['a: nothing to 1']);
		await db
			.updateTable('revisions')
			.set({ changes: kept })
			.where('workbook_id', '=', id)
			.execute();
		expect((await readRevision(db, id, 1))?.changes).toEqual([
			{ kind: 'told', text: 'a: nothing to 1' }
		]);
	});

	it('lets exactly one of many savers at once through', async () => {
		const { db } = store();
		const id = await begin();
		const savers = Array.from({ length: 12 }, (_, i) =>
			addRevision(db, id, 1, revision(`{"by":${i}}`))
		);
		const through = (await Promise.all(savers)).filter(Boolean);
		expect(through).toHaveLength(1);
		expect(await headOf(db, id)).toBe(2);
		expect(await listRevisions(db, id, { limit: 10 })).toHaveLength(2);
	});

	it('lists revisions from the newest down, in pages', async () => {
		const { db } = store();
		const id = await begin();
		for (let base = 1; base < 5; base++) await addRevision(db, id, base, revision(`${base}`));
		const numbers = async (page: { before?: number; limit: number }) =>
			(await listRevisions(db, id, page)).map(({ number }) => number);
		expect(await numbers({ limit: 2 })).toEqual([5, 4]);
		expect(await numbers({ limit: 9, before: 4 })).toEqual([3, 2, 1]);
	});

	it('gives a name to one revision only, and a lock keeps it there', async () => {
		const { db } = store();
		const id = await begin();
		await addRevision(db, id, 1, revision('{"a":1}'));
		const name = 'budget 2027, approved';
		const put = (number: number, to: { name: string | null; locked: boolean; unlock?: boolean }) =>
			nameRevision(db, id, number, { unlock: false, ...to });
		expect(await put(1, { name, locked: true })).toBe('done');
		expect(await put(2, { name, locked: false })).toBe('taken');
		expect(await put(1, { name: 'other', locked: false })).toBe('locked');
		expect(await put(3, { name: 'other', locked: false })).toBe('missing');
		expect(await readRevision(db, id, 1)).toMatchObject({ name, locked: true });
		expect((await listRevisions(db, id, { limit: 9, named: true })).map((r) => r.number)).toEqual([
			1
		]);
		expect(await put(1, { name: null, locked: false, unlock: true })).toBe('done');
		expect(await put(2, { name, locked: false })).toBe('done');
	});

	it('tells who changed a value, when and from what, newest first', async () => {
		const { db } = store();
		const id = await begin();
		const price = (was: string, now: string, at: string[] = []) =>
			revision('{}', {
				author: { id: null, name: `of ${now}` },
				values: [JSON.stringify([{ quantity: 'resin_price', scenario: 'base', at, was, now }])]
			});
		await addRevision(db, id, 1, price('1.95', '2.1'));
		await addRevision(db, id, 2, price('1', '2', ['constructor']));
		await addRevision(db, id, 3, price('2.1', '2.2'));
		const asked = { quantity: 'resin_price', at: [], limit: 9 };
		const story = await valueHistory(db, id, asked);
		expect(story.map(({ was, now, author }) => [was, now, author.name])).toEqual([
			['2.1', '2.2', 'of 2.2'],
			['1.95', '2.1', 'of 2.1']
		]);
		expect(await valueHistory(db, id, { ...asked, at: ['constructor'] })).toHaveLength(1);
		expect(await valueHistory(db, id, { quantity: 'resin_price', limit: 9 })).toHaveLength(3);
		expect(await valueHistory(db, id, { ...asked, scenario: 'other' })).toEqual([]);
	});

	it('keeps thousands of changed values of one save', async () => {
		const { db } = store();
		const id = await begin();
		const values = Array.from({ length: 1203 }, (_, i) => ({
			quantity: 'mass',
			scenario: 'base',
			at: [`m${i}`],
			was: null,
			now: `${i}`
		}));
		const lists = [0, ROWS, 2 * ROWS].map((start) =>
			JSON.stringify(values.slice(start, start + ROWS))
		);
		await addRevision(db, id, 1, revision('{}', { values: lists }));
		expect(await valueHistory(db, id, { quantity: 'mass', limit: 5000 })).toHaveLength(1203);
	});

	it('hides a removed workbook, and takes no further revision of it', async () => {
		const { db } = store();
		const id = await begin();
		expect(await removeWorkbook(db, id, 1)).toBe(true);
		expect(await removeWorkbook(db, id, 2)).toBe(false);
		expect(await headOf(db, id)).toBeNull();
		expect(await addRevision(db, id, 1, revision('{}'))).toBe(false);
		expect((await listWorkbooks(db, null)).some((listWorkbook) => listWorkbook.id === id)).toBe(
			false
		);
	});

	it('brings the schema up once, however often and by however many it is opened', async () => {
		const where = fresh();
		const opened = await Promise.all([1, 2, 3].map((now) => openStore(where, now)));
		await createWorkbook(opened[0]!.db, 'kept', revision('{"kept":true}'), null);
		for (const store of opened) await store.close();
		const again = await openStore(where, 4);
		expect(unpack((await readDocument(again.db, 'kept', 1))!)).toBe('{"kept":true}');
		const steps = await sql<{ name: string }>`select name from migrations`.execute(again.db);
		expect(steps.rows.map(({ name }) => name)).toEqual(MIGRATIONS.map(({ name }) => name));
		await again.close();
	});

	it('is not opened by a version older than the one that wrote it', async () => {
		const where = fresh();
		const newer = await openStore(where, 1);
		await sql`insert into migrations (name, taken_at) values ('9999-later', 1)`.execute(newer.db);
		await newer.close();
		await expect(openStore(where, 2)).rejects.toThrow(NewerSchemaError);
	});

	it('names a key that is taken, and nothing else, "taken"', async () => {
		const { db } = store();
		const id = await begin();
		const twice = createWorkbook(db, id, revision('{}'), null);
		expect(faultOf(await twice.catch((error: unknown) => error))).toBe('taken');
		const wrong = sql`select nothing from nowhere`.execute(db);
		expect(faultOf(await wrong.catch((error: unknown) => error))).toBeNull();
	});
});

describe('packing', () => {
	it('is undone exactly, and makes a workbook small', () => {
		const text = JSON.stringify(
			Array.from({ length: 4000 }, (_, i) => ({ id: `m${i % 7}`, v: i }))
		);
		expect(unpack(pack(text))).toBe(text);
		expect(pack(text).length).toBeLessThan(text.length / 3);
	});
});
