import { describe, expect, it } from 'vitest';
import { hasSameStructure } from '$lib/engine/structure';
import { applyCommand, type Command } from '$lib/workbook/commands';
import { findProblems } from '$lib/workbook/consistency';
import { changedCells, inputAt } from '$lib/workbook/scenario';
import type { Member, Quantity, SetDefinition, Workbook } from '$lib/workbook/schema';
import { after, plant, quantityOf, refusal } from './plant';

const structural = (command: Command) => {
	const result = applyCommand(plant, command);
	return result.ok && !hasSameStructure(plant, result.workbook);
};
const names = (workbook: Workbook) =>
	workbook.sheets.map((sheet) => sheet.quantities.map(({ name }) => name));

describe('a quantity', () => {
	const replace = (name: string, change: Partial<Quantity>, also?: boolean): Command => ({
		kind: 'replace_quantity',
		name,
		quantity: { ...quantityOf(plant, name), ...change },
		...(also === undefined ? {} : { also })
	});

	it('is added at its place', () => {
		const quantity = { name: 'wall', label: 'Wall', unit: 'mm' };
		const next = after(plant, { kind: 'add_quantity', sheet: 0, index: 1, quantity });
		expect(names(next)[0]).toEqual(['resin_price', 'wall', 'mass_per_metre', 'material_cost']);
	});

	it('is not added under a name that is taken, or in a shape that no file could hold', () => {
		const add = (quantity: Quantity): Command => ({
			kind: 'add_quantity',
			sheet: 0,
			index: 0,
			quantity
		});
		expect(refusal(plant, add({ name: 'line', label: 'x' })).code).toBe('duplicate-name');
		expect(refusal(plant, add({ name: 'two words', label: 'x' })).message).toBe(
			'The new quantity, name: is the text "two words", which cannot be a name. A name has a letter first, then letters, digits or underscores.'
		);
		expect(refusal(plant, add({ name: 'x', label: 'x', unit: 'kgg' })).code).toBe('bad-unit');
	});

	it('renamed is renamed in formulas, changes, the front, pictures and headlines', () => {
		let next = after(plant, replace('resin_price', { name: 'price_of_resin' }));
		expect(quantityOf(next, 'material_cost').formula).toBe('mass_per_metre * price_of_resin');
		expect(next.scenarios[2]?.changes[0]?.quantity).toBe('price_of_resin');
		expect(next.front?.facts[0]?.title).toBe('A metre, at {price_of_resin}');
		expect(next.sheets[0]?.headline).toBe('price_of_resin');
		next = after(next, replace('material_cost', { name: 'cost' }));
		expect(next.pictures?.[0]).toMatchObject({ total: 'cost' });
		expect(next.front?.facts[0]?.quantity).toBe('cost');
		next = after(next, replace('installed', { name: 'stands_there' }));
		expect(next.sets[1]?.present).toBe('stands_there');
	});

	it('renamed or removed is so in what copies of a member begin without', () => {
		const asked = (workbook: Workbook) => workbook.sets[0]?.not_copied;
		const sets = plant.sets.map((set, i) => (i > 0 ? set : { ...set, not_copied: ['lot_size'] }));
		const of_copies = { ...plant, sets };
		expect(asked(after(of_copies, replace('lot_size', { name: 'lot' })))).toEqual(['lot']);
		const removed = after(of_copies, { kind: 'remove_quantity', name: 'lot_size', also: true });
		expect(asked(removed)).toBeUndefined();
		expect(removed.sets[1]?.present).toBe('installed');
	});

	it('renamed or removed is so in what tells a new member the nearest of an example', () => {
		const near = (workbook: Workbook) => workbook.sets[0]?.own?.near;
		const own = { like: plant.sets[0]!.members[0]!.id, first: 'P1', near: ['lot_size'] };
		const sets = plant.sets.map((set, i) => (i === 0 ? { ...set, own } : set));
		const of_a_plant = { ...plant, sets };
		expect(near(after(of_a_plant, replace('lot_size', { name: 'lot' })))).toEqual(['lot']);
		const removed = after(of_a_plant, { kind: 'remove_quantity', name: 'lot_size', also: true });
		expect(removed.sets[0]?.own).toEqual({ like: own.like, first: 'P1' });
	});

	it('renamed or removed is so in what one more member calls for', () => {
		const asked = (workbook: Workbook) => workbook.sets[1]?.comes_with;
		const comes_with = ['resin_price', 'lot_size'];
		const sets = plant.sets.map((set, i) => (i === 1 ? { ...set, comes_with } : set));
		const calling = { ...plant, sets };
		const renamed = after(calling, replace('resin_price', { name: 'price_of_resin' }));
		expect(asked(renamed)).toEqual(['price_of_resin', 'lot_size']);
		const remove = { kind: 'remove_quantity', name: 'lot_size', also: true } as const;
		expect(asked(after(calling, remove))).toEqual(['resin_price']);
		expect(after(calling, remove).sets[1]?.present).toBe('installed');
	});

	it('renamed or removed is so in the cautions that are said beside it, or that it mends', () => {
		const caution = {
			message: 'Dear.',
			beside: ['material_cost', 'resin_price'],
			mended_by: ['resin_price']
		};
		const quantity: Quantity = {
			...{ name: 'is_dear', label: 'Dear', type: 'yes_no', formula: 'resin_price > 3[EUR/kg]' },
			caution
		};
		const with_it = after(plant, { kind: 'add_quantity', sheet: 0, index: 0, quantity });
		const renamed = after(with_it, {
			kind: 'replace_quantity',
			name: 'resin_price',
			quantity: { ...quantityOf(with_it, 'resin_price'), name: 'price_of_resin' }
		});
		expect(quantityOf(renamed, 'is_dear').caution).toEqual({
			message: 'Dear.',
			beside: ['material_cost', 'price_of_resin'],
			mended_by: ['price_of_resin']
		});
		const without = after(with_it, { kind: 'remove_quantity', name: 'resin_price', also: true });
		expect(quantityOf(without, 'is_dear').caution).toEqual({
			message: 'Dear.',
			beside: ['material_cost']
		});
	});

	it('renamed is renamed in its own formula, in cases and in where', () => {
		const own = after(plant, {
			kind: 'add_quantity',
			sheet: 0,
			index: 0,
			quantity: {
				name: 'total',
				label: 'Total',
				per: ['limit'],
				formula: {
					by: 'limit',
					cases: { '*': 'total[limit - 1 else 0]', cooling: 'resin_price * 1' }
				},
				where: 'resin_price > 0'
			}
		});
		const total = quantityOf(own, 'total');
		let next = after(own, {
			kind: 'replace_quantity',
			name: 'total',
			quantity: { ...total, name: 'sum' }
		});
		next = after(next, replace('resin_price', { name: 'price' }));
		expect(quantityOf(next, 'sum')).toMatchObject({
			formula: { cases: { '*': 'sum[limit - 1 else 0]', cooling: 'price * 1' } },
			where: 'price > 0'
		});
	});

	it('made a formula loses the value that stood in it', () => {
		const next = after(plant, replace('mass_per_metre', { formula: '0.1[kg/m]' }));
		expect('value' in quantityOf(next, 'mass_per_metre')).toBe(false);
	});

	it('made a formula is refused while scenarios change it, unless they are to lose that', () => {
		const { code, message } = refusal(plant, replace('resin_price', { formula: '2[EUR/kg]' }));
		expect(code).toBe('drops-values');
		expect(message).toBe(
			'Resin price has values in Dearer resin that would no longer fit. Go ahead and drop them, or leave it as it is.'
		);
		const next = after(plant, replace('resin_price', { formula: '2[EUR/kg]' }, true));
		expect(changedCells(next, 'dear_resin', 'resin_price')).toEqual([]);
	});

	it('whose words alone change needs no new plan', () => {
		expect(
			structural(replace('resin_price', { note: 'quoted', label: 'Resin', date: '2026-11-24' }))
		).toBe(false);
		expect(structural(replace('resin_price', { unit: 'EUR/t' }))).toBe(true);
		expect(structural(replace('material_cost', { formula: 'resin_price * mass_per_metre' }))).toBe(
			true
		);
		expect(structural(replace('resin_price', { name: 'x' }))).toBe(true);
	});

	it('is not removed while anything uses it, and the refusal names the users', () => {
		const remove = (name: string, also = false): Command => ({
			kind: 'remove_quantity',
			name,
			also
		});
		expect(refusal(plant, remove('resin_price'))).toEqual({
			code: 'in-use',
			message:
				'Resin price is used by the formula of Material cost and the front strip. Change these first, or remove it anyway.'
		});
		expect(refusal(plant, remove('installed')).message).toContain('the set Line');
		expect(refusal(plant, remove('speed_limit')).message).toContain(
			'the picture Where the speed goes'
		);
		const next = after(plant, remove('resin_price', true));
		expect(quantityOf(next, 'material_cost').formula).toBe('mass_per_metre * resin_price');
		expect(next.front?.facts).toEqual([]);
		expect('headline' in next.sheets[0]!).toBe(false);
		expect(next.scenarios[2]?.changes.map(({ quantity }) => quantity)).toEqual(['top_speed']);
	});

	it('that nothing uses goes without a question', () => {
		expect(names(after(plant, { kind: 'remove_quantity', name: 'setup_time' }))[1]).not.toContain(
			'setup_time'
		);
	});

	it('an index of the same name is not a use', () => {
		const quantity = { name: 'w', label: 'W' };
		const summed = after(after(plant, { kind: 'add_quantity', sheet: 0, index: 0, quantity }), {
			kind: 'add_quantity',
			sheet: 0,
			index: 0,
			quantity: {
				name: 's',
				label: 'S',
				unit: 'kg/m',
				formula: 'SUM(mass_per_metre[w] over w in product)'
			}
		});
		expect(applyCommand(summed, { kind: 'remove_quantity', name: 'w' }).ok).toBe(true);
	});

	it('moves to another sheet', () => {
		const next = after(plant, { kind: 'move_quantity', name: 'lot_size', sheet: 0, index: 0 });
		expect(names(next)[0]?.[0]).toBe('lot_size');
		expect(names(next)[1]).not.toContain('lot_size');
	});
});

