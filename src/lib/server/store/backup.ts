/**
 * Back-up and restore: everything in the store as one compressed file of JSON lines, the same for both databases, so
 * that one may be restored into the other.
 *
 * The first line says what it is, the last how many rows there are: a file that broke off is not restored.
 */
import { createReadStream, createWriteStream } from 'node:fs';
import { open, rename, rm } from 'node:fs/promises';
import { createInterface } from 'node:readline';
import { pipeline } from 'node:stream/promises';
import { createGunzip, createGzip } from 'node:zlib';
import { Readable } from 'node:stream';
import { sql, type Kysely } from 'kysely';
import { MIGRATIONS } from './migrations';
import { TABLES, type Database } from './tables';

const FORMAT = 'metrewright-backup';
/** Rows read at a time. */
const PAGE = 200;

/** Columns that name each row, so that pages follow each other. */
const KEYS: Readonly<Record<(typeof TABLES)[number], readonly string[]>> = {
	people: ['id'],
	workbooks: ['id'],
	revisions: ['workbook_id', 'number'],
	value_changes: ['workbook_id', 'number', 'place'],
	memberships: ['workbook_id', 'person_id'],
	sessions: ['id'],
	devices: ['person_id', 'token_hash'],
	invitations: ['id'],
	resets: ['id'],
	attempts: ['key'],
	tokens: ['id'],
	audit: ['seq'],
	audit_chain: ['id']
};

/** Signed-in browsers, wrong guesses and links for a new password are of the moment: a restore starts without them. */
const PASSING = new Set<string>(['sessions', 'attempts', 'resets']);
const KEPT = TABLES.filter((table) => !PASSING.has(table));

const step = (): string => MIGRATIONS.at(-1)!.name;

/** Writes the file whole or not at all; gives the number of rows. */
export async function backUp(db: Database, file: string, now: number): Promise<number> {
	const partial = `${file}.partial`;
	let rows = 0;
	try {
		await db
			.transaction()
			.setIsolationLevel('repeatable read')
			.execute(async (work) => {
				const lines = async function* () {
					yield line({ format: FORMAT, step: step(), at: new Date(now).toISOString() });
					for (const table of KEPT)
						for await (const row of rowsOf(work, table)) {
							rows++;
							yield line({ table, row });
						}
					yield line({ end: rows });
				};
				await pipeline(
					Readable.from(lines()),
					createGzip(),
					createWriteStream(partial, { mode: 0o600 })
				);
			});
		const handle = await open(partial, 'r+');
		await handle.sync();
		await handle.close();
		await rename(partial, file);
	} catch (error) {
		await rm(partial, { force: true });
		throw error;
	}
	return rows;
}

const line = (value: object): string => `${JSON.stringify(value)}\n`;

async function* rowsOf(
	db: Kysely<never> | Database,
	table: (typeof TABLES)[number]
): AsyncGenerator<object> {
	const keys = KEYS[table].map((key) => sql.ref(key));
	const order = sql.join(keys);
	for (let offset = 0; ; offset += PAGE) {
		const page =
			await sql<object>`select * from ${sql.table(table)} order by ${order} limit ${PAGE} offset ${offset}`.execute(
				db
			);
		yield* page.rows;
		if (page.rows.length < PAGE) return;
	}
}

/** Why a file is not restored, in words. */
export class RestoreError extends Error {
	override name = 'RestoreError';
}

/** Puts everything back into a store that holds nothing yet; all or nothing. The number of rows. */
export async function restore(db: Database, file: string): Promise<number> {
	try {
		return await restoreAll(db, file);
	} catch (error) {
		// What unpacks the file knows only that its bytes are wrong.
		const code = (error as NodeJS.ErrnoException).code ?? '';
		if (code === 'Z_BUF_ERROR') throw brokenOff();
		if (code.startsWith('Z_') || error instanceof SyntaxError) throw noBackup();
		throw error;
	}
}

function restoreAll(db: Database, file: string): Promise<number> {
	return db.transaction().execute(async (work) => {
		for (const table of KEPT) {
			const found = await sql`select 1 from ${sql.table(table)} limit 1`.execute(work);
			if (found.rows.length > 0)
				throw new RestoreError(
					'The store holds data already, and a restore would mix the two. Set METREWRIGHT_DATA or DATABASE_URL to an empty one.'
				);
		}
		let rows = 0;
		let state: 'begin' | 'rows' | 'end' = 'begin';
		const reader = createInterface({ input: createReadStream(file).pipe(createGunzip()) });
		for await (const text of reader) {
			const entry = JSON.parse(text) as {
				format?: string;
				step?: string;
				table?: string;
				row?: Record<string, unknown>;
				end?: number;
			};
			if (state === 'begin') {
				checkHead(entry);
				state = 'rows';
			} else if (entry.end !== undefined) {
				if (entry.end !== rows) throw brokenOff();
				state = 'end';
			} else if (entry.row && KEPT.some((table) => table === entry.table)) {
				const columns = Object.keys(entry.row);
				const values = Object.values(entry.row).map((value) => sql`${value}`);
				await sql`insert into ${sql.table(entry.table!)} (${sql.join(columns.map((name) => sql.ref(name)))}) values (${sql.join(values)})`.execute(
					work
				);
				rows++;
			}
		}
		if (state !== 'end') throw brokenOff();
		return rows;
	});
}

const noBackup = () =>
	new RestoreError('This is no back-up of Metrewright. Choose a file that "backup" wrote.');

function checkHead(head: { format?: string; step?: string }): void {
	if (head.format !== FORMAT) throw noBackup();
	if (!MIGRATIONS.some(({ name }) => name === head.step))
		throw new RestoreError('This back-up is of a newer version. Update the app, then restore it.');
	if (head.step !== step())
		throw new RestoreError(
			`This back-up is of the older step "${head.step}". Restore it with the version that wrote it, then update.`
		);
}

const brokenOff = () =>
	new RestoreError('The back-up is not whole: its end is missing. Choose another one.');
