/**
 * What a route is. The table of them is the whole interface: permissions are checked from it, its description is
 * printed from it, and the tests walk it.
 */
import type { z } from '$lib/server/zod';
import type { Hub } from '../events';
import type { Pool } from '../evaluation/pool';
import type { Log } from '../log';
import type { Person } from '../people/people';
import type { Saver } from '../saving';
import type { Settings } from '../settings';
import type { Store } from '../store/open';
import type { Token } from '../people/tokens';
import type { RateLimit } from './guard';
import type { Role } from '$lib/protocol/roles';

/** What the routes work with. */
export interface Services {
	readonly settings: Settings;
	readonly store: Store;
	readonly saver: Saver;
	readonly hub: Hub;
	readonly pool: Pool;
	readonly log: Log;
	/** How often an address may try to sign in: each try costs the server work. */
	readonly signIns: RateLimit;
	readonly now: () => number;
	/** False while the server stops. */
	readonly isOpen: () => boolean;
	/** Calls back when the server begins to stop; gives the function that forgets it. */
	readonly whenStopping: (listener: () => void) => () => void;
}

/** Who asks: nobody, a person, or the one person of a machine without accounts. */
export interface Who {
	readonly mode: 'single' | 'accounts';
	readonly person: Person | null;
	readonly session: string | null;
	/** The API token by which a program asks; null for a browser. */
	readonly token: Token | null;
}

/**
 * Who may use a route: anyone; whoever may work here at all; a person with an account; a steward of the
 * installation; or whoever has at least that role in the workbook that the path names.
 */
export type Needs = 'anyone' | 'worker' | 'person' | 'steward' | Role;

export interface Call<Query = never, Body = never> {
	readonly services: Services;
	readonly request: Request;
	readonly address: string;
	readonly who: Who;
	readonly path: (name: string) => string;
	readonly query: Query;
	readonly body: Body;
	/** The body as it came, where the route takes a workbook. */
	readonly text: string;
}

export interface RouteResponse {
	readonly description: string;
	/** Left out: nothing, or what `type` says. */
	readonly schema?: z.core.$ZodType | 'workbook';
	readonly type?: string;
}

export interface Route {
	readonly method: 'GET' | 'POST' | 'PUT' | 'DELETE';
	readonly path: string;
	readonly needs: Needs;
	readonly summary: string;
	readonly group: string;
	readonly query: z.ZodObject | null;
	readonly body: z.ZodType | 'workbook' | null;
	/** Whether If-Match must be given. */
	readonly precondition: boolean;
	readonly answers: Readonly<Record<number, RouteResponse>>;
	readonly handle: (call: Call) => Promise<Response>;
}

type Parsed<S> = S extends z.ZodType ? z.output<S> : never;

/** One entry of the table; query and body come to the handler as their schemas say. */
export function route<
	Q extends z.ZodObject | undefined = undefined,
	B extends z.ZodType | 'workbook' | undefined = undefined
>(entry: {
	method: Route['method'];
	path: string;
	needs: Needs;
	summary: string;
	group: string;
	query?: Q;
	body?: B;
	precondition?: true;
	answers: Route['answers'];
	handle: (call: Call<Parsed<Q>, Parsed<B>>) => Promise<Response>;
}): Route {
	return {
		...entry,
		query: entry.query ?? null,
		body: entry.body ?? null,
		precondition: entry.precondition ?? false,
		// The dispatcher has parsed both by these very schemas.
		handle: entry.handle as Route['handle']
	};
}

export const json = (value: unknown, init: ResponseInit = {}): Response =>
	jsonText(JSON.stringify(value), init);

export function jsonText(text: string, init: ResponseInit = {}): Response {
	const headers = new Headers(init.headers);
	headers.set('content-type', 'application/json; charset=utf-8');
	return new Response(text, { ...init, headers });
}

export const empty = (init: ResponseInit = {}): Response =>
	new Response(null, { status: 204, ...init });
