/**
 * Invitations: a link that lets one address make an account, or join a workbook. The link's secret is shown once, to
 * the one who invites; they pass it on. The store keeps its hash.
 */
import { hashOf, newId, newToken } from '../store/ids';
import type { Role } from '$lib/protocol/roles';
import type { Database } from '../store/tables';
import { asEmail } from './people';

const LASTS_MS = 7 * 24 * 3_600_000;

export interface Invitation {
	readonly id: string;
	readonly email: string;
	readonly workbookId: string | null;
	readonly role: Role | null;
	readonly invitedBy: string;
	readonly createdAt: number;
	readonly expiresAt: number;
}

export async function invite(
	db: Database,
	asked: { email: string; workbookId: string | null; role: Role | null; by: string; now: number }
): Promise<{ readonly invitation: Invitation; readonly token: string }> {
	const token = newToken();
	const invitation: Invitation = {
		id: newId(),
		email: asEmail(asked.email),
		workbookId: asked.workbookId,
		role: asked.role,
		invitedBy: asked.by,
		createdAt: asked.now,
		expiresAt: asked.now + LASTS_MS
	};
	await db.deleteFrom('invitations').where('expires_at', '<', asked.now).execute();
	await db
		.insertInto('invitations')
		.values({
			id: invitation.id,
			token_hash: hashOf(token),
			email: invitation.email,
			workbook_id: invitation.workbookId,
			role: invitation.role,
			invited_by: asked.by,
			created_at: asked.now,
			expires_at: invitation.expiresAt
		})
		.execute();
	return { invitation, token };
}

/** Those of one workbook; of the whole installation for null. */
export async function listInvitations(
	db: Database,
	workbookId: string | null,
	now: number
): Promise<Invitation[]> {
	let query = db.selectFrom('invitations').where('expires_at', '>', now).selectAll();
	if (workbookId !== null) query = query.where('workbook_id', '=', workbookId);
	return (await query.orderBy('created_at').execute()).map(asInvitation);
}

export async function findInvitation(
	db: Database,
	token: string,
	now: number
): Promise<Invitation | null> {
	const row = await db
		.selectFrom('invitations')
		.where('token_hash', '=', hashOf(token))
		.where('expires_at', '>', now)
		.selectAll()
		.executeTakeFirst();
	return row ? asInvitation(row) : null;
}

/** Takes back an invitation to a workbook; whether there was one. */
export async function withdraw(db: Database, id: string, workbookId: string): Promise<boolean> {
	const done = await db
		.deleteFrom('invitations')
		.where('id', '=', id)
		.where('workbook_id', '=', workbookId)
		.executeTakeFirst();
	return done.numDeletedRows > 0n;
}

/** True for the one who used it first. */
export async function useInvitation(db: Database, id: string): Promise<boolean> {
	const done = await db.deleteFrom('invitations').where('id', '=', id).executeTakeFirst();
	return done.numDeletedRows > 0n;
}

function asInvitation(row: {
	id: string;
	email: string;
	workbook_id: string | null;
	role: Role | null;
	invited_by: string;
	created_at: number;
	expires_at: number;
}): Invitation {
	return {
		id: row.id,
		email: row.email,
		workbookId: row.workbook_id,
		role: row.role,
		invitedBy: row.invited_by,
		createdAt: row.created_at,
		expiresAt: row.expires_at
	};
}
