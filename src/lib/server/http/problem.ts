/** What went wrong with a request, as RFC 9457 has it: a code to decide on, a sentence to read. */

/** Every code that the interface answers with, and its status. */
export const PROBLEMS = {
	'bad-request': [400, 'The request cannot be read'],
	'sign-in-needed': [401, 'Sign in first'],
	'wrong-sign-in': [401, 'Address or password is wrong'],
	'not-allowed': [403, 'Your role does not allow this'],
	'accounts-needed': [403, 'This server needs accounts first'],
	'cross-site': [403, 'The request comes from another site'],
	'not-found': [404, 'There is nothing here'],
	'no-accounts': [404, 'There are no accounts here'],
	'wrong-method': [405, 'This address does not take that method'],
	conflict: [409, 'This cannot be done as things stand'],
	'newer-revision': [412, 'Others changed the same things'],
	'too-large': [413, 'The request is too large'],
	'wrong-type': [415, 'The body is of another type than expected'],
	'wrong-host': [421, 'The request names another host'],
	'wrong-content': [422, 'The content does not fit'],
	'evaluation-stopped': [422, 'The evaluation was stopped'],
	'work-stopped': [422, 'The workbook takes too much to read'],
	'precondition-needed': [428, 'Say which revision the change was made from'],
	'too-many': [429, 'Too many requests'],
	fault: [500, 'The server failed'],
	busy: [503, 'The server is busy'],
	unavailable: [503, 'The store cannot be reached']
} as const satisfies Record<string, readonly [number, string]>;
export type ProblemCode = keyof typeof PROBLEMS;

export interface ProblemMore {
	/** Further members of the object. */
	readonly fields?: Readonly<Record<string, unknown>>;
	/** Still further ones that are JSON already, large and not read here. */
	readonly json?: string;
	readonly headers?: Readonly<Record<string, string>>;
}

/** `detail` says what failed, why, and what to do. */
export function problem(code: ProblemCode, detail: string, more: ProblemMore = {}): Response {
	const [status, title] = PROBLEMS[code];
	const body = { type: `/api/problems/${code}`, title, status, code, detail, ...more.fields };
	const text = JSON.stringify(body);
	return new Response(more.json === undefined ? text : `${text.slice(0, -1)},${more.json}}`, {
		status,
		headers: { 'content-type': 'application/problem+json; charset=utf-8', ...more.headers }
	});
}
