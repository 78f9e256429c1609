import { describe, expect, it } from 'vitest';
import { findProblems } from '$lib/workbook/consistency';
import { problemLine } from '$lib/workbook/consistency/findings';
import type { Change, Quantity, Scenario, SetDefinition, Workbook } from '$lib/workbook/schema';
import { plant, withQuantity } from './plant';

const lines = (workbook: Workbook) => findProblems(workbook).map(problemLine);
const codes = (workbook: Workbook) => findProblems(workbook).map(({ code }) => code);

const withSet = (name: string, change: Partial<SetDefinition>): Workbook => ({
	...plant,
	sets: plant.sets.map((set) => (set.name === name ? { ...set, ...change } : set))
});
const withScenario = (index: number, change: Partial<Scenario>): Workbook => ({
	...plant,
	scenarios: plant.scenarios.map((scenario, i) =>
		i === index ? { ...scenario, ...change } : scenario
	)
});
const withChange = (change: Change) => withScenario(1, { changes: [change] });

it('a sound workbook has no problems', () => {
	expect(lines(plant)).toEqual([]);
});

describe('names', () => {
	it.each(['base', 'reference', 'over', 'where', 'in', 'else'])('"%s" is taken', (name) => {
		expect(codes(withQuantity({ name }))).toContain('reserved-word');
	});

	it('mean one thing among sets and quantities', () => {
		expect(lines(withQuantity({ name: 'line' }))).toEqual([
			'sheet Added, quantity line, name: line is already the name of a set. Rename one of the two.'
		]);
	});

	it('mean one thing among quantities of different sheets', () => {
		const twice = {
			...plant,
			sheets: [...plant.sheets, { title: 'Twice', quantities: [{ name: 'lot_size', label: 'x' }] }]
		};
		expect(lines(twice)).toEqual([
			'sheet Twice, quantity lot_size, name: there are two of the name lot_size. Rename one of the two.'
		]);
	});

	it('of axes may not be those of quantities', () => {
		expect(codes(withQuantity({ name: 'from' }))).toContain('duplicate-name');
	});

	it('of axes stand for one set everywhere', () => {
		expect(codes(withQuantity({ name: 'x', per: ['from: line', 'to: line'] }))).toEqual([
			'duplicate-name',
			'duplicate-name'
		]);
		expect(codes(withQuantity({ name: 'x', per: ['from: product', 'to: product'] }))).toEqual([]);
	});

	it('of axes are needed where a set is used twice', () => {
		expect(lines(withQuantity({ name: 'x', per: ['product', 'product'] }))).toEqual([
			'sheet Added, quantity x, per, entry 2: product is named twice. Give one a name of its own: "from: product".'
		]);
	});

	it('of members may not be those of quantities, sets or axes, where a formula could mean either', () => {
		for (const id of ['lot_size', 'line', 'from'])
			expect(
				codes(withSet('pattern', { members: [{ id: '5x24' }, { id: '7x24' }, { id }] }))
			).toEqual(['member-clash']);
	});

	it('of members are used once in a set, and may be used in another', () => {
		const twice = [{ id: 'extruder' }, { id: 'cooling' }, { id: 'cooling' }];
		expect(codes(withSet('limit', { members: twice }))).toEqual(['duplicate-member']);
		const shared = [{ id: 'extruder' }, { id: 'cooling' }, { id: 'L1' }];
		expect(codes(withSet('limit', { members: shared }))).toEqual(['missing-case']);
	});

	it('that objects inherit are free', () => {
		expect(lines(withQuantity({ name: 'constructor', value: 1 }))).toEqual([]);
		expect(codes(withQuantity({ name: 'x', per: ['toString'] }))).toEqual(['unknown-set']);
		expect(codes(withQuantity({ name: 'x', per: ['line'], value: { constructor: 1 } }))).toEqual([
			'unknown-member'
		]);
	});
});

describe('relations', () => {
	const withPairs = (pairs: string[][]): Workbook => ({
		...plant,
		relations: [
			{ name: 'runs', sets: ['product', 'line'], pairs: [...plant.relations![0]!.pairs, ...pairs] }
		]
	});

	it('relate members that exist, with the nearest offered', () => {
		expect(lines(withPairs([['PX20', 'L22']]))).toEqual([
			'relation runs, pair number 4, entry 2: line has no member "L22". Did you mean L2? Add the member, or take the pair out.'
		]);
	});

	it('have as many members in a pair as sets', () => {
		expect(codes(withPairs([['PX20', 'L2', 'L1']]))).toEqual(['wrong-pair']);
	});

	it('say each pair once', () => {
		expect(codes(withPairs([['PX15B', 'L1']]))).toEqual(['duplicate-pair']);
	});

	it('restrict only quantities per all their sets', () => {
		expect(lines(withQuantity({ name: 'x', per: ['line'], in: ['runs'] }))).toEqual([
			'sheet Added, quantity x, in, entry 1: runs relates product and line, and the quantity is not per all of these. Add the missing set to "per", or take the relation out.'
		]);
		expect(codes(withQuantity({ name: 'x', per: ['line'], in: ['walks'] }))).toEqual([
			'unknown-relation'
		]);
	});
});

