/** The workbooks of somebody who leaves become another person's, so that none is left without an owner. */
import type { Database } from '../store/tables';
import { trailName } from './audit';
import { endInvitationsBy } from './invitations-end';
import { giveRole } from './memberships';

/** What the trail says of each workbook that is handed over. */
export const handOverWords = (from: Named, to: Named): string =>
	`from ${trailName(from)} to ${trailName(to)}`;

type Named = Parameters<typeof trailName>[0];

export interface Owned {
	readonly id: string;
	readonly title: string;
	/** Nobody else owns it. */
	readonly alone: boolean;
}

/** What a person owns, by title. Workbooks that were removed are not among them. */
export async function ownedBy(db: Database, personId: string): Promise<Owned[]> {
	const rows = await db
		.selectFrom('memberships as m')
		.innerJoin('workbooks as w', 'w.id', 'm.workbook_id')
		.where('m.person_id', '=', personId)
		.where('m.role', '=', 'owner')
		.where('w.removed_at', 'is', null)
		.select(['w.id', 'w.title'])
		.select((row) =>
			row
				.selectFrom('memberships as o')
				.whereRef('o.workbook_id', '=', 'w.id')
				.where('o.role', '=', 'owner')
				.select((inner) => inner.fn.countAll<number>().as('owners'))
				.as('owners')
		)
		.orderBy('w.title')
		.orderBy('w.id')
		.execute();
	return rows.map(({ id, title, owners }) => ({ id, title, alone: Number(owners) === 1 }));
}

/**
 * Makes another person owner of all that one owns, and takes the one out of it. Removed workbooks go along, so that
 * they have an owner if they are ever brought back. The ids of those handed over.
 */
export async function handOver(db: Database, from: string, to: string): Promise<string[]> {
	return db.transaction().execute(async (work) => {
		const owned = await work
			.selectFrom('memberships')
			.where('person_id', '=', from)
			.where('role', '=', 'owner')
			.select('workbook_id')
			.orderBy('workbook_id')
			.execute();
		for (const { workbook_id: workbookId } of owned) {
			await giveRole(work, workbookId, to, 'owner');
			await work
				.deleteFrom('memberships')
				.where('workbook_id', '=', workbookId)
				.where('person_id', '=', from)
				.execute();
			await endInvitationsBy(work, from, { workbookId });
		}
		return owned.map(({ workbook_id }) => workbook_id);
	});
}
