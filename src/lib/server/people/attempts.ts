/**
 * Slows down guessing of passwords without locking anyone out: each wrong one makes the next wait longer, but only
 * for that account from that address. A browser that its person has signed in from before counts by itself, so
 * that nobody else's guesses, even from the same address, keep them out.
 *
 * A try counts as wrong before the password is looked at, and is forgotten when it was right: guesses that are sent
 * all at once are counted one after the other, by the database.
 */
import { hashOf } from '../store/ids';
import type { Database } from '../store/tables';

/** Wrong passwords before the first wait, and the waits: 2 s, 4 s … up to 15 minutes. */
const FREE = 4;
const FIRST_WAIT_MS = 2000;
const LONGEST_WAIT_MS = 15 * 60_000;
/** After a day without any, they are forgotten. */
const FORGET_MS = 24 * 3_600_000;

/** `from` is the address, the secret of a browser known to belong to the account, or a session of it. */
export const attemptKey = (from: string, email: string): string =>
	hashOf(`${networkOf(from)}\n${email.trim().toLowerCase()}`);

/** Whoever has an IPv6 address has billions of them: all that share the first 64 bits count as one. */
export function networkOf(address: string): string {
	if (!/^[\da-f:]+$/i.test(address) || !address.includes(':')) return address;
	const [head = '', tail = ''] = address.toLowerCase().split('::');
	const groups = head === '' ? [] : head.split(':');
	if (address.includes('::')) {
		const after = tail === '' ? [] : tail.split(':');
		while (groups.length + after.length < 8) groups.push('0');
		groups.push(...after);
	}
	return groups
		.slice(0, 4)
		.map((group) => group.replace(/^0+(?=.)/, ''))
		.join(':');
}

/** Takes one try: milliseconds to wait instead, or 0 to go on. A try that turns out right is given back. */
export async function takeTry(db: Database, key: string, now: number): Promise<number> {
	await db
		.deleteFrom('attempts')
		.where('last_at', '<', now - FORGET_MS)
		.execute();
	return db.transaction().execute(async (work) => {
		// The row is written before it is read, so that others who try at once wait for it.
		const row = await work
			.insertInto('attempts')
			.values({ key, failures: 0, last_at: now })
			.onConflict((conflict) =>
				conflict
					.column('key')
					.doUpdateSet((known) => ({ failures: known.ref('attempts.failures') }))
			)
			.returning(['failures', 'last_at'])
			.executeTakeFirstOrThrow();
		const wait = waitAfter(row, now);
		if (wait > 0) return wait;
		await work
			.updateTable('attempts')
			.set({ failures: row.failures + 1, last_at: now })
			.where('key', '=', key)
			.execute();
		return 0;
	});
}

function waitAfter({ failures, last_at }: { failures: number; last_at: number }, now: number) {
	if (failures < FREE) return 0;
	const wait = Math.min(FIRST_WAIT_MS * 2 ** Math.min(failures - FREE, 20), LONGEST_WAIT_MS);
	// A clock that was set back must not lengthen it.
	return Math.max(0, wait - Math.max(0, now - last_at));
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
