/**
 * Style sheets that could not be fetched are asked for again. The loader of the program's parts tries each once and then
 * takes it for done: after a lost connection a part would stay bare for as long as the page is open.
 */

/** Each wait is twice the one before, up to the longest. */
const FIRST_MS = 1000;
const LONGEST_MS = 60_000;

/** Gives the function that ends it. */
export function retryLostStyles(): () => void {
	const lost = new Set<HTMLLinkElement>();
	let timer: ReturnType<typeof setTimeout> | null = null;
	let wait = FIRST_MS;

	function again(): void {
		if (timer !== null) clearTimeout(timer);
		timer = null;
		// A link is fetched when it comes into the page; a copy in its place keeps the order of the sheets.
		for (const link of lost) link.replaceWith(link.cloneNode());
		lost.clear();
	}
	function onerror({ target }: Event): void {
		if (!(target instanceof HTMLLinkElement) || target.rel !== 'stylesheet') return;
		lost.add(target);
		if (timer !== null) return;
		timer = setTimeout(again, wait);
		wait = Math.min(wait * 2, LONGEST_MS);
	}
	function ononline(): void {
		wait = FIRST_MS;
		again();
	}

	// Such an event does not rise from the link; it can only be met on its way down.
	window.addEventListener('error', onerror, true);
	window.addEventListener('online', ononline);
	return () => {
		if (timer !== null) clearTimeout(timer);
		window.removeEventListener('error', onerror, true);
		window.removeEventListener('online', ononline);
	};
}