describe('a sheet', () => {
	it('is added, renamed and moved', () => {
		let next = after(plant, {
			kind: 'add_sheet',
			index: 0,
			sheet: { title: 'First', quantities: [] }
		});
		next = after(next, { kind: 'rename_sheet', sheet: 0, title: 'Last', note: 'empty' });
		next = after(next, { kind: 'move_sheet', sheet: 0, index: 2 });
		expect(next.sheets.map(({ title }) => title)).toEqual(['Material', 'Line', 'Last']);
		expect(next.sheets[2]?.note).toBe('empty');
		expect(structural({ kind: 'rename_sheet', sheet: 0, title: 'x' })).toBe(false);
	});

	it('is not removed while another sheet uses its quantities', () => {
		const used = after(plant, {
			kind: 'add_sheet',
			index: 9,
			sheet: {
				title: 'Sum',
				quantities: [{ name: 's', label: 'S', unit: 'EUR/kg', formula: 'resin_price' }]
			}
		});
		expect(refusal(used, { kind: 'remove_sheet', sheet: 0 }).message).toBe(
			'Quantities of the sheet Material are used by the formula of S, the front strip and the picture Where the speed goes. Change these first, or remove it anyway.'
		);
		expect(after(used, { kind: 'remove_sheet', sheet: 0, also: true }).sheets).toHaveLength(2);
		expect(after(used, { kind: 'remove_sheet', sheet: 2 }).sheets).toHaveLength(2);
	});
});

