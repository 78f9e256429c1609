/** What an edit moves, computed by the engine and put into words. All figures are made up. */
import { describe, expect, it } from 'vitest';
import { layOut } from '$lib/engine/layout';
import { Model } from '$lib/engine/model';
import {
	movesBetween,
	moveWords,
	readHeadlines,
	withoutPlans,
	type Reading
} from '$lib/ui/moves/moves';
import { quantityAsJson } from '$lib/engine/json-values';
import { headlineNames, readEvaluated, type Evaluated } from '$lib/ui/moves/evaluated';
import { headlinesOf } from '$lib/workbook/headlines';
import { applyCommand } from '$lib/workbook/commands';
import { VERSION, type Workbook } from '$lib/workbook/schema';

const book: Workbook = {
	format: 'metrewright',
	version: VERSION,
	title: 'Test shop',
	sets: [{ name: 'product', label: 'Product', members: [{ id: 'A15' }, { id: 'B22' }] }],
	sheets: [
		{
			title: 'All',
			quantities: [
				{ name: 'price', label: 'Resin price', unit: 'EUR/kg', value: 2 },
				{
					name: 'mass',
					label: 'Mass',
					unit: 'kg/m',
					per: ['product'],
					value: { A15: 0.06, B22: 0.1 }
				},
				{
					name: 'cost',
					label: 'Resin cost',
					unit: 'EUR/m',
					per: ['product'],
					formula: 'price * mass'
				},
				{ name: 'sold', label: 'Metres sold', unit: 'km/year', value: 400 },
				{ name: 'fixed_cost', label: 'Fixed cost', unit: 'EUR/year', value: 80000 },
				{ name: 'revenue', label: 'Revenue', unit: 'EUR/year', formula: '0.5[EUR/m] * sold' },
				{
					name: 'result',
					label: 'Result',
					unit: 'EUR/year',
					formula: 'revenue - fixed_cost - sold * cost[product.A15]'
				},
				{ name: 'pays', label: 'Pays', type: 'yes_no', formula: 'result > 0[EUR/year]' },
				{
					name: 'break_even',
					label: 'Break-even price',
					unit: 'EUR/kg',
					formula: '(revenue - fixed_cost) / (sold * mass[product.A15])',
					where: 'sold > 0[km/year]'
				}
			]
		}
	],
	scenarios: [
		{ id: 'base', title: 'Base', parent: null, changes: [] },
		{ id: 'more', title: 'More', parent: 'base', changes: [{ quantity: 'sold', value: 500 }] }
	],
	front: {
		subject: 'product',
		facts: [
			{ quantity: 'cost', title: 'Cost' },
			{ quantity: 'revenue', title: 'Revenue' },
			{ quantity: 'pays', title: 'Pays' }
		]
	},
	starts: [
		{
			id: 'finance',
			title: 'Finance',
			facts: [
				{ quantity: 'result', title: 'Result' },
				{ quantity: 'price', title: 'Price' },
				{ quantity: 'break_even', title: 'Break-even price' }
			],
			findings: [{ kind: 'figures', title: 'All', quantities: ['mass'] }]
		}
	]
};

function read(workbook: Workbook) {
	const model = Model.open(workbook);
	expect(model.problems).toEqual([]);
	const results = new Map(workbook.scenarios.map(({ id }) => [id, model.results(id)]));
	const { layout } = model;
	return readHeadlines({ workbook, layout, results, subject: 'A15', locale: 'en' });
}
function moved(quantity: string, value: number, scenario = 'base', order = ['base', 'more']) {
	const result = applyCommand(book, {
		kind: 'set_inputs',
		scenario,
		entries: [{ quantity, at: [], value }]
	});
	if (!result.ok) throw new Error(result.problem.message);
	return movesBetween(read(book), read(result.workbook), order, 'en').map((move) =>
		moveWords(move, move.after.scenario === 'base' ? null : move.after.scenario, 'en')
	);
}

describe('headline results', () => {
	it('are what the first screen and the starting views put first, each once', () => {
		expect(headlinesOf(book)).toEqual(['cost', 'revenue', 'pays', 'result', 'price', 'break_even']);
	});

	it('are read as numbers of what is computed: no entries, no yes and no', () => {
		const names = read(book).map(({ quantity }) => quantity);
		expect(new Set(names)).toEqual(new Set(['cost', 'revenue', 'result', 'break_even']));
	});
});

