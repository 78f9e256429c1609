/** What a person may do beyond their workbooks, and links by which a password is set anew. */
import type { Kysely } from 'kysely';

export async function rightsOfPeople(db: Kysely<unknown>): Promise<void> {
	for (const right of ['may_begin', 'may_invite'])
		await db.schema
			.alterTable('people')
			// Whoever has an account already could do both.
			.addColumn(right, 'bigint', (c) => c.notNull().defaultTo(1))
			.execute();
	await db.schema
		.createTable('resets')
		.addColumn('id', 'text', (c) => c.primaryKey())
		.addColumn('person_id', 'text', (c) => c.notNull())
		.addColumn('token_hash', 'text', (c) => c.notNull().unique())
		.addColumn('created_at', 'bigint', (c) => c.notNull())
		.addColumn('expires_at', 'bigint', (c) => c.notNull())
		.addForeignKeyConstraint('resets_person', ['person_id'], 'people', ['id'], (key) =>
			key.onDelete('cascade')
		)
		.execute();
}
