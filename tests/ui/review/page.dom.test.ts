/** The Review page as somebody uses it: a line ticked off, opened again, and usual ranges accepted. */
import { flushSync, mount, unmount, type Component } from 'svelte';
import { afterEach, expect, it } from 'vitest';
import { setSession } from '$lib/ui/context';
import ReviewPage from '$lib/ui/review/ReviewPage.svelte';
import { Session } from '$lib/ui/session.svelte';
import type { Quantity } from '$lib/workbook/schema';
import { book, entered, formula, perLine } from '../../review/book';
import { quietEngine } from '../still';

let close = () => {};
afterEach(() => close());

async function opened(...more: readonly Quantity[]) {
	const session = new Session(() => quietEngine, 'en');
	session.open(book([entered('wage', 20.5), formula('result', '3 * wage'), ...more]));
	const page = ((anchor, props) => {
		setSession(session);
		return ReviewPage(anchor, props);
	}) as typeof ReviewPage;
	const own = mount(page as Component, { target: document.body, context: new Map() });
	close = () => void unmount(own);
	flushSync();
	await expect.poll(status).toMatch(/to review/);
	return session;
}
const status = () => {
	flushSync();
	return document.querySelector('[role=status]')?.textContent ?? '';
};
const button = (words: RegExp) =>
	[...document.querySelectorAll('button')].find((one) => words.test(one.textContent ?? ''))!;
const write = (input: HTMLInputElement, text: string) => {
	input.value = text;
	input.dispatchEvent(new Event('input', { bubbles: true }));
};

it('groups the digits of what it says as the rest of the page does', async () => {
	await opened(perLine('pay', 20000, 21000, 210000, 19000, 20500));
	expect(document.body.textContent).toContain('210,000 EUR/h; the others lie about 20,500 EUR/h');
});

it('ticks a line off with a name and a reason, and opens it again', async () => {
	const session = await opened();
	expect(status()).toBe('1 line to review, 0 ticked off');
	expect(document.body.textContent).toContain('3 stands in the formula');
	button(/^Tick off/).click();
	flushSync();
	const [name, reason] = document.querySelectorAll<HTMLInputElement>('form input');
	expect(document.activeElement).toBe(name);
	write(name!, 'Ada');
	write(reason!, 'three shifts');
	document.querySelector('form')!.requestSubmit();
	await expect.poll(status).toBe('0 lines to review, 1 ticked off');
	expect(session.workbook?.reviewed).toMatchObject([
		{ id: 'literal result', by: 'Ada', reason: 'three shifts' }
	]);
	expect(session.undoable).toBe('tick off a line to review');
	expect(document.body.textContent).toContain('Ada: three shifts');
	button(/^Open again/).click();
	await expect.poll(status).toBe('1 line to review, 0 ticked off');
	expect(session.workbook?.reviewed).toBeUndefined();
});

it('accepts the usual ranges of a sheet in one step', async () => {
	const session = await opened();
	button(/^Accept 1 range/).click();
	flushSync();
	// 20.5 / 3 = 6.83, 20.5 × 3 = 61.5
	expect(session.layout?.byName.get('wage')?.quantity.usual).toEqual({ min: 6.8, max: 62 });
	expect(document.body.textContent).not.toContain('Usual ranges to accept');
	session.undo();
	flushSync();
	expect(document.body.textContent).toContain('Usual ranges to accept');
});

it('offers nothing to whoever may only read', async () => {
	const session = await opened();
	session.readOnly = true;
	flushSync();
	expect(document.querySelectorAll('form, .action').length).toBe(0);
	expect(button(/^Tick off/)).toBeUndefined();
});
