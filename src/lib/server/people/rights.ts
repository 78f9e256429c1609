/** What a steward sets of a person: whether they are one too, begin workbooks, invite. And what that ends. */
import type { Database } from '../store/tables';
import { endInvitationsBy } from './invitations-end';

export interface Rights {
	readonly steward?: boolean;
	readonly mayBegin?: boolean;
	readonly mayInvite?: boolean;
}

/** Lets one at a time change who the stewards are, so that two cannot step down past each other. */
export async function lockStewards(work: Database): Promise<void> {
	await work
		.updateTable('people')
		.set((row) => ({ steward: row.ref('steward') }))
		.where('steward', '=', 1)
		.execute();
}

export async function setRights(
	db: Database,
	personId: string,
	rights: Rights
): Promise<'done' | 'missing' | 'last_steward'> {
	return db.transaction().execute(async (work) => {
		await lockStewards(work);
		const row = await work
			.selectFrom('people')
			.where('id', '=', personId)
			.select(['steward', 'may_begin', 'may_invite'])
			.executeTakeFirst();
		if (!row) return 'missing';
		const asked = (value: boolean | undefined, was: number) =>
			value === undefined ? was : Number(value);
		const next = {
			steward: asked(rights.steward, row.steward),
			may_begin: asked(rights.mayBegin, row.may_begin),
			may_invite: asked(rights.mayInvite, row.may_invite)
		};
		if (row.steward === 1 && next.steward === 0) {
			const other = await work
				.selectFrom('people')
				.where('steward', '=', 1)
				.where('id', '!=', personId)
				.select('id')
				.executeTakeFirst();
			if (!other) return 'last_steward';
		}
		await work.updateTable('people').set(next).where('id', '=', personId).execute();
		if (next.steward === 0) {
			await endInvitationsBy(work, personId, { workbookId: null });
			if (next.may_invite === 0) await endInvitationsBy(work, personId, {});
		}
		return 'done';
	});
}

type Right = 'mayBegin' | 'mayInvite';
/** Whether a person has a right: by what is set, or as a steward. */
export const may = (
	person: { readonly steward: boolean } & Readonly<Record<Right, boolean>>,
	right: Right
): boolean => person.steward || person[right];
