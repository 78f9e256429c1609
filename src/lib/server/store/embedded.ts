/**
 * The embedded database: one file in a folder, nothing to install.
 *
 * It keeps a rollback journal and waits for the disk at each commit, so that no acknowledged save is lost by a
 * crash of the process or of the machine. The write-ahead log is left off: the engine that this driver bundles
 * predates the mending of a fault in it. Several processes may open the folder; they wait for each other.
 */
import { existsSync, mkdirSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import {
	CompiledQuery,
	Kysely,
	SqliteDialect,
	SqliteDriver,
	type DatabaseConnection,
	type QueryResult,
	type SqliteDatabase,
	type SqliteDialectConfig
} from 'kysely';
import Libsql from 'libsql';
import { faultOf } from './faults';
import type { Tables } from './tables';

export const FILE = 'metrewright.db';

/** How long a statement waits for another process's commit, in all and asleep in one piece. */
const PATIENCE_MS = 10_000;
const NAP_MS = 100;

/** Takes the lock of a reader: a deferred transaction alone takes none. */
const READING = 'begin; select 1 from sqlite_schema limit 1';

/**
 * Tries again while another process writes. The engine's own waiting would keep this process from answering
 * anyone, so it is kept to short naps with the event loop in between.
 */
class PatientConnection implements DatabaseConnection {
	constructor(readonly inner: DatabaseConnection) {}

	async executeQuery<R>(query: CompiledQuery): Promise<QueryResult<R>> {
		const last = Date.now() + PATIENCE_MS;
		for (;;) {
			try {
				return await this.inner.executeQuery<R>(query);
			} catch (error) {
				// A statement that met a busy file has done nothing.
				if (faultOf(error) !== 'busy' || Date.now() > last) throw error;
				await new Promise((resolve) => setTimeout(resolve, 2 + Math.random() * 10));
			}
		}
	}

	streamQuery<R>(query: CompiledQuery, size: number): AsyncIterableIterator<QueryResult<R>> {
		return this.inner.streamQuery<R>(query, size);
	}
}

class PatientDriver extends SqliteDriver {
	override async acquireConnection(): Promise<DatabaseConnection> {
		return new PatientConnection(await super.acquireConnection());
	}

	/** Takes the right to write at once: a transaction that asked for it later could be refused. */
	override async beginTransaction(connection: DatabaseConnection): Promise<void> {
		await connection.executeQuery(CompiledQuery.raw('begin immediate'));
	}
}

class EmbeddedDialect extends SqliteDialect {
	constructor(readonly config: SqliteDialectConfig) {
		super(config);
	}
	override createDriver() {
		return new PatientDriver(this.config);
	}
}

/** Opens the folder's database, and makes both if they are not there. */
export function openEmbedded(folder: string): Kysely<Tables> {
	makeFolder(resolve(folder));
	const file = new Libsql(join(folder, FILE));
	file.pragma(`busy_timeout = ${NAP_MS}`);
	file.pragma('journal_mode = TRUNCATE');
	file.pragma('synchronous = FULL');
	file.pragma('foreign_keys = ON');
	return new Kysely<Tables>({ dialect: new EmbeddedDialect({ database: withoutLeaks(file) }) });
}

/** Level by level: asked for all at once, the runtime tries for ever where a folder can never be made. */
function makeFolder(folder: string): void {
	if (existsSync(folder)) return;
	makeFolder(dirname(folder));
	try {
		mkdirSync(folder, { mode: 0o700 });
	} catch (error) {
		// Another process made it meanwhile.
		if (!existsSync(folder)) throw error;
	}
}

/**
 * The driver leaves a statement open that met a busy file, and with it a lock that keeps others from writing.
 * So every lock is taken by `exec`, which does not: statements outside of a transaction get one of their own.
 */
function withoutLeaks(file: Libsql.Database): SqliteDatabase {
	const alone = <T>(begin: string, work: () => T): T => {
		if (file.inTransaction) return work();
		try {
			file.exec(begin);
			const done = work();
			file.exec('commit');
			return done;
		} catch (error) {
			if (file.inTransaction) file.exec('rollback');
			throw error;
		}
	};
	return {
		close: () => void file.close(),
		prepare(sql) {
			if (/^(begin|commit|rollback)/.test(sql)) {
				const run = () => {
					file.exec(sql);
					return { changes: 0, lastInsertRowid: 0 };
				};
				return { reader: false, run, all: () => [], iterate: () => [].values() };
			}
			const begin = /^\s*select/.test(sql) ? READING : 'begin immediate';
			const prepared = () => file.prepare(sql);
			return {
				reader: /^\s*select|\breturning\b/.test(sql),
				all: (values) => alone(begin, () => prepared().all(...values)),
				run: (values) => alone(begin, () => prepared().run(...values)),
				iterate: (values) => alone(begin, () => prepared().all(...values)).values()
			};
		}
	};
}
