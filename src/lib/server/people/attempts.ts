/**
 * Slows down guessing of passwords without locking anyone out: each wrong one makes the next wait longer, but only
 * for that account from that address. A browser that its person has signed in from before counts by itself, so
 * that nobody else's guesses, even from the same address, keep them out.
 */
import { hashOf } from '../store/ids';
import type { Database } from '../store/tables';

/** Wrong passwords before the first wait, and the waits: 2 s, 4 s … up to 15 minutes. */
const FREE = 4;
const FIRST_WAIT_MS = 2000;
const LONGEST_WAIT_MS = 15 * 60_000;
/** After a day without any, they are forgotten. */
const FORGET_MS = 24 * 3_600_000;

/** `from` is the address, or the secret of a browser known to belong to the account. */
export const attemptKey = (from: string, email: string): string => hashOf(`${from}\n${email}`);

/** Milliseconds to wait before the next try; 0 for none. */
export async function waitFor(db: Database, key: string, now: number): Promise<number> {
	const row = await db
		.selectFrom('attempts')
		.where('key', '=', key)
		.select(['failures', 'last_at'])
		.executeTakeFirst();
	if (!row || now - row.last_at > FORGET_MS || row.failures < FREE) return 0;
	const wait = Math.min(FIRST_WAIT_MS * 2 ** Math.min(row.failures - FREE, 20), LONGEST_WAIT_MS);
	return Math.max(0, row.last_at + wait - now);
}

export async function noteFailure(db: Database, key: string, now: number): Promise<void> {
	await db
		.deleteFrom('attempts')
		.where('last_at', '<', now - FORGET_MS)
		.execute();
	await db
		.insertInto('attempts')
		.values({ key, failures: 1, last_at: now })
		.onConflict((conflict) =>
			conflict
				.column('key')
				.doUpdateSet((row) => ({ failures: row('attempts.failures', '+', 1), last_at: now }))
		)
		.execute();
}

export async function forgetFailures(db: Database, key: string): Promise<void> {
	await db.deleteFrom('attempts').where('key', '=', key).execute();
}

/** Whether a browser's secret is of one that this person has signed in from. */
export async function isKnownDevice(
	db: Database,
	personId: string,
	secret: string
): Promise<boolean> {
	const row = await db
		.selectFrom('devices')
		.where('person_id', '=', personId)
		.where('token_hash', '=', hashOf(secret))
		.select('created_at')
		.executeTakeFirst();
	return row !== undefined;
}

/** A person's last few browsers are remembered. */
const DEVICES = 10;

export async function rememberDevice(
	db: Database,
	personId: string,
	secret: string,
	now: number
): Promise<void> {
	await db
		.insertInto('devices')
		.values({ person_id: personId, token_hash: hashOf(secret), created_at: now })
		.onConflict((conflict) => conflict.columns(['person_id', 'token_hash']).doNothing())
		.execute();
	const kept = await db
		.selectFrom('devices')
		.where('person_id', '=', personId)
		.select('created_at')
		.orderBy('created_at', 'desc')
		.offset(DEVICES)
		.limit(1)
		.executeTakeFirst();
	if (kept)
		await db
			.deleteFrom('devices')
			.where('person_id', '=', personId)
			.where('created_at', '<=', kept.created_at)
			.execute();
}
