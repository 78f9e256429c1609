/** A long list as somebody uses it with the keyboard: typed, moved in, taken, left. */
import { flushSync, mount, unmount } from 'svelte';
import { afterEach, expect, it, vi } from 'vitest';
import Combobox from '$lib/ui/choose/Combobox.svelte';
import ListField from '$lib/ui/choose/ListField.svelte';
import type { ListOption } from '$lib/ui/choose/options';

// The page of the tests lays nothing out.
Element.prototype.scrollIntoView ??= () => {};
let close = () => {};
afterEach(() => close());

const LONG: ListOption[] = Array.from({ length: 40 }, (_, i) => ({
	value: `m${i}`,
	text: `Member ${i}`,
	group: i < 20 ? 'First' : 'Second',
	...(i === 7 && { other_names: ['lucky'] })
}));

function opened(options: readonly ListOption[], value = 'm3') {
	const onchoose = vi.fn();
	const own = mount(ListField, {
		target: document.body,
		props: { label: 'Member', value, options, onchoose }
	});
	close = () => void unmount(own);
	flushSync();
	return onchoose;
}
const field = () => document.querySelector<HTMLInputElement>('[role=combobox]')!;
const options = () =>
	[...document.querySelectorAll('[role=option]')].map((one) => one.textContent?.trim());
const marked = () =>
	document.getElementById(field().getAttribute('aria-activedescendant') ?? '')?.textContent?.trim();
function press(key: string) {
	const event = new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true });
	field().dispatchEvent(event);
	flushSync();
	return event;
}
function type(text: string) {
	field().value = text;
	field().dispatchEvent(new Event('input', { bubbles: true }));
	flushSync();
}

it('is the native list where it is short', () => {
	opened(LONG.slice(0, 15));
	expect(document.querySelector('select')?.value).toBe('m3');
	expect(document.querySelectorAll('optgroup')).toHaveLength(1);
});

it('says what is chosen, and opens at it with its headings', () => {
	opened(LONG);
	expect(field().value).toBe('Member 3');
	expect(field().getAttribute('aria-expanded')).toBe('false');
	press('ArrowDown');
	expect(field().getAttribute('aria-expanded')).toBe('true');
	expect(marked()).toBe('Member 3');
	const groups = [...document.querySelectorAll('[role=group]')];
	expect(
		groups.map((one) => document.getElementById(one.getAttribute('aria-labelledby')!)?.textContent)
	).toEqual(['First', 'Second']);
});

it('is moved in by arrows and pages, and Enter takes', () => {
	const onchoose = opened(LONG);
	press('ArrowDown');
	press('ArrowDown');
	press('PageDown');
	expect(marked()).toBe('Member 12');
	press('ArrowUp');
	expect(press('Enter').defaultPrevented).toBe(true);
	expect(onchoose.mock.calls.map(([value]) => value)).toEqual(['m11']);
	// Whoever is told has not agreed: it stands where it stood.
	expect(field().value).toBe('Member 3');
});

it('finds what is typed, by another name too, and Tab takes it', () => {
	const onchoose = opened(LONG);
	type('lucky');
	expect(options()).toEqual(['Member 7 also: lucky First']);
	press('Tab');
	expect(onchoose.mock.calls.map(([value]) => value)).toEqual(['m7']);
});

it('keeps what stood on Escape, on leaving, and where nothing was typed before Tab', () => {
	const onchoose = opened(LONG);
	type('member 22');
	expect(press('Escape').defaultPrevented).toBe(true);
	expect(field().value).toBe('Member 3');
	// Closed, the key is somebody else's: a dialog's.
	expect(press('Escape').defaultPrevented).toBe(false);
	type('member 22');
	field().dispatchEvent(new FocusEvent('blur'));
	flushSync();
	expect(field().value).toBe('Member 3');
	press('ArrowDown');
	press('Tab');
	expect(onchoose).not.toHaveBeenCalled();
});

it('says where nothing is found, and takes nothing then', () => {
	const onchoose = opened(LONG);
	type('zzz');
	expect(options()).toEqual(['Nothing in this list has these words.']);
	press('Enter');
	expect(onchoose).not.toHaveBeenCalled();
});

it('goes on after the letter that it was opened with, and takes what stood there too', () => {
	const onchoose = vi.fn();
	const own = mount(Combobox, {
		target: document.body,
		props: { value: 'm3', options: LONG, begun: 'm', inCell: true, onchoose }
	});
	close = () => void unmount(own);
	flushSync();
	field().focus();
	expect([field().value, field().selectionStart, field().selectionEnd]).toEqual(['m', 1, 1]);
	type('member 3');
	press('Enter');
	expect(onchoose.mock.calls.map(([value]) => value)).toEqual(['m3']);
});
