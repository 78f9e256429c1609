/**
 * The shipped workbook of the invented plant against an independent model of it, scenario by
 * scenario: two programs that share no formula and reach the same figures. Then what the plant's
 * options teach, which is why they were made as they are.
 */
import { describe, expect, it } from 'vitest';
import { modelOf, type IndependentResults } from './independent/model';
import { sum } from './independent/plant';
import { SCENARIOS } from './independent/plant';
import { at } from './independent/works';
import { WorkbookFigures } from './workbook-figures';

const workbook = new WorkbookFigures('scenarios/marram-coil-works.json');

/** From wall to factory cost; and for a year or an investment. */
const CARD = 0.001;
const YEAR = 0.005;

function expectNear(found: number, expected: number, relative: number, what: string) {
	const allowed = Math.abs(expected) * relative + 1e-9;
	expect(Math.abs(found - expected), `${what}: ${found}, model ${expected}`).toBeLessThan(allowed);
}

describe('the workbook', () => {
	it('proves every formula', () => {
		expect(workbook.problems).toEqual([]);
	});
});

describe.each(SCENARIOS)('%s, workbook against independent model', (id) => {
	const model: IndependentResults = modelOf(id);
	const products = [...model.pipes.keys()];
	const pairs = [...model.runs].flatMap(([line, runs]) =>
		[...runs].map(([product, run]) => ({ line, product, run }))
	);
	const perProduct = (quantity: string, expected: (product: string) => number, within: number) => {
		for (const product of products)
			expectNear(
				workbook.number(id, quantity, product),
				expected(product),
				within,
				`${quantity} of ${product}`
			);
	};

	it('sets the same wall and weighs the same metre', () => {
		perProduct('wall_set_point', (one) => at(model.pipes, one).wallSetPoint, CARD);
		perProduct('mass_per_metre', (one) => at(model.pipes, one).massPerMetre, CARD);
	});

	it('runs each product on each line at the same speed, held back by the same limit', () => {
		for (const { line, product, run } of pairs) {
			const found = workbook.number(id, 'line_speed', product, line);
			expectNear(found, run.speed, CARD, `speed of ${product} on ${line}`);
			const limit = workbook.member(id, 'speed_limited_by', product, line);
			expect(limit, `${product} on ${line}`).toBe(run.limitedBy);
		}
	});

	it('schedules, nets and fills the same hours on each line', () => {
		for (const line of model.lines) {
			const scheduled = workbook.number(id, 'scheduled_hours', line);
			expectNear(scheduled, at(model.scheduledHours, line), 1e-9, `scheduled hours of ${line}`);
			const net = workbook.number(id, 'net_hours', line);
			expectNear(net, at(model.netHours, line), 1e-9, `net hours of ${line}`);
			const load = workbook.number(id, 'load', line) / 100;
			expectNear(load, at(model.years[0]!.lineLoad, line), CARD, `load of ${line}`);
		}
	});

	it('takes the same hours and kilograms for a good metre', () => {
		for (const { line, product, run } of pairs) {
			const hours = workbook.number(id, 'hours_per_metre', product, line) / 1000;
			expectNear(hours, run.hoursPerMetre, CARD, `hours per metre of ${product} on ${line}`);
			const kg = workbook.number(id, 'mass_extruded', product, line);
			expectNear(kg, run.kgExtruded, CARD, `kg extruded of ${product} on ${line}`);
		}
	});

	it('loads rewinders and chambers alike', () => {
		const { rewinderLoad, chamberLoad } = model.years[0]!;
		expectNear(workbook.number(id, 'rewinder_load') / 100, rewinderLoad, CARD, 'rewinders');
		expectNear(workbook.number(id, 'chamber_load') / 100, chamberLoad, CARD, 'chambers');
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
		perProduct(quantity, (one) => at(model.cards, one)[item], CARD);
	});

	it('keeps the same net-net price and contribution of a metre', () => {
		perProduct('net_net_price', (one) => at(model.netNet, one), CARD);
		perProduct('contribution_per_metre', (one) => at(model.contribution, one), CARD);
	});

	it('pays the same people and burns the same site energy', () => {
		const { people, site, startScrap } = model.pools;
		const labour = people.shiftLabour + people.weekendLabour;
		expectNear(workbook.number(id, 'total_heads'), people.heads, CARD, 'heads');
		expectNear(workbook.number(id, 'shift_labour'), labour, CARD, 'labour');
		expectNear(workbook.number(id, 'peak_power'), site.peakKW, CARD, 'peak');
		const energy = site.baseCost + site.demandCharge;
		expectNear(workbook.number(id, 'site_energy'), energy, CARD, 'site energy');
		expectNear(workbook.number(id, 'weekly_start_cost'), startScrap, CARD, 'start scrap');
	});

	it('closes the base year at the same result', () => {
		expectNear(workbook.number(id, 'ebit'), model.ebit, YEAR, 'EBIT');
		const idle = workbook.number(id, 'idle_capacity_cost');
		expectNear(idle, model.fullCost.idle, YEAR, 'idle capacity');
	});

	it('earns the same in every plan year', () => {
		const ebits = workbook.row(id, 'ebit_of_plan_year');
		const revenues = workbook.row(id, 'revenue');
		expect(ebits).toHaveLength(model.results.length);
		model.results.forEach(({ ebit, revenue }, year) => {
			expectNear(ebits[year]!, ebit, YEAR, `EBIT of plan year ${year}`);
			expectNear(revenues[year]!, revenue, YEAR, `revenue of plan year ${year}`);
		});
	});
});