describe('a set', () => {
	const colour = { name: 'colour', label: 'Colour', members: [{ id: 'white' }] };
	const add = (set: SetDefinition): Command => ({ kind: 'add_set', index: 5, set });

	it('is added, and quantities are per it from then on', () => {
		const next = after(plant, add(colour));
		expect(next.sets.at(-1)).toEqual(colour);
		const dose = { name: 'dose', label: 'Dose', unit: '%', per: ['colour'], value: { white: 2 } };
		const dosed = after(next, { kind: 'add_quantity', sheet: 0, index: 0, quantity: dose });
		expect(inputAt(dosed, 'base', 'dose', ['white']).value).toBe(2);
		expect(refusal(dosed, { kind: 'remove_set', set: 'colour' }).message).toBe(
			'Colour cannot be removed while Dose needs it. Change or remove these first.'
		);
		expect(after(next, { kind: 'remove_set', set: 'colour' }).sets).toEqual(plant.sets);
	});

	it('is not added under a name that is taken, of a quantity as little as of a set', () => {
		expect(refusal(plant, add({ ...colour, name: 'line' })).code).toBe('duplicate-set');
		expect(refusal(plant, add({ ...colour, name: 'resin_price' })).code).toBe('duplicate-name');
		expect(refusal(plant, add({ ...colour, name: 'a colour' })).message).toMatch(
			/^The new list, name/
		);
	});

	it('is described anew, and keeps its name, its members and what else it says', () => {
		const { plural: _plural, note: _note, number_unit: _unit, ...line } = plant.sets[1]!;
		const next = after(plant, {
			kind: 'describe_set',
			set: 'line',
			label: 'Machine',
			plural: 'Machines'
		});
		expect(next.sets[1]).toEqual({ ...line, label: 'Machine', plural: 'Machines' });
		expect(
			hasSameStructure(
				plant,
				after(plant, {
					...{ kind: 'describe_set', set: 'line', label: 'Machine' },
					number_unit: plant.sets[1]!.number_unit
				})
			)
		).toBe(true);
		expect(refusal(plant, { kind: 'describe_set', set: 'lines', label: 'x' }).code).toBe(
			'unknown-set'
		);
	});

	it('is not removed while a fit of what was measured is made for each of its members', () => {
		const fit = { name: 'mtbf', title: 'Time between stops', form: 'mean' as const };
		const calibrations = [
			{ ...fit, each: 'colour', y: { label: 'Time' }, gives: [{ parameter: 'mean' as const }] }
		];
		const measured = { ...after(plant, add(colour)), calibrations };
		expect(refusal(measured, { kind: 'remove_set', set: 'colour' }).message).toMatch(
			/while what is measured as Time between stops needs it/
		);
	});

	it('is not removed while a relation, a quantity or a formula needs it', () => {
		const needed = (set: string) => refusal(plant, { kind: 'remove_set', set });
		expect(needed('line').code).toBe('set-in-use');
		expect(needed('pattern').message).toMatch(
			/^Shift pattern cannot be removed while .* needs? it\./
		);
	});
});

