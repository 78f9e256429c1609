/**
 * The Investment sheet of the shipped workbook against published cases (each with its source and standing
 * in published/finance.json): outlay, yearly gains, life and rates entered, tax and working capital left out.
 */
import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import { apply, enter, openShipped, read, type Entry } from './shipped';
import published from './published/finance.json';

interface Case {
	readonly id: string;
	readonly inputs: Readonly<Record<string, number | number[]>>;
	readonly expected: Readonly<Record<string, number | number[] | string>>;
}
const cases = published.cases as readonly unknown[] as readonly Case[];

function caseOf(id: string): Case {
	const found = cases.find((case_) => case_.id === id);
	if (!found) throw new Error(`no case ${id}`);
	return found;
}

interface Rates {
	readonly rate: number;
	readonly inflation?: number;
	readonly reinvested?: number;
}

/** The shipped sheet with yearly gains that are entered. */
const sheet = (() => {
	const model = openShipped('marram');
	const quantity = { name: 'gain', label: 'Gain', unit: 'EUR/year', per: ['year'] };
	apply(model, { kind: 'replace_quantity', name: 'gain', quantity });
	return { workbook: model.workbook, plan: model.plan };
})();

/** The same with these yearly flows, the first of them the outlay of today. */
function sheetWith(flows: readonly number[], { rate, inflation = 0, reinvested = rate }: Rates) {
	const [outlay = 0, ...gains] = flows;
	const model = Model.open(sheet.workbook, sheet.plan);
	enter(
		model,
		...Array.from({ length: 13 }, (_, i): Entry => ['gain', [`y${i}`], gains[i - 1] ?? 0]),
		['other_outlay', [], -outlay],
		['life_without_option', [], gains.length],
		['wacc', [], 100 * rate],
		['reinvestment_rate', [], 100 * reinvested],
		['inflation', [], 100 * inflation],
		['tax_rate', [], 0],
		['working_capital_share', [], 0]
	);
	return model;
}

describe('the shipped sheet', () => {
	it('comes to the net present value, index, rate and payback of npv-bmm-A-11 (found)', () => {
		const { inputs, expected } = caseOf('npv-bmm-A-11');
		const model = sheetWith(inputs['cash_flows_from_t0'] as number[], {
			rate: inputs['rate'] as number
		});
		expect(read(model, 'npv')).toBeCloseTo(expected['npv'] as number, 5);
		const back = caseOf('payback-bmm-A').expected;
		expect(read(model, 'payback')).toBeCloseTo(back['payback_interpolated'] as number, 9);
		// The source's index is the value over the outlay; this sheet's counts the euro laid out as well.
		const index = back['profitability_index_npv_over_investment'] as number;
		expect(read(model, 'profitability_index')).toBeCloseTo(1 + index, 5);
		const rate = caseOf('irr-bmm-A').expected['irr'] as number;
		expect(read(model, 'irr')).toBeCloseTo(100 * rate, 6);
	});

	it('comes to discounted payback and rate of discounted-payback-derived (recomputed)', () => {
		const { inputs, expected } = caseOf('discounted-payback-derived');
		const model = sheetWith(inputs['cash_flows_from_t0'] as number[], {
			rate: inputs['rate'] as number
		});
		expect(read(model, 'payback')).toBeCloseTo(expected['simple_payback'] as number, 6);
		const later = expected['discounted_payback_interpolated'] as number;
		expect(read(model, 'discounted_payback')).toBeCloseTo(later, 6);
		expect(read(model, 'npv')).toBeCloseTo(expected['npv'] as number, 3);
	});

	it.each([
		['machine_A_costs_from_t0', 'pv_A', 'eac_A'],
		['machine_B_costs_from_t0', 'pv_B', 'eac_B']
	])('spreads %s of eac-bma (from memory) evenly over its own life', (costs, present, yearly) => {
		const { inputs, expected } = caseOf('eac-bma');
		const flows = (inputs[costs] as number[]).map((cost) => -cost);
		const model = sheetWith(flows, { rate: inputs['rate'] as number });
		expect(read(model, 'npv')).toBeCloseTo(-(expected[present] as number), 4);
		expect(read(model, 'equivalent_annual_value')).toBeCloseTo(-(expected[yearly] as number), 4);
	});

	it('finances and reinvests at the two rates of mirr-npf-2 (found)', () => {
		const { inputs, expected } = caseOf('mirr-npf-2');
		const model = sheetWith(inputs['cash_flows_from_t0'] as number[], {
			rate: inputs['finance_rate'] as number,
			reinvested: inputs['reinvest_rate'] as number
		});
		expect(read(model, 'mirr')).toBeCloseTo(100 * (expected['mirr'] as number), 7);
	});

	it('spreads a value evenly over years of equal money: 8 % in prices that rise by 3 %', () => {
		// (1 + n) = (1 + r)(1 + i): a sum that grows with prices is worth the same in each year at the real rate.
		const rate = 0.08;
		const model = sheetWith([-1000, 500, 500, 500], { rate, inflation: 0.03 });
		const yearly = read(model, 'equivalent_annual_value');
		const worth = [1, 2, 3].reduce((sum, t) => sum + (yearly * 1.03 ** t) / (1 + rate) ** t, 0);
		expect(worth).toBeCloseTo(read(model, 'npv'), 6);
	});

	it('spreads it without dividing by nothing, where money costs nothing or just what prices rise', () => {
		const free = sheetWith([-1000, 500, 500, 500], { rate: 0 });
		expect(read(free, 'equivalent_annual_value')).toBeCloseTo(500 / 3, 9);
		const level = sheetWith([-1000, 500, 500, 500], { rate: 0.03, inflation: 0.03 });
		expect(read(level, 'equivalent_annual_value')).toBeCloseTo(read(level, 'npv') / 3, 9);
	});

	it('takes the real rate from the nominal one by the Fisher relation: 10 % at 3 % is 6.796117 %', () => {
		// (1 + n) = (1 + r)(1 + i), recomputed; the relation is I. Fisher's (from memory).
		const model = sheetWith([-1000, 500, 500, 500], { rate: 0.1, inflation: 0.03 });
		expect(read(model, 'real_rate')).toBeCloseTo(6.796117, 6);
		// Gains of the base year are real: 500 a year at the real rate.
		const real = [1, 2, 3].reduce((sum, t) => sum + 500 / 1.0679611650485437 ** t, -1000);
		expect(read(model, 'npv')).toBeCloseTo(real, 6);
		expect(read(model, 'npv_real')).toBeCloseTo(real, 6);
	});
});

