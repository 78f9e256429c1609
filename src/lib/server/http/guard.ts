/**
 * What is refused before a route is reached: another host's name, another site's request, more requests than one
 * caller may send.
 */
import { bearerOf } from '../people/tokens';
import { isLoopback, type Settings } from '../settings';
import { problem } from './problem';

/** A header that no other site can add without being asked first; every change must carry it. */
export const OWN_HEADER = 'x-metrewright';

/** Whether a proxy passed the request on: by its headers, of which each proxy adds some. */
export function isForwarded(request: Request): boolean {
	for (const [name] of request.headers)
		if (/^(forwarded|via|x-real-ip|x-forwarded-.+)$/.test(name)) return true;
	return false;
}

/** Without accounts everybody is the one person of this machine: not those whom a proxy lets in. */
export const accountsNeeded = (): Response =>
	problem(
		'accounts-needed',
		'A proxy passes requests on to this server, but nobody has an account on it. Make the first one on its command line with "account add-owner EMAIL".'
	);

const hostnameOf = (host: string): string => host.replace(/:\d+$/, '');

/** A page of another site could reach this machine under a name of its own; its requests give that name. */
export function hostProblem(
	settings: Settings,
	mode: 'single' | 'accounts',
	host: string
): Response | null {
	const name = hostnameOf(host);
	if (isLoopback(name)) return null;
	if (settings.origin !== null && new URL(settings.origin).host === host) return null;
	if (mode === 'accounts' && settings.origin === null) return null;
	return problem(
		'wrong-host',
		'This server does not answer under that name. Open it under its own address, or set ORIGIN to it.'
	);
}

/** Changes are taken from the app's own pages and from programs, not from other sites' pages. */
export function crossSiteProblem(
	settings: Settings,
	request: Request,
	host: string
): Response | null {
	if (request.method === 'GET' || request.method === 'HEAD') return null;
	const refuse = (why: string) => problem('cross-site', why);
	const site = request.headers.get('sec-fetch-site');
	if (site !== null && site !== 'same-origin' && site !== 'none')
		return refuse('A page of another site sent this. Use the app itself.');
	const origin = request.headers.get('origin');
	if (origin !== null && !isOwn(settings, origin, host))
		return refuse('The Origin header names another site. Use the app itself.');
	// No page can make a browser send another's token.
	if (!request.headers.has(OWN_HEADER) && bearerOf(request) === null)
		return refuse(`A change needs the header ${OWN_HEADER}, with any value.`);
	return null;
}

function isOwn(settings: Settings, origin: string, host: string): boolean {
	if (settings.origin !== null && origin === settings.origin) return true;
	const given = URL.canParse(origin) ? new URL(origin).host : '';
	return settings.origin === null
		? given === host
		: isLoopback(hostnameOf(given)) && given === host;
}

/** How many requests a caller has left, refilled evenly over a minute. One for each process. */
export class RateLimit {
	readonly #left = new Map<string, { tokens: number; at: number }>();

	constructor(readonly perMinute: number) {}

	/** Seconds to wait; 0 to go on. A clock that is set back refills nothing, and takes nothing away. */
	take(caller: string, now: number): number {
		const perMs = this.perMinute / 60_000;
		const known = this.#left.get(caller);
		const tokens = known
			? Math.min(this.perMinute, known.tokens + Math.max(0, now - known.at) * perMs)
			: this.perMinute;
		if (this.#left.size > 20_000) this.#forget(now);
		const go = tokens >= 1;
		this.#left.set(caller, { tokens: go ? tokens - 1 : tokens, at: now });
		return go ? 0 : Math.ceil((1 - tokens) / perMs / 1000);
	}

	/** Callers that are full again are as good as new; under attack from many, all are forgotten. */
	#forget(now: number): void {
		for (const [caller, { at }] of this.#left) if (now - at > 60_000) this.#left.delete(caller);
		if (this.#left.size > 20_000) this.#left.clear();
	}
}
