/** What the pages of accounts ask of the server, each as one call: those of stewards, and a new password by a link. */
import type { TokenScope } from '$lib/protocol/roles';
import type {
	Audit,
	HandedOver,
	Invitations,
	Invited,
	Owned,
	People,
	ResetLink,
	TokenMade,
	Tokens
} from '$lib/protocol/answers';
import { ask } from './api';

const of = (person: string) => `/people/${person}`;

export const everybody = () => ask<People>('/people');
export const setRights = (
	person: string,
	rights: { steward?: boolean; mayBegin?: boolean; mayInvite?: boolean }
) => ask<void>(of(person), { method: 'PUT', body: rights });
/** The secret of the link is in the answer, this once. */
export const makeReset = (person: string) =>
	ask<ResetLink>(`${of(person)}/reset`, { method: 'POST' });
export const endSessionsOf = (person: string) =>
	ask<void>(`${of(person)}/sessions`, { method: 'DELETE' });
export const ownedBy = (person: string) => ask<Owned>(`${of(person)}/workbooks`);
export const handOver = (person: string, to: string) =>
	ask<HandedOver>(`${of(person)}/hand-over`, { method: 'POST', body: { to } });
export const removePerson = (person: string) => ask<void>(of(person), { method: 'DELETE' });

export const invitationsHere = () => ask<Invitations>('/invitations');
export const inviteHere = (email: string) =>
	ask<Invited>('/invitations', { method: 'POST', body: { email } });
export const withdrawHere = (invitation: string) =>
	ask<void>(`/invitations/${invitation}`, { method: 'DELETE' });

export const resetPassword = (token: string, password: string) =>
	ask<void>('/reset', { method: 'POST', body: { token, password } });

export const tokens = () => ask<Tokens>('/tokens');
/** The secret is in the answer, this once. Without workbooks it is for all. */
export const makeToken = (asked: {
	name: string;
	scope: TokenScope;
	days: number;
	workbooks?: readonly string[];
}) => ask<TokenMade>('/tokens', { method: 'POST', body: asked });
export const endToken = (id: string) => ask<void>(`/tokens/${id}`, { method: 'DELETE' });
export const endTokensOf = (person: string) =>
	ask<void>(`${of(person)}/tokens`, { method: 'DELETE' });

/** A page of the trail, newest first; `before` is the number of the last entry that is there. */
export const trail = (before: number | null) =>
	ask<Audit>(`/audit?limit=50${before === null ? '' : `&before=${before}`}`);
/** Where the browser itself fetches the whole. */
export const TRAIL_FILE = '/api/v1/audit/export';
