/** A workbook's programme from its formulas to its plan. */
import { beforeAll, describe, expect, it } from 'vitest';
import { membersOf } from '$lib/engine/layout';
import { Model } from '$lib/engine/model';
import { NOT_ENTERED } from '$lib/engine/state';
import { derive } from '$lib/programmes/derive';
import { Solver } from '$lib/programmes/highs';
import { isCurrent, planAll } from '$lib/programmes/plan-all';
import { pricedRows, pricesOf, type Planned } from '$lib/programmes/planning';
import { loadWorkbook } from '$lib/workbook/load';
import { saveWorkbook } from '$lib/workbook/save';
import type { Workbook } from '$lib/workbook/schema';
import { smallPlant, withQuantity } from './small-plant';

let solver: Solver;
beforeAll(async () => {
	solver = await Solver.load();
});

function plans(workbook: Workbook): { model: Model; planned: Planned[] } {
	const loaded = loadWorkbook(saveWorkbook(workbook), 'test.json');
	if (!loaded.ok) throw new Error(loaded.problem.line);
	const model = Model.open(loaded.workbook);
	expect(model.problems).toEqual([]);
	return { model, planned: [...planAll(solver, model)] };
}

function value(model: Model, scenario: string, name: string, ...at: string[]): number {
	const place = model.layout.byName.get(name)!;
	const cells = Array.from({ length: place.count }, (_, i) => place.base + i);
	const cell = cells.find((one) => membersOf(model.layout, one).join() === at.join())!;
	return model.column(scenario).values[cell]!;
}

/** A plan lies a hair inside of what is required: never above the best, and below it by less than 1e-9 of it. */
function expectBest(found: number, best: number): void {
	expect(best - found).toBeGreaterThan(-1e-9);
	expect((best - found) / best).toBeLessThan(1e-9);
}

const problemsOf = (workbook: Workbook) => plans(workbook).planned[0]!.problems.join(' ');

