/**
 * Workbooks in the store: which there are, and who may see them. Their content stands in their revisions.
 */
import type { Role } from '$lib/protocol/roles';
import type { Database } from './tables';

export interface WorkbookEntry {
	readonly id: string;
	readonly title: string;
	readonly head: number;
	readonly createdAt: number;
	readonly savedAt: number;
	readonly savedBy: string;
	/** Null where everybody who is here may do everything: on one's own machine. */
	readonly role: Role | null;
}

/** Those that a person has a role in, newest save first; all of them for null, the one person of a machine. */
export async function listWorkbooks(
	db: Database,
	personId: string | null
): Promise<WorkbookEntry[]> {
	const all = db
		.selectFrom('workbooks as w')
		.innerJoin('revisions as r', (join) =>
			join.onRef('r.workbook_id', '=', 'w.id').onRef('r.number', '=', 'w.head')
		)
		.where('w.removed_at', 'is', null)
		.select(['w.id', 'w.title', 'w.head', 'w.created_at', 'r.made_at', 'r.author_name'])
		.orderBy('r.made_at', 'desc');
	const rows =
		personId === null
			? (await all.execute()).map((row) => ({ ...row, role: null }))
			: await all
					.innerJoin('memberships as m', 'm.workbook_id', 'w.id')
					.where('m.person_id', '=', personId)
					.select('m.role')
					.execute();
	return rows.map(({ id, title, head, created_at, made_at, author_name, role }) => ({
		id,
		title,
		head,
		createdAt: created_at,
		savedAt: made_at,
		savedBy: author_name,
		role
	}));
}

/** Number of the newest revision; null where there is no such workbook. */
export async function headOf(db: Database, workbookId: string): Promise<number | null> {
	const row = await db
		.selectFrom('workbooks')
		.where('id', '=', workbookId)
		.where('removed_at', 'is', null)
		.select('head')
		.executeTakeFirst();
	return row?.head ?? null;
}

/** Heads of several at once, for those who wait for news. */
export async function headsOf(
	db: Database,
	workbookIds: readonly string[]
): Promise<Map<string, number>> {
	if (workbookIds.length === 0) return new Map();
	const rows = await db
		.selectFrom('workbooks')
		.where('id', 'in', workbookIds)
		.where('removed_at', 'is', null)
		.select(['id', 'head'])
		.execute();
	return new Map(rows.map(({ id, head }) => [id, head]));
}

/** Hides a workbook; its revisions stay until it is purged from a back-up's side. False where there is none. */
export async function removeWorkbook(db: Database, workbookId: string, now: number) {
	const done = await db
		.updateTable('workbooks')
		.set({ removed_at: now })
		.where('id', '=', workbookId)
		.where('removed_at', 'is', null)
		.executeTakeFirst();
	// Nobody is asked into what is gone.
	await db.deleteFrom('invitations').where('workbook_id', '=', workbookId).execute();
	return done.numUpdatedRows > 0n;
}
