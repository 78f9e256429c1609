/** The Tab key's stop in the tables of pictures: arrow keys take it along, but never to where nothing stands. */
import { flushSync, mount, unmount, type Component } from 'svelte';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import CapacityLoads from '$lib/ui/pictures/capacity/CapacityLoads.svelte';
import type { Capacity } from '$lib/ui/pictures/capacity/capacity';
import SideTable from '$lib/ui/pictures/patterns/SideTable.svelte';

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

const load = { kind: 'value', value: 80, unit: '%' };
const month = { load, before: undefined, fullest: false, cell: 0 };
const row = (id: string, months: number) => ({
	...{ id, name: id, aside: '', group: 0, year: undefined, short: undefined },
	months: Array.from({ length: months }, () => month)
});
const capacity = {
	months: ['jan', 'feb'].map((id) => ({ id, label: id, short: id })),
	groups: [{ title: 'Lines', quantity: 'load', resource: 'line' }],
	rows: [row('L1', 2), row('L2', 1)],
	scenario: 'base',
	shortUnit: 'h'
} as unknown as Capacity;
const cell = { reading: load, text: '80', same: null, difference: '', relative: '', cell: 0 };
const side = (id: string) => ({ id, title: id, aside: '', scenario: id });
const sides = {
	...{ sides: [side('a'), side('b')], against: 'a', name: 'Patterns', describedBy: '' },
	rows: [2, 1].map((cells, i) => ({
		...{ name: `row${i}`, label: 'Row', unit: '', note: '' },
		cells: Array.from({ length: cells }, () => cell)
	})),
	onask: () => {}
};
const loads = { capacity, locale: 'en', describedBy: '', onask: () => {}, ongo: () => {} };

it.each([
	['loads', CapacityLoads as unknown as Component, loads],
	['figures side by side', SideTable as unknown as Component, sides]
])('of %s', (_, table, props) => {
	const own = mount(table, { target: document.body, props });
	close = () => void unmount(own);
	flushSync();
	const stops = () =>
		[...document.querySelectorAll<HTMLElement>('[data-stop][tabindex="0"]')].map(
			({ dataset }) => dataset.stop
		);
	const press = (key: string) => {
		document.activeElement!.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true }));
		flushSync();
	};
	document.querySelector<HTMLElement>('[data-stop="0 0"]')!.focus();
	press('ArrowRight');
	expect(stops()).toEqual(['0 1']);
	// Nothing stands below.
	press('ArrowDown');
	expect(stops()).toEqual(['0 1']);
	expect((document.activeElement as HTMLElement).dataset.stop).toBe('0 1');
});