describe('a plan', () => {
	it('is the best one, proven, and read by every formula', () => {
		const { model, planned } = plans(smallPlant());
		expect(planned.map(({ status, proven }) => [status, proven])).toEqual([
			['optimal', true],
			['optimal', true]
		]);
		// A sells 600 and 700 on L1, of 1,000 m a month; B gets 400 and 300 there, and 500 a month on L2. In January B
		// sells 600 of 900 that could be made, so that 300 m wait for February, where 800 + 300 of 1,200 are sold:
		// 3 × 1,300 + 2 × (600 + 1,100) − 0.1 × 300 = 7,270.
		expectBest(planned[0]!.objective, 7270);
		expectBest(value(model, 'base', 'contribution'), 7270);
		// Which product waits is the same to the plant: the first named is taken.
		expect(value(model, 'base', 'stock', 'A', 'jan')).toBeCloseTo(300, 6);
	});

	it('says what an hour more is worth: made in January and kept a month, ten metres bring 2 − 0.1 each', () => {
		const { model } = plans(smallPlant());
		expect(value(model, 'base', 'hour_value', 'L1', 'jan')).toBeCloseTo(19, 6);
		expect(value(model, 'base', 'hour_value', 'L1', 'feb')).toBeCloseTo(20, 6);
		expect(value(model, 'base', 'hour_value', 'L2', 'feb')).toBeCloseTo(10, 6);
	});

	it('says it in the unit of the quantity that is filled, whatever unit the sides are compared in', () => {
		const book = withQuantity('hours_hold', {
			formula: 'SUM(made over product) * 60[min/h] / speed <= hours'
		})(smallPlant());
		const { model } = plans(book);
		expect(value(model, 'base', 'hour_value', 'L1', 'feb')).toBeCloseTo(20, 6);
	});

	it('is not made where that unit is of another kind', () => {
		const line = problemsOf(smallPlant(withQuantity('hour_value', { unit: 'EUR/m' })));
		expect(line).toMatch(
			/hour_value is in EUR\/m, and what the next unit of hours_hold is worth is in EUR\/h/
		);
	});

	it('is found for each scenario: ten hours more close the gap', () => {
		const { model, planned } = plans(smallPlant());
		// 100 m more: 1.9 EUR each, and then there is demand for none.
		expectBest(planned[1]!.objective, 7270 + 190);
		expect(value(model, 'more_hours', 'hour_value', 'L1', 'jan')).toBeCloseTo(0, 6);
	});

	it('keeps what was entered', () => {
		const pin = withQuantity('made', { value: { A: { L1: { jan: 0 } } } });
		const { model, planned } = plans(smallPlant(pin));
		expect(planned[0]!.proven).toBe(true);
		expect(value(model, 'base', 'made', 'A', 'L1', 'jan')).toBe(0);
		expect(value(model, 'base', 'sold', 'A', 'jan')).toBeCloseTo(0, 6);
	});

	it('is the same from a file, without a solver', () => {
		const { model } = plans(smallPlant());
		const text = saveWorkbook(model.workbook);
		const again = loadWorkbook(text, 'saved.json');
		if (!again.ok) throw new Error(again.problem.line);
		const opened = Model.open(again.workbook);
		expect([...opened.column('base').values]).toEqual([...model.column('base').values]);
		const programme = opened.workbook.programmes![0]!;
		expect(isCurrent(opened, programme, 'base')).toBe(true);
		opened.apply({
			kind: 'set_inputs',
			scenario: 'base',
			entries: [{ quantity: 'margin', at: ['A'], value: 4 }]
		});
		expect(isCurrent(opened, programme, 'base')).toBe(false);
	});

	it('is nothing before it is made, and of the constraints none fails after', () => {
		const model = Model.open(smallPlant());
		const { base } = model.layout.byName.get('made')!;
		expect(model.column('base').states[base]).toBe(NOT_ENTERED);
		const { model: done } = plans(smallPlant());
		for (const name of ['hours_hold', 'stock_holds', 'sold_holds']) {
			const place = done.layout.byName.get(name)!;
			for (let cell = place.base; cell < place.base + place.count; cell++)
				expect(done.column('base').values[cell], `${name} ${membersOf(done.layout, cell)}`).toBe(1);
		}
	});

	it('lies inside of comparisons that know no tolerance, whatever the numbers', () => {
		// Speeds and hours whose products and quotients no double holds.
		const odd = smallPlant((book) =>
			withQuantity('hours', {
				value: { L1: { jan: 93.7 / 3, feb: 71.3 / 7 }, L2: { jan: 1 / 3, feb: 99.1 } }
			})(withQuantity('speed', { value: { L1: 1000 / 7, L2: 311.3 / 9 } })(book))
		);
		const { model, planned } = plans(odd);
		expect(planned[0]!.proven).toBe(true);
		for (const name of ['hours_hold', 'stock_holds', 'sold_holds']) {
			const place = model.layout.byName.get(name)!;
			for (let cell = place.base; cell < place.base + place.count; cell++)
				expect(model.column('base').values[cell], `${name} ${membersOf(model.layout, cell)}`).toBe(
					1
				);
		}
	});

	it('may lie at a bound where what was entered leaves no other', () => {
		// 1,000 m of A and nothing of B fill L1 to the last minute.
		const pin = withQuantity('made', {
			value: { A: { L1: { jan: 1000 } }, B: { L1: { jan: 0 } } }
		});
		expect(plans(smallPlant(pin)).planned[0]!.proven).toBe(true);
	});

	it('is solved apart for each member where nothing ties them together', () => {
		const book = smallPlant((book) => ({
			...withQuantity('contribution', {
				per: ['month'],
				formula: 'SUM(sold * margin over product)'
			})(withQuantity('stock_holds', { formula: 'stock <= SUM(made over line) - sold' })(book)),
			programmes: [{ ...book.programmes![0]!, each: ['month'] }]
		}));
		const model = Model.open(book);
		const derivation = derive(model, book.programmes![0]!, 'base');
		expect(derivation.ok && derivation.derived.parts.map(({ members }) => members)).toEqual([
			['jan'],
			['feb']
		]);
		// 3 × 600 + 2 × 600 in January, 3 × 700 + 2 × 800 in February.
		expectBest(plans(book).planned[0]!.objective, 6700);
	});

	it('chooses whole numbers', () => {
		const book = smallPlant(withQuantity('sold', { range: { min: 0, max: 5000 }, whole: true }));
		const odd = withQuantity('hours', {
			value: { L1: { jan: 100.05, feb: 100 }, L2: { jan: 100, feb: 100 } }
		})(book);
		const { model, planned } = plans(odd);
		expect(planned[0]!.status).toBe('optimal');
		expect(planned[0]!.proven).toBe(true);
		expect(Number.isInteger(value(model, 'base', 'sold', 'B', 'feb'))).toBe(true);
	});
});

