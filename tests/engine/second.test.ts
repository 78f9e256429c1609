/** The verifier: what it compares, how it follows edits, what it says when engines differ or it cannot judge. */
import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import type { Results } from '$lib/engine/results';
import { LIMIT, limitOf } from '$lib/engine/second/sample';
import { Verifier } from '$lib/engine/second/verifier';
import { isWithinTolerance } from '$lib/engine/second/tolerance';
import { NOT_ENTERED, OK } from '$lib/engine/state';
import type { Quantity, Scenario, Workbook } from '$lib/workbook/schema';
import { VERSION } from '$lib/workbook/schema';
import { openScenarios } from '../reference/shipped';

const set = (name: string, ...ids: string[]) => ({
	name,
	label: name,
	members: ids.map((id, i) => ({ id, number: i + 1 }))
});
const product = set('product', 'P1', 'P2', 'P3');

function workbook(quantities: Quantity[], scenarios: Scenario[] = []): Workbook {
	return {
		format: 'metrewright',
		version: VERSION,
		title: 'Plant',
		sets: [product],
		sheets: [{ title: 'One', quantities }],
		scenarios: [{ id: 'main', title: 'Base', parent: null, changes: [] }, ...scenarios]
	};
}

const quantity = (name: string, rest: Partial<Quantity> = {}): Quantity => ({
	name,
	label: name,
	...rest
});

const scenario = (id: string, parent: string, rest: Partial<Scenario> = {}): Scenario => ({
	id,
	title: id,
	parent,
	changes: [],
	...rest
});

const run = (steps: Generator<unknown>) => {
	let count = 0;
	for (const _ of steps) count++;
	return count;
};

function open(book: Workbook, limit?: number) {
	const model = Model.open(book);
	expect(model.problems).toEqual([]);
	const verifier = Verifier.open(book, model.plan, limit);
	run(verifier.build());
	const results = () => book.scenarios.map(({ id }) => model.results(id));
	return { model, verifier, results };
}

const cost = [
	quantity('price', { per: ['product'], value: { P1: 2, P2: 3, P3: 4 } }),
	quantity('rate', { value: 0.5 }),
	quantity('cost', { per: ['product'], formula: 'price * rate' }),
	quantity('total', { formula: 'SUM(cost over product)' })
];
const dear = scenario('dear', 'main', {
	changes: [{ quantity: 'price', value: { P2: 9 } }]
});
const dearer = scenario('dearer', 'dear', { changes: [{ quantity: 'rate', value: 2 }] });

/** The model's results of one scenario with one cell put wrong. */
const tampered = (
	results: readonly Results[],
	at: string,
	cell: number,
	value: number,
	state = OK
) =>
	results.map((result) => {
		if (result.scenario !== at) return result;
		const values = result.values.slice();
		const states = result.states.slice();
		values[cell] = value;
		states[cell] = state;
		return { ...result, values, states };
	});

describe('the verifier', () => {
	it('compares every value of every scenario', () => {
		const { verifier, results } = open(workbook(cost, [dear, dearer]));
		const agreement = verifier.compare(results());
		expect(agreement).toEqual({
			compared: 24,
			agreeing: 24,
			notCompared: [],
			sample: null,
			disagreements: [],
			busy: false
		});
	});

	it('shows both values where they differ, and where the cell is', () => {
		const { verifier, results, model } = open(workbook(cost, [dear]));
		const total = model.layout.byName.get('total')!.base;
		const { compared, agreeing, disagreements } = verifier.compare(
			tampered(results(), 'dear', total, 7.6)
		);
		expect([compared, agreeing]).toEqual([16, 15]);
		expect(disagreements).toEqual([
			{
				quantity: 'total',
				members: [],
				cell: total,
				scenario: 'dear',
				first: { value: 7.6, state: OK },
				second: { value: 7.5, state: OK }
			}
		]);
	});

	it('holds a value against a kind of nothing, and one kind against another', () => {
		const { verifier, results } = open(
			workbook([quantity('rate'), quantity('half', { formula: 'rate / 2' })])
		);
		expect(verifier.compare(results()).agreeing).toBe(2);
		expect(verifier.compare(tampered(results(), 'main', 1, 0)).agreeing).toBe(1);
		expect(verifier.compare(tampered(results(), 'main', 1, NaN, 1)).agreeing).toBe(1);
	});

	it('lets pass one part in a thousand million, and what a difference of large numbers costs', () => {
		expect(isWithinTolerance(1, 1 + 0.9e-9)).toBe(true);
		expect(isWithinTolerance(1, 1 + 2e-9)).toBe(false);
		expect(isWithinTolerance(0, 1e-30)).toBe(false);
		const { verifier, results } = open(
			workbook([
				quantity('a', { value: 1e6 }),
				quantity('b', { value: 1e6 }),
				quantity('left', { formula: 'a - b' })
			])
		);
		expect(verifier.compare(tampered(results(), 'main', 2, 1e-7)).agreeing).toBe(3);
		expect(verifier.compare(tampered(results(), 'main', 2, 1e-5)).agreeing).toBe(2);
	});

	it('compares only the scenarios it is given', () => {
		const { verifier, results } = open(workbook(cost, [dear]));
		expect(verifier.compare(results().slice(1)).compared).toBe(8);
	});
});

