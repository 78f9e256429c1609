/**
 * PostgreSQL, for teams and for several app processes beside each other.
 */
import { Kysely, PostgresDialect } from 'kysely';
import pg from 'pg';
import type { Tables } from './tables';

/** PostgreSQL's number for a whole number of 64 bits, which the driver hands out as text unless told. */
const INT8 = 20;

export function openPostgres(url: string, connections = 10): Kysely<Tables> {
	const pool = new pg.Pool({
		connectionString: url,
		max: connections,
		connectionTimeoutMillis: 5000,
		statement_timeout: 60_000,
		application_name: 'metrewright',
		types: {
			getTypeParser: (oid: number, format?: 'text' | 'binary') =>
				// Moments and counts are far below what a double holds exactly.
				oid === INT8 && format !== 'binary' ? Number : pg.types.getTypeParser(oid, format)
		}
	});
	// A connection lost while idle is opened anew when it is needed; without a listener it would end the process.
	pool.on('error', () => undefined);
	return new Kysely<Tables>({ dialect: new PostgresDialect({ pool }) });
}