it('a price a hair under nothing is nothing, as more room never takes from the best plan', () => {
	const book = smallPlant();
	const model = Model.open(book);
	const programme = book.programmes![0]!;
	const derivation = derive(model, programme, 'base');
	if (!derivation.ok) throw new Error('no rows');
	const part = derivation.derived.parts[0]!;
	const told = (price: number) => {
		const prices = pricedRows(model, programme, part).map((row) => ({
			...{ row, more: { price, until: 1 }, less: { price: -price, until: 1 } }
		}));
		const worths = pricesOf(model, programme, part, { prices });
		return [...new Set(worths.flatMap(({ more, less }) => [more, less]))];
	};
	expect(told(2)).toEqual([2]);
	expect(told(-1e-12)).toEqual([0]);
});

describe('a formula that is not linear is refused with its place', () => {
	const broken = (name: string, formula: string) =>
		problemsOf(smallPlant(withQuantity(name, { formula })));

	it('a divisor that is decided', () => {
		expect(
			broken(
				'contribution',
				'SUM(sold * margin over product × month) / SUM(stock over product × month) * 1[m]'
			)
		).toMatch(/contribution divides by .*a programme must be linear/);
	});

	it('a product of two decisions', () => {
		expect(broken('contribution', 'SUM(sold * stock over product × month) * 1[EUR/m^2]')).toMatch(
			/contribution multiplies stock of A, jan/
		);
	});

	it('a condition', () => {
		expect(broken('planned_hours', 'IF(SUM(made over product) > 5[m]; 1[h]; 0)')).toMatch(
			/planned_hours of L1, jan tests/
		);
	});

	it('a filter', () => {
		expect(
			broken('contribution', 'SUM(sold * margin over product × month where sold > 5[m])')
		).toMatch(/contribution filters by/);
	});

	it('a function, a power and an extreme', () => {
		expect(broken('planned_hours', 'ABS(SUM(made over product) / speed)')).toMatch(
			/puts .* into a function/
		);
		expect(broken('planned_hours', '(SUM(made over product) / speed)^2 / 1[h]')).toMatch(
			/to a power/
		);
		expect(broken('contribution', 'MIN(sold * margin over product × month)')).toMatch(
			/least or greatest/
		);
	});

	it('a decision that comes by a detour, with the way', () => {
		const book = smallPlant((book) =>
			withQuantity('contribution', {
				formula:
					'SUM(sold over product × month) * margin[A] / SUM(planned_hours over line × month) * 1[h]'
			})(book)
		);
		expect(problemsOf(book)).toMatch(/divides by .*which the programme decides/);
	});
});

describe('no plan', () => {
	it('says what conflicts and by how much in its own unit', () => {
		// 2,000 m of A in January on L1 take 200 h of 100.
		const pin = withQuantity('made', { value: { A: { L1: { jan: 2000 } } } });
		expect(problemsOf(smallPlant(pin))).toContain('hours_hold, L1, jan, by 100 h');
	});

	it('names a value that is held outside of its range, with the range and what to do', () => {
		const pin = withQuantity('made', { value: { A: { L1: { jan: -5 } } } });
		expect(problemsOf(smallPlant(pin))).toBe(
			'made of A, L1, jan is held at -5 m, outside of its range (at least 0 m). Let it go, enter a value inside, or change the range.'
		);
	});

	it('refuses a comparison by another sign, and says which there are', () => {
		const strict = withQuantity('hours_hold', { formula: 'planned_hours < hours' });
		expect(problemsOf(smallPlant(strict))).toContain(
			'hours_hold of L1, jan compares planned_hours of L1, jan, which the programme decides, by another sign than <=, >= or ='
		);
	});

	it('names what grows without end', () => {
		const free = smallPlant((book) => ({
			...book,
			programmes: [{ ...book.programmes![0]!, constraints: ['hours_hold'] }]
		}));
		expect(problemsOf(free)).toMatch(/has no end: sold, .* can grow without limit/);
	});
});
