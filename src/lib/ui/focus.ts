/**
 * Where the keyboard goes when what it was on has left the page: to the page's heading, or to an item of
 * a list. The grid's cells are focused by its control.
 */
import { tick } from 'svelte';

/** The heading of the page in `main`. */
export function focusHeading(): void {
	const heading = document.querySelector<HTMLElement>('main :is(h1, h2)');
	if (!heading) return;
	heading.tabIndex = -1;
	heading.focus({ preventScroll: true });
}

/** All that is open, past the head and the contents: the next Tab goes to the first thing on it. */
export function focusPage(): void {
	const main = document.querySelector('main');
	if (!main) return;
	main.tabIndex = -1;
	main.focus();
	// A click on bare paper is no reason to hold the focus.
	main.addEventListener('blur', () => main.removeAttribute('tabindex'), { once: true });
}

/** The item of a list that is marked with this id, once it is drawn; the heading if there is none. */
export async function focusItem(id: string | null): Promise<void> {
	await tick();
	const items = [...document.querySelectorAll<HTMLElement>('main [data-item]')];
	const item = items.find((item) => item.dataset.item === id);
	if (item) item.focus();
	else focusHeading();
}

/** The id that takes the place of one that goes: the next, else the one before. */
export function neighbourOf(ids: readonly string[], id: string): string | null {
	const at = ids.indexOf(id);
	return at < 0 ? null : (ids[at + 1] ?? ids[at - 1] ?? null);
}
