/** What differs between scenarios, where it can be told and where it cannot, on the grid and in a starting view. */
import { flushSync, mount, unmount, type Component } from 'svelte';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { setSession } from '$lib/ui/context';
import { GridControl } from '$lib/ui/grid/control.svelte';
import Grid from '$lib/ui/grid/Grid.svelte';
import StaleLine from '$lib/ui/programmes/StaleLine.svelte';
import { staleTexts } from '$lib/ui/programmes/stale-texts';
import { Session } from '$lib/ui/session.svelte';
import Figures from '$lib/ui/starts/Figures.svelte';
import type { Workbook } from '$lib/workbook/schema';
import { base, cheap, resultsOf, shop } from './shop';
import { quietEngine, StillObserver } from './still';

let close = () => {};
beforeEach(() => vi.stubGlobal('ResizeObserver', StillObserver));
afterEach(() => {
	close();
	vi.unstubAllGlobals();
});

function drawn<Props extends object>(
	component: Component<Props>,
	props: (session: Session) => Props,
	{ stale, workbook = shop }: { stale?: string; workbook?: Workbook } = {}
) {
	const session = new Session(() => quietEngine, 'en');
	session.open(workbook);
	const other = resultsOf('dear', [3, 0.06, 0.1, 0.18, 0.3, 30, 28, 20, 0, 0, 0]);
	for (const results of [base, cheap, other]) session.onresults(results, session.revision);
	session.onsettled(session.revision);
	const of = (scenario: string) => (scenario === stale ? 'refused' : null);
	Object.defineProperty(session, 'stale', { value: { of, inScenario: of } });
	Object.defineProperty(session, 'planning', {
		value: { marking: { texts: staleTexts, StaleLine } }
	});
	const own = mount(
		((anchor, given) => {
			setSession(session);
			return component(anchor, given);
		}) as Component<Props>,
		{ target: document.body, props: props(session) }
	);
	close = () => void unmount(own);
	flushSync();
	return session;
}

const inGrid = (label: string) => {
	const head = [...document.querySelectorAll('[role=rowheader]')].find((one) =>
		one.textContent.includes(label)
	);
	const cells = head?.closest('[role=row]')?.querySelectorAll('[role=gridcell]') ?? [];
	return [...cells]
		.slice(1)
		.map((cell) => cell.textContent.replace(/why$/, '').replace(/\s+/g, ' ').trim());
};
const grid = (session: Session) => ({ control: new GridControl(session) });

it('on the grid a figure stands by itself where its plan does not answer, and where the base’s does not', () => {
	drawn(Grid as Component<{ control: GridControl }>, grid);
	expect(inGrid('Resin price')).toEqual(['2.02', '0.95 −1.07−53.0 %']);
	expect(inGrid('Mass per metre')[1]).toBe('same');
	close();
	drawn(Grid as Component<{ control: GridControl }>, grid, { stale: 'cheap' });
	expect(inGrid('Resin price')).toEqual(['2.02', 'out of date 0.95']);
	expect(inGrid('Mass per metre')[1]).toBe('out of date 0.06 to 0.10');
	close();
	drawn(Grid as Component<{ control: GridControl }>, grid, { stale: 'base' });
	expect(inGrid('Resin price')).toEqual(['out of date 2.02', '0.95']);
});

const finding = { kind: 'figures' as const, title: 'Result', quantities: ['price', 'night'] };
const inView = () => document.body.textContent.replace(/\s+/g, ' ').trim();

it('a starting view says so in place of a difference', () => {
	drawn(Figures, () => ({ finding }));
	expect(inView()).toMatch(/2\.02 EUR\/kg −1\.07.* no same$/);
	close();
	drawn(Figures, () => ({ finding }), { stale: 'cheap' });
	expect(inView()).toMatch(/2\.02 EUR\/kg out of date/);
	expect(inView()).not.toContain('same');
});

it('a starting view tells what differs from what the scenario is measured against, and names it', () => {
	const dear = { id: 'dear', title: 'PX dear', parent: 'base', changes: [] };
	const [first, second] = shop.scenarios;
	const workbook = { ...shop, scenarios: [first!, { ...second!, against: 'dear' }, dear] };
	const session = drawn(Figures, () => ({ finding }), { workbook });
	session.view.selectScenario('cheap');
	flushSync();
	// 0.95 − 3 = −2.05, −68.3 % of 3.
	expect(inView()).toMatch(/beside Cheap resin PX dear against PX dear .* 3 EUR\/kg −2\.05/);
	session.view.selectScenario('dear');
	flushSync();
	expect(inView()).toMatch(/beside PX dear Base against Base .* 2\.02 EUR\/kg \+0\.98/);
	session.view.selectScenario('base');
	flushSync();
	expect(inView()).toMatch(/^Result ?Resin price 2\.02 EUR\/kg ?Night/);
});
