import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import { apart, changesOfChoice, combinationsOf, type OptimiseStudy } from '$lib/studies/choices';
import { runOptimise } from '$lib/studies/optimise';
import { applyCommand } from '$lib/workbook/commands';
import { VERSION, type Workbook } from '$lib/workbook/schema';

/** A shop that buys a line, an operator and a price: profit, hours, and a ratio without an answer at times. */
const workbook: Workbook = {
	format: 'metrewright',
	version: VERSION,
	title: 'Shop',
	sets: [
		{ name: 'pattern', label: 'Pattern', members: [{ id: 'two' }, { id: 'three' }] },
		{ name: 'line', label: 'Line', members: [{ id: 'L1' }, { id: 'L2' }] }
	],
	sheets: [
		{
			title: 'One',
			quantities: [
				{
					name: 'runs',
					label: 'Runs',
					type: 'yes_no',
					per: ['line'],
					value: { L1: true, L2: false }
				},
				{ name: 'pattern_in_use', label: 'Pattern', type: { member_of: 'pattern' }, value: 'two' },
				{ name: 'shifts', label: 'Shifts', per: ['pattern'], value: { two: 2, three: 3 } },
				{ name: 'price', label: 'Price', value: 4 },
				{
					name: 'hours',
					label: 'Hours',
					formula: 'SUM(IF(runs; 8; 0) over line) * shifts[pattern_in_use]'
				},
				{ name: 'lines', label: 'Lines', formula: 'SUM(IF(runs; 1; 0) over line)' },
				{ name: 'profit', label: 'Profit', formula: 'hours * price - 30 * lines * lines' },
				{ name: 'per_line', label: 'Profit per line', formula: 'profit / lines' }
			]
		}
	],
	scenarios: [
		{ id: 'base', title: 'Base', parent: null, changes: [] },
		{ id: 'dear', title: 'Dear', parent: 'base', changes: [{ quantity: 'price', value: 5 }] }
	]
};
const study: OptimiseStudy = {
	name: 'best',
	title: 'Best',
	kind: 'optimise',
	quantity: 'profit',
	scenario: 'base',
	direction: 'highest',
	options: [
		{
			label: 'Lines',
			alternatives: [
				{ label: 'none', changes: [{ quantity: 'runs', value: { L1: false } }] },
				{ label: 'one', changes: [] },
				{ label: 'both', changes: [{ quantity: 'runs', value: { L2: true } }] }
			]
		},
		{
			label: 'Pattern',
			alternatives: [
				{ label: 'two shifts', changes: [] },
				{ label: 'three shifts', changes: [{ quantity: 'pattern_in_use', value: 'three' }] }
			]
		}
	]
};
function run(one: OptimiseStudy, book = workbook) {
	const found = runOptimise(book, one);
	if (!found.ok) throw new Error(found.problem.message);
	return found.value;
}

describe('the best combination', () => {
	it('is found by taking all of them, with every other one behind it', () => {
		const { ranked, combinations, asItIs } = run(study);
		expect(combinations).toBe(6);
		// 8 h a shift: one line 16 h × 4 − 30 = 34 or 24 × 4 − 30 = 66; both 128 − 120 = 8 or 192 − 120 = 72.
		expect(ranked.map(({ choice, value }) => [...choice, value])).toEqual([
			[2, 1, 72],
			[1, 1, 66],
			[1, 0, 34],
			[2, 0, 8],
			[0, 0, 0],
			[0, 1, 0]
		]);
		expect(asItIs.value).toBe(34);
	});

	it('is the lowest where the study asks for that, and starts from its own scenario', () => {
		const { ranked } = run({ ...study, direction: 'lowest', scenario: 'dear' });
		// Both on two shifts: 32 × 5 − 120 = 40; none 0.
		expect(ranked[0]).toMatchObject({ choice: [0, 0], value: 0 });
		expect(ranked.at(-1)).toMatchObject({ choice: [2, 1], value: 120 });
	});

	it('keeps the limits', () => {
		const { ranked, beyondLimits } = run({
			...study,
			limits: [{ quantity: 'hours', bound: { at_most: 24 } }]
		});
		expect(ranked[0]).toMatchObject({ choice: [1, 1], value: 66, limits: [24] });
		// Both lines: 32 and 48 hours.
		expect(beyondLimits).toBe(2);
	});

	it('counts combinations without an answer apart', () => {
		const { ranked, withoutAnswer } = run({ ...study, quantity: 'per_line' });
		expect(withoutAnswer).toBe(2);
		expect(ranked[0]).toMatchObject({ choice: [1, 1], value: 66 });
	});

	it('becomes a scenario with the same result', () => {
		const { ranked } = run(study);
		const best = ranked[0]!;
		const added = applyCommand(workbook, {
			kind: 'add_scenario',
			index: 9,
			scenario: {
				id: 'proposed',
				title: 'Proposed',
				parent: study.scenario,
				changes: changesOfChoice(study, best.choice)
			}
		});
		if (!added.ok) throw new Error(added.problem.message);
		const model = Model.open(added.workbook);
		const { base } = model.layout.byName.get('profit')!;
		expect(model.results('proposed').values[base]).toBe(best.value);
		expect(changesOfChoice(study, [1, 0])).toEqual([]);
	});

	it('says what separates two combinations', () => {
		expect(apart(study, [2, 1], [1, 1])).toEqual([{ option: 'Lines', one: 'both', other: 'one' }]);
	});
});

describe('a study of combinations that cannot be', () => {
	it('is refused with the number of combinations when there are too many', () => {
		const alternatives = Array.from({ length: 22 }, (_, i) => ({ label: `${i}`, changes: [] }));
		const options = ['a', 'b', 'c'].map((label) => ({ label, alternatives }));
		expect(combinationsOf({ options })).toBe(10_648);
		const found = runOptimise(workbook, { ...study, options });
		expect(found.ok || found.problem.message).toBe(
			'The options give 10,648 combinations, and a study computes at most 10,000. Take out an option, or alternatives that are out of the question.'
		);
	});

	it('is refused without options, of a scenario or a quantity that is gone', () => {
		const problemOf = (one: OptimiseStudy) => {
			const found = runOptimise(workbook, one);
			return found.ok ? null : found.problem.code;
		};
		expect(problemOf({ ...study, options: [] })).toBe('nothing-asked');
		expect(problemOf({ ...study, scenario: 'gone' })).toBe('no-such-scenario');
		expect(problemOf({ ...study, quantity: 'gone' })).toBe('no-such-quantity');
	});
});
