import { flushSync, mount, tick, unmount, type Component } from 'svelte';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { askStudy } from '$lib/studies/ask-study';
import { refuse, type Answer } from '$lib/studies/problem';
import type { StudyResult } from '$lib/studies/kinds';
import { setSession } from '$lib/ui/context';
import { setBench } from '$lib/ui/studies/bench';
import { Session } from '$lib/ui/session.svelte';
import { StudyRunner, type AskStudy } from '$lib/ui/studies/study-runner.svelte';
import StudyPage from '$lib/ui/studies/StudyPage.svelte';
import type { Study } from '$lib/workbook/study-schema';
import { book } from '../../studies/small-book';
import { quietEngine } from '../still';

const study: Study = {
	...{ name: 'even', title: 'Even', kind: 'break_even', quantity: 'y', scenario: 'base' },
	...{ target: 0, input: { quantity: 'x', mode: 'set', from: 1, to: 8 } }
};

/** The page is drawn without a layout, so no size ever changes. */
class StillObserver implements ResizeObserver {
	observe() {}
	unobserve() {}
	disconnect() {}
}

let close = () => {};
beforeEach(() => vi.stubGlobal('ResizeObserver', StillObserver));
afterEach(() => {
	close();
	vi.unstubAllGlobals();
});

function opened() {
	const session = new Session(() => quietEngine, 'en');
	const workbook = book([
		{ name: 'x', value: 1 },
		{ name: 'y', formula: 'x - 2' }
	]);
	session.open({ ...workbook, studies: [study] });
	const answers: (() => void)[] = [];
	const ask: AskStudy = (one, asked, { signal }) =>
		new Promise<Answer<StudyResult>>((resolve) => {
			signal?.addEventListener('abort', () => resolve(refuse('cancelled', 'Cancelled.')));
			answers.push(() => resolve(askStudy(asked, one)));
		});
	const runner = new StudyRunner(session, ask);
	const page = ((anchor, props) => {
		setSession(session);
		setBench(runner);
		return StudyPage(anchor, props);
	}) as typeof StudyPage;
	const own = mount(page as Component<{ name: string }>, {
		target: document.body,
		context: new Map(),
		props: { name: 'even' }
	});
	flushSync();
	close = () => void unmount(own);
	return { session, answers };
}
const settled = async () => {
	for (let i = 0; i < 5; i++) await tick();
};

it('the focus stays on the button that runs and cancels, and nothing asks for a run that is under way', async () => {
	const { session, answers } = opened();
	const button = () => document.querySelector<HTMLButtonElement>('.acts button')!;
	answers.at(-1)!();
	await settled();
	expect(button().textContent).toBe('Run and keep');
	session.apply({ kind: 'put_study', study: { ...study, target: 1 }, name: 'even' });
	flushSync();
	expect(document.body.textContent).toContain('of an earlier state');
	button().focus();
	button().click();
	flushSync();
	expect(button().textContent).toBe('Cancel');
	expect(document.activeElement).toBe(button());
	expect(document.body.textContent).not.toContain('of an earlier state');
	button().click();
	flushSync();
	expect(button().textContent).toBe('Run and keep');
	expect(document.activeElement).toBe(button());
	expect(document.body.textContent).toContain('of an earlier state');
});
