/**
 * Revisions: each save of a workbook, whole, with who made it, when, why and what changed. They are only ever
 * added; a name and its lock are all that changes about one.
 */
import type { Change } from '$lib/workbook/compare/change';
import { faultOf } from './faults';
import type { Database } from './tables';

export interface Author {
	/** Null on a machine without accounts. */
	readonly id: string | null;
	readonly name: string;
}

export interface ValueChange {
	readonly quantity: string;
	readonly scenario: string;
	readonly at: readonly string[];
	/** JSON of what stood there and of what stands there now; null for nothing. */
	readonly was: string | null;
	readonly now: string | null;
}

export interface NewRevision {
	readonly title: string;
	readonly author: Author;
	readonly madeAt: number;
	readonly reason: string;
	/** The saved text, packed. */
	readonly packed: string;
	readonly changes: readonly Change[];
	/** JSON lists of `ValueChange`, each of at most `ROWS`. */
	readonly values: readonly string[];
	readonly restores?: number;
}

export interface Revision {
	readonly number: number;
	readonly madeAt: number;
	readonly author: Author;
	readonly reason: string;
	readonly changes: readonly Change[];
	readonly restores: number | null;
	readonly name: string | null;
	readonly locked: boolean;
}

/** Rows put in by one statement: both databases bound the number of its parameters. */
export const ROWS = 500;

/** A new workbook with its first revision, and the role of the one who made it. */
export async function createWorkbook(
	db: Database,
	id: string,
	first: NewRevision,
	owner: string | null
): Promise<void> {
	await db.transaction().execute(async (work) => {
		const { title, madeAt } = first;
		await work
			.insertInto('workbooks')
			.values({ id, title, head: 1, created_at: madeAt, removed_at: null })
			.execute();
		await insertRevision(work, id, 1, first);
		if (owner !== null)
			await work
				.insertInto('memberships')
				.values({ workbook_id: id, person_id: owner, role: 'owner' })
				.execute();
	});
}

/** Adds the revision after `base`. False where another one has come in between: nothing is written then. */
export async function addRevision(
	db: Database,
	workbookId: string,
	base: number,
	revision: NewRevision
): Promise<boolean> {
	return db.transaction().execute(async (work) => {
		// Written before anything is read, so that of two savers one waits, and then finds the head moved.
		const moved = await work
			.updateTable('workbooks')
			.set({ head: base + 1, title: revision.title })
			.where('id', '=', workbookId)
			.where('head', '=', base)
			.where('removed_at', 'is', null)
			.executeTakeFirst();
		if (moved.numUpdatedRows === 0n) return false;
		await insertRevision(work, workbookId, base + 1, revision);
		return true;
	});
}

async function insertRevision(
	work: Database,
	id: string,
	number: number,
	newRevision: NewRevision
) {
	await work
		.insertInto('revisions')
		.values({
			workbook_id: id,
			number,
			made_at: newRevision.madeAt,
			author_id: newRevision.author.id,
			author_name: newRevision.author.name,
			reason: newRevision.reason,
			document: newRevision.packed,
			changes: JSON.stringify(newRevision.changes),
			restores: newRevision.restores ?? null,
			name: null,
			locked: 0
		})
		.execute();
	let place = 0;
	for (const list of newRevision.values) {
		// Other requests have their turn between two statements: the driver of the embedded store waits in place.
		if (place > 0) await new Promise(setImmediate);
		const changes = JSON.parse(list) as ValueChange[];
		await work
			.insertInto('value_changes')
			.values(
				changes.map((change) => ({
					workbook_id: id,
					number,
					place: place++,
					quantity: change.quantity,
					scenario: change.scenario,
					at: JSON.stringify(change.at),
					was: change.was,
					now: change.now
				}))
			)
			.execute();
	}
}

/** The saved text of a revision, packed; null where there is none. */
export async function readDocument(
	db: Database,
	workbookId: string,
	number: number
): Promise<string | null> {
	const row = await db
		.selectFrom('revisions')
		.where('workbook_id', '=', workbookId)
		.where('number', '=', number)
		.select('document')
		.executeTakeFirst();
	return row?.document ?? null;
}

const HEAD = [
	'number',
	'made_at',
	'author_id',
	'author_name',
	'reason',
	'changes',
	'restores',
	'name',
	'locked'
] as const;