describe('values stand where values belong', () => {
	const pipe = (change: Partial<Quantity>) => lines(withQuantity({ name: 'top_speed', ...change }));

	it('not for a pair that does not exist', () => {
		expect(pipe({ value: { PX20: { L2: 18 } } })).toEqual([
			'sheet Line, quantity top_speed, value, PX20, L2: the pair PX20, L2 does not exist in the relation runs. Add the pair to runs, or take the value out.'
		]);
	});

	it('not for a member that does not exist', () => {
		expect(pipe({ value: { PX99: { L1: 18 } } })).toEqual([
			'sheet Line, quantity top_speed, value, PX99, L1: product has no member "PX99". Add the member, or take the value out.'
		]);
	});

	it('not too high up, and not too deep', () => {
		expect(pipe({ value: { PX15B: 23 } })).toEqual([
			'sheet Line, quantity top_speed, value, PX15B: is per product and line, so it takes a value for each, nested in this order. Write an object by product, within it by line.'
		]);
		expect(codes(withQuantity({ name: 'lot_size', value: { L1: 1 } }))).toEqual(['wrong-nesting']);
	});

	it.each<[string, Partial<Quantity>]>([
		['a text for a number', { name: 'lot_size', value: '20000' }],
		['a yes for a number', { name: 'lot_size', value: true }],
		['a number for a yes/no', { name: 'installed', value: { L1: 1 } }],
		['a number for a choice', { name: 'shift_pattern', value: { L1: 5 } }],
		['a member of another set for a choice', { name: 'shift_pattern', value: { L1: 'L2' } }]
	])('not %s', (_what, change) => {
		expect(codes(withQuantity(change as Quantity))).toEqual(['wrong-type']);
	});

	it('not beside a formula, unless the case of the member is "input"', () => {
		expect(codes(withQuantity({ name: 'material_cost', value: { PX20: 1 } }))).toEqual([
			'value-beside-formula'
		]);
		expect(codes(withQuantity({ name: 'speed_limit', value: { cooling: { L1: 1 } } }))).toEqual([
			'value-beside-formula'
		]);
	});

	it('but nobody needs to have entered one, and null says so', () => {
		expect(lines(withQuantity({ name: 'lot_size', value: null }))).toEqual([]);
	});
});

describe('a quantity', () => {
	it.each<[string, Partial<Quantity>]>([
		['needless-unit', { type: 'yes_no', unit: 'm' }],
		['needless-shown', { type: 'yes_no', shown: 'date' }],
		['date-unit', { unit: 'h', shown: 'date' }],
		['needless-range', { type: 'yes_no', range: { min: 0 } }],
		['needless-spread', { type: { member_of: 'line' }, spread: { min: 0, likely: 1, max: 2 } }],
		['unknown-set', { type: { member_of: 'lines' } }],
		['empty-range', { range: { min: 2, max: 1 } }],
		['needless-usual', { type: 'yes_no', usual: { min: 0 } }],
		['empty-usual', { usual: { min: 2, max: 1 } }],
		['spread-order', { spread: { min: 2, likely: 1, max: 3 } }],
		['bad-check', { type: { member_of: 'line' }, check: { message: 'x' } }],
		['bad-check', { type: 'yes_no', check: { message: 'x', tolerance: 1 } }],
		['bad-caution', { caution: { message: 'x' } }],
		['unknown-quantity', { type: 'yes_no', caution: { message: 'x', beside: ['costs'] } }],
		['unknown-quantity', { type: 'yes_no', caution: { message: 'x', mended_by: ['prices'] } }],
		['fixed-formula', { fixed: true, formula: '1' }],
		['unknown-axis', { formula: { by: 'limit', cases: { '*': '1' } } }],
		[
			'unknown-member',
			{ per: ['limit'], formula: { by: 'limit', cases: { winder: '1', '*': '1' } } }
		],
		['missing-case', { per: ['limit'], formula: { by: 'limit', cases: { cooling: '1' } } }],
		['bad-axis', { per: ['over: line'] }]
	])('%s', (code, change) => {
		expect(codes(withQuantity({ name: 'x', ...change }))).toEqual([code]);
	});

	it('has a unit that can be read, an exponent of a million included', () => {
		expect(lines(withQuantity({ name: 'x', unit: 'EUR/kgg' }))[0]).toMatch(
			/^sheet Added, quantity x, unit: .*kg/
		);
		expect(codes(withQuantity({ name: 'x', unit: 'm^999999' }))).toEqual(['bad-unit']);
		expect(codes(withQuantity({ name: 'x', unit: 'EUR/bundle' }))).toEqual([]);
	});
});

