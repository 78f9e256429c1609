import { flushSync, mount, unmount, type Component } from 'svelte';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { Results } from '$lib/engine/results';
import { setSession } from '$lib/ui/context';
import { GridControl } from '$lib/ui/grid/control.svelte';
import Grid from '$lib/ui/grid/Grid.svelte';
import { Session } from '$lib/ui/session.svelte';
import type { Command } from '$lib/workbook/commands';
import { base, cheap, shop } from '../shop';
import { quietEngine, StillObserver } from '../still';

let close = () => {};
beforeEach(() => vi.stubGlobal('ResizeObserver', StillObserver));
afterEach(() => {
	close();
	vi.unstubAllGlobals();
});

function opened() {
	const session = new Session(() => quietEngine, 'en');
	session.open(shop);
	answer(session, base, cheap);
	const grid = ((anchor, props) => {
		setSession(session);
		return Grid(anchor, props);
	}) as typeof Grid;
	const control = new GridControl(session);
	const own = mount(grid as Component<{ control: GridControl }>, {
		target: document.body,
		props: { control }
	});
	close = () => void unmount(own);
	flushSync();
	return { session, control };
}

function answer(session: Session, ...columns: readonly Results[]) {
	for (const results of columns) session.onresults(results, session.revision);
	session.onsettled(session.revision);
}

const priceTo = (value: number): Command => ({
	kind: 'set_inputs',
	scenario: 'base',
	entries: [{ quantity: 'price', at: [], value }]
});

/** The results with another value in the first cell, the price. */
const withPrice = (results: Results, price: number): Results => ({
	...results,
	values: results.values.with(0, price),
	states: results.states.slice()
});

const rowsDrawnBy = (act: () => void): string[] => {
	const watched = new MutationObserver(() => {});
	const all = { subtree: true, childList: true, characterData: true, attributes: true };
	watched.observe(document.body, all);
	act();
	flushSync();
	const rows = watched.takeRecords().map(({ target }) => {
		const element = target instanceof Element ? target : target.parentElement;
		return element?.closest('[role=row]')?.querySelector('[role=rowheader]')?.textContent ?? '';
	});
	watched.disconnect();
	return [...new Set(rows.map((text) => text.trim()))];
};

const figures = (label: string): (string | null)[] => {
	const head = [...document.querySelectorAll('[role=rowheader]')].find((one) =>
		one.textContent.includes(label)
	);
	const cells = head?.closest('[role=row]')?.querySelectorAll('[role=gridcell] .field') ?? [];
	return [...cells].map((cell) => cell.textContent.trim());
};

it('draws only the rows that an answer changes', () => {
	const { session } = opened();
	session.apply(priceTo(3));
	flushSync();
	const rows = rowsDrawnBy(() => answer(session, withPrice(base, 3), withPrice(cheap, 3)));
	expect(rows).toHaveLength(1);
	expect(rows[0]).toContain('Resin price');
});

it('draws nothing for an answer that says what stands there', () => {
	const { session } = opened();
	const again = () => answer(session, withPrice(base, base.values[0]!), { ...cheap });
	expect(rowsDrawnBy(again)).toEqual([]);
});

it('keeps rows that say the same the same objects, whatever was edited', () => {
	const { session, control } = opened();
	const before = control.rows;
	session.apply(priceTo(3));
	const changed = control.rows.filter((row, at) => row !== before[at]);
	expect(changed.map(({ key }) => key)).toEqual(['price']);
	answer(session, withPrice(base, 3), withPrice(cheap, 3));
	const after = control.rows;
	answer(session, withPrice(base, 3), withPrice(cheap, 3));
	expect(control.rows).toBe(after);
});

it('shows an undone edit in all scenarios at once', () => {
	const { session } = opened();
	const before = figures('Resin price');
	session.apply(priceTo(3));
	answer(session, withPrice(base, 3), withPrice(cheap, 4));
	flushSync();
	const edited = figures('Resin price');
	expect(edited).not.toEqual(before);
	session.undo();
	session.onresults(base, session.revision);
	flushSync();
	expect(figures('Resin price')).toEqual(edited);
	session.onresults(cheap, session.revision);
	session.onsettled(session.revision);
	flushSync();
	expect(figures('Resin price')).toEqual(before);
});
