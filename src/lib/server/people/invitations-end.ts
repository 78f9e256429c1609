/** Invitations end with the right of the one who made them. */
import type { Database } from '../store/tables';

/** Those to one workbook, to the whole installation (null), or all where neither is named. */
export async function endInvitationsBy(
	db: Database,
	personId: string,
	{ workbookId }: { readonly workbookId?: string | null }
): Promise<void> {
	let query = db.deleteFrom('invitations').where('invited_by', '=', personId);
	if (workbookId === null) query = query.where('workbook_id', 'is', null);
	else if (workbookId !== undefined) query = query.where('workbook_id', '=', workbookId);
	await query.execute();
}
