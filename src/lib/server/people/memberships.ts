/** Who may do what with one workbook. */
import type { Role } from '$lib/protocol/roles';
import type { Database } from '../store/tables';
import { endInvitationsBy } from './invitations-end';

/** Null for those who have no part in it. */
export async function roleOf(
	db: Database,
	workbookId: string,
	personId: string
): Promise<Role | null> {
	const row = await db
		.selectFrom('memberships')
		.where((row) => row.and({ workbook_id: workbookId, person_id: personId }))
		.select('role')
		.executeTakeFirst();
	return row?.role ?? null;
}

export async function listMembers(db: Database, workbookId: string) {
	return db
		.selectFrom('memberships as m')
		.innerJoin('people as p', 'p.id', 'm.person_id')
		.where('m.workbook_id', '=', workbookId)
		.select(['p.id', 'p.email', 'p.name', 'm.role'])
		.orderBy('p.name')
		.execute();
}

export async function giveRole(
	db: Database,
	workbookId: string,
	personId: string,
	role: Role
): Promise<void> {
	await db
		.insertInto('memberships')
		.values({ workbook_id: workbookId, person_id: personId, role })
		.onConflict((conflict) => conflict.columns(['workbook_id', 'person_id']).doUpdateSet({ role }))
		.execute();
}

/**
 * Changes or takes away (null) a member's role. "last_owner": a workbook must not be left without one; the rows
 * are written before they are counted, so that two owners cannot step down past each other.
 */
export async function changeRole(
	db: Database,
	workbookId: string,
	personId: string,
	role: Role | null
): Promise<'done' | 'missing' | 'last_owner'> {
	return db.transaction().execute(async (work) => {
		// Both databases let one such writer through at a time.
		await work
			.updateTable('workbooks')
			.set((row) => ({ head: row.ref('head') }))
			.where('id', '=', workbookId)
			.execute();
		const members = await work
			.selectFrom('memberships')
			.where('workbook_id', '=', workbookId)
			.select(['person_id', 'role'])
			.execute();
		const own = members.find(({ person_id }) => person_id === personId);
		if (!own) return 'missing';
		const others = members.some((member) => member !== own && member.role === 'owner');
		if (own.role === 'owner' && role !== 'owner' && !others) return 'last_owner';
		if (role !== 'owner') await endInvitationsBy(work, personId, { workbookId });
		if (role === null)
			await work
				.deleteFrom('memberships')
				.where('workbook_id', '=', workbookId)
				.where('person_id', '=', personId)
				.execute();
		else await giveRole(work, workbookId, personId, role);
		return 'done';
	});
}
