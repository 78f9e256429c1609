/**
 * The tables of the store as the query builder sees them. Both databases hold the same: ids are text, moments
 * are milliseconds since 1970, yes and no are 1 and 0, and nested data is JSON text.
 */
import type { Generated, Kysely } from 'kysely';
import type { Role, TokenScope } from '$lib/protocol/roles';

export interface Tables {
	workbooks: {
		id: string;
		title: string;
		/** Number of the newest revision. */
		head: number;
		created_at: number;
		removed_at: number | null;
	};
	revisions: {
		workbook_id: string;
		/** 1 for the first, without gaps. */
		number: number;
		made_at: number;
		/** Null once the person is gone, and for the one person of a machine without accounts. */
		author_id: string | null;
		author_name: string;
		reason: string;
		/** The saved text, packed; see `packing.ts`. */
		document: string;
		/** The change list, as JSON: one line of words for each. */
		changes: string;
		/** Number of the revision that this one brings back. */
		restores: number | null;
		name: string | null;
		locked: number;
	};
	/** Each entered value that a revision changed, for a value's history. */
	value_changes: {
		workbook_id: string;
		number: number;
		/** Counts within the revision. */
		place: number;
		quantity: string;
		scenario: string;
		/** Member ids as a JSON list. */
		at: string;
		/** JSON of the scalar before and after; null: nothing stood there. */
		was: string | null;
		now: string | null;
	};
	people: {
		id: string;
		email: string;
		name: string;
		/** Null for those who sign in elsewhere. */
		password: string | null;
		/** Who may invite to the whole installation, see its people and its audit trail. */
		steward: number;
		/** Whether they may put new workbooks on the server; a steward always may. */
		may_begin: Generated<number>;
		/** Whether they may send an invitation to somebody without an account; a steward always may. */
		may_invite: Generated<number>;
		created_at: number;
	};
	sessions: {
		id: string;
		person_id: string;
		token_hash: string;
		created_at: number;
		seen_at: number;
		expires_at: number;
		/** What the browser said it was, shortened: for the list of one's own sessions. */
		agent: string;
	};
	/** Browsers that a person has signed in from: others' wrong guesses do not slow these down. */
	devices: { person_id: string; token_hash: string; created_at: number };
	memberships: { workbook_id: string; person_id: string; role: Role };
	invitations: {
		id: string;
		token_hash: string;
		email: string;
		workbook_id: string | null;
		role: Role | null;
		invited_by: string;
		created_at: number;
		expires_at: number;
	};
	/** Links by which somebody sets their password anew: once, for a while. */
	resets: {
		id: string;
		person_id: string;
		token_hash: string;
		created_at: number;
		expires_at: number;
	};
	/** Wrong passwords, by a hash of who tried from where. */
	attempts: { key: string; failures: number; last_at: number };
	/** What programs do in a person's name, by a secret of their own. */
	tokens: {
		id: string;
		person_id: string;
		token_hash: string;
		name: string;
		scope: TokenScope;
		/** Ids as a JSON list; null: all in which the person has a part. */
		workbooks: string | null;
		created_at: number;
		expires_at: number;
		used_at: number | null;
	};
	/** Only ever added to: the database refuses anything else. */
	audit: {
		id: string;
		/** From 1 on, without gaps. */
		seq: number;
		at: number;
		event: string;
		person_id: string | null;
		/** As it was called then. */
		person_name: string;
		/** Name of the API token by which it was done; empty for none. */
		token: string;
		/** Whom or what it was done to. */
		subject: string;
		subject_name: string;
		detail: string;
		address: string;
		/** Of this entry and all before it; see `people/audit-chain.ts`. */
		digest: string;
	};
	/** One row: how many entries were written, and the digest of the last. */
	audit_chain: { id: string; entries: number; digest: string };
}

export type Database = Kysely<Tables>;

/** Every table, in an order in which rows can be put back; types ask for a new one, so that no back-up leaves it out. */
const IN_ORDER: Readonly<Record<keyof Tables, true>> = {
	people: true,
	workbooks: true,
	revisions: true,
	value_changes: true,
	memberships: true,
	sessions: true,
	devices: true,
	invitations: true,
	resets: true,
	attempts: true,
	tokens: true,
	audit: true,
	audit_chain: true
};
export const TABLES = Object.keys(IN_ORDER) as (keyof Tables)[];
