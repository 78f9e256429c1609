/**
 * The audit trail: who signed in, changed permissions, saved, read or took away what, when and from where. It is only
 * ever added to, by the database's own refusal; names are kept beside ids, so that it still tells after an account
 * is gone. How its entries hang together: `audit-chain.ts`.
 */
import { newId } from '../store/ids';
import type { Database } from '../store/tables';
import { digestOf, type Anchor, type Chained } from './audit-chain';

export type AuditEvent =
	| 'signed_in'
	| 'password_refused'
	| 'signed_out'
	| 'sessions_ended'
	| 'password_changed'
	| 'account_made'
	| 'account_removed'
	| 'data_exported'
	| 'invited'
	| 'invitation_withdrawn'
	| 'joined'
	| 'role_changed'
	| 'rights_changed'
	| 'reset_made'
	| 'password_reset'
	| 'handed_over'
	| 'token_made'
	| 'token_ended'
	| 'tokens_ended'
	| 'trail_exported'
	| 'revision_named'
	| 'workbook_begun'
	| 'workbook_saved'
	| 'workbook_read'
	| 'revision_read'
	| 'workbook_removed';

export interface NewEntry {
	readonly now: number;
	readonly event: AuditEvent;
	readonly personId: string | null;
	/** The API token by which it is done. */
	readonly token?: string;
	readonly subject?: string;
	/** Where the store can no longer tell who or what the subject is. */
	readonly subjectName?: string;
	/** Likewise of the person. */
	readonly personName?: string;
	readonly detail?: string;
	readonly address: string;
}

const short = (text: string | undefined): string => (text ?? '').slice(0, 300);

export async function note(db: Database, entry: NewEntry): Promise<void> {
	await db.transaction().execute(async (work) => {
		// The count is written before it is read: whoever notes at the same moment waits for it.
		const chain = await work
			.insertInto('audit_chain')
			.values({ id: 'trail', entries: 1, digest: '' })
			.onConflict((conflict) =>
				conflict.column('id').doUpdateSet((row) => ({
					entries: row('audit_chain.entries', '+', 1)
				}))
			)
			.returning(['entries', 'digest'])
			.executeTakeFirstOrThrow();
		const said = {
			seq: chain.entries,
			id: newId(),
			at: entry.now,
			event: entry.event,
			person_id: entry.personId,
			person_name: short(entry.personName ?? (await nameOf(work, entry.personId ?? ''))),
			token: short(entry.token),
			subject: short(entry.subject),
			subject_name: short(entry.subjectName ?? (await nameOf(work, entry.subject ?? ''))),
			detail: short(entry.detail),
			address: entry.address
		};
		const digest = digestOf(chain.digest, said);
		await work
			.insertInto('audit')
			.values({ ...said, digest })
			.execute();
		await work.updateTable('audit_chain').set({ digest }).where('id', '=', 'trail').execute();
	});
}

/** What the trail calls a person or a workbook; empty for what is neither. */
async function nameOf(db: Database, id: string): Promise<string> {
	if (id === '') return '';
	const person = await db
		.selectFrom('people')
		.where('id', '=', id)
		.select(['name', 'email'])
		.executeTakeFirst();
	if (person) return trailName(person);
	const workbook = await db
		.selectFrom('workbooks')
		.where('id', '=', id)
		.select('title')
		.executeTakeFirst();
	return workbook?.title ?? '';
}

export const trailName = ({ name, email }: { readonly name: string; readonly email: string }) =>
	`${name} <${email}>`;

/** A page of it, newest first; `before` is the number of the last entry of the page before. */
export async function readAudit(db: Database, before: number | undefined, limit: number) {
	let query = db.selectFrom('audit').selectAll();
	if (before !== undefined) query = query.where('seq', '<', before);
	const rows = await query.orderBy('seq', 'desc').limit(limit).execute();
	return rows.map(({ person_id, person_name, subject_name, ...row }) => ({
		...row,
		personId: person_id,
		personName: person_name,
		subjectName: subject_name
	}));
}

/** Entries read at a time. */
const PAGE = 500;

/** All of it from the first entry on, page by page; what is added meanwhile comes along. */
export async function* wholeTrail(db: Database): AsyncGenerator<Chained> {
	for (let last = 0; ;) {
		const rows = await db
			.selectFrom('audit')
			.selectAll()
			.where('seq', '>', last)
			.orderBy('seq')
			.limit(PAGE)
			.execute();
		yield* rows;
		if (rows.length < PAGE) return;
		last = rows.at(-1)!.seq;
	}
}

/** The same as lines of JSON. */
export async function* trailLines(db: Database): AsyncGenerator<string> {
	for await (const entry of wholeTrail(db)) yield `${JSON.stringify(entry)}\n`;
}

/** How many entries were written, and the digest of the last; null where there is none yet. */
export async function trailEnd(db: Database): Promise<Anchor | null> {
	const row = await db.selectFrom('audit_chain').selectAll().executeTakeFirst();
	return row ? { seq: row.entries, digest: row.digest } : null;
}