describe('tax and working capital, by hand', () => {
	/** 1,000 laid out, 400 a year for four years, at 10 %. */
	const taxed = () => {
		const model = sheetWith([-1000, 400, 400, 400, 400], { rate: 0.1 });
		enter(model, ['tax_rate', [], 30]);
		return model;
	};
	const annuity = (1 - 1.1 ** -4) / 0.1;

	it('give a shield of tax rate times depreciation each year', () => {
		const model = taxed();
		// 1,000 over four years is 250 a year, which saves 75 of tax.
		expect(read(model, 'cash_of_part', 'cash_shield', 'y1')).toBeCloseTo(75, 9);
		expect(read(model, 'cash_of_part', 'cash_shield', 'y5')).toBe(0);
		expect(read(model, 'npv_of_part', 'cash_shield')).toBeCloseTo(75 * annuity, 9);
		expect(read(model, 'npv_of_part', 'cash_tax')).toBeCloseTo(-120 * annuity, 9);
		expect(read(model, 'npv')).toBeCloseTo(-1000 + (400 - 120 + 75) * annuity, 9);
	});

	it('count in the index, and come back within the case', () => {
		const model = taxed();
		// An outlay of 1,000 and 250 of working capital, which comes back after four years.
		enter(model, ['working_capital_share', [], 10]);
		const capital = read(model, 'working_capital');
		const put = 1000 + capital;
		expect(read(model, 'money_put_in')).toBeCloseTo(put, 9);
		expect(read(model, 'profitability_index')).toBeCloseTo(1 + read(model, 'npv') / put, 12);
	});

	it('say how far the outlay may run over before nothing is left', () => {
		const model = taxed();
		// Each euro more costs a euro and saves 0.075 of tax in each of four years.
		const borne = read(model, 'npv') / (1000 - 75 * annuity);
		expect(read(model, 'contingency_borne')).toBeCloseTo(100 * borne, 9);
		enter(model, ['other_outlay', [], 1000 * (1 + borne)]);
		expect(read(model, 'npv')).toBeCloseTo(0, 6);
	});
});

it('an unmodified copy keeps a case of no outlay without an index', () => {
	const model: Model = openShipped('marram');
	expect(() => read(model, 'profitability_index')).toThrow(/has state/);
});
