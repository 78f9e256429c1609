/**
 * The shipped workbook of the invented plant against an independent model of it, scenario by
 * scenario: two programs that share no formula and reach the same figures.
 */
import { describe, expect, it } from 'vitest';
import { modelOf, type IndependentResults } from './independent/model';
import { SCENARIOS, type ScenarioId } from './independent/plant';
import { at } from './independent/works';
import { WorkbookFigures } from './workbook-figures';
import { planOf } from './workbook-plan';

const FILE = 'scenarios/marram-coil-works.json';
const workbook = new WorkbookFigures(FILE);

/**
 * The model takes each material's price as given, rounded to a tenth of a cent; the workbook works it
 * out from the recipe. With main components priced so that both buy at the same, nothing is left to
 * tell the two apart.
 */
const samePrices = new WorkbookFigures(FILE, [
	// (3.294 − 2 % × 4.0) ÷ 98 %
	{ quantity: 'main_price', at: ['PB1'], value: (3.294 - 0.02 * 4) / 0.98 },
	// (1.948 − 1.5 % × 3.8) ÷ 98.5 %
	{ quantity: 'main_price', at: ['PERT'], value: (1.948 - 0.015 * 3.8) / 0.985 }
]);

/** How far figures may lie apart, relative to the model's. */
interface Within {
	/** From wall to factory cost. */
	readonly card: number;
	/** Results of a year. */
	readonly year: number;
	/** Cash, relative to what is at stake: gains are small differences of large results. */
	readonly stake: number;
}

const RUNS: [string, WorkbookFigures, Within][] = [
	['the workbook as shipped', workbook, { card: 0.001, year: 0.005, stake: 0.001 }],
	['the workbook buying at the same prices', samePrices, { card: 1e-9, year: 1e-9, stake: 1e-9 }]
];
/** What is made is read from the workbook; that no plan earns more is held in plan.test.ts. */
const PLANS = new Map(RUNS.map(([, figures]) => [figures, planOf(figures)]));
const CASES = RUNS.flatMap(([title, figures, within]) =>
	SCENARIOS.map((id): [string, ScenarioId, WorkbookFigures, Within] => [title, id, figures, within])
);

function expectNear(found: number, expected: number, relative: number, what: string) {
	const allowed = Math.abs(expected) * relative + 1e-12;
	expect(Math.abs(found - expected), `${what}: ${found}, model ${expected}`).toBeLessThanOrEqual(
		allowed
	);
}

describe('the workbook', () => {
	it('proves every formula', () => {
		expect(workbook.problems).toEqual([]);
	});
});

