/**
 * The audit trail is numbered without gaps, keeps names beside ids, and carries a digest of each entry with all before
 * it. The database itself refuses to change or remove an entry.
 */
import { sql, type Kysely } from 'kysely';
import { digestOf } from '../../people/audit-chain';

interface OldEntry {
	readonly id: string;
	readonly at: number;
	readonly event: string;
	readonly person_id: string | null;
	readonly subject: string;
	readonly detail: string;
	readonly address: string;
}

export async function chainedTrail(
	db: Kysely<unknown>,
	kind: 'embedded' | 'postgres'
): Promise<void> {
	const alter = () => db.schema.alterTable('audit');
	await alter().addColumn('seq', 'bigint').execute();
	for (const name of ['person_name', 'subject_name', 'token', 'digest'])
		await alter()
			.addColumn(name, 'text', (c) => c.notNull().defaultTo(''))
			.execute();
	await db.schema
		.createTable('audit_chain')
		.addColumn('id', 'text', (c) => c.primaryKey())
		.addColumn('entries', 'bigint', (c) => c.notNull())
		.addColumn('digest', 'text', (c) => c.notNull())
		.execute();
	await number(db);
	await db.schema.createIndex('audit_by_number').on('audit').column('seq').unique().execute();
	for (const line of GUARDS[kind]) await sql.raw(line).execute(db);
}

/** What stood there before is taken as it stands: names where the people are still here. */
async function number(db: Kysely<unknown>): Promise<void> {
	const people = await sql<{
		id: string;
		name: string;
		email: string;
	}>`select id, name, email from people`.execute(db);
	const names = new Map(people.rows.map(({ id, name, email }) => [id, `${name} <${email}>`]));
	const { rows } =
		await sql<OldEntry>`select id, at, event, person_id, subject, detail, address from audit order by at, id`.execute(
			db
		);
	let digest = '';
	let seq = 0;
	for (const row of rows) {
		seq++;
		const entry = {
			...row,
			seq,
			person_name: names.get(row.person_id ?? '') ?? '',
			subject_name: names.get(row.subject) ?? '',
			token: ''
		};
		digest = digestOf(digest, entry);
		await sql`update audit set seq = ${seq}, person_name = ${entry.person_name},
			subject_name = ${entry.subject_name}, digest = ${digest} where id = ${row.id}`.execute(db);
	}
	if (seq > 0)
		await sql`insert into audit_chain (id, entries, digest) values ('trail', ${seq}, ${digest})`.execute(
			db
		);
}

const REFUSAL = 'the audit trail is only ever added to';
const GUARDS = {
	embedded: ['update', 'delete'].map(
		(what) =>
			`create trigger audit_no_${what} before ${what} on audit begin select raise(abort, '${REFUSAL}'); end`
	),
	postgres: [
		`create function audit_is_kept() returns trigger language plpgsql as $$ begin raise exception '${REFUSAL}'; end $$`,
		'create trigger audit_no_change before update or delete on audit for each row execute function audit_is_kept()',
		'create trigger audit_no_emptying before truncate on audit for each statement execute function audit_is_kept()'
	]
} as const;