describe('a member', () => {
	const add = (set: string, member: Member, like?: string): Command => ({
		kind: 'add_member',
		set,
		index: 1,
		member,
		...(like === undefined ? {} : { like })
	});

	it('added like another has its values in the base and in every scenario, and its pairs', () => {
		const next = after(plant, add('product', { id: 'PX16' }, 'PX15B'));
		expect(next.sets[0]?.members.map(({ id }) => id)).toEqual(['PX15B', 'PX16', 'PX20']);
		expect(inputAt(next, 'base', 'mass_per_metre', ['PX16']).value).toBe(0.08);
		expect(inputAt(next, 'base', 'top_speed', ['PX16', 'L2']).value).toBe(25);
		expect(inputAt(next, 'dear_resin', 'top_speed', ['PX16', 'L1'])).toEqual({
			value: 21,
			from: 'dear_resin'
		});
		expect(next.relations?.[0]?.pairs).toContainEqual(['PX16', 'L2']);
		expect(next.relations?.[0]?.pairs).not.toContainEqual(['PX20', 'L2']);
	});

	it('comes and goes among many in one edit as it does alone, all of them or none', () => {
		const edits: Command[] = [
			add('product', { id: 'PX16' }, 'PX15B'),
			{ kind: 'replace_member', set: 'product', id: 'PX20', member: { id: 'PX21' } },
			add('product', { id: 'PX20' }),
			{ kind: 'remove_member', set: 'product', id: 'PX15B', also: true },
			{
				kind: 'set_inputs',
				scenario: 'base',
				entries: [{ quantity: 'mass_per_metre', at: ['PX20'], value: 1 }]
			},
			add('line', { id: 'L3' }, 'L2')
		];
		const together = applyCommand(plant, { kind: 'several', commands: edits });
		if (!together.ok) throw new Error(together.problem.message);
		expect(together.workbook).toEqual(edits.reduce(after, plant));
		expect(after(together.workbook, together.inverse)).toEqual(plant);
		expect(
			refusal(plant, { kind: 'several', commands: [edits[0]!, add('product', { id: 'PX16' })] })
				.message
		).toBe('Product already has a member "PX16". Choose another id.');
	});

	it('added like another is like it along both axes of a set used twice', () => {
		const next = after(plant, add('product', { id: 'PX16' }, 'PX15B'));
		expect(quantityOf(next, 'setup_time').value).toEqual({
			PX15B: { PX20: 2 },
			PX20: { PX15B: 1.5, PX16: 1.5 },
			PX16: { PX20: 2 }
		});
	});

	it('added like another takes over its case and its role in pictures', () => {
		const next = after(plant, add('limit', { id: 'winder' }, 'cooling'));
		expect(quantityOf(next, 'speed_limit').formula).toEqual({
			by: 'limit',
			cases: { extruder: 'input', cooling: '20[m/min]', winder: '20[m/min]' }
		});
		expect(next.pictures?.[0]).toMatchObject({ roles: { winder: 'energy' } });
	});

	it('added on its own takes entered values where formulas go by member', () => {
		const next = after(plant, add('limit', { id: 'winder' }));
		expect(quantityOf(next, 'speed_limit').formula).toMatchObject({ cases: { winder: 'input' } });
		expect(inputAt(next, 'base', 'speed_limit', ['winder', 'L1']).value).toBeNull();
	});

	it('is not added under the name of a quantity or of another member', () => {
		expect(refusal(plant, add('line', { id: 'lot_size' })).code).toBe('member-clash');
		expect(refusal(plant, add('line', { id: 'L2' })).message).toBe(
			'Line already has a member "L2". Choose another id.'
		);
	});

	it('renamed is renamed in values, changes, pairs, choices, cases, roles, the front and formulas', () => {
		const rename = (workbook: Workbook, set: string, id: string, to: string) =>
			after(workbook, { kind: 'replace_member', set, id, member: { id: to } });
		let next = rename(plant, 'line', 'L1', '1st line');
		expect(quantityOf(next, 'first_line_speed').formula).toBe(
			"MIN(top_speed['1st line'] * 1; speed_limit['cooling'; '1st line'])"
		);
		expect(quantityOf(next, 'top_speed').value).toEqual({
			PX15B: { '1st line': 23, L2: 25 },
			PX20: { '1st line': 18 }
		});
		expect(changedCells(next, 'weekend', 'shift_pattern')).toEqual([
			{ at: ['1st line'], value: '7x24' }
		]);
		expect(next.relations?.[0]?.pairs[0]).toEqual(['PX15B', '1st line']);
		next = rename(next, 'pattern', '7x24', 'all_week');
		expect(quantityOf(next, 'shift_pattern').value).toEqual({ '1st line': '5x24', L2: 'all_week' });
		expect(inputAt(next, 'weekend', 'shift_pattern', ['1st line']).value).toBe('all_week');
		next = rename(next, 'limit', 'cooling', 'water');
		expect(quantityOf(next, 'speed_limit').formula).toMatchObject({
			cases: { water: '20[m/min]' }
		});
		expect(quantityOf(next, 'first_line_speed').formula).toContain("'water'");
		expect(next.pictures?.[0]).toMatchObject({ roles: { extruder: 'plant', water: 'energy' } });
		next = rename(next, 'product', 'PX15B', '__proto__');
		expect(next.front?.first_subject).toBe('__proto__');
		expect(inputAt(next, 'dear_resin', 'top_speed', ['__proto__', '1st line']).value).toBe(21);
		expect(findProblems(next)).toEqual([]);
	});

	it('is not renamed where a formula could mean a member of another set by the same id', () => {
		const shared = after(plant, add('pattern', { id: 'L1' }));
		expect(
			refusal(shared, { kind: 'replace_member', set: 'line', id: 'L1', member: { id: 'L9' } })
				.message
		).toBe(
			'The formula of Speed on the first line names L1, which is a member of Line and of Shift pattern. Write line.L1 or pattern.L1 there first.'
		);
	});

	it('is not removed while a formula names it or a choice holds it', () => {
		const remove = (set: string, id: string, also = false): Command => ({
			kind: 'remove_member',
			set,
			id,
			also
		});
		expect(refusal(plant, remove('line', 'L1')).message).toBe(
			'L1 of Line is used by the formula of Speed on the first line. Change these first, or remove it anyway.'
		);
		expect(refusal(plant, remove('pattern', '7x24')).message).toBe(
			'7x24 of Shift pattern is used by Pattern of the line and Pattern of the line in Weekend crew. Change these first, or remove it anyway.'
		);
		const next = after(plant, remove('pattern', '7x24', true));
		expect(quantityOf(next, 'shift_pattern').value).toEqual({ L1: '5x24' });
		expect(next.scenarios[1]?.changes).toEqual([]);
	});

	it('removed takes its values, pairs, cases and roles with it', () => {
		let next = after(plant, { kind: 'remove_member', set: 'product', id: 'PX15B' });
		expect(quantityOf(next, 'top_speed').value).toEqual({ PX20: { L1: 18 } });
		expect('value' in quantityOf(next, 'setup_time')).toBe(false);
		expect(next.relations?.[0]?.pairs).toEqual([['PX20', 'L1']]);
		expect(next.front).not.toHaveProperty('first_subject');
		expect(next.scenarios[2]?.changes.map(({ quantity }) => quantity)).toEqual(['resin_price']);
		next = after(plant, { kind: 'remove_member', set: 'limit', id: 'extruder' });
		expect(quantityOf(next, 'speed_limit').formula).toEqual({
			by: 'limit',
			cases: { cooling: '20[m/min]' }
		});
		expect(next.pictures?.[0]).toMatchObject({ roles: { cooling: 'energy' } });
	});

	it('moves within its set', () => {
		const next = after(plant, { kind: 'move_member', set: 'line', id: 'L2', index: 0 });
		expect(next.sets[1]?.members.map(({ id }) => id)).toEqual(['L2', 'L1']);
	});
});