describe('a set', () => {
	it('leaves to copies only numbers that are entered per it', () => {
		expect(codes(withSet('product', { not_copied: ['mass_per_metre'] }))).toEqual([]);
		expect(codes(withSet('line', { not_copied: ['mass_per_metre'] }))).toEqual(['bad-not-copied']);
		expect(codes(withSet('product', { not_copied: ['mass'] }))).toEqual(['unknown-quantity']);
	});
	it('asks with copies only numbers that are entered once, or per it alone', () => {
		const found = codes(
			withSet('line', { comes_with: ['resin_price', 'mass_per_metre', 'outlays'] })
		);
		expect(found).toEqual(['bad-comes-with', 'unknown-quantity']);
		const own = codes(withSet('product', { comes_with: ['mass_per_metre'] }));
		expect(own).toEqual([]);
	});
	it('is present by a yes/no quantity per it alone', () => {
		expect(codes(withSet('line', { present: 'lot_size' }))).toEqual(['bad-present']);
		expect(codes(withSet('limit', { present: 'installed' }))).toEqual(['bad-present']);
		expect(codes(withSet('line', { present: 'instaled' }))).toEqual(['unknown-quantity']);
	});

	it('has readable units', () => {
		expect(codes(withSet('year', { number_unit: 'yeer' }))).toEqual(['bad-unit']);
		expect(codes(withSet('year', { spans: 'two years' }))).toEqual(['bad-unit']);
	});
});

describe('scenarios', () => {
	it('begin with the base, which has no parent and no changes', () => {
		expect(codes(withScenario(0, { parent: 'weekend' }))).toContain('base-has-parent');
		expect(codes(withScenario(0, { changes: [{ quantity: 'resin_price', value: 2 }] }))).toEqual([
			'base-has-changes'
		]);
		expect(codes(withScenario(0, { against: 'weekend' }))).toEqual(['base-against']);
	});

	it('have a parent that exists', () => {
		expect(lines(withScenario(2, { parent: 'week_end' }))).toEqual([
			'scenario dear_resin, parent: there is no scenario with the id "week_end". Did you mean weekend? Write "base", or add it.'
		]);
		expect(codes(withScenario(1, { parent: null }))).toEqual(['no-parent']);
	});

	it('lead back to the base, by parents and by what they are measured against', () => {
		expect(lines(withScenario(1, { parent: 'dear_resin' }))).toEqual([
			'scenario weekend, parent: weekend → dear_resin → weekend is a loop that never reaches the base. Let one of them start from "base".',
			'scenario dear_resin, parent: dear_resin → weekend → dear_resin is a loop that never reaches the base. Let one of them start from "base".'
		]);
		expect(codes(withScenario(1, { against: 'weekend' }))).toEqual(['scenario-loop']);
	});

	it('change inputs alone', () => {
		expect(codes(withChange({ quantity: 'material_cost', value: { PX20: 1 } }))).toEqual([
			'change-of-formula',
			'value-beside-formula'
		]);
		expect(lines(withChange({ quantity: 'lot_size', value: 1 }))).toEqual([
			'scenario weekend, change of lot_size: lot_size is fixed with the structure, and no scenario changes it. Take the change out, or make lot_size an input that is not fixed.'
		]);
		expect(codes(withChange({ quantity: 'resin', value: 1 }))).toEqual(['unknown-quantity']);
		expect(codes(withChange({ quantity: 'speed_limit', value: { extruder: { L1: 1 } } }))).toEqual(
			[]
		);
	});

	it('change a quantity once', () => {
		const change = { quantity: 'resin_price', value: 2 };
		expect(codes(withScenario(1, { changes: [change, change] }))).toEqual(['duplicate-change']);
	});

	it('have ids of their own', () => {
		expect(codes(withScenario(2, { id: 'weekend', against: 'base', parent: 'base' }))).toEqual([
			'duplicate-scenario'
		]);
	});
});

describe('the front and the pictures', () => {
	it('show quantities that exist', () => {
		const facts = [{ quantity: 'cost', title: 'Costs {resin_prise}' }];
		expect(lines({ ...plant, front: { facts } })).toEqual([
			'front, fact number 1, quantity: there is no quantity named "cost". Correct the name, or take it out.',
			'front, fact number 1, title: there is no quantity named "resin_prise". Did you mean resin_price? Correct the name, or take it out.'
		]);
	});

	it('have subjects and roles that exist', () => {
		const [picture] = plant.pictures!;
		expect(
			codes({
				...plant,
				front: { ...plant.front!, first_subject: 'PX99' },
				pictures: [
					{ ...picture!, subject: 'product_group' },
					{ ...picture!, roles: { winder: 'plant' } }
				] as Workbook['pictures']
			} as Workbook)
		).toEqual(['unknown-member', 'unknown-set', 'unknown-member']);
	});
});

it('a set renamed by hand breaks many values, and a couple of hundred lines say so', () => {
	const members = Array.from({ length: 5000 }, (_, i) => ({ id: `P${i}` }));
	const value = Object.fromEntries(members.map(({ id }) => [`${id}x`, 1]));
	const workbook = withQuantity({ name: 'x', per: ['part'], value });
	const sets = [...plant.sets, { name: 'part', label: 'Part', members }];
	expect(findProblems({ ...workbook, sets })).toHaveLength(200);
});
