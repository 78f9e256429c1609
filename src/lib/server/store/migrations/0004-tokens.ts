/** Secrets by which programs use the interface in a person's name. */
import type { Kysely } from 'kysely';

export async function tokens(db: Kysely<unknown>): Promise<void> {
	await db.schema
		.createTable('tokens')
		.addColumn('id', 'text', (c) => c.primaryKey())
		.addColumn('person_id', 'text', (c) => c.notNull())
		.addColumn('token_hash', 'text', (c) => c.notNull().unique())
		.addColumn('name', 'text', (c) => c.notNull())
		.addColumn('scope', 'text', (c) => c.notNull())
		.addColumn('workbooks', 'text')
		.addColumn('created_at', 'bigint', (c) => c.notNull())
		.addColumn('expires_at', 'bigint', (c) => c.notNull())
		.addColumn('used_at', 'bigint')
		.addForeignKeyConstraint('tokens_person', ['person_id'], 'people', ['id'], (key) =>
			key.onDelete('cascade')
		)
		.execute();
}