describe('a pair', () => {
	const pair = (ids: string[], exists: boolean): Command => ({
		kind: 'set_relation_pair',
		relation: 'runs',
		pair: ids,
		exists
	});

	it('that exists from now on can have a value', () => {
		const next = after(plant, pair(['PX20', 'L2'], true));
		const entries = [{ quantity: 'top_speed', at: ['PX20', 'L2'], value: 19 }];
		expect(applyCommand(next, { kind: 'set_inputs', scenario: 'base', entries }).ok).toBe(true);
	});

	it('that no longer exists takes its values with it, in scenarios too', () => {
		const next = after(plant, pair(['PX15B', 'L1'], false));
		expect(quantityOf(next, 'top_speed').value).toEqual({ PX15B: { L2: 25 }, PX20: { L1: 18 } });
		expect(next.scenarios[2]?.changes.map(({ quantity }) => quantity)).toEqual(['resin_price']);
	});

	it('set to what it is already changes nothing', () => {
		expect(after(plant, pair(['PX15B', 'L1'], true))).toBe(plant);
	});

	it('of members that do not exist is refused', () => {
		expect(refusal(plant, pair(['PX15B', 'L9'], true)).code).toBe('unknown-member');
	});
});

describe('a scenario', () => {
	it('is added after the base at the earliest', () => {
		const scenario = { id: 'new_line', title: 'New line', parent: 'base', changes: [] };
		const next = after(plant, { kind: 'add_scenario', scenario, index: 0 });
		expect(next.scenarios.map(({ id }) => id)).toEqual([
			'base',
			'new_line',
			'weekend',
			'dear_resin'
		]);
		expect(
			refusal(plant, { kind: 'add_scenario', scenario: { ...scenario, id: 'weekend' }, index: 1 })
				.code
		).toBe('duplicate-scenario');
	});

	it('given another id keeps its children, and those measured against it', () => {
		const { changes: _changes, ...header } = plant.scenarios[1]!;
		const next = after(plant, {
			kind: 'replace_scenario',
			id: 'weekend',
			scenario: { ...header, id: 'crew' }
		});
		expect(next.scenarios[2]).toMatchObject({ parent: 'crew', against: 'crew' });
		expect(next.scenarios[1]?.changes).toBe(plant.scenarios[1]?.changes);
	});

	it('retitled or given another parent needs no new plan', () => {
		const { changes: _changes, ...header } = plant.scenarios[2]!;
		const replace = (change: object): Command => ({
			kind: 'replace_scenario',
			id: 'dear_resin',
			scenario: { ...header, ...change }
		});
		expect(structural(replace({ title: 'Very dear resin' }))).toBe(false);
		expect(structural(replace({ parent: 'base' }))).toBe(false);
	});

	it('cannot start from itself', () => {
		const { changes: _changes, ...header } = plant.scenarios[1]!;
		const scenario = { ...header, parent: 'dear_resin' };
		expect(refusal(plant, { kind: 'replace_scenario', id: 'weekend', scenario }).code).toBe(
			'scenario-loop'
		);
	});

	it('removed leaves its children the values that they had', () => {
		const next = after(plant, { kind: 'remove_scenario', id: 'weekend' });
		expect(next.scenarios[1]).toMatchObject({ id: 'dear_resin', parent: 'base' });
		expect(next.scenarios[1]).not.toHaveProperty('against');
		for (const [quantity, at] of [
			['shift_pattern', ['L1']],
			['resin_price', []],
			['top_speed', ['PX15B', 'L1']]
		] as const)
			expect(inputAt(next, 'dear_resin', quantity, at).value).toBe(
				inputAt(plant, 'dear_resin', quantity, at).value
			);
	});

	it("promoted gives the base its values, its parents' included, and has no changes left", () => {
		const next = after(plant, { kind: 'promote_scenario', id: 'dear_resin' });
		expect(quantityOf(next, 'resin_price').value).toBe(2.1);
		expect(quantityOf(next, 'shift_pattern').value).toEqual({ L1: '7x24', L2: '7x24' });
		expect(quantityOf(next, 'top_speed').value).toEqual({
			PX15B: { L1: 21, L2: 25 },
			PX20: { L1: 18 }
		});
		expect(next.scenarios[2]).toMatchObject({ id: 'dear_resin', parent: 'base', changes: [] });
	});

	it('that was not promoted keeps what it changes, and follows the new base elsewhere', () => {
		const next = after(plant, { kind: 'promote_scenario', id: 'dear_resin' });
		expect(next.scenarios[1]?.changes).toBe(plant.scenarios[1]?.changes);
		expect(inputAt(next, 'weekend', 'resin_price', []).value).toBe(2.1);
	});

	it('that starts from the promoted one starts from the base, with the same values as before', () => {
		const next = after(plant, { kind: 'promote_scenario', id: 'weekend' });
		expect(next.scenarios[2]?.parent).toBe('base');
		expect(inputAt(next, 'dear_resin', 'shift_pattern', ['L1'])).toEqual({
			value: '7x24',
			from: 'base'
		});
	});

	it('moves among the others, and the base stays first', () => {
		const next = after(plant, { kind: 'move_scenario', id: 'dear_resin', index: 0 });
		expect(next.scenarios.map(({ id }) => id)).toEqual(['base', 'dear_resin', 'weekend']);
	});

	it.each(['remove_scenario', 'promote_scenario'] as const)('base: %s is refused', (kind) => {
		expect(refusal(plant, { kind, id: 'base' }).code).toBe('base');
	});
});