describe.each(CASES)('%s, %s, against the independent model', (_, id, figures, within) => {
	const model: IndependentResults = modelOf(id, PLANS.get(figures)!);
	const products = [...model.pipes.keys()];
	const pairs = [...model.runs].flatMap(([line, runs]) =>
		[...runs].map(([product, run]) => ({ line, product, run }))
	);
	const perProduct = (
		quantity: string,
		expected: (product: string) => number,
		relative: number
	) => {
		for (const product of products)
			expectNear(
				figures.number(id, quantity, product),
				expected(product),
				relative,
				`${quantity} of ${product}`
			);
	};

	it('sets the same wall and weighs the same metre', () => {
		perProduct('wall_set_point', (one) => at(model.pipes, one).wallSetPoint, within.card);
		perProduct('mass_per_metre', (one) => at(model.pipes, one).massPerMetre, within.card);
	});

	it('runs each product on each line at the same speed, held back by the same limit', () => {
		for (const { line, product, run } of pairs) {
			const found = figures.number(id, 'line_speed', product, line);
			expectNear(found, run.speed, within.card, `speed of ${product} on ${line}`);
			const limit = figures.member(id, 'speed_limited_by', product, line);
			expect(limit, `${product} on ${line}`).toBe(run.limitedBy);
		}
	});

	it('schedules, nets and fills the same hours on each line', () => {
		for (const line of model.lines) {
			const scheduled = figures.number(id, 'scheduled_hours', line);
			expectNear(scheduled, at(model.scheduledHours, line), 1e-9, `scheduled hours of ${line}`);
			const net = figures.number(id, 'net_hours', line);
			expectNear(net, at(model.netHours, line), 1e-9, `net hours of ${line}`);
			const load = figures.number(id, 'load', line) / 100;
			expectNear(load, at(model.years[0]!.lineLoad, line), within.card, `load of ${line}`);
		}
	});

	it('takes the same hours and kilograms for a good metre', () => {
		for (const { line, product, run } of pairs) {
			const hours = figures.number(id, 'hours_per_metre', product, line) / 1000;
			expectNear(hours, run.hoursPerMetre, within.card, `hours per metre of ${product} on ${line}`);
			const kg = figures.number(id, 'mass_extruded', product, line);
			expectNear(kg, run.kgExtruded, within.card, `kg extruded of ${product} on ${line}`);
		}
	});

	it('loads rewinders and chambers alike', () => {
		const { rewinderLoad, chamberLoad } = model.years[0]!;
		expectNear(figures.number(id, 'rewinder_load') / 100, rewinderLoad, within.card, 'rewinders');
		expectNear(figures.number(id, 'chamber_load') / 100, chamberLoad, within.card, 'chambers');
	});

	it('makes the same metres of each product', () => {
		perProduct('good_metres', (one) => at(model.goodMetres, one), 1e-9);
	});

	it.each([
		['variable_cost_per_metre', 'variable'],
		['line_labour_cost', 'lineLabour'],
		['line_overhead_cost', 'lineOverhead'],
		['crosslink_cost', 'crosslinking'],
		['rewind_labour_cost', 'rewindLabour'],
		['rewind_overhead_cost', 'rewindOverhead'],
		['cost_per_metre', 'perMetre'],
		['cost_per_coil', 'perCoil']
	] as const)('comes to the same %s', (quantity, item) => {
		perProduct(quantity, (one) => at(model.cards, one)[item], within.card);
	});

	it('keeps the same net-net price and contribution of a metre', () => {
		perProduct('net_net_price', (one) => at(model.netNet, one), within.card);
		perProduct('contribution_per_metre', (one) => at(model.contribution, one), within.card);
	});

	it('pays the same people and burns the same site energy', () => {
		const { people, site, startScrap } = model.pools;
		const labour = people.shiftLabour + people.weekendLabour;
		expectNear(figures.number(id, 'total_heads'), people.heads, within.card, 'heads');
		expectNear(figures.number(id, 'shift_labour'), labour, within.card, 'labour');
		expectNear(figures.number(id, 'peak_power'), site.peakKW, within.card, 'peak');
		const energy = site.baseCost + site.demandCharge;
		expectNear(figures.number(id, 'site_energy'), energy, within.card, 'site energy');
		expectNear(figures.number(id, 'weekly_start_cost'), startScrap, within.card, 'start scrap');
	});

	it('closes the base year at the same result', () => {
		expectNear(figures.number(id, 'ebit'), model.ebit, within.year, 'EBIT');
		const idle = figures.number(id, 'idle_capacity_cost');
		expectNear(idle, model.fullCost.idle, within.year, 'idle capacity');
	});

	it('earns the same in every plan year', () => {
		const ebits = figures.row(id, 'ebit_of_plan_year');
		const revenues = figures.row(id, 'revenue');
		expect(ebits).toHaveLength(model.results.length);
		model.results.forEach(({ ebit, revenue }, year) => {
			expectNear(ebits[year]!, ebit, within.year, `EBIT of plan year ${year}`);
			expectNear(revenues[year]!, revenue, within.year, `revenue of plan year ${year}`);
		});
	});
});

const INVESTMENTS = CASES.filter(([, id]) => id !== 'base');
describe.each(INVESTMENTS)('%s, %s as an investment', (_, id, figures, within) => {
	const investment = modelOf(id, PLANS.get(figures)!).investment!;
	const stake = investment.outlay + investment.workingCapital;

	it('moves the same cash in each year to the end of its life', () => {
		const flows = figures.row(id, 'net_cash_flow');
		expect(flows).toHaveLength(investment.life + 1);
		investment.netCashFlow.forEach((cash, year) =>
			expect(Math.abs(flows[year]! - cash), `year ${year}`).toBeLessThan(stake * within.stake)
		);
	});

	it('is worth the same today and a year', () => {
		const npv = figures.number(id, 'npv');
		expect(Math.abs(npv - investment.npv), `${npv}`).toBeLessThan(stake * within.stake);
		const yearly = figures.number(id, 'equivalent_annual_value');
		const allowed = Math.abs(
			(stake * within.stake * investment.equivalentAnnualValue) / investment.npv
		);
		expect(Math.abs(yearly - investment.equivalentAnnualValue)).toBeLessThan(allowed);
	});

	it.each([
		['irr', investment.irr],
		['mirr', investment.mirr]
	])('has the same %s, or none', (quantity, rate) => {
		const found = figures.answer(id, quantity);
		if (rate === null) expect(found).toBeNull();
		else expectNear(found ?? NaN, rate * 100, within.year, quantity);
	});

	it.each([
		['payback', investment.payback],
		['discounted_payback', investment.discountedPayback]
	])('has the same %s, or never pays back', (quantity, years) => {
		const found = figures.answer(id, quantity);
		if (years === null) expect(found).toBeNull();
		else expectNear(found ?? NaN, years, within.year, quantity);
	});
});

describe('the base as an investment', () => {
	it.each(['irr', 'mirr', 'payback', 'discounted_payback'])(
		'has no %s, which is an answer and not a fault',
		(quantity) => {
			expect(workbook.answer('base', quantity)).toBeNull();
		}
	);

	it('moves no cash and is worth nothing', () => {
		expect(workbook.row('base', 'net_cash_flow').every((cash) => cash === 0)).toBe(true);
		expect(workbook.number('base', 'npv')).toBe(0);
	});
});
