/** The two cookies: the session's secret, and the mark of a browser that a person has signed in from. */
import type { Settings } from '../settings';

export interface CookieNames {
	readonly session: string;
	readonly device: string;
	readonly secure: boolean;
}

/** Over https the names bind the cookies to this host alone. */
export function cookieNames(settings: Settings, request: Request): CookieNames {
	const forwarded = settings.proxies > 0 && request.headers.get('x-forwarded-proto') === 'https';
	const secure = forwarded || settings.origin?.startsWith('https:') === true;
	const prefix = secure ? '__Host-' : '';
	return { session: `${prefix}metrewright`, device: `${prefix}metrewright_browser`, secure };
}

export function readCookie(request: Request, name: string): string | null {
	for (const pair of (request.headers.get('cookie') ?? '').split(';')) {
		const at = pair.indexOf('=');
		if (at > 0 && pair.slice(0, at).trim() === name) {
			const value = pair.slice(at + 1).trim();
			return /^[\w-]{20,200}$/.test(value) ? value : null;
		}
	}
	return null;
}

export function cookieLine(
	name: string,
	value: string,
	{ secure, seconds }: { secure: boolean; seconds: number }
): string {
	const parts = [`${name}=${value}`, 'Path=/', 'HttpOnly', 'SameSite=Strict', `Max-Age=${seconds}`];
	return [...parts, ...(secure ? ['Secure'] : [])].join('; ');
}