describe.each(SCENARIOS.filter((id) => id !== 'base'))('%s as an investment', (id) => {
	const investment = modelOf(id).investment!;
	// Gains are small differences of large results, so cash is held to a share of what is at stake.
	const stake = investment.outlay + investment.workingCapital;

	it('moves the same cash in each year to the end of its life', () => {
		const flows = workbook.row(id, 'net_cash_flow');
		expect(flows).toHaveLength(investment.life + 1);
		investment.netCashFlow.forEach((cash, year) =>
			expect(Math.abs(flows[year]! - cash), `year ${year}`).toBeLessThan(stake * YEAR)
		);
	});

	it('is worth the same today and a year', () => {
		const npv = workbook.number(id, 'npv');
		expect(Math.abs(npv - investment.npv), `${npv}`).toBeLessThan(stake * YEAR);
		const yearly = workbook.number(id, 'equivalent_annual_value');
		const allowed = (stake * YEAR * investment.equivalentAnnualValue) / investment.npv;
		expect(Math.abs(yearly - investment.equivalentAnnualValue)).toBeLessThan(allowed);
	});

	it.each([
		['irr', investment.irr],
		['mirr', investment.mirr]
	])('has the same %s, or none', (quantity, rate) => {
		const found = workbook.answer(id, quantity);
		if (rate === null) expect(found).toBeNull();
		else expectNear(found ?? NaN, rate * 100, YEAR, quantity);
	});

	it.each([
		['payback', investment.payback],
		['discounted_payback', investment.discountedPayback]
	])('has the same %s, or never pays back', (quantity, years) => {
		const found = workbook.answer(id, quantity);
		if (years === null) expect(found).toBeNull();
		else expectNear(found ?? NaN, years, YEAR, quantity);
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

describe('what the options teach', () => {
	const npv = (id: string) => workbook.number(id, 'npv');

	it('is that a new rewinder alone never pays', () => {
		expect(npv('new_rewinder')).toBeLessThan(0);
		expect(workbook.answer('new_rewinder', 'payback')).toBeNull();
	});

	it('yet lifts the value of the new line many times over', () => {
		expect(npv('new_line')).toBeGreaterThan(0);
		expect(npv('new_line_and_rewinder')).toBeGreaterThan(3 * npv('new_line'));
	});

	it('so that two options together are not worth the sum of the two', () => {
		const apart = npv('new_line') + npv('new_rewinder');
		expect(npv('new_line_and_rewinder')).toBeGreaterThan(apart + 1_000_000);
	});

	it('is that a thinner wall cools faster: better gauging frees line hours', () => {
		const speed = (id: string) => workbook.number(id, 'line_speed', 'PX15B', 'L3');
		expect(workbook.member('base', 'speed_limited_by', 'PX15B', 'L3')).toBe('cooling');
		// cooling goes with the square of the wall
		const walls = ['base', 'better_gauging'].map((id) =>
			workbook.number(id, 'wall_set_point', 'PX15B')
		);
		expect(speed('better_gauging') / speed('base')).toBeCloseTo((walls[0]! / walls[1]!) ** 2, 9);
	});

	it('and more good metres where lines hold the plant back', () => {
		const made = (id: string) => sum(workbook.row(id, 'good_metres'));
		expect(made('better_gauging')).toBeGreaterThan(made('base'));
	});

	it("is that a line is bought for growth: at today's demand it earns less than the plant without", () => {
		expect(workbook.number('new_line', 'ebit')).toBeLessThan(workbook.number('base', 'ebit'));
		const inYearFive = (id: string) => workbook.row(id, 'ebit_of_plan_year')[5]!;
		expect(inYearFive('new_line')).toBeGreaterThan(inYearFive('base'));
	});

	it('is that capacity times margin promises more than the plant with less the plant without', () => {
		// What one might hope for in year five: every net hour of the line, at its fastest product's
		// contribution, against the gain in EBIT.
		const hours = workbook.number('new_line', 'net_hours', 'L8');
		const perHour = 1000 / workbook.number('new_line', 'hours_per_metre', 'PB15B', 'L8');
		const margin = workbook.number('new_line', 'contribution_per_metre', 'PB15B');
		const gain =
			workbook.row('new_line', 'ebit_of_plan_year')[5]! -
			workbook.row('base', 'ebit_of_plan_year')[5]!;
		expect(hours * perHour * margin).toBeGreaterThan(3 * gain);
	});
});
