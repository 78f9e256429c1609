/**
 * The plan by month of the invented plant against an allocation of the independent model: another statement of the
 * same programme, solved by GLPK 5.0 (GNU Linear Programming Kit), which the app does not use.
 */
import { describe, expect, it } from 'vitest';
import { allocate, valueOf } from './independent/allocation';
import { allocationOf } from './independent/model';
import { products, SCENARIOS, sum, type ScenarioId } from './independent/plant';
import { at, worksOf } from './independent/works';
import { WorkbookFigures } from './workbook-figures';
import { decidedIn, MONTH_NAMES, PLAN_YEARS } from './workbook-plan';

const workbook = new WorkbookFigures('scenarios/marram-coil-works.json');
const YEARS = [0, 2, 5];
const CASES = SCENARIOS.flatMap((id) => YEARS.map((year): [ScenarioId, number] => [id, year]));
/** The model's material prices are rounded to a tenth of a cent: 0.03 % of a price at the most. */
const ROUNDED_PRICES = 3e-4;

describe.each(CASES)('the plan of %s, plan year %i', (id, year) => {
	const best = allocationOf(id, year);
	const planned = decidedIn(workbook, id, year);

	it('keeps every limit of the independent programme', () => {
		for (const { name, terms, kind, most } of best.programme.rows) {
			const value = valueOf(terms, planned);
			const allowed = 1e-3 + 1e-9 * Math.abs(most);
			if (kind === 'balance') expect(Math.abs(value), name).toBeLessThan(allowed);
			else expect(value, name).toBeLessThanOrEqual(most + allowed);
		}
		for (const { name, least, most } of best.programme.bounds) {
			expect(planned[name], name).toBeGreaterThanOrEqual(least - 1e-3);
			expect(planned[name], name).toBeLessThanOrEqual(most + 1e-3);
		}
		for (const [name, metres] of Object.entries(planned))
			expect(metres, name).toBeGreaterThanOrEqual(-1e-9);
	});

	it('earns as much as the best of the independent programme, and says so', () => {
		const earned = valueOf(best.programme.profit, planned);
		expect(earned / best.contribution).toBeGreaterThan(1 - 1e-5);
		expect(earned / best.contribution).toBeLessThan(1 + 1e-9);
		const said = workbook.number(id, 'contribution_of_plan', PLAN_YEARS[year]!);
		expect(Math.abs(said / best.contribution - 1)).toBeLessThan(ROUNDED_PRICES);
	});

	it('leaves the same demand open', () => {
		for (const { id: product } of products) {
			const unmet = workbook.number(id, 'unmet_demand', product, PLAN_YEARS[year]!);
			expect(Math.abs(unmet - at(best.unmet, product)), product).toBeLessThan(1);
		}
	});
});

describe('what is planned in the year', () => {
	it.each(SCENARIOS)(
		'of %s is the months added up, and what is not met the rest of demand',
		(id) => {
			const unmet = sum([...allocationOf(id, 0).unmet.values()]);
			expect(Math.abs(workbook.number(id, 'unmet_metres') * 1e6 - unmet)).toBeLessThan(10);
			const made = sum(products.map((product) => workbook.number(id, 'good_metres', product.id)));
			const demand = sum(products.map(({ demand_m }) => demand_m));
			expect(made + unmet).toBeCloseTo(demand, -1);
		}
	);
});

describe('what an hour more is worth in the base', () => {
	const works = worksOf('base');
	const without = allocationOf('base', 0).contribution;
	// A tenth of one: further on, another limit may be met.
	const HOURS = 0.1;
	const worth = (of: string, month: number) =>
		(allocate(works, 0, { more: { of, month, hours: HOURS } }).contribution - without) / HOURS;

	it.each([
		['L1', 'Jan'],
		['L1', 'Nov'],
		['L2', 'Oct'],
		['L3', 'Sep'],
		['L4', 'Oct'],
		['L5', 'Jan'],
		['L5', 'Oct'],
		['L6', 'Jan'],
		['L6', 'Aug'],
		['L7', 'Oct']
	])('on %s in %s is what the independent programme gains by it', (line, month) => {
		const gained = worth(line, MONTH_NAMES.indexOf(month));
		const said = workbook.number('base', 'hour_value', month, line);
		expect(Math.abs(said - gained), `${said}, by another hour ${gained}`).toBeLessThan(
			0.05 + 0.002 * gained
		);
	});

	it('is nothing at the rewinders in October, which have hours to spare', () => {
		expect(worth('rewind', 9)).toBeCloseTo(0, 6);
		expect(workbook.number('base', 'hour_value_of_stage', 'Oct', 'rewind')).toBeCloseTo(0, 6);
		const planned = workbook.number('base', 'rewinder_hours_planned', 'Oct', 'today');
		expect(planned).toBeLessThan(workbook.number('base', 'rewinder_hours_offered', 'Oct'));
	});

	it('is of each scenario its own: weekends on L5 and L6 leave their hours worth less', () => {
		for (const line of ['L5', 'L6'])
			expect(workbook.number('weekend_crews', 'hour_value', 'Jan', line)).toBeLessThan(
				workbook.number('base', 'hour_value', 'Jan', line) / 2
			);
	});
});
