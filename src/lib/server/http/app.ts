/**
 * The HTTP interface: finds the route, refuses what must not reach it, answers. Every request comes through here; what
 * each route does stands in `routes/`.
 */
import { parseJson } from '$lib/workbook/json';
import { sizeWords } from '$lib/workbook/file-size';
import { NotDoneError } from '../documents/documents';
import { hasAccounts } from '../people/people';
import { findSession } from '../people/sessions';
import { bearerOf, findToken } from '../people/tokens';
import { faultOf } from '../store/faults';
import { newId } from '../store/ids';
import { readBody } from './body';
import { cookieLine, cookieNames, readCookie } from './cookies';
import { accountsNeeded, crossSiteProblem, hostProblem, isForwarded, RateLimit } from './guard';
import { refusal } from './permission';
import { problem } from './problem';
import type { Call, Route, Services, Who } from './route';
import { ROUTES } from './routes';

/** JSON that is no workbook is small. */
const SMALL_BODY_BYTES = 64 * 1024;
/** How long "there are no accounts" is believed: the first one is made by another process. */
const RECHECK_MS = 2000;

const HEADERS: Readonly<Record<string, string>> = {
	'cache-control': 'no-store',
	'x-content-type-options': 'nosniff',
	'referrer-policy': 'no-referrer',
	'cross-origin-resource-policy': 'same-origin',
	'content-security-policy': "default-src 'none'; frame-ancestors 'none'"
};

export class App {
	readonly #limit: RateLimit;
	#accounts: { readonly are: boolean; readonly at: number } | undefined;

	/** A proxy has sent something, so that whoever asks need not sit at this machine, whatever later requests say. */
	#proxySeen = false;

	constructor(readonly services: Services) {
		this.#limit = new RateLimit(services.settings.requestsPerMinute);
	}

	async handle(request: Request, address: string): Promise<Response> {
		const started = performance.now();
		const id = newId();
		const url = new URL(request.url);
		const found = findRoute(url.pathname);
		const route = found.get(request.method === 'HEAD' ? 'GET' : request.method);
		const seen: Seen = {};
		let answer: Response;
		try {
			answer = await this.#answer(request, url, address, found, route, seen);
		} catch (error) {
			answer = this.#failed(error, id);
		}
		const response = new Response(request.method === 'HEAD' ? null : answer.body, answer);
		for (const [name, value] of Object.entries(HEADERS))
			if (!response.headers.has(name)) response.headers.set(name, value);
		// Signing in and out say themselves what the cookie is.
		if (seen.cookie !== undefined && !response.headers.has('set-cookie'))
			response.headers.set('set-cookie', seen.cookie);
		response.headers.set('x-request-id', id);
		this.services.log.write('info', {
			event: 'request',
			request: id,
			method: request.method,
			route: route?.route.path ?? 'none',
			status: response.status,
			ms: Math.round(performance.now() - started),
			...(seen.person !== undefined && { person: seen.person })
		});
		return response;
	}

