import { flushSync, mount, tick, unmount } from 'svelte';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { setSession } from '$lib/ui/context';
import { Session } from '$lib/ui/session.svelte';
import StudySettings from '$lib/ui/studies/StudySettings.svelte';
import type { StudyOf } from '$lib/workbook/study-schema';
import { book } from '../../studies/small-book';
import { quietEngine } from '../still';

const study: StudyOf<'break_even'> = {
	...{ name: 'even', title: 'Even', kind: 'break_even', quantity: 'y', scenario: 'base' },
	...{ target: 0, input: { quantity: 'x', mode: 'set', from: 1, to: 8 } }
};

const scroll = vi.fn();
let close = () => {};
beforeEach(() => {
	Element.prototype.scrollIntoView = scroll;
	scroll.mockClear();
});
afterEach(() => close());

function opened() {
	const session = new Session(() => quietEngine, 'en');
	const workbook = book([
		{ name: 'x', value: 1 },
		{ name: 'y', formula: 'x - 2' }
	]);
	session.open({ ...workbook, studies: [study] });
	const kept = () => session.workbook!.studies![0] as StudyOf<'break_even'>;
	const form = ((anchor, props) => {
		setSession(session);
		return StudySettings(anchor, props);
	}) as typeof StudySettings;
	const own = mount(form, {
		target: document.body,
		context: new Map(),
		props: {
			get workbook() {
				return session.workbook!;
			},
			get study() {
				return kept();
			}
		}
	});
	flushSync();
	close = () => void unmount(own);
	const field = (label: string) => {
		const found = [...document.querySelectorAll('label')].find(
			(hTMLLabelElement) => hTMLLabelElement.textContent === label
		);
		return document.getElementById(found!.htmlFor) as HTMLInputElement;
	};
	const enter = async (label: string, text: string) => {
		field(label).value = text;
		field(label).dispatchEvent(new Event('input', { bubbles: true }));
		field(label).dispatchEvent(new Event('change', { bubbles: true }));
		await tick();
		await tick();
	};
	const alert = () => document.querySelector('.refusal')?.textContent ?? '';
	return { own, kept, field, enter, alert };
}

it('a refused value is marked, its message comes into view, and the study does not run on it', async () => {
	const { own, kept, field, enter, alert } = opened();
	expect(own.isKept()).toBe(true);
	await enter('From', '8');
	expect(alert()).toContain('range');
	expect(scroll).toHaveBeenCalledWith({ block: 'nearest' });
	expect(field('From').getAttribute('aria-invalid')).toBe('true');
	expect(kept().input.from).toBe(1);
	// Another change is kept, and what was refused still stands.
	await enter('Target of the result', '3');
	expect(kept().target).toBe(3);
	expect(alert()).toContain('range');
	expect(own.isKept()).toBe(false);
	await tick();
	expect(document.activeElement).toBe(field('From'));
	expect(alert()).toContain('was not run');
	// The old value put back.
	await enter('From', '1');
	expect(field('From').getAttribute('aria-invalid')).toBe('false');
	expect(alert()).toBe('');
	expect(own.isKept()).toBe(true);
});

it('a refused value is kept once another value makes it fit', async () => {
	const { own, kept, field, enter, alert } = opened();
	await enter('From', '8');
	expect(kept().input.from).toBe(1);
	await enter('To', '12');
	expect(kept().input).toMatchObject({ from: 8, to: 12 });
	expect(field('From').getAttribute('aria-invalid')).toBe('false');
	expect(alert()).toBe('');
	expect(own.isKept()).toBe(true);
});

it('a text that is no number stops the run too', async () => {
	const { own, field, enter } = opened();
	await enter('Target of the result', 'nothing');
	expect(own.isKept()).toBe(false);
	expect(document.activeElement).toBe(field('Target of the result'));
});