describe('what an edit moves', () => {
	it('comes with what moved most first, from what to what, and by how much', () => {
		// The result: 400 km × 0.5 EUR/m = 200,000, less 80,000, less 400 km × 0.12 (0.24) EUR/m.
		expect(moved('price', 4)).toEqual([
			'Resin cost 0.12 to 0.24 EUR/m, +100.0 %',
			'Result 72,000 to 24,000 EUR/year, −66.7 %'
		]);
	});

	it('is told of the base where it moved, else of the first scenario that did', () => {
		expect(moved('sold', 800, 'more')[0]).toMatch(/^Result \(more\) 110,000 to 224,000 EUR\/year/);
		expect(moved('sold', 600)[0]).toMatch(/^Result 72,000 to /);
	});

	it('says so of a result that comes or goes, and keeps the workbook’s order among those that more than double', () => {
		expect(moved('sold', 0)).toEqual([
			'Revenue 200,000 to 0 EUR/year, −100.0 %',
			expect.stringMatching(/^Result 72,000 to −80,000 EUR\/year/),
			'Break-even price 5 EUR/kg to n/a'
		]);
	});

	it('is told in as many digits as tell it, or not at all', () => {
		// 2.0001 × 0.06 = 0.120006: 0.1200 twice in the digits of a cost, and apart with one more.
		expect(moved('price', 2.0001)[0]).toBe('Resin cost 0.12000 to 0.12001 EUR/m, +0.0050 %');
		expect(moved('price', 2.00000001)).toEqual([]);
	});

	it('gives a number of years in years, where it comes or goes too', () => {
		const at = (value: number | null, text: string) => ({
			...{ quantity: 'payback', label: 'Payback', scenario: 'base', value, text },
			unit: value === null ? '' : 'year'
		});
		const [lost] = movesBetween([at(2.8, '2.8')], [at(null, 'none')], ['base'], 'en');
		expect(moveWords(lost!, null, 'en')).toBe('Payback 2.8 years to none');
		const [later] = movesBetween([at(2.8, '2.8')], [at(4, '4')], ['base'], 'en');
		expect(moveWords(later!, null, 'en')).toBe('Payback 2.8 to 4 years, +42.9 %');
		const [year] = movesBetween([at(2.8, '2.8')], [at(1, '1')], ['base'], 'en');
		expect(moveWords(year!, null, 'en')).toMatch(/^Payback 2\.8 to 1 year,/);
	});

	it('is nothing where an entry only stays what it was', () => {
		expect(moved('price', 2)).toEqual([]);
	});
});

describe('a scenario without a plan', () => {
	it('has lost what rests on one, whatever stands there, and has it back with the next plan', () => {
		const before = read(book);
		const lost = withoutPlans(before, new Set(['more']));
		const words = (from: Reading[], to: Reading[]) =>
			movesBetween(from, to, ['base', 'more'], 'en').map((move) =>
				moveWords(move, move.after.scenario, 'en')
			);
		expect(words(before, before)).toEqual([]);
		expect(words(before, lost)).toContainEqual(
			expect.stringMatching(/^Result \(more\) .+ EUR\/year to no plan$/)
		);
		expect(words(lost, before)).toContainEqual(
			expect.stringMatching(/^Result \(more\) no plan to .+ EUR\/year$/)
		);
		expect(words(lost, lost)).toEqual([]);
	});
});

describe('what a revision moves, by what a server computed of two', () => {
	const laid = layOut(book);
	const evaluated = (workbook: Workbook) => {
		const model = Model.open(workbook);
		const of = (id: string) =>
			Object.fromEntries(
				headlineNames(laid).map((name) => {
					const place = model.layout.byName.get(name)!;
					return [name, quantityAsJson(model.layout, place, model.results(id), () => null)];
				})
			);
		// As it travels.
		const scenarios = workbook.scenarios.map(({ id }) => ({ id, quantities: of(id) }));
		return JSON.parse(JSON.stringify({ scenarios })) as Evaluated;
	};

	it('is the same as what the page reads of its own engine', () => {
		expect(headlineNames(laid)).toEqual(['cost', 'revenue', 'result', 'break_even']);
		const readings = readEvaluated(laid, evaluated(book), 'A15', 'en');
		expect(readings.map(({ text, unit }) => `${text} ${unit}`)).toEqual(
			read(book).map(({ text, unit }) => `${text} ${unit}`)
		);
	});

	it('tells a result that has no value in one of them', () => {
		const without = applyCommand(book, {
			kind: 'set_inputs',
			scenario: 'base',
			entries: [{ quantity: 'sold', at: [], value: 0 }]
		});
		if (!without.ok) throw new Error(without.problem.message);
		const moves = movesBetween(
			readEvaluated(laid, evaluated(book), 'B22', 'en'),
			readEvaluated(laid, evaluated(without.workbook), 'B22', 'en'),
			['base'],
			'en'
		);
		expect(moves.map((move) => moveWords(move, null, 'en'))).toContain(
			'Break-even price 5 EUR/kg to no value'
		);
	});
});