describe('the workbook', () => {
	it('has another title and description, without a new plan', () => {
		expect(after(plant, { kind: 'set_title', title: 'Shop' }).title).toBe('Shop');
		expect(after(plant, { kind: 'set_about', about: 'Ours' }).about).toBe('Ours');
		expect('about' in after({ ...plant, about: 'Ours' }, { kind: 'set_about' })).toBe(false);
		expect('invented' in after(plant, { kind: 'set_invented', invented: false })).toBe(false);
		const { invented: _invented, ...own } = plant;
		expect(after(own, { kind: 'set_invented', invented: true }).invented).toBe(true);
		expect(after(plant, { kind: 'set_invented', invented: true })).toBe(plant);
		expect(structural({ kind: 'set_title', title: 'Shop' })).toBe(false);
		expect(refusal(plant, { kind: 'set_title', title: '' }).message).toBe(
			"The workbook's title: is an empty text. Write something, or take the entry out."
		);
	});

	it('takes no edit that a newer version may have kept', () => {
		for (const kind of ['merge_sheets', 'constructor', '__proto__']) {
			const kept = JSON.parse(JSON.stringify({ kind })) as Command;
			expect(refusal(plant, kept)).toEqual({
				code: 'unknown-command',
				message: `There is no edit of the kind "${kind}" in this version. Update the app, then try again.`
			});
		}
	});

	it('that already had a problem can still be mended', () => {
		const broken: Workbook = {
			...plant,
			sheets: [{ ...plant.sheets[0]!, headline: 'gone' }, plant.sheets[1]!]
		};
		const mended = after(broken, {
			kind: 'rename_sheet',
			sheet: 0,
			title: 'Material',
			headline: null
		});
		expect(findProblems(mended)).toEqual([]);
		expect(applyCommand(broken, { kind: 'set_title', title: 'x' }).ok).toBe(true);
	});
});
