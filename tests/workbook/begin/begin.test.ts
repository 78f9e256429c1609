import { describe, expect, it } from 'vitest';
import { isError } from '$lib/engine/state';
import { Model } from '$lib/engine/model';
import { Solver } from '$lib/programmes/highs';
import { planAll } from '$lib/programmes/plan-all';
import { ownInAll, ownQuantities, mineTick } from '$lib/review/template';
import { beginFrom, emptyWorkbook } from '$lib/workbook/begin/from';
import { nearestShipped, settled } from '$lib/workbook/begin/settle';
import { applyCommand, type Command } from '$lib/workbook/commands';
import { findQuantity, findSet } from '$lib/workbook/lookup';
import { loadWorkbook } from '$lib/workbook/load';
import { saveWorkbook } from '$lib/workbook/save';
import type { Workbook } from '$lib/workbook/schema';
import { valueAt } from '$lib/workbook/values';
import { openShipped } from '../../reference/shipped';

const plant = openShipped('marram').workbook;
const shop = openShipped('shop').workbook;
const begun = (template: Workbook, title = 'Our works'): Workbook => {
	const result = beginFrom(template, title);
	if (!result.ok) throw new Error(result.message);
	return result.workbook;
};
const ours = begun(plant);
const edited = (workbook: Workbook, ...commands: Command[]): Workbook => {
	const result = applyCommand(workbook, { kind: 'several', commands });
	if (!result.ok) throw new Error(result.problem.message);
	return result.workbook;
};
const ids = (workbook: Workbook, set: string) =>
	findSet(workbook, set)!.members.map(({ id }) => id);
const own = (workbook: Workbook, name: string) =>
	ownQuantities(workbook, plant).find(({ quantity }) => quantity.name === name)!;
const enter = (quantity: string, at: string[], value: number): Command => ({
	...{ kind: 'set_inputs', scenario: 'base', entries: [{ quantity, at, value }] }
});

describe('a plant begun from the shipped one', () => {
	it('has its structure, one pipe with an item, one line, and what options would put in', () => {
		expect(ids(ours, 'product')).toEqual(['P1']);
		expect(ids(ours, 'item')).toEqual(['I1']);
		expect(valueAt(findQuantity(ours, 'pipe_of_item')?.value, ['I1'])).toBe('P1');
		expect(ids(ours, 'line')).toEqual(['L1', 'L8']);
		expect(ids(ours, 'rewinder')).toEqual(['R1', 'R4']);
		expect(ids(ours, 'month')).toHaveLength(12);
		expect(ours.sheets.map(({ title }) => title)).toEqual(plant.sheets.map(({ title }) => title));
	});
	it('has the fits of the shipped one without their points', () => {
		expect(ours.calibrations!.map(({ name }) => name)).toEqual(
			plant.calibrations!.map(({ name }) => name)
		);
		expect(plant.calibrations!.some(({ data }) => data)).toBe(true);
		expect(ours.calibrations!.some(({ data }) => data)).toBe(false);
	});
	it('tells nothing of the shipped plant: no scenario, study, plan or story, and is not called invented', () => {
		expect(ours.scenarios.map(({ id }) => id)).toEqual(['base']);
		expect([ours.studies, ours.plans, ours.about, ours.invented]).toEqual(Array(4).fill(undefined));
		expect([ours.title, ours.begun_from]).toEqual(['Our works', 'marram-coil-works']);
	});
	it('reads no frozen copy, and is the shipped plant without it: what the base has holds', () => {
		expect(ours.frozen).toBeUndefined();
		expect(plant.frozen!.map(({ id }) => id)).toContain('standard_2027');
		for (const { id } of plant.frozen!) expect(JSON.stringify(ours.sheets)).not.toContain(id);
		// A decided case is the shipped plant's; the sheet that follows cases stays.
		expect(ids(plant, 'decided_case')).toHaveLength(1);
		expect(ids(ours, 'decided_case')).toEqual([]);
		expect(findQuantity(ours, 'promised_npv')!.formula).toEqual({
			...{ by: 'decided_case', cases: { '*': '0[EUR]' } }
		});
		expect(findQuantity(ours, 'standard_net_price')!.formula).toBe('net_net_price[base]');
		expect(findQuantity(ours, 'month_in_standard')!.formula).toBe('FALSE()');
		expect(findQuantity(ours, 'spend_of_site_energy')!.formula).toBe(
			'demand_cost[base] * part_of_year - demand_charge_taken'
		);
	});
	it('is a file that opens', () => {
		const loaded = loadWorkbook(saveWorkbook(ours), 'ours.json');
		expect(loaded.ok && loaded.workbook).toEqual(ours);
	});
	it('has no figure in error and no check that fails, once it is planned', async () => {
		expect(faultsOf(await planned(ours))).toEqual([]);
	});
	it('calls every entry typical, none its own', () => {
		const { entered, same } = ownInAll(ownQuantities(ours, plant));
		expect(entered).toBeGreaterThan(1000);
		expect(same).toBe(entered);
	});
});

