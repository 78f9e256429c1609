/** People with an account: who they are, what is kept of them, and their removal. */
import { faultOf } from '../store/faults';
import { newId } from '../store/ids';
import type { Database } from '../store/tables';

export interface Person {
	readonly id: string;
	readonly email: string;
	readonly name: string;
	readonly steward: boolean;
}

/** What stands in the place of a name once its person is removed. */
export const REMOVED_NAME = 'a removed person';

/** Addresses are compared as one writes them, without case. */
export const asEmail = (text: string): string => text.trim().toLowerCase();

export async function hasAccounts(db: Database): Promise<boolean> {
	const row = await db.selectFrom('people').select('id').limit(1).executeTakeFirst();
	return row !== undefined;
}

/** Null where the address has an account already. */
export async function addPerson(
	db: Database,
	person: { email: string; name: string; password: string | null; steward: boolean; now: number }
): Promise<Person | null> {
	const { name, password, steward, now } = person;
	const row = { id: newId(), email: asEmail(person.email), name };
	try {
		await db
			.insertInto('people')
			.values({ ...row, password, steward: steward ? 1 : 0, created_at: now })
			.execute();
	} catch (error) {
		if (faultOf(error) === 'taken') return null;
		throw error;
	}
	return { ...row, steward };
}

/** What nobody owned until there were accounts becomes the first owner's. */
export async function adoptWorkbooks(db: Database, personId: string): Promise<void> {
	const orphans = await db
		.selectFrom('workbooks as w')
		.leftJoin('memberships as m', (join) =>
			join.onRef('m.workbook_id', '=', 'w.id').on('m.role', '=', 'owner')
		)
		.where('m.person_id', 'is', null)
		.select('w.id')
		.execute();
	for (const { id } of orphans)
		await db
			.insertInto('memberships')
			.values({ workbook_id: id, person_id: personId, role: 'owner' })
			.onConflict((conflict) =>
				conflict.columns(['workbook_id', 'person_id']).doUpdateSet({ role: 'owner' })
			)
			.execute();
}

export async function personByEmail(db: Database, email: string) {
	return db
		.selectFrom('people')
		.where('email', '=', asEmail(email))
		.select(['id', 'email', 'name', 'steward', 'password'])
		.executeTakeFirst();
}

export async function listPeople(db: Database) {
	const rows = await db
		.selectFrom('people')
		.select(['id', 'email', 'name', 'steward', 'created_at'])
		.orderBy('created_at')
		.execute();
	return rows.map(({ created_at, steward, ...row }) => ({
		...row,
		steward: steward === 1,
		createdAt: created_at
	}));
}

/** Everything that is kept of a person, for them to take away. */
export async function dataOf(db: Database, personId: string) {
	const [person, sessions, roles, revisions, trail] = await Promise.all([
		db
			.selectFrom('people')
			.where('id', '=', personId)
			.select(['id', 'email', 'name', 'steward', 'created_at'])
			.executeTakeFirst(),
		db
			.selectFrom('sessions')
			.where('person_id', '=', personId)
			.select(['created_at', 'seen_at', 'expires_at', 'agent'])
			.execute(),
		db
			.selectFrom('memberships')
			.where('person_id', '=', personId)
			.select(['workbook_id', 'role'])
			.execute(),
		db
			.selectFrom('revisions')
			.where('author_id', '=', personId)
			.select(['workbook_id', 'number', 'made_at', 'reason'])
			.execute(),
		db
			.selectFrom('audit')
			.where('person_id', '=', personId)
			.select(['at', 'event', 'subject', 'detail', 'address'])
			.orderBy('at')
			.execute()
	]);
	return { person, sessions, roles, revisions, trail };
}

export type Removal =
	| { readonly ok: true }
	/** Without this person nobody could manage the installation, or these workbooks. */
	| { readonly ok: false; readonly lastSteward: boolean; readonly workbooks: readonly string[] };

/**
 * Removes a person and what tells of them. Their revisions stay, without their name; the audit trail keeps what
 * happened, without whom.
 */
export async function removePerson(db: Database, personId: string): Promise<Removal> {
	return db.transaction().execute(async (work): Promise<Removal> => {
		const stewards = await work
			.selectFrom('people')
			.where('steward', '=', 1)
			.where('id', '!=', personId)
			.select('id')
			.execute();
		const others = await work
			.selectFrom('people')
			.where('id', '!=', personId)
			.select('id')
			.execute();
		const lastSteward = stewards.length === 0 && others.length > 0;
		const owned = await ownedAlone(work, personId);
		if (lastSteward || (owned.length > 0 && others.length > 0))
			return { ok: false, lastSteward, workbooks: owned };
		const person = await work
			.selectFrom('people')
			.where('id', '=', personId)
			.select('email')
			.executeTakeFirst();
		await work
			.updateTable('revisions')
			.set({ author_id: null, author_name: REMOVED_NAME })
			.where('author_id', '=', personId)
			.execute();
		await work
			.updateTable('audit')
			.set({ person_id: null, address: '' })
			.where('person_id', '=', personId)
			.execute();
		if (person) {
			await work
				.updateTable('audit')
				.set({ subject: REMOVED_NAME })
				.where('subject', 'in', [person.email, personId])
				.execute();
			await work.deleteFrom('invitations').where('email', '=', person.email).execute();
		}
		await work.deleteFrom('people').where('id', '=', personId).execute();
		return { ok: true };
	});
}

async function ownedAlone(db: Database, personId: string): Promise<string[]> {
	const rows = await db
		.selectFrom('memberships as m')
		.innerJoin('workbooks as w', 'w.id', 'm.workbook_id')
		.where('w.removed_at', 'is', null)
		.where('m.role', '=', 'owner')
		.select(['m.workbook_id', 'm.person_id'])
		.execute();
	const owners = new Map<string, string[]>();
	for (const { workbook_id, person_id } of rows)
		owners.set(workbook_id, [...(owners.get(workbook_id) ?? []), person_id]);
	return [...owners]
		.filter(([, people]) => people.length === 1 && people[0] === personId)
		.map(([workbook]) => workbook);
}
