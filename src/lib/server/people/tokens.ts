/**
 * API tokens: a program does in a person's name what its scope allows, in the workbooks that it is for, until its
 * day. It never does more than the person may, and nothing that concerns people. The secret is shown once.
 */
import { includes, type Role, type TokenScope } from '$lib/protocol/roles';
import { faultOf } from '../store/faults';
import { hashOf, newId, newToken } from '../store/ids';
import type { Database } from '../store/tables';
import { asPerson, PERSON_COLUMNS, type Person } from './people';

/** Begins every secret, so that it is known for what it is wherever it turns up. */
const MARK = 'mwt_';
/** How stale "last used" may be: not every request writes. */
const USED_EVERY_MS = 60_000;

/** The most that each scope lets a program do in a workbook. */
const MOST: Readonly<Record<TokenScope, Role>> = { read: 'viewer', write: 'editor' };

export interface Token {
	readonly id: string;
	readonly name: string;
	readonly scope: TokenScope;
	/** Null: all in which the person has a part. */
	readonly workbooks: readonly string[] | null;
}

interface Row {
	readonly id: string;
	readonly name: string;
	readonly scope: TokenScope;
	readonly workbooks: string | null;
}

const asToken = ({ id, name, scope, workbooks }: Row): Token => ({
	id,
	name,
	scope,
	workbooks: workbooks === null ? null : (JSON.parse(workbooks) as string[])
});

export async function makeToken(
	db: Database,
	asked: Omit<Token, 'id'> & { personId: string; now: number; days: number }
): Promise<{ readonly id: string; readonly secret: string; readonly expiresAt: number }> {
	const secret = `${MARK}${newToken()}`;
	const id = newId();
	const expiresAt = asked.now + asked.days * 24 * 3_600_000;
	await db.deleteFrom('tokens').where('expires_at', '<', asked.now).execute();
	await db
		.insertInto('tokens')
		.values({
			id,
			person_id: asked.personId,
			token_hash: hashOf(secret),
			name: asked.name,
			scope: asked.scope,
			workbooks: asked.workbooks && JSON.stringify(asked.workbooks),
			created_at: asked.now,
			expires_at: expiresAt,
			used_at: null
		})
		.execute();
	return { id, secret, expiresAt };
}

/** What the trail says of a token that is made. */
export const tokenWords = (asked: Omit<Token, 'id'> & { readonly days: number }): string =>
	`${asked.name}: ${asked.scope}, ${asked.workbooks?.join(' ') ?? 'all workbooks'}, ${asked.days} days`;

/** The secret that a request brings; null where it brings none. */
export function bearerOf(request: Request): string | null {
	return /^Bearer +(\S{1,200})$/i.exec(request.headers.get('authorization') ?? '')?.[1] ?? null;
}

/** Null for one that is unknown, has ended or is too old. */
export async function findToken(
	db: Database,
	secret: string,
	now: number
): Promise<{ readonly token: Token; readonly person: Person } | null> {
	const row = await db
		.selectFrom('tokens as t')
		.innerJoin('people as p', 'p.id', 't.person_id')
		.where('t.token_hash', '=', hashOf(secret))
		.where('t.expires_at', '>', now)
		.select(PERSON_COLUMNS.map((column) => `p.${column}` as const))
		.select(['t.id as token', 't.name as title', 't.scope', 't.workbooks', 't.used_at'])
		.executeTakeFirst();
	if (!row) return null;
	if (row.used_at === null || now - row.used_at > USED_EVERY_MS) await use(db, row.token, now);
	const { token: id, title: name, scope, workbooks } = row;
	return { token: asToken({ id, name, scope, workbooks }), person: asPerson(row) };
}

async function use(db: Database, id: string, now: number): Promise<void> {
	try {
		await db.updateTable('tokens').set({ used_at: now }).where('id', '=', id).execute();
	} catch (error) {
		// A full disk keeps nobody from reading.
		if (faultOf(error) !== 'unwritable') throw error;
	}
}

export async function listTokens(db: Database, personId: string, now: number) {
	const rows = await db
		.selectFrom('tokens')
		.where('person_id', '=', personId)
		.where('expires_at', '>', now)
		.selectAll()
		.orderBy('created_at')
		.orderBy('id')
		.execute();
	return rows.map((row) => ({
		...asToken(row),
		createdAt: row.created_at,
		expiresAt: row.expires_at,
		usedAt: row.used_at
	}));
}

/** One token of a person, or all; the number that ended. */
export async function endTokens(db: Database, personId: string, only?: string): Promise<number> {
	let query = db.deleteFrom('tokens').where('person_id', '=', personId);
	if (only !== undefined) query = query.where('id', '=', only);
	return Number((await query.executeTakeFirst()).numDeletedRows);
}

/** Whether it is for a workbook at all. */
export const isFor = (token: Token, workbookId: string): boolean =>
	token.workbooks === null || token.workbooks.includes(workbookId);

/** What a role comes to through a token: never more than its scope. */
export const through = (role: Role, token: Token | null): Role =>
	token !== null && includes(role, MOST[token.scope]) ? MOST[token.scope] : role;