describe('the small shop', () => {
	it('is begun in the same way', async () => {
		const mine = begun(shop);
		expect(ids(mine, 'product')).toEqual(['P1']);
		expect(faultsOf(await planned(mine))).toEqual([]);
		const { entered, same } = ownInAll(ownQuantities(mine, shop));
		expect(same).toBe(entered);
	});
});

describe('an empty workbook', () => {
	it('opens, computes, and takes a first quantity', () => {
		const empty = emptyWorkbook('New', 'Sheet', 'Base');
		expect(loadWorkbook(saveWorkbook(empty), 'e.json').ok).toBe(true);
		expect(Model.open(empty).results('base').states).toHaveLength(0);
		const quantity = { name: 'resin', label: 'Resin', unit: 'EUR/kg', value: 2 };
		const one = edited(empty, { kind: 'add_quantity', sheet: 0, index: 0, quantity });
		expect(Model.open(one).results('base').values[0]).toBe(2);
	});
});

describe('what a step asks for', () => {
	it('exists in the workbook that asks for it', () => {
		for (const workbook of [plant, shop])
			for (const { set, quantities = [], relation, compare = [] } of workbook.steps ?? []) {
				for (const name of [...quantities, ...compare])
					expect(findQuantity(workbook, name), name).toBeDefined();
				if (set !== undefined) expect(findSet(workbook, set), set).toBeDefined();
				if (relation !== undefined)
					expect(workbook.relations?.some(({ name }) => name === relation)).toBe(true);
			}
	});
	it('follows a quantity under its new name, and so does what is near', () => {
		const old = findQuantity(ours, 'outside_diameter')!;
		const renamed = edited(ours, {
			...{ kind: 'replace_quantity', name: old.name, quantity: { ...old, name: 'bore' } }
		});
		expect(renamed.steps?.[0]?.quantities?.[0]).toBe('bore');
		expect(findSet(renamed, 'product')?.own?.near?.[0]).toBe('bore');
	});
});

describe('one of the plant’s own', () => {
	const added = edited(ours, {
		...{ kind: 'add_member', set: 'product', index: 1, member: { id: 'A25' }, like: 'P1' }
	});
	const given = edited(
		added,
		enter('outside_diameter', ['A25'], 28),
		enter('wall_minimum', ['A25'], 3)
	);

	it('begins with typical values, as typical as those of the one it was copied from', () => {
		expect(findSet(added, 'product')?.members[1]?.like).toBe('PX15B');
		expect(own(added, 'eccentricity')).toMatchObject({ entered: 4, same: 4 });
	});
	it('is like the shipped one whose numbers lie nearest by ratio', () => {
		expect(nearestShipped(given, plant, { set: 'product', id: 'A25' })).toBe('PX28B');
	});
	it('takes the typical values of the nearest, and keeps its own', () => {
		const mine = edited(given, enter('setup_time', ['A25'], 7.5));
		const settledNow = edited(mine, ...settled(mine, plant, { set: 'product', id: 'A25' }));
		const at = (name: string) => valueAt(findQuantity(settledNow, name)?.value, ['A25']);
		const there = (name: string) => valueAt(findQuantity(plant, name)?.value, ['PX28B']);
		expect(at('pallet_price')).toBe(there('pallet_price'));
		expect(at('coils_per_pallet')).toBe(there('coils_per_pallet'));
		expect([at('setup_time'), at('outside_diameter')]).toEqual([7.5, 28]);
		expect(findSet(settledNow, 'product')?.members[1]?.like).toBe('PX28B');
	});
	it('has the layers of the nearest', () => {
		const plain = edited(
			added,
			enter('wall_minimum', ['A25'], 9),
			enter('outside_diameter', ['A25'], 15)
		);
		const shipped = plant.relations!.find(({ name }) => name === 'has_layer')!;
		const layers = (workbook: Workbook, id: string) =>
			workbook
				.relations!.find(({ name }) => name === 'has_layer')!
				.pairs.filter(([p]) => p === id)
				.map(([, layer]) => layer);
		const like = nearestShipped(plain, plant, { set: 'product', id: 'A25' })!;
		const now = edited(plain, ...settled(plain, plant, { set: 'product', id: 'A25' }));
		expect(layers(now, 'A25').sort()).toEqual(
			shipped.pairs
				.filter(([p]) => p === like)
				.map(([, layer]) => layer)
				.sort()
		);
	});
	it('takes all but what was given with it where it is new, whatever the one it was copied from had', () => {
		const copied = edited(
			edited(ours, enter('setup_time', ['P1'], 99)),
			{ kind: 'add_member', set: 'product', index: 1, member: { id: 'A25' }, like: 'P1' },
			enter('outside_diameter', ['A25'], 28)
		);
		const kept = new Set(['outside_diameter']);
		const now = edited(
			copied,
			...settled(copied, plant, { set: 'product', id: 'A25', given: kept })
		);
		expect(valueAt(findQuantity(now, 'setup_time')?.value, ['A25'])).toBe(
			valueAt(findQuantity(plant, 'setup_time')?.value, ['PX28B'])
		);
		expect(own(now, 'setup_time')).toMatchObject({ entered: 2, same: 1 });
	});
});

