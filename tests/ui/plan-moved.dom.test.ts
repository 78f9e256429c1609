/** What is said of a piece that was moved in a plan, and the way back. */
import { flushSync, mount, unmount, type Component } from 'svelte';
import { afterEach, expect, it } from 'vitest';
import { setSession } from '$lib/ui/context';
import PieceMoved from '$lib/ui/programmes/PieceMoved.svelte';
import type { Standing } from '$lib/ui/programmes/standing';
import { Session } from '$lib/ui/session.svelte';
import type { ProgrammePlan } from '$lib/workbook/programme-schema';

let close = () => {};
afterEach(() => close());

function said(standing: Standing, onback = () => {}): string {
	const session = new Session(() => {
		throw new Error('not asked here');
	}, 'en');
	const part = ((anchor, props) => {
		setSession(session);
		return PieceMoved(anchor, props);
	}) as typeof PieceMoved;
	const props = { words: 'Moved.', before: 100, gain: 1, money: 'EUR', standing, onback };
	const own = mount(part as Component<typeof props>, { target: document.body, props });
	close = () => void unmount(own);
	flushSync();
	return document.querySelector('[role=status]')?.textContent?.replace(/\s+/g, ' ').trim() ?? '';
}
const plan = { programme: 'p', scenario: 'base', objective: 90 } as unknown as ProgrammePlan;

it('names what lacks where no plan fits, and lets both go', () => {
	let back = 0;
	const because = 'The least that would have to give way: Line hours hold, L1, by 100 h.';
	expect(said({ is: 'refused', plan, because }, () => back++)).toBe(
		`Moved. No plan fits with both held. ${because} Let both go`
	);
	document.querySelector('button')?.click();
	expect(back).toBe(1);
});

it('does not wait for a cost that a plan which is kept never has', () => {
	const kept = { is: 'kept', plan, since: '2026-01-01', short: 0 } as const;
	expect(said({ ...kept, fits: true })).toContain('kept as it stood, so it does not follow');
	close();
	expect(said({ ...kept, fits: false })).toContain('does not do what is required');
});
