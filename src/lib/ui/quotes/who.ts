/** Who makes quotes in this browser: asked once, and kept here alone. */
const KEY = 'metrewright.quotes-by';

export function quotesBy(): string {
	try {
		return localStorage.getItem(KEY) ?? '';
	} catch {
		return '';
	}
}

export function keepQuotesBy(name: string): void {
	try {
		localStorage.setItem(KEY, name);
	} catch {
		// Where nothing may be kept, it is asked again.
	}
}