describe('an entry', () => {
	it('is one’s own once another figure stands there', () => {
		const one = edited(ours, enter('price', ['P1'], 0.5));
		expect(own(one, 'price')).toMatchObject({ entered: 1, same: 0 });
	});
	it('is one’s own where it is said to be right as it stands, until it changes back', () => {
		for (const [name, at] of [
			['price', ['P1']],
			['on_costs', []]
		] as const) {
			const tick = mineTick(findQuantity(ours, name)!, at, plant);
			const one = edited(ours, { kind: 'set_ticks', ticks: [tick] });
			expect(own(one, name)).toMatchObject({ same: 0 });
			expect(own(edited(one, { kind: 'set_ticks', ticks: [{ id: tick.id }] }), name).same).toBe(1);
		}
	});
	it('that waits for a demand, at 0, is not one’s own', () => {
		const added = edited(ours, {
			...{ kind: 'add_member', set: 'item', index: 1, member: { id: 'A25' }, like: 'I1' }
		});
		const none = edited(added, enter('item_demand', ['A25'], 0));
		expect(own(none, 'item_demand')).toMatchObject({ entered: 2, same: 2 });
	});
	it('follows the new name of its member', () => {
		const tick = mineTick(findQuantity(ours, 'price')!, ['P1'], plant);
		const renamed = edited(
			ours,
			{ kind: 'set_ticks', ticks: [tick] },
			{ kind: 'replace_member', set: 'product', id: 'P1', member: { id: 'A25', like: 'PX15B' } }
		);
		expect(own(renamed, 'price')).toMatchObject({ same: 0 });
		expect(own(renamed, 'pallet_price')).toMatchObject({ same: 1 });
		expect(own(renamed, 'start_product')).toMatchObject({ same: 2 });
	});
});

async function planned(workbook: Workbook): Promise<Model> {
	const model = Model.open(workbook);
	const solver = await Solver.load();
	for (const one of planAll(solver, model)) expect(one.problems).toEqual([]);
	solver.dispose();
	return model;
}

/** Figures in error, and checks that say no. */
function faultsOf(model: Model): string[] {
	const { layout } = model;
	const { values, states } = model.results('base');
	return layout.quantities.flatMap(({ quantity: { name, check, type }, index }) => {
		const cells = [...states.keys()].filter((cell) => layout.quantityOfCell[cell] === index);
		const isBroken = cells.some((cell) => isError(states[cell]!));
		const fails =
			check !== undefined &&
			cells.some(
				(cell) =>
					states[cell] === 0 &&
					(type === 'yes_no'
						? values[cell] === 0
						: Math.abs(values[cell]!) > (check.tolerance ?? 0))
			);
		return isBroken || fails ? [name] : [];
	});
}