	async #answer(
		request: Request,
		url: URL,
		address: string,
		found: ReadonlyMap<string, Found>,
		matched: Found | undefined,
		seen: Seen
	): Promise<Response> {
		const { services } = this;
		const { settings, store, now } = services;
		const wait = this.#limit.take(address, now());
		if (wait > 0)
			return problem('too-many', `This address sends too many requests. Wait ${wait} s.`, {
				headers: { 'retry-after': String(wait) }
			});
		const host = request.headers.get('host') ?? url.host;
		// Whether it lives is asked by programs under any name, and tells nothing else.
		const isProbe = matched?.route.group === 'operation';
		if (isProbe) return this.#call(matched, { request, address, who: NOBODY, url });
		const mode = (await this.#hasAccounts()) ? 'accounts' : 'single';
		this.#proxySeen ||= isForwarded(request);
		if (mode === 'single' && this.#proxySeen) return accountsNeeded();
		const refused = hostProblem(settings, mode, host) ?? crossSiteProblem(settings, request, host);
		if (refused) return refused;
		if (!matched) {
			const methods = [...found.keys()];
			if (methods.length === 0) return problem('not-found', 'There is nothing at this address.');
			return problem('wrong-method', `This address takes ${methods.join(', ')}.`, {
				headers: { allow: methods.join(', ') }
			});
		}
		const who = await this.#who(request, mode, seen);
		if (who.person) seen.person = who.person.id;
		else if (mode === 'accounts' && bearerOf(request) !== null)
			return problem(
				'sign-in-needed',
				'This API token is unknown, has ended or is too old. Make another one under “Share and people”.'
			);
		const workbook = matched.path.get('workbook') ?? null;
		const no = await refusal(store.db, who, matched.route.needs, workbook);
		return no ?? this.#call(matched, { request, address, who, url });
	}

	async #call(
		{ route, path }: Found,
		{ request, address, who, url }: { request: Request; address: string; who: Who; url: URL }
	): Promise<Response> {
		const { services } = this;
		const query = route.query?.safeParse(Object.fromEntries(url.searchParams));
		if (query && !query.success) return wrongContent('The query', query.error.issues);
		if (route.precondition && request.headers.get('if-match') === null)
			return problem(
				'precondition-needed',
				'Send If-Match with the ETag of the revision that the change was made from.'
			);
		let text = '';
		let body: unknown;
		if (route.body !== null) {
			const isWorkbook = route.body === 'workbook';
			const limit = isWorkbook ? services.settings.bodyLimitBytes : SMALL_BODY_BYTES;
			const read = await readBody(request, limit);
			if (!read.ok) return bodyProblem(read.why, limit);
			text = read.text;
			if (route.body !== 'workbook') {
				const parsed = parseJson(text);
				if (!parsed.ok)
					return problem(
						'bad-request',
						`The body is not JSON: line ${parsed.problem.line}, column ${parsed.problem.column}: ${parsed.problem.message}.`
					);
				const checked = route.body.safeParse(parsed.json);
				if (!checked.success) return wrongContent('The body', checked.error.issues);
				body = checked.data;
			}
		}
		return route.handle({
			services,
			request,
			address,
			who,
			text,
			path: (name) => path.get(name) ?? '',
			query: query?.data,
			body
		} as Call);
	}

	async #who(request: Request, mode: Who['mode'], seen: Seen): Promise<Who> {
		if (mode === 'single') return { mode, person: null, session: null, token: null };
		const { settings, store, now } = this.services;
		const secret = bearerOf(request);
		if (secret !== null) {
			const found = await findToken(store.db, secret, now());
			return { mode, person: found?.person ?? null, session: null, token: found?.token ?? null };
		}
		const { session: name, secure } = cookieNames(settings, request);
		const token = readCookie(request, name);
		const session = token === null ? null : await findSession(store.db, token, now(), settings);
		// The browser keeps its cookie as long as the session goes on.
		if (token !== null && session && session.renewedFor !== null)
			seen.cookie = cookieLine(name, token, { secure, seconds: session.renewedFor });
		return {
			mode,
			person: session?.person ?? null,
			session: session?.id ?? null,
			token: null
		};
	}

	async #hasAccounts(): Promise<boolean> {
		const now = this.services.now();
		// The last account may be removed as well, but only through this interface's own people.
		if (this.#accounts && (this.#accounts.are || now - this.#accounts.at < RECHECK_MS))
			return this.#accounts.are;
		this.#accounts = { are: await hasAccounts(this.services.store.db), at: now };
		return this.#accounts.are;
	}

	#failed(error: unknown, request: string): Response {
		if (error instanceof NotDoneError) return this.#notDone(error, request);
		const fault = faultOf(error);
		const message = error instanceof Error ? error.message : String(error);
		this.services.log.write(fault === 'busy' ? 'warn' : 'error', {
			event: fault ? 'store_fault' : 'fault',
			request,
			message,
			...(!fault && error instanceof Error && error.stack && { stack: error.stack })
		});
		const again = { headers: { 'retry-after': '2' } };
		if (fault === 'unwritable')
			return problem(
				'unavailable',
				'The disk of the server is full or read-only. Nothing was saved.'
			);
		if (fault === 'busy' || fault === 'taken')
			return problem('busy', 'Others are saving at this moment. Try again.', again);
		if (fault) return problem('unavailable', 'The store does not answer. Try again.', again);
		return problem(
			'fault',
			`The server met a fault of its own. Its log tells more under ${request}.`
		);
	}

	#notDone({ why, seconds, message }: NotDoneError, request: string): Response {
		this.services.log.write('warn', { event: 'work_stopped', request, message });
		if (why === 'busy')
			return problem('busy', 'Many workbooks are being read at this moment. Try again.', {
				headers: { 'retry-after': '2' }
			});
		const more = why === 'time' ? `more than ${seconds} s` : 'more memory than it may';
		return problem(
			'work-stopped',
			`Reading and comparing this workbook took ${more} and was stopped. Nothing was saved. Make its sets or lists smaller, or split it into several.`
		);
	}
}

/** What was learnt of a request on its way. */
interface Seen {
	person?: string;
	cookie?: string;
}

const NOBODY: Who = { mode: 'accounts', person: null, session: null, token: null };

interface Found {
	readonly route: Route;
	readonly path: ReadonlyMap<string, string>;
}

/** What stands at a path, by method. */
function findRoute(pathname: string): ReadonlyMap<string, Found> {
	const parts = pathname.split('/');
	const found = new Map<string, Found>();
	for (const route of ROUTES) {
		const pattern = route.path.split('/');
		if (pattern.length !== parts.length) continue;
		const path = new Map<string, string>();
		const fits = pattern.every((piece, i) => {
			const part = parts[i]!;
			if (!piece.startsWith('{')) return piece === part;
			path.set(piece.slice(1, -1), part);
			// Ids and numbers alone: nothing else is ever a part of an address here.
			return /^[\w-]{1,64}$/.test(part);
		});
		if (fits) found.set(route.method, { route, path });
	}
	return found;
}

function bodyProblem(why: 'too-large' | 'wrong-type' | 'broken', limit: number): Response {
	if (why === 'wrong-type')
		return problem('wrong-type', 'Send the body as application/json, not compressed.');
	if (why === 'too-large')
		return problem('too-large', `The body is larger than ${sizeWords(limit)}. Send a smaller one.`);
	return problem('bad-request', 'The body is not UTF-8 text, or it broke off. Send it again.');
}

function wrongContent(
	what: string,
	issues: readonly { readonly path: readonly PropertyKey[]; readonly message: string }[]
): Response {
	const [first] = issues;
	const place = first?.path.map(String).join('.') || 'as a whole';
	return problem('wrong-content', `${what} does not fit at ${place}: ${first?.message ?? ''}.`);
}
