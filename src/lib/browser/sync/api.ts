/**
 * Asks the server and gives its answer as a value: what was asked for, or a problem with a code and a sentence. No
 * answer at all is a problem as well. What is asked belongs to `shared.ts` and `remote.ts`.
 */

export interface ApiProblem {
	/** The server's code, or `unreachable` where no answer came that is one of ours. */
	readonly code: string;
	readonly status: number;
	/** What failed, why, and what to do. */
	readonly message: string;
	/** Further members of the answer. */
	readonly more: Readonly<Record<string, unknown>>;
}

export type ApiResult<T> =
	| { readonly ok: true; readonly value: T; readonly headers: Headers }
	| { readonly ok: false; readonly problem: ApiProblem };

export interface Asked {
	readonly method?: 'GET' | 'POST' | 'PUT' | 'DELETE';
	/** Sent as JSON; a text is JSON already. */
	readonly body?: unknown;
	readonly headers?: Readonly<Record<string, string>>;
	readonly patienceMs?: number;
}

/** Longer than any answer takes from a server that is going to answer. */
const PATIENCE_MS = 20_000;

export type Ask = <T>(path: string, asked?: Asked) => Promise<ApiResult<T>>;

/** `path` begins after /api/v1: "/session". `T` is what the interface says stands there. */
export async function ask<T>(path: string, asked: Asked = {}): Promise<ApiResult<T>> {
	const { method = 'GET', body, patienceMs = PATIENCE_MS } = asked;
	let response: Response;
	let text: string;
	try {
		response = await fetch(`/api/v1${path}`, {
			method,
			credentials: 'same-origin',
			cache: 'no-store',
			signal: AbortSignal.timeout(patienceMs),
			headers: {
				...asked.headers,
				'x-metrewright': 'app',
				...(body !== undefined && { 'content-type': 'application/json' })
			},
			...(body !== undefined && { body: typeof body === 'string' ? body : JSON.stringify(body) })
		});
		text = await response.text();
	} catch (error) {
		return { ok: false, problem: silent(error) };
	}
	const read = parsed(text);
	if (!response.ok) return { ok: false, problem: refusal(response.status, read) };
	if (text !== '' && read === undefined) return { ok: false, problem: foreign(response.status) };
	return { ok: true, value: read as T, headers: response.headers };
}

function silent(error: unknown): ApiProblem {
	const late = error instanceof DOMException && error.name === 'TimeoutError';
	return {
		code: 'unreachable',
		status: 0,
		message: late
			? 'The server did not answer in time. Your work is kept in this browser; try again.'
			: 'The server cannot be reached. Your work is kept in this browser; check the connection and try again.',
		more: {}
	};
}

/** Something else answered: a proxy, a sign-in page of the network. */
const foreign = (status: number): ApiProblem => ({
	code: 'unreachable',
	status,
	message: `Something other than this server answered (${status}). Check the connection and try again.`,
	more: {}
});

function refusal(status: number, read: unknown): ApiProblem {
	if (typeof read !== 'object' || read === null) return foreign(status);
	const { code, detail, ...more } = read as Record<string, unknown>;
	if (typeof code !== 'string' || typeof detail !== 'string') return foreign(status);
	return { code, status, message: detail, more };
}

function parsed(text: string): unknown {
	try {
		return JSON.parse(text) as unknown;
	} catch {
		return undefined;
	}
}

/** Whether the same may succeed later, without anybody doing anything. */
export const mayPass = ({ status }: ApiProblem): boolean =>
	status === 0 || status === 429 || status >= 500;
