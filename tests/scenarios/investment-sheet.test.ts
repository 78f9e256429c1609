/** Options on the Investment sheet: what is spent, starts later, costs more, or becomes the base. */
import { MONTH_NAMES } from './workbook-plan';
import { describe, expect, it } from 'vitest';
import { apply, enter, openShipped, read } from '../reference/shipped';

const LINE = { scenario: 'new_line' };
const BOTH = { scenario: 'new_line_and_rewinder' };

describe('an outlay', () => {
	it('grows by the contingency of its option', () => {
		const model = openShipped('marram');
		enter(model, ['contingency', ['new_line'], 10]);
		expect(read(model, 'outlay', LINE)).toBeCloseTo(1.1 * 1_618_000, 6);
		expect(read(model, 'outlay', { scenario: 'new_rewinder' })).toBe(381_000);
	});

	it('that is spent already is charged to no case', () => {
		const model = openShipped('marram');
		enter(model, ['outlay_spent', ['new_line'], true]);
		expect(read(model, 'outlay', LINE)).toBe(0);
		expect(read(model, 'outlay', BOTH)).toBe(381_000);
		expect(read(model, 'project_life', BOTH)).toBe(10);
	});

	it('of a scenario made the base is charged to no other', () => {
		const model = openShipped('marram');
		apply(model, { kind: 'promote_scenario', id: 'new_line' });
		expect(read(model, 'outlay')).toBe(0);
		expect(read(model, 'outlay', { scenario: 'better_gauging' })).toBe(389_000);
		// The line stands in both, so beside it the rewinder alone is the case.
		expect(read(model, 'outlay', BOTH)).toBe(381_000);
	});
});

describe('what is put in during the first year', () => {
	const OWN = { scenario: 'own' };
	function putIn(from: string) {
		const model = openShipped('marram');
		apply(model, {
			...{ kind: 'add_scenario', index: 9 },
			scenario: { id: 'own', title: 'Own', parent: 'base', changes: [] }
		});
		// A gain that no plan moves: a lower demand charge in the scenario alone.
		apply(model, {
			...{ kind: 'set_inputs', scenario: 'own' },
			entries: [
				{ quantity: 'other_outlay', at: [], value: 40_000 },
				{ quantity: 'other_first_month', at: [], value: from },
				{ quantity: 'demand_charge', at: [], value: 7 }
			]
		});
		return model;
	}

	it('gains in the rest of that year, by its working days, and in whole years after it', () => {
		const [whole, half] = [putIn('Jan'), putIn('Jul')];
		const days = (model: typeof whole, months: readonly string[]) =>
			months.reduce((sum, month) => sum + read(model, 'weekdays_of_month', month, OWN), 0);
		const share = days(half, MONTH_NAMES.slice(6)) / days(half, MONTH_NAMES);
		expect(share).toBeGreaterThan(0.45);
		expect(share).toBeLessThan(0.55);
		expect(read(whole, 'first_year_share', OWN)).toBe(100);
		expect(read(half, 'first_year_share', OWN)).toBeCloseTo(100 * share, 10);
		const gain = (model: typeof whole, year: string) => read(model, 'nominal_gain', year, OWN);
		expect(gain(half, 'y1')).toBeCloseTo(share * gain(whole, 'y1'), 6);
		for (const year of ['y2', 'y5']) expect(gain(half, year)).toBe(gain(whole, year));
		expect(read(half, 'first_year_metres', OWN)).toBeCloseTo(
			share * (read(half, 'total_good_metres', OWN) - read(half, 'total_good_metres')),
			10
		);
		// Lines that the reference has run all of it.
		expect(read(half, 'first_year_hours', 'L2', OWN)).toBeCloseTo(
			read(half, 'net_hours', 'L2', OWN),
			6
		);
	});

	it('does not touch a case of options, which have their own ramp-up', () => {
		const model = openShipped('marram');
		enter(model, ['other_first_month', [], 'Jul']);
		expect(read(model, 'first_year_share', LINE)).toBe(100);
	});
});

describe('a later start', () => {
	it('moves outlay, gains and the return of working capital, and pays the prices of its year', () => {
		const model = openShipped('marram');
		const now = read(model, 'working_capital', LINE);
		enter(model, ['start_of_option', ['new_line'], 2], ['life_of_option', ['new_line'], 10]);
		expect(read(model, 'cash_of_part', 'cash_outlay', 'y0', LINE)).toBe(0);
		const outlay = read(model, 'cash_of_part', 'cash_outlay', 'y2', LINE);
		expect(outlay).toBeCloseTo(-1_618_000 * 1.02 ** 2, 6);
		expect(read(model, 'cash_of_part', 'cash_gain', 'y2', LINE)).toBe(0);
		expect(read(model, 'cash_of_part', 'cash_capital', 'y2', LINE)).toBeCloseTo(-now, 6);
		expect(read(model, 'cash_of_part', 'cash_capital', 'y12', LINE)).toBeCloseTo(now, 6);
		// Its first year of ramp-up is year 3.
		expect(read(model, 'ramp_in_use', 'y3', LINE)).toBe(55);
		expect(read(model, 'ramp_in_use', 'y4', LINE)).toBe(95);
		expect(read(model, 'case_beyond_years', LINE)).toBe(0);
	});

	it('that runs past the last year is cautioned', () => {
		const model = openShipped('marram');
		enter(model, ['start_of_option', ['new_line'], 1]);
		expect(read(model, 'case_beyond_years', LINE)).toBe(1);
	});

	it('is valued by itself where it is measured against the stage before', () => {
		const model = openShipped('marram');
		apply(model, {
			kind: 'add_scenario',
			index: 7,
			scenario: {
				id: 'second_stage',
				title: 'Rewinder two years after the line',
				parent: 'new_line_and_rewinder',
				against: 'new_line',
				changes: [{ quantity: 'start_of_option', value: { new_rewinder: 2 } }]
			}
		});
		const stage = { scenario: 'second_stage' };
		expect(read(model, 'outlay', stage)).toBe(381_000);
		expect(read(model, 'outlay_of_year', 'y2', stage)).toBeCloseTo(381_000 * 1.02 ** 2, 6);
		// Without a plan of its own it stands on that of the scenario it is built on.
		const earned = ['new_line_and_rewinder', 'new_line'].map((scenario) =>
			read(model, 'earned_before_depreciation', 'y5', { scenario })
		);
		expect(read(model, 'gain', 'y5', stage)).toBeCloseTo(earned[0]! - earned[1]!, 6);
	});
});

it('the parts of the cash flow are worth what the case is, in every scenario', () => {
	const model = openShipped('marram');
	const parts = ['outlay', 'gain', 'tax', 'shield', 'capital', 'residual'];
	for (const { id } of model.workbook.scenarios.slice(1)) {
		const scenario = { scenario: id };
		const sum = parts.reduce(
			(so, part) => so + read(model, 'npv_of_part', `cash_${part}`, scenario),
			0
		);
		expect(sum, id).toBeCloseTo(read(model, 'npv', scenario), 4);
		expect(read(model, 'npv_real', scenario), id).toBeCloseTo(read(model, 'npv', scenario), 4);
	}
});
