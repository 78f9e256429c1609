/** What the pages ask of the server, each as one call: who is here, which workbooks, revisions, people. */
import type { Role } from '$lib/protocol/roles';
import { saveWorkbook } from '$lib/workbook/save';
import type { Workbook } from '$lib/workbook/schema';
import { ask, type ApiResult } from './api';
import type { StoredLink } from './stored-link';
import { HttpRemote } from './remote';
import type {
	Accepted,
	Begun,
	Compared,
	History,
	Invitations,
	Invited,
	Members,
	Person,
	Revisions,
	SavedAnswer,
	Sessions,
	SharedEntry,
	Who,
	Workbooks
} from '$lib/protocol/answers';
import type { Evaluated, OpenValues } from '$lib/protocol/results';

const of = (workbook: string) => `/workbooks/${workbook}`;

export const who = () => ask<Who>('/session');
export const signIn = (email: string, password: string) =>
	ask<Person>('/session', { method: 'POST', body: { email, password } });
export const signOut = () => ask<void>('/session', { method: 'DELETE' });
export const sessions = () => ask<Sessions>('/sessions');
export const endSession = (id: string) => ask<void>(`/sessions/${id}`, { method: 'DELETE' });
export const endOtherSessions = () => ask<void>('/sessions', { method: 'DELETE' });
export const changePassword = (old: string, next: string) =>
	ask<void>('/me/password', { method: 'PUT', body: { old, new: next } });
export const myData = () => ask<object>('/me/data');
export const removeMe = (password: string) =>
	ask<void>('/me', { method: 'DELETE', body: { password } });
export const accept = (token: string, name: string, password: string) =>
	ask<Accepted>('/invitations/accept', {
		method: 'POST',
		body: { token, password, ...(name !== '' && { name }) }
	});

export const listShared = () => ask<Workbooks>('/workbooks');
export const removeShared = (id: string) => ask<void>(of(id), { method: 'DELETE' });

/** Puts a workbook on the server; gives the link to it. */
export async function begin(workbook: Workbook, role: Role | null): Promise<ApiResult<StoredLink>> {
	const body = saveWorkbook(workbook);
	const answer = await ask<Begun>('/workbooks', {
		method: 'POST',
		body,
		patienceMs: 60_000
	});
	if (!answer.ok) return answer;
	const { id, revision: number } = answer.value;
	return { ...answer, value: { id, number, base: workbook, at: Date.now(), role } };
}

/** The newest revision of a workbook, as a link to open. Rejects as `HttpRemote` does. */
export async function fetchShared(entry: SharedEntry): Promise<StoredLink> {
	const { number, workbook } = await new HttpRemote().read(entry.id);
	return { id: entry.id, number, base: workbook, at: entry.savedAt, role: entry.role };
}

/** What whoever sees open values alone may see. */
export const openValues = (id: string) => ask<OpenValues>(`${of(id)}/open`, { patienceMs: 60_000 });

/** Some quantities of a revision, in all of its scenarios. */
export const evaluated = (id: string, revision: number, quantities: readonly string[]) =>
	ask<Evaluated>(`${of(id)}/evaluate`, {
		method: 'POST',
		body: { revision, quantities },
		patienceMs: 60_000
	});

export const people = (id: string) => ask<Members>(`${of(id)}/people`);
export const giveRole = (id: string, person: string, role: Role) =>
	ask<void>(`${of(id)}/people/${person}`, { method: 'PUT', body: { role } });
export const takeRole = (id: string, person: string) =>
	ask<void>(`${of(id)}/people/${person}`, { method: 'DELETE' });
export const invitations = (id: string) => ask<Invitations>(`${of(id)}/invitations`);
/** The secret of the link is in the answer, this once; none where the person has an account here already. */
export const withdrawInvitation = (id: string, invitation: string) =>
	ask<void>(`${of(id)}/invitations/${invitation}`, { method: 'DELETE' });

export const invite = (id: string, email: string, role: Role) =>
	ask<Invited>(`${of(id)}/invitations`, { method: 'POST', body: { email, role } });

export const revisions = (id: string, before: number | null, named = false) =>
	ask<Revisions>(
		`${of(id)}/revisions?limit=30${before === null ? '' : `&before=${before}`}${named ? '&named=yes' : ''}`
	);
export const compare = (id: string, from: number, to: number) =>
	ask<Compared>(`${of(id)}/compare?from=${from}&to=${to}`);
export const restore = (id: string, number: number) =>
	ask<SavedAnswer>(`${of(id)}/revisions/${number}/restore`, { method: 'POST' });
export const nameRevision = (id: string, number: number, name: string, locked: boolean) =>
	ask<void>(`${of(id)}/revisions/${number}/name`, { method: 'PUT', body: { name, locked } });
export const unnameRevision = (id: string, number: number) =>
	ask<void>(`${of(id)}/revisions/${number}/name`, { method: 'DELETE' });

/** Who changed a quantity's entered values, newest first. */
export const history = (id: string, quantity: string) =>
	ask<History>(`${of(id)}/history?quantity=${encodeURIComponent(quantity)}&limit=500`);
