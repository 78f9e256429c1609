/**
 * The schema, step by step, the same for both databases. Oldest first; a released step is never edited, the
 * next one is appended.
 *
 * Steps run in one transaction that holds off every other process, so that two which start together
 * do not both take them.
 */
import { sql, type Kysely } from 'kysely';
import { firstTables } from './migrations/0001-first-tables';
import { chainedTrail } from './migrations/0003-chained-trail';
import { tokens } from './migrations/0004-tokens';
import { rightsOfPeople } from './migrations/0002-rights-of-people';

interface Migration {
	readonly name: string;
	readonly up: (db: Kysely<unknown>, kind: 'embedded' | 'postgres') => Promise<void>;
}

export const MIGRATIONS: readonly Migration[] = [
	{ name: '0001-first-tables', up: firstTables },
	{ name: '0002-rights-of-people', up: rightsOfPeople },
	{ name: '0003-chained-trail', up: chainedTrail },
	{ name: '0004-tokens', up: tokens }
];

/** The folder was written by a newer version than this one. */
export class NewerSchemaError extends Error {
	override name = 'NewerSchemaError';
	constructor(readonly step: string) {
		super(
			`The data were written by a newer version of Metrewright (its step "${step}" is not known here). Update the app, or restore a back-up made by this version.`
		);
	}
}

/** Any number that no other program takes in the same database. */
const LOCK = 7_236_519;

/** Brings the schema up; gives the names of the steps taken now. */
export async function migrate(
	db: Kysely<unknown>,
	kind: 'embedded' | 'postgres',
	now: number
): Promise<string[]> {
	return db.transaction().execute(async (work) => {
		if (kind === 'postgres') await sql`select pg_advisory_xact_lock(${LOCK})`.execute(work);
		await work.schema
			.createTable('migrations')
			.ifNotExists()
			.addColumn('name', 'text', (column) => column.primaryKey())
			.addColumn('taken_at', 'bigint', (column) => column.notNull())
			.execute();
		const taken = (await sql<{ name: string }>`select name from migrations`.execute(work)).rows;
		const names = new Set(taken.map(({ name }) => name));
		for (const name of [...names].sort())
			if (!MIGRATIONS.some((migration) => migration.name === name))
				throw new NewerSchemaError(name);
		const steps: string[] = [];
		for (const { name, up } of MIGRATIONS) {
			if (names.has(name)) continue;
			await up(work, kind);
			await sql`insert into migrations (name, taken_at) values (${name}, ${now})`.execute(work);
			steps.push(name);
		}
		return steps;
	});
}