describe('after an edit', () => {
	const edits: [string, Workbook][] = [
		[
			'of the base',
			workbook(
				cost.map((one) => (one.name === 'rate' ? { ...one, value: 3 } : one)),
				[dear, dearer]
			)
		],
		[
			'that clears an input',
			workbook(
				cost.map((one) => (one.name === 'rate' ? { ...one, value: null } : one)),
				[dear, dearer]
			)
		],
		[
			'of what a scenario changes already',
			workbook(cost, [{ ...dear, changes: [{ quantity: 'price', value: { P2: 11 } }] }, dearer])
		],
		[
			'by which a scenario changes one thing more',
			workbook(cost, [
				{ ...dear, changes: [...dear.changes, { quantity: 'rate', value: 7 }] },
				dearer
			])
		],
		[
			'by which a scenario changes nothing any more',
			workbook(cost, [{ ...dear, changes: [] }, dearer])
		],
		[
			'by which a scenario comes',
			workbook(cost, [
				scenario('cheap', 'main', { changes: [{ quantity: 'rate', value: 0.5 }] }),
				dear,
				dearer
			])
		],
		['by which one goes', workbook(cost, [{ ...dearer, parent: 'main' }])],
		[
			'by which one goes and another comes',
			workbook(cost, [scenario('cheap', 'main', { changes: dear.changes }), dear])
		],
		['by which one starts from another', workbook(cost, [dear, { ...dearer, parent: 'main' }])],
		[
			'by which one is measured against another',
			workbook(cost, [dear, { ...dearer, against: 'dear' }])
		]
	];

	it.each(edits)('%s the verifier is where a fresh one would be', (_, after) => {
		const { verifier } = open(workbook(cost, [dear, dearer]));
		run(verifier.update(after));
		const model = Model.open(after);
		const results = after.scenarios.map(({ id }) => model.results(id));
		const values = 8 * after.scenarios.length;
		expect(verifier.compare(results)).toMatchObject({ compared: values, agreeing: values });
	});

	it('takes single inputs too, and lets one follow the parent again', () => {
		const { verifier, model, results } = open(workbook(cost, [dear]));
		const rate = model.layout.byName.get('rate')!.base;
		const total = model.layout.byName.get('total')!.base;
		const seen = (at: string) => {
			const found = verifier.compare(tampered(results(), at, total, -1)).disagreements;
			return found.find(({ scenario, cell }) => scenario === at && cell === total)!.second;
		};
		run(verifier.apply([{ scenario: 'main', cell: rate, outcome: { value: 2, state: OK } }]));
		expect([seen('main').value, seen('dear').value]).toEqual([18, 30]);
		run(verifier.apply([{ scenario: 'dear', cell: rate, outcome: { value: 1, state: OK } }]));
		expect([seen('main').value, seen('dear').value]).toEqual([18, 15]);
		run(verifier.apply([{ scenario: 'dear', cell: rate, outcome: null }]));
		expect([seen('main').value, seen('dear').value]).toEqual([18, 30]);
		run(
			verifier.apply([
				{ scenario: 'main', cell: rate, outcome: { value: NaN, state: NOT_ENTERED } }
			])
		);
		expect(seen('dear').state).not.toBe(OK);
	});
});

describe('circles', () => {
	it('are circles in both engines, and end where something covers them', () => {
		const { verifier, model } = (() => {
			const book = workbook([
				quantity('a', { formula: 'b + 1' }),
				quantity('b', { formula: 'a * 2' }),
				quantity('after', { formula: 'a / 2' }),
				quantity('covered', { formula: 'IFERROR(a; 5)' })
			]);
			const model = Model.open(book);
			const verifier = Verifier.open(book, model.plan);
			run(verifier.build());
			return { verifier, model };
		})();
		expect(verifier.compare([model.results('main')])).toMatchObject({ compared: 4, agreeing: 4 });
	});

	it('of scenarios measured against one another are circular in both', () => {
		const rise = quantity('rise', { formula: 'total - total[reference]' });
		const { verifier, results } = open(
			workbook(
				[...cost, rise],
				[
					scenario('one', 'main', { against: 'two', changes: dear.changes }),
					scenario('two', 'main', { against: 'one', changes: dearer.changes })
				]
			)
		);
		expect(verifier.compare(results())).toMatchObject({ compared: 27, agreeing: 27 });
	});
});

