/** People with an account: who they are, what is kept of them, and their removal. */
import { faultOf } from '../store/faults';
import { endInvitationsBy } from './invitations-end';
import { lockStewards } from './rights';
import { newId } from '../store/ids';
import type { Database, Tables } from '../store/tables';

export interface Person {
	readonly id: string;
	readonly email: string;
	readonly name: string;
	readonly steward: boolean;
	/** As set for this person; stewards may both, whatever is set. */
	readonly mayBegin: boolean;
	readonly mayInvite: boolean;
}

interface PersonRow {
	readonly id: string;
	readonly email: string;
	readonly name: string;
	readonly steward: number;
	readonly may_begin: number;
	readonly may_invite: number;
}

export const PERSON_COLUMNS = [
	'id',
	'email',
	'name',
	'steward',
	'may_begin',
	'may_invite'
] as const satisfies readonly (keyof PersonRow)[];

export const asPerson = ({ id, email, name, ...row }: PersonRow): Person => ({
	id,
	email,
	name,
	steward: row.steward === 1,
	mayBegin: row.may_begin === 1,
	mayInvite: row.may_invite === 1
});

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
	return { ...row, steward, mayBegin: true, mayInvite: true };
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
		.select([...PERSON_COLUMNS, 'password'])
		.executeTakeFirst();
}

export async function personById(db: Database, id: string): Promise<Person | null> {
	const row = await db
		.selectFrom('people')
		.where('id', '=', id)
		.select(PERSON_COLUMNS)
		.executeTakeFirst();
	return row ? asPerson(row) : null;
}

export async function listPeople(db: Database) {
	const rows = await db
		.selectFrom('people')
		.select([...PERSON_COLUMNS, 'created_at'])
		.orderBy('created_at')
		.orderBy('id')
		.execute();
	return rows.map((row) => ({ ...asPerson(row), createdAt: row.created_at }));
}

/** Tables with a column that names a person. */
type Personal = {
	[T in keyof Tables]: Extract<
		keyof Tables[T],
		'person_id' | 'author_id' | 'invited_by'
	> extends never
		? never
		: T;
}[keyof Tables];

/** What each table keeps of a person, for them to take away; types ask for a new one. Null: nothing that they would read. */
const KEPT = {
	sessions: (db, id) =>
		db
			.selectFrom('sessions')
			.where('person_id', '=', id)
			.select(['created_at', 'seen_at', 'expires_at', 'agent'])
			.execute(),
	memberships: (db, id) =>
		db
			.selectFrom('memberships')
			.where('person_id', '=', id)
			.select(['workbook_id', 'role'])
			.execute(),
	revisions: (db, id) =>
		db
			.selectFrom('revisions')
			.where('author_id', '=', id)
			.select(['workbook_id', 'number', 'made_at', 'reason'])
			.execute(),
	audit: (db, id) =>
		db
			.selectFrom('audit')
			.where('person_id', '=', id)
			.select(['at', 'event', 'token', 'subject', 'subject_name', 'detail', 'address'])
			.orderBy('seq')
			.execute(),
	tokens: (db, id) =>
		db
			.selectFrom('tokens')
			.where('person_id', '=', id)
			.select(['name', 'scope', 'workbooks', 'created_at', 'expires_at', 'used_at'])
			.execute(),
	invitations: null,
	// A hash alone.
	devices: null,
	resets: null
} as const satisfies Readonly<
	Record<Personal, ((db: Database, id: string) => Promise<readonly object[]>) | null>
>;

/** Everything that is kept of a person, for them to take away. */
export async function dataOf(db: Database, personId: string) {
	const [person, sessions, roles, revisions, trail, tokens] = await Promise.all([
		db
			.selectFrom('people')
			.where('id', '=', personId)
			.select([...PERSON_COLUMNS, 'created_at'])
			.executeTakeFirst(),
		KEPT.sessions(db, personId),
		KEPT.memberships(db, personId),
		KEPT.revisions(db, personId),
		KEPT.audit(db, personId),
		KEPT.tokens(db, personId)
	]);
	return { person, sessions, roles, revisions, trail, tokens };
}

/** How each table forgets a person, what happened staying where others need it; types ask for a new one. Null: its rows go with the person's. */
const FORGET = {
	revisions: (work, id) =>
		work
			.updateTable('revisions')
			.set({ author_id: null, author_name: REMOVED_NAME })
			.where('author_id', '=', id)
			.execute(),
	// What was done stays told, and by whom: else whoever did it could wipe it by leaving.
	audit: () => Promise.resolve(),
	// Who may come in is for those to say who are still here.
	invitations: (work, id) => endInvitationsBy(work, id, {}),
	memberships: null,
	sessions: null,
	devices: null,
	resets: null,
	tokens: null
} satisfies Readonly<Record<Personal, ((work: Database, id: string) => Promise<unknown>) | null>>;

export type Removal =
	| { readonly ok: true }
	/** Without this person nobody could manage the installation, or these workbooks. */
	| { readonly ok: false; readonly lastSteward: boolean; readonly workbooks: readonly string[] };

/**
 * Removes a person and what tells of them. Their revisions stay, without their name; the audit trail keeps what
 * was done, and by whom.
 */
export async function removePerson(db: Database, personId: string): Promise<Removal> {
	return db.transaction().execute(async (work): Promise<Removal> => {
		await lockStewards(work);
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
		for (const forget of Object.values(FORGET)) await forget?.(work, personId);
		if (person) await work.deleteFrom('invitations').where('email', '=', person.email).execute();
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
