/** What the server answers with, as the browser reads it. The interface is described at /api/v1/openapi.json. */

import type { Role } from '$lib/protocol/roles';

export interface Person {
	readonly id: string;
	readonly email: string;
	readonly name: string;
	/** Who may invite to the whole server. */
	readonly steward: boolean;
}

export interface Who {
	/** `single`: one person's own machine, where nobody signs in. */
	readonly mode: 'single' | 'accounts';
	readonly person: Person | null;
}

export interface SharedEntry {
	readonly id: string;
	readonly title: string;
	/** Number of the newest revision. */
	readonly head: number;
	readonly savedAt: number;
	/** Left out for those who see open values alone. */
	readonly savedBy?: string;
	/** Null where everybody who is here may do everything. */
	readonly role: Role | null;
}

export interface Revision {
	readonly number: number;
	readonly madeAt: number;
	readonly author: { readonly id: string | null; readonly name: string };
	readonly reason: string;
	readonly changes: readonly string[];
	readonly restores: number | null;
	readonly name: string | null;
	readonly locked: boolean;
}

/** One change of one entered value; `was` and `now` are left out where nothing stood or stands. */
export interface ValueChange {
	readonly quantity: string;
	readonly scenario: string;
	readonly at: readonly string[];
	readonly was?: number | string | boolean | null;
	readonly now?: number | string | boolean | null;
	readonly number: number;
	readonly madeAt: number;
	readonly author: { readonly name: string };
	readonly reason: string;
}

export interface Compared {
	readonly from: number;
	readonly to: number;
	readonly changes: readonly string[];
}

export interface Member {
	readonly id: string;
	readonly email: string;
	readonly name: string;
	readonly role: Role;
}

export interface Invitation {
	readonly id: string;
	readonly email: string;
	readonly role: Role | null;
	readonly expiresAt: number;
}

export interface SignedIn {
	readonly id: string;
	readonly createdAt: number;
	readonly seenAt: number;
	readonly expiresAt: number;
	readonly agent: string;
	readonly current: boolean;
}

/** An open quantity with its values by member, or its one value. */
export interface OpenQuantity {
	readonly name: string;
	readonly label: string;
	readonly unit?: string;
	readonly value?: unknown;
	readonly values?: unknown;
}