describe('what it cannot judge', () => {
	it('is counted with the reason, and so is what is computed from it', () => {
		const years = { ...product, members: [...product.members, { id: 'P4', number: 4 }] };
		const book = {
			...workbook([
				// 1, −3.6, 4.31, −1.716: three rates, 10, 20 and 30 %.
				quantity('flow', { per: ['product'], value: { P1: 1, P2: -3.6, P3: 4.31, P4: -1.716 } }),
				quantity('rate', { formula: 'IRR(flow over product)' }),
				quantity('shown', { formula: 'IFERROR(rate; 7)' }),
				quantity('apart', { formula: 'SUM(flow over product)' })
			]),
			sets: [years]
		};
		const { verifier, results } = open(book);
		const { compared, agreeing, notCompared, disagreements } = verifier.compare(results());
		expect(disagreements).toEqual([]);
		expect(notCompared).toHaveLength(1);
		expect(notCompared[0]!.reason).toMatch(/change sign more than once/);
		expect(compared + notCompared[0]!.count).toBe(7);
		expect(agreeing).toBe(compared);
	});
});

describe('a workbook beyond its limit', () => {
	it('is checked in the base alone', () => {
		const { verifier, results } = open(workbook(cost, [dear, dearer]), 10);
		expect(verifier.compare(results())).toMatchObject({
			compared: 8,
			agreeing: 8,
			sample: { scenarios: ['main'], cells: 8, of: 24 }
		});
	});

	it('or in some members of each quantity, with all that they are computed from', () => {
		const chain = [
			quantity('price', { per: ['product'], value: { P1: 2, P2: 3, P3: 4 } }),
			quantity('net', { per: ['product'], formula: 'price / 2' }),
			quantity('gross', { per: ['product'], formula: 'net * 3' })
		];
		const { verifier, results } = open(workbook(chain), 5);
		const { compared, agreeing, sample } = verifier.compare(results());
		expect(sample!.cells).toBe(compared);
		expect(sample!.of).toBe(9);
		expect(compared).toBeGreaterThan(0);
		expect(compared).toBeLessThanOrEqual(5);
		expect(agreeing).toBe(compared);
	});

	it('weighs of a scenario what its changes reach there, not what reads the base', () => {
		const read: Quantity[] = [
			quantity('price', { value: 2 }),
			quantity('as_in_base', { formula: 'price[base] * 3' }),
			quantity('far', { formula: 'as_in_base + 1' })
		];
		const dear = scenario('dear', 'main', { changes: [{ quantity: 'price', value: 5 }] });
		// Three cells of the base and one of the scenario.
		expect(open(workbook(read, [dear]), 4).verifier.compare([]).sample).toBeNull();
		expect(open(workbook(read, [dear]), 3).verifier.compare([]).sample).not.toBeNull();
		const { verifier, results } = open(workbook(read, [dear]), 4);
		expect(verifier.compare(results())).toMatchObject({ compared: 6, agreeing: 6 });
	});

	it('is smaller on a machine that says it has little memory, and as ever where it says nothing', () => {
		expect(limitOf(4)).toBeLessThan(limitOf(8));
		expect([limitOf(undefined), limitOf(8)]).toEqual([LIMIT, LIMIT]);
	});

	it('follows edits of what it checks, and ignores the rest', () => {
		const { verifier } = open(workbook(cost, [dear]), 10);
		const after = workbook(
			cost.map((one) => (one.name === 'rate' ? { ...one, value: 3 } : one)),
			[dearer]
		);
		run(verifier.update(after));
		const model = Model.open(after);
		expect(verifier.compare([model.results('main')])).toMatchObject({ compared: 8, agreeing: 8 });
	});
});

describe('the shipped plant', () => {
	it('agrees in every value, before and after an edit, a step at a time', () => {
		// The base, one that follows it and one with dated steps; a journey has every value of all.
		const model = openScenarios('base', 'new_line', 'forecast_2027');
		const book = model.workbook;
		// More than on screen, where a sample must do.
		const verifier = Verifier.open(book, model.plan, 2_500_000);
		expect(run(verifier.build())).toBeGreaterThan(5);
		const results = book.scenarios.map(({ id }) => model.results(id));
		const before = verifier.compare(results);
		expect(before.disagreements).toEqual([]);
		expect(before.compared).toBe(book.scenarios.length * model.layout.cells);
		expect(before.agreeing).toBe(before.compared);

		const priced = book.sheets
			.flatMap(({ quantities }) => quantities)
			.find(({ formula, unit }) => !formula && unit === 'EUR/kg')!;
		const halved = (value: unknown): never =>
			(typeof value === 'number'
				? value / 2
				: Object.fromEntries(
						Object.entries(value as object).map(([id, one]) => [id, halved(one)])
					)) as never;
		const edited = {
			...book,
			sheets: book.sheets.map((sheet) => ({
				...sheet,
				quantities: sheet.quantities.map((quantity) =>
					quantity === priced ? { ...quantity, value: halved(quantity.value) } : quantity
				)
			}))
		};
		run(verifier.update(edited));
		const after = Model.open(edited);
		const agreement = verifier.compare(book.scenarios.map(({ id }) => after.results(id)));
		expect(agreement.disagreements).toEqual([]);
		expect(agreement.agreeing).toBe(agreement.compared);
		verifier.destroy();
	});
});
