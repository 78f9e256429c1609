/**
 * Sessions: who is signed in, in which browser, until when. The browser holds a secret, the store only its hash, so
 * that a copy of the store signs nobody in.
 */
import { faultOf } from '../store/faults';
import { hashOf, newId, newToken } from '../store/ids';
import type { Database } from '../store/tables';
import { asPerson, PERSON_COLUMNS, type Person } from './people';

export interface Session {
	readonly id: string;
	readonly person: Person;
	/** Seconds that it goes on without use, where this use has just renewed it; null where it stands. */
	readonly renewedFor: number | null;
}

/** How long a session goes on without use, and however much it is used. */
export interface Lasting {
	readonly sessionHours: number;
	readonly sessionDays: number;
}

/** When a session ends that is used now. */
const endOf = (begun: number, now: number, { sessionHours, sessionDays }: Lasting): number =>
	Math.min(now + sessionHours * 3_600_000, begun + sessionDays * 24 * 3_600_000);
/** How stale "last seen" may be: not every request writes. */
const SEEN_EVERY_MS = 60_000;

export async function startSession(
	db: Database,
	personId: string,
	agent: string,
	now: number,
	lasting: Lasting
): Promise<{ readonly token: string; readonly seconds: number }> {
	const token = newToken();
	const expiresAt = endOf(now, now, lasting);
	await db.deleteFrom('sessions').where('expires_at', '<', now).execute();
	await db
		.insertInto('sessions')
		.values({
			id: newId(),
			person_id: personId,
			token_hash: hashOf(token),
			created_at: now,
			seen_at: now,
			expires_at: expiresAt,
			agent: agent.slice(0, 120)
		})
		.execute();
	return { token, seconds: Math.round((expiresAt - now) / 1000) };
}

/** Null for a secret that is unknown, revoked or too old. Without `lasting` it is looked at, and not used. */
export async function findSession(
	db: Database,
	token: string,
	now: number,
	lasting: Lasting | null
): Promise<Session | null> {
	const row = await db
		.selectFrom('sessions as s')
		.innerJoin('people as p', 'p.id', 's.person_id')
		.where('s.token_hash', '=', hashOf(token))
		.where('s.expires_at', '>', now)
		.select(PERSON_COLUMNS.map((column) => `p.${column}` as const))
		.select(['s.id as session', 's.created_at', 's.seen_at'])
		.executeTakeFirst();
	if (!row) return null;
	const isDue = lasting !== null && now - row.seen_at > SEEN_EVERY_MS;
	const renewedFor = isDue ? await renew(db, row.session, row.created_at, now, lasting) : null;
	return { id: row.session, person: asPerson(row), renewedFor };
}

async function renew(
	db: Database,
	id: string,
	begun: number,
	now: number,
	lasting: Lasting
): Promise<number | null> {
	const expiresAt = endOf(begun, now, lasting);
	try {
		await db
			.updateTable('sessions')
			.set({ seen_at: now, expires_at: expiresAt })
			.where('id', '=', id)
			.execute();
	} catch (error) {
		// A full disk keeps nobody from reading.
		if (faultOf(error) !== 'unwritable') throw error;
		return null;
	}
	return Math.round((expiresAt - now) / 1000);
}

export async function listSessions(db: Database, personId: string, now: number) {
	const rows = await db
		.selectFrom('sessions')
		.where('person_id', '=', personId)
		.where('expires_at', '>', now)
		.select(['id', 'created_at', 'seen_at', 'expires_at', 'agent'])
		.orderBy('seen_at', 'desc')
		.execute();
	return rows.map(({ id, created_at, seen_at, expires_at, agent }) => ({
		id,
		createdAt: created_at,
		seenAt: seen_at,
		expiresAt: expires_at,
		agent
	}));
}

/** How many browsers each person is signed in from, and when they last came. */
export async function seenBy(
	db: Database,
	now: number
): Promise<Map<string, { readonly sessions: number; readonly seenAt: number | null }>> {
	const rows = await db
		.selectFrom('sessions')
		.where('expires_at', '>', now)
		.groupBy('person_id')
		.select((row) => [
			'person_id',
			row.fn.countAll<number>().as('sessions'),
			row.fn.max('seen_at').as('seen_at')
		])
		.execute();
	return new Map(
		rows.map(({ person_id, sessions, seen_at }) => [
			person_id,
			{ sessions: Number(sessions), seenAt: Number(seen_at) }
		])
	);
}

/** One session of a person, or all of them but one. The number that ended. */
export async function endSessions(
	db: Database,
	personId: string,
	which: { readonly only: string } | { readonly except: string | null }
): Promise<number> {
	let query = db.deleteFrom('sessions').where('person_id', '=', personId);
	if ('only' in which) query = query.where('id', '=', which.only);
	else if (which.except !== null) query = query.where('id', '!=', which.except);
	return Number((await query.executeTakeFirst()).numDeletedRows);
}
