/**
 * A password is set anew by a link that a steward makes and passes on. Its secret is shown once and kept as a hash;
 * it ends after a day, with its use, and with the next link. The old password holds until then.
 */
import { hashOf, newId, newToken } from '../store/ids';
import type { Database } from '../store/tables';
import { endSessions } from './sessions';
import { endTokens } from './tokens';

export const RESET_LASTS_MS = 24 * 3_600_000;

export async function makeReset(
	db: Database,
	personId: string,
	now: number
): Promise<{ readonly token: string; readonly expiresAt: number }> {
	const token = newToken();
	const expiresAt = now + RESET_LASTS_MS;
	await db
		.deleteFrom('resets')
		.where((row) => row.or([row('expires_at', '<', now), row('person_id', '=', personId)]))
		.execute();
	await db
		.insertInto('resets')
		.values({
			id: newId(),
			person_id: personId,
			token_hash: hashOf(token),
			created_at: now,
			expires_at: expiresAt
		})
		.execute();
	return { token, expiresAt };
}

/** Whose password a link sets; null for one that is unknown, used or too old. */
export async function findReset(db: Database, token: string, now: number) {
	const row = await db
		.selectFrom('resets as r')
		.innerJoin('people as p', 'p.id', 'r.person_id')
		.where('r.token_hash', '=', hashOf(token))
		.where('r.expires_at', '>', now)
		.select(['r.id', 'p.id as person', 'p.email'])
		.executeTakeFirst();
	return row ?? null;
}

/** True for the one who used it first. */
export async function useReset(db: Database, id: string): Promise<boolean> {
	const done = await db.deleteFrom('resets').where('id', '=', id).executeTakeFirst();
	return done.numDeletedRows > 0n;
}

/**
 * Sets a password, and ends what the old one had opened: sessions, links for another; and where nobody confirmed it by the
 * old one, known browsers and API tokens as well.
 */
export async function setPassword(
	db: Database,
	personId: string,
	hash: string,
	keep: { readonly session: string | null }
): Promise<void> {
	await db.updateTable('people').set({ password: hash }).where('id', '=', personId).execute();
	await endSessions(db, personId, { except: keep.session });
	await db.deleteFrom('resets').where('person_id', '=', personId).execute();
	// A browser that only the guesser knows must not count as the person's.
	if (keep.session === null) {
		await db.deleteFrom('devices').where('person_id', '=', personId).execute();
		await endTokens(db, personId);
	}
}
