/**
 * Opens the store that the settings name, brings its schema up, and closes it.
 */
import { sql, type Kysely } from 'kysely';
import { openEmbedded } from './embedded';
import { migrate } from './migrations';
import { openPostgres } from './postgres';
import type { Database } from './tables';

export interface Store {
	readonly kind: 'embedded' | 'postgres';
	readonly db: Database;
	close(): Promise<void>;
}

export type Where = { readonly folder: string } | { readonly url: string };

export async function openStore(where: Where, now: number): Promise<Store> {
	const kind = 'url' in where ? 'postgres' : 'embedded';
	const db = 'url' in where ? openPostgres(where.url) : openEmbedded(where.folder);
	try {
		await migrate(db as unknown as Kysely<unknown>, kind, now);
	} catch (error) {
		await db.destroy();
		throw error;
	}
	return { kind, db, close: () => db.destroy() };
}

/** Throws what the database throws where it does not answer. */
export async function ask(db: Database): Promise<void> {
	await sql`select count(*) from migrations`.execute(db);
}
