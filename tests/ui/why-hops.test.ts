/** From a result of the shipped plant to whatever is entered behind it, by what the panel of reasons offers. */
import { describe, expect, it } from 'vitest';
import { Dice } from '$lib/seeding/dice';
import type { Why } from '$lib/engine/results';
import { groupsOf, inputGroups, linesOf, trailBy, trailLabels, trailTo } from '$lib/ui/why/hops';
import { openShipped } from '../reference/shipped';

const model = openShipped('marram');
const { layout } = model;
const ebit = layout.byName.get('ebit')!.base;
const why = model.why('base', ebit);
const behind = why.inputs.flatMap(({ quantity, cells }) =>
	cells.map((cell) => ({ quantity, cell }))
);

/** Buttons pressed from a value to an input behind it: the list of inputs, the quantity where it has several, the value. */
function steps(from: Why, input: { quantity: string; cell: number }): number | null {
	const group = inputGroups(layout, from, '').find(({ quantity }) => quantity === input.quantity);
	if (!group?.items.some(({ cell }) => cell === input.cell)) return null;
	return group.items.length === 1 ? 2 : 3;
}

describe('from EBIT to an input behind it', () => {
	it('is six steps at most, whichever of thirty is drawn', () => {
		const dice = new Dice(8);
		const drawn = Array.from({ length: 30 }, () => dice.pick(behind)!);
		expect(new Set(drawn.map(({ cell }) => cell)).size).toBeGreaterThan(20);
		for (const input of drawn) {
			const count = steps(why, input);
			expect(count, input.quantity).not.toBeNull();
			expect(count, input.quantity).toBeLessThanOrEqual(6);
			// The panel then says how EBIT rests on it, each stop feeding the one before.
			const { way } = model.why('base', input.cell, ebit);
			expect(way.at(0)?.cell).toBe(ebit);
			expect(way.at(-1)?.cell).toBe(input.cell);
			way.slice(0, -1).forEach((stop, i) => {
				const { feeds } = model.why('base', stop.cell);
				expect(feeds.map(({ cell }) => cell)).toContain(way[i + 1]!.cell);
			});
		}
	});
});

describe('the lists of the panel', () => {
	it('hold one line for a quantity with several values, which opens', () => {
		const year = model.why('base', ebit);
		const groups = groupsOf(why.feeds);
		expect(groups).toHaveLength(1);
		expect(year.feeds.length).toBeGreaterThan(0);
		const sum = model.why('base', layout.byName.get('contribution_of_plan')!.base);
		const several = groupsOf(sum.feeds).find(({ items }) => items.length > 1)!;
		const folded = linesOf([several], new Set());
		expect(folded).toEqual([
			{ kind: 'group', quantity: several.quantity, count: several.items.length }
		]);
		const open = linesOf([several], new Set([several.quantity]));
		expect(open).toHaveLength(several.items.length + 1);
		expect(open.at(-1)).toEqual({ kind: 'place', place: several.items.at(-1), isMember: true });
	});

	it('find an input by its name, its other names and its members', () => {
		const found = (typed: string) => inputGroups(layout, why, typed);
		expect(found('resin or compound').map(({ quantity }) => quantity)).toContain('main_price');
		const pexb = found('pexb').find(({ quantity }) => quantity === 'main_price')!;
		expect(pexb.items.map(({ members }) => members)).toEqual([['PEXB']]);
		expect(found('nothing is called so')).toEqual([]);
	});

	it('begin with what the scenario changes', () => {
		const inScenario = model.why('new_line', ebit);
		const first = inputGroups(layout, inScenario, '')[0]!;
		expect(
			inScenario.inputs.find(({ quantity }) => quantity === first.quantity)?.changed
		).toBeGreaterThan(0);
	});
});

describe('the way that was gone', () => {
	const place = (cell: number, quantity = 'ebit', members: string[] = []) => ({
		...{ cell, quantity, members }
	});
	it('grows by each place that is left, and goes back to one that was passed', () => {
		const trail = trailTo(trailTo([], place(1), 2), place(2), 3);
		expect(trail.map(({ cell }) => cell)).toEqual([1, 2]);
		expect(trailTo(trail, place(3), 1)).toEqual([]);
		expect(trailTo(trail, place(3), 3)).toBe(trail);
	});
	it('is filled up where one went to something far behind', () => {
		const way = [place(1), place(5), place(6), place(9)];
		expect(trailBy([place(1)], way).map(({ cell }) => cell)).toEqual([1, 5, 6]);
		expect(trailBy([place(2)], way).map(({ cell }) => cell)).toEqual([2]);
		expect(trailBy([place(1)], [])).toEqual([place(1)]);
	});
	it('names each place, with the members that are new', () => {
		const { quantity } = layout.byName.get('main_price')!;
		const trail = [place(1, 'main_price', ['PEXB']), place(2, 'main_price', ['PEXB'])];
		expect(trailLabels(layout, trail)).toEqual([`${quantity.label}, PEXB`, quantity.label]);
	});
});
