/** Workbooks with their revisions, and people with what they may do. */
import type { CreateTableBuilder, Kysely } from 'kysely';

type Table = CreateTableBuilder<string, string>;

const text = <T extends Table>(table: T, ...names: string[]) =>
	names.reduce<Table>((made, name) => made.addColumn(name, 'text', (c) => c.notNull()), table);
const whole = <T extends Table>(table: T, ...names: string[]) =>
	names.reduce<Table>((made, name) => made.addColumn(name, 'bigint', (c) => c.notNull()), table);

export async function firstTables(db: Kysely<unknown>): Promise<void> {
	const create = (name: string) => db.schema.createTable(name) as Table;
	const withId = (name: string) => create(name).addColumn('id', 'text', (c) => c.primaryKey());
	const ofPerson = (table: Table) =>
		text(table, 'person_id').addForeignKeyConstraint(
			`${nameOf(table)}_person`,
			['person_id'],
			'people',
			['id'],
			(key) => key.onDelete('cascade')
		);
	const ofWorkbook = (table: Table) =>
		text(table, 'workbook_id').addForeignKeyConstraint(
			`${nameOf(table)}_workbook`,
			['workbook_id'],
			'workbooks',
			['id'],
			(key) => key.onDelete('cascade')
		);

	await whole(text(withId('people'), 'name'), 'steward', 'created_at')
		.addColumn('email', 'text', (c) => c.notNull().unique())
		.addColumn('password', 'text')
		.execute();
	await whole(text(withId('workbooks'), 'title'), 'head', 'created_at')
		.addColumn('removed_at', 'bigint')
		.execute();
	await whole(
		text(ofWorkbook(create('revisions')), 'author_name', 'reason', 'document', 'changes'),
		'number',
		'made_at',
		'locked'
	)
		.addColumn('author_id', 'text')
		.addColumn('restores', 'bigint')
		.addColumn('name', 'text')
		.addPrimaryKeyConstraint('revisions_key', ['workbook_id', 'number'])
		.addUniqueConstraint('revisions_name', ['workbook_id', 'name'])
		.execute();
	await whole(
		text(ofWorkbook(create('value_changes')), 'quantity', 'scenario', 'at'),
		'number',
		'place'
	)
		.addColumn('was', 'text')
		.addColumn('now', 'text')
		.addPrimaryKeyConstraint('value_changes_key', ['workbook_id', 'number', 'place'])
		.execute();
	await db.schema
		.createIndex('value_changes_by_quantity')
		.on('value_changes')
		.columns(['workbook_id', 'quantity', 'number'])
		.execute();
	await text(ofPerson(ofWorkbook(create('memberships'))), 'role')
		.addPrimaryKeyConstraint('memberships_key', ['workbook_id', 'person_id'])
		.execute();
	await whole(text(ofPerson(withId('sessions')), 'agent'), 'created_at', 'seen_at', 'expires_at')
		.addColumn('token_hash', 'text', (c) => c.notNull().unique())
		.execute();
	await whole(text(ofPerson(create('devices')), 'token_hash'), 'created_at')
		.addPrimaryKeyConstraint('devices_key', ['person_id', 'token_hash'])
		.execute();
	await whole(text(withId('invitations'), 'email', 'invited_by'), 'created_at', 'expires_at')
		.addColumn('token_hash', 'text', (c) => c.notNull().unique())
		.addColumn('workbook_id', 'text')
		.addColumn('role', 'text')
		.execute();
	await whole(
		create('attempts').addColumn('key', 'text', (c) => c.primaryKey()),
		'failures',
		'last_at'
	).execute();
	await whole(text(withId('audit'), 'event', 'subject', 'detail', 'address'), 'at')
		.addColumn('person_id', 'text')
		.execute();
	await db.schema.createIndex('audit_by_time').on('audit').columns(['at']).execute();
}

const nameOf = (table: Table): string => table.toOperationNode().table.table.identifier.name;