/** Newest first, those before a number, at most `limit`; `named` leaves out those without a name. */
export async function listRevisions(
	db: Database,
	workbookId: string,
	{ before, limit, named }: { before?: number; limit: number; named?: boolean }
): Promise<Revision[]> {
	let query = db.selectFrom('revisions').where('workbook_id', '=', workbookId).select(HEAD);
	if (before !== undefined) query = query.where('number', '<', before);
	if (named) query = query.where('name', 'is not', null);
	return (await query.orderBy('number', 'desc').limit(limit).execute()).map(asRevision);
}

export async function readRevision(
	db: Database,
	workbookId: string,
	number: number
): Promise<Revision | null> {
	const row = await db
		.selectFrom('revisions')
		.where('workbook_id', '=', workbookId)
		.where('number', '=', number)
		.select(HEAD)
		.executeTakeFirst();
	return row ? asRevision(row) : null;
}

export type Naming = 'done' | 'locked' | 'taken' | 'missing';

/** Gives a revision a name, or takes it away (null); a locked one keeps its name until it is unlocked. */
export async function nameRevision(
	db: Database,
	workbookId: string,
	number: number,
	to: { readonly name: string | null; readonly locked: boolean; readonly unlock: boolean }
): Promise<Naming> {
	const stands = await readRevision(db, workbookId, number);
	if (!stands) return 'missing';
	let query = db
		.updateTable('revisions')
		.set({ name: to.name, locked: to.locked ? 1 : 0 })
		.where('workbook_id', '=', workbookId)
		.where('number', '=', number);
	if (!to.unlock) query = query.where('locked', '=', 0);
	try {
		const done = await query.executeTakeFirst();
		return done.numUpdatedRows > 0n ? 'done' : 'locked';
	} catch (error) {
		if (faultOf(error) === 'taken') return 'taken';
		throw error;
	}
}

export interface HistoryEntry extends ValueChange {
	readonly number: number;
	readonly madeAt: number;
	readonly author: Author;
	readonly reason: string;
}

/** Every change of a quantity's entered values, newest first; of one place and scenario where they are given. */
export async function valueHistory(
	db: Database,
	workbookId: string,
	asked: { quantity: string; at?: readonly string[]; scenario?: string; limit: number }
): Promise<HistoryEntry[]> {
	let query = db
		.selectFrom('value_changes as v')
		.innerJoin('revisions as r', (join) =>
			join.onRef('r.workbook_id', '=', 'v.workbook_id').onRef('r.number', '=', 'v.number')
		)
		.where('v.workbook_id', '=', workbookId)
		.where('v.quantity', '=', asked.quantity);
	if (asked.at) query = query.where('v.at', '=', JSON.stringify(asked.at));
	if (asked.scenario !== undefined) query = query.where('v.scenario', '=', asked.scenario);
	const rows = await query
		.select([
			'v.quantity',
			'v.scenario',
			'v.at',
			'v.was',
			'v.now',
			'r.number',
			'r.made_at',
			'r.author_id',
			'r.author_name',
			'r.reason'
		])
		.orderBy('v.number', 'desc')
		.orderBy('v.place')
		.limit(asked.limit)
		.execute();
	return rows.map((row) => ({
		quantity: row.quantity,
		scenario: row.scenario,
		at: JSON.parse(row.at) as string[],
		was: row.was,
		now: row.now,
		number: row.number,
		madeAt: row.made_at,
		author: { id: row.author_id, name: row.author_name },
		reason: row.reason
	}));
}

function asRevision(row: {
	number: number;
	made_at: number;
	author_id: string | null;
	author_name: string;
	reason: string;
	changes: string;
	restores: number | null;
	name: string | null;
	locked: number;
}): Revision {
	return {
		number: row.number,
		madeAt: row.made_at,
		author: { id: row.author_id, name: row.author_name },
		reason: row.reason,
		changes: (JSON.parse(row.changes) as (Change | string)[]).map(asLine),
		restores: row.restores,
		name: row.name,
		locked: row.locked === 1
	};
}

/** Lists were kept as sentences once; revisions never change, so those stay. */
const asLine = (line: Change | string): Change =>
	typeof line === 'string' ? { kind: 'told', text: line } : line;
