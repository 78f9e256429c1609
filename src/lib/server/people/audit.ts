/** The audit trail: sign-ins and changes of permissions, who, when, from where. It is only ever added to. */
import { newId } from '../store/ids';
import type { Database } from '../store/tables';

export type AuditEvent =
	| 'signed_in'
	| 'password_refused'
	| 'signed_out'
	| 'sessions_ended'
	| 'password_changed'
	| 'account_made'
	| 'account_removed'
	| 'data_exported'
	| 'invited'
	| 'invitation_withdrawn'
	| 'joined'
	| 'role_changed'
	| 'rights_changed'
	| 'reset_made'
	| 'password_reset'
	| 'handed_over'
	| 'revision_named'
	| 'workbook_removed';

export async function note(
	db: Database,
	entry: {
		now: number;
		event: AuditEvent;
		personId: string | null;
		subject?: string;
		detail?: string;
		address: string;
	}
): Promise<void> {
	await db
		.insertInto('audit')
		.values({
			id: newId(),
			at: entry.now,
			event: entry.event,
			person_id: entry.personId,
			subject: (entry.subject ?? '').slice(0, 300),
			detail: (entry.detail ?? '').slice(0, 300),
			address: entry.address
		})
		.execute();
}

export async function readAudit(db: Database, before: number | undefined, limit: number) {
	let query = db.selectFrom('audit').selectAll();
	if (before !== undefined) query = query.where('at', '<', before);
	const rows = await query.orderBy('at', 'desc').limit(limit).execute();
	return rows.map(({ person_id, ...row }) => ({ ...row, personId: person_id }));
}
