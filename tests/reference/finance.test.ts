/**
 * Rates of return, present values, payback, annuities and depreciation against published figures (each with
 * its source and standing in published/finance.json) and against the `financial` package, a translation
 * of numpy-financial (https://github.com/lmammino/financial).
 *
 * Annuities and depreciation have no function of their own: they are formulas, tried here as people
 * write them, in `published formulas`.
 */
import fc from 'fast-check';
import * as financial from 'financial';
import { describe, expect, it } from 'vitest';
import { irr, mirr, npv, payback } from '$lib/engine/interpreter/finance';
import { presentValueRates } from '$lib/engine/interpreter/roots';
import { Model } from '$lib/engine/model';
import { NO_ANSWER, OK } from '$lib/engine/state';
import type { Quantity } from '$lib/workbook/schema';
import { cellIn, valueOf } from '../engine/model-shop';
import { workbookOf } from '../engine/plan-builder';
import published from './published/finance.json';

interface Case {
	readonly id: string;
	readonly topic: string;
	readonly inputs: Readonly<Record<string, number | number[]>>;
	readonly expected: Readonly<Record<string, number | number[] | string>>;
	readonly tolerance: number;
	readonly standing: string;
	readonly source: string;
}
const cases = published.cases as readonly unknown[] as readonly Case[];
const about = (topic: string) => cases.filter((case_) => case_.topic === topic);
const numbers = (value: unknown) => value as number[];
const number = (value: unknown) => value as number;

describe('NPV', () => {
	it.each(about('NPV'))('$id ($standing)', ({ inputs, expected, tolerance }) => {
		const [today, ...later] = numbers(inputs['cash_flows_from_t0']);
		const answer = npv(number(inputs['rate']), later, later.length);
		expect(Math.abs(today! + answer.value - number(expected['npv']))).toBeLessThan(tolerance);
	});

	it.each(about('NPV end-of-period convention'))(
		'$id ($standing): the first flow is discounted by one period',
		({ inputs, expected }) => {
			const flows = numbers(inputs['cash_flows_from_t1']);
			expect(npv(number(inputs['rate']), flows, flows.length).value).toBeCloseTo(
				number(expected['npv']),
				12
			);
		}
	);

	it('agrees with the financial package, which starts today', () => {
		const flows = fc.array(fc.integer({ min: -1e6, max: 1e6 }), { minLength: 1, maxLength: 20 });
		fc.assert(
			fc.property(fc.double({ min: -0.5, max: 2, noNaN: true }), flows, (rate, all) => {
				const ours = all[0]! + (all.length > 1 ? npv(rate, all.slice(1), all.length - 1).value : 0);
				const theirs = financial.npv(rate, all);
				const size = all.reduce((sum, x, t) => sum + Math.abs(x) / (1 + rate) ** t, 1);
				expect(Math.abs(ours - theirs) / size).toBeLessThan(1e-12);
			})
		);
	});
});

describe('IRR', () => {
	const unique = about('IRR').filter(({ id, expected }) => 'irr' in expected && id !== 'irr-npf-7');
	it.each(unique)('$id ($standing)', ({ inputs, expected, tolerance }) => {
		const flows = numbers(inputs['cash_flows_from_t0']);
		const answer = irr(flows, flows.length);
		expect(Math.abs(answer.value - number(expected['irr']))).toBeLessThan(tolerance);
	});

	it('irr-npf-7: the published rate is one of two, so there is no answer', () => {
		const { inputs, expected } = cases.find(({ id }) => id === 'irr-npf-7')!;
		const flows = numbers(inputs['cash_flows_from_t0']);
		const rates = presentValueRates(flows, flows.length);
		expect(rates).toHaveLength(2);
		expect(rates[1]).toBeCloseTo(number(expected['irr']), 8);
		expect(rates[0]).toBeLessThan(-0.99);
		expect(irr(flows, flows.length).fault).toBe(NO_ANSWER);
	});

	it('irr-two-roots (from memory): both rates are found, and there is no answer', () => {
		const { inputs, expected } = cases.find(({ id }) => id === 'irr-two-roots')!;
		const flows = numbers(inputs['cash_flows_from_t0']);
		const rates = presentValueRates(flows, flows.length);
		expect(rates[0]).toBeCloseTo(number(expected['irr_low']), 6);
		expect(rates[1]).toBeCloseTo(number(expected['irr_high']), 6);
		expect(irr(flows, flows.length).fault).toBe(NO_ANSWER);
	});

	it.each([
		['all flows of one sign', [39000, 30000, 21000, 37000, 46000]],
		['all flows zero', [0, 0, 0]],
		['a single flow', [-100]],
		['a value above zero at every rate', [1, -1, 1]]
	])('has no answer for %s', (_text, flows) => {
		expect(irr(flows, flows.length).fault).toBe(NO_ANSWER);
	});

	it('is unique where the value only touches zero: -1, 2.2, -1.21 is -(1 - 1.1 x)²', () => {
		expect(irr([-1, 2.2, -1.21], 3).value).toBeCloseTo(0.1, 6);
		expect(irr([-100, 220, -121], 3).value).toBeCloseTo(0.1, 6);
		expect(irr([-300, 660, -363], 3).value).toBeCloseTo(0.1, 6);
		// Beside a rate that the value crosses there are two: (1 - 1.1 x)² (1 - 1.5 x).
		expect(irr([-1000, 3700, -4510, 1815], 4).fault).toBe(NO_ANSWER);
	});

	it('finds a rate of exactly zero, and of exactly 100 %', () => {
		expect(irr([-3, 1, 1, 1], 4).value).toBe(0);
		expect(irr([-1, 2], 2).value).toBe(1);
	});

	it('holds the rate that a single later flow implies, over 360 periods', () => {
		const flows = [-1000, ...new Array<number>(359).fill(0), 1000 * 1.004 ** 360];
		expect(irr(flows, flows.length).value).toBeCloseTo(0.004, 12);
	});

	it('counts all rates of a value built from known ones', () => {
		const rate = fc.integer({ min: -80, max: 300 }).map((percent) => percent / 100);
		fc.assert(
			fc.property(fc.uniqueArray(rate, { minLength: 1, maxLength: 4 }), (rates) => {
				const wanted = rates.slice().sort((a, b) => a - b);
				const isApart = wanted.every((r, i) => i === 0 || r - wanted[i - 1]! > 0.04);
				fc.pre(isApart);
				// Π ((1 + r) x − 1) is zero at each x = 1 / (1 + r) and nowhere else.
				let flows = [1];
				for (const r of wanted) {
					const next = new Array<number>(flows.length + 1).fill(0);
					flows.forEach((flow, t) => {
						next[t]! -= flow;
						next[t + 1]! += flow * (1 + r);
					});
					flows = next;
				}
				const found = presentValueRates(flows, flows.length);
				expect(found).toHaveLength(wanted.length);
				found.forEach((r, i) => expect(r).toBeCloseTo(wanted[i]!, 6));
			})
		);
	});

	it('agrees with the financial package on a usual investment', () => {
		const returns = fc.array(fc.integer({ min: 1, max: 1000 }), { minLength: 2, maxLength: 15 });
		fc.assert(
			fc.property(fc.integer({ min: 100, max: 5000 }), returns, (outlay, flows) => {
				const all = [-outlay, ...flows];
				const theirs = financial.irr(all, 0.1, 1e-12, 1000);
				// Its Newton steps may leave for infinity, or stop at a rate below −100 %: no rate at all.
				fc.pre(Number.isFinite(theirs) && theirs > -1);
				const ours = irr(all, all.length);
				expect(ours.fault).toBe(OK);
				expect(ours.value).toBeCloseTo(theirs, 8);
			})
		);
	});
});

describe('MIRR', () => {
	it.each(about('MIRR'))('$id ($standing)', ({ inputs, expected, tolerance }) => {
		const flows = numbers(inputs['cash_flows_from_t0']);
		const [finance, reinvest] = [inputs['finance_rate'], inputs['reinvest_rate']].map(number);
		const answer = mirr(flows, flows.length, finance!, reinvest!);
		expect(Math.abs(answer.value - number(expected['mirr']))).toBeLessThan(tolerance);
	});

	it('has no answer unless something is paid and something received', () => {
		expect(mirr([1, 2, 3], 3, 0.1, 0.1).fault).toBe(NO_ANSWER);
		expect(mirr([-1, -2, 0], 3, 0.1, 0.1).fault).toBe(NO_ANSWER);
	});

	it('agrees with the financial package', () => {
		const flows = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 2, maxLength: 15 });
		const rate = fc.double({ min: 0, max: 0.5, noNaN: true });
		fc.assert(
			fc.property(flows, rate, rate, (all, finance, reinvest) => {
				fc.pre(all.some((x) => x > 0) && all.some((x) => x < 0));
				expect(mirr(all, all.length, finance, reinvest).value).toBeCloseTo(
					financial.mirr(all, finance, reinvest),
					9
				);
			})
		);
	});
});

describe('payback', () => {
	const years = Array.from({ length: 20 }, (_, year) => year);

	it.each(
		about('Payback and profitability index').filter(
			({ expected }) => 'payback_interpolated' in expected
		)
	)('$id ($standing)', ({ inputs, expected }) => {
		const flows = numbers(inputs['cash_flows_from_t0']);
		expect(payback(flows, years, flows.length).value).toBeCloseTo(
			number(expected['payback_interpolated']),
			9
		);
	});

	it('discounted-payback-derived (recomputed): simple, and of the discounted flows', () => {
		const { inputs, expected } = cases.find(({ id }) => id === 'discounted-payback-derived')!;
		const flows = numbers(inputs['cash_flows_from_t0']);
		const rate = number(inputs['rate']);
		const discounted = flows.map((flow, t) => flow / (1 + rate) ** t);
		expect(payback(flows, years, flows.length).value).toBeCloseTo(
			number(expected['simple_payback']),
			9
		);
		expect(payback(discounted, years, flows.length).value).toBeCloseTo(
			number(expected['discounted_payback_interpolated']),
			6
		);
	});

	it('has no answer where it never comes back, or where nothing is to be paid back', () => {
		const never = numbers(
			cases.find(({ id }) => id === 'payback-never')!.inputs['cash_flows_from_t0']
		);
		expect(payback(never, years, never.length).fault).toBe(NO_ANSWER);
		expect(payback([0, 10, 10], years, 3).fault).toBe(NO_ANSWER);
	});

	it('counts in the numbers of the years, gaps included', () => {
		// −100 in 2026, +40 in 2027, +120 by 2029: half way through the two years before 2029
		expect(payback([-100, 40, 120], [2026, 2027, 2029], 3).value).toBe(2028);
	});

	it('takes the first crossing', () => {
		expect(payback([-100, 200, -300, 500], years, 4).value).toBe(0.5);
	});
});

describe('published formulas, as people write them', () => {
	type Rest = Omit<Quantity, 'name' | 'label'>;
	/** A workbook of years 1, 2, 3 …, with inputs by name and one formula called "answer". */
	const shopOf = (years: number, inputs: Record<string, number>, answer: Rest) =>
		Model.open(
			workbookOf({
				sets: {
					year: {
						members: Array.from({ length: years }, (_, i) => ({ id: `y${i + 1}`, number: i + 1 }))
					}
				},
				quantities: {
					...Object.fromEntries(Object.entries(inputs).map(([name, value]) => [name, { value }])),
					answer
				}
			})
		);
	const one = (inputs: Record<string, number>, formula: string) => {
		const model = shopOf(1, inputs, { formula });
		expect(model.problems).toEqual([]);
		return valueOf(model, 'base', 'answer') as number;
	};
	const caseOf = (id: string) => {
		const { inputs, expected, tolerance } = cases.find((each) => each.id === id)!;
		return { inputs: inputs as Record<string, number>, expected, tolerance };
	};

	it.each(['pmt-npf-mortgage', 'pmt-npf-15000'])('%s: the payment that pays off a loan', (id) => {
		const { inputs, expected, tolerance } = caseOf(id);
		const payment = one(inputs, '-present_value * rate / (1 - (1 + rate)^(-periods))');
		expect(Math.abs(payment - number(expected['payment']))).toBeLessThan(tolerance);
		expect(payment).toBeCloseTo(
			financial.pmt(inputs['rate']!, inputs['periods']!, inputs['present_value']!),
			8
		);
	});

	it('fv-npf: what regular payments grow to', () => {
		const { inputs, expected, tolerance } = caseOf('fv-npf');
		const value = one(
			inputs,
			'-present_value * (1 + rate)^periods - payment * ((1 + rate)^periods - 1) / rate'
		);
		expect(Math.abs(value - number(expected['future_value']))).toBeLessThan(tolerance);
	});

	it('fv-npf-end-begin: paid at the end and at the beginning of each year', () => {
		const { inputs, expected, tolerance } = caseOf('fv-npf-end-begin');
		const end = one(inputs, '-payment * ((1 + rate)^periods - 1) / rate');
		expect(Math.abs(end - number(expected['future_value_end']))).toBeLessThan(tolerance);
		const begin = one(inputs, '-payment * (1 + rate) * ((1 + rate)^periods - 1) / rate');
		expect(Math.abs(begin - number(expected['future_value_begin']))).toBeLessThan(tolerance);
	});

	it('nper-npf: how long a loan lasts', () => {
		const { inputs, expected, tolerance } = caseOf('nper-npf');
		const periods = one(inputs, '-LN(1 + present_value * rate / payment) / LN(1 + rate)');
		expect(Math.abs(periods - number(expected['periods']))).toBeLessThan(tolerance);
	});

	it('rate-npf: the rate at which money grows', () => {
		const { inputs, expected, tolerance } = caseOf('rate-npf');
		const rate = one(inputs, '(-future_value / present_value)^(1 / periods) - 1');
		expect(Math.abs(rate - number(expected['rate']))).toBeLessThan(tolerance);
	});

	it('eac-salvage-15pct: what a machine costs a year, over its life', () => {
		const { inputs, expected, tolerance } = caseOf('eac-salvage-15pct');
		const annuity = '(rate / (1 - (1 + rate)^(-life)))';
		const x = one(inputs, `X_first_cost * ${annuity}`);
		expect(Math.abs(x - number(expected['eac_X']))).toBeLessThan(tolerance);
		const y = one(
			inputs,
			`(Y_first_cost - Y_salvage * (1 + rate)^(-life)) * ${annuity} + Y_annual_cost`
		);
		expect(Math.abs(y - number(expected['eac_Y']))).toBeLessThan(tolerance);
	});

	it('eac-bma (from memory): the machine that costs less over all costs more a year', () => {
		const { inputs, expected, tolerance } = caseOf('eac-bma');
		const rate = number(inputs['rate']);
		for (const machine of ['A', 'B']) {
			const [first, ...later] = numbers(inputs[`machine_${machine}_costs_from_t0`]);
			const present = first! + npv(rate, later, later.length).value;
			expect(Math.abs(present - number(expected[`pv_${machine}`]))).toBeLessThan(tolerance);
			const yearly = one(
				{ rate, present, life: later.length },
				'present * rate / (1 - (1 + rate)^(-life))'
			);
			expect(Math.abs(yearly - number(expected[`eac_${machine}`]))).toBeLessThan(tolerance);
		}
	});

	it('sln-of, sln-10y: a straight line', () => {
		for (const id of ['sln-of', 'sln-10y']) {
			const { inputs, expected } = caseOf(id);
			expect(one(inputs, '(cost - salvage) / life')).toBe(expected['depreciation_per_year']);
		}
	});

	it('syd-of: the sum of the years', () => {
		const { inputs, expected } = caseOf('syd-of');
		const model = shopOf(inputs['life']!, inputs, {
			per: ['year'],
			formula: '(cost - salvage) * (life - ORD(year) + 1) * 2 / (life * (life + 1))'
		});
		expect(perYear(model, inputs['life']!)).toEqual(expected['year_1_to_4']);
	});

	it('ddb-cap: a share of what is left, never below the salvage value', () => {
		const { inputs, expected } = caseOf('ddb-cap');
		const model = shopOf(inputs['life']!, inputs, {
			per: ['year'],
			formula: 'MIN(left * factor / life; left - salvage)'
		});
		const edited = model.apply({
			kind: 'add_quantity',
			sheet: 0,
			index: 0,
			quantity: {
				name: 'left',
				label: 'Left at the start of the year',
				per: ['year'],
				formula: 'IF(ORD(year) = 1; cost; left[year - 1 else 0] - answer[year - 1 else 0])'
			}
		});
		expect(edited.ok).toBe(true);
		expect(model.problems).toEqual([]);
		perYear(model, inputs['life']!).forEach((amount, i) =>
			expect(amount).toBeCloseTo(numbers(expected['year_1_to_5'])[i]!, 6)
		);
	});

	it('discounted-payback-derived, by the functions of the language', () => {
		const { inputs, expected } = caseOf('discounted-payback-derived');
		const flows = numbers(inputs['cash_flows_from_t0']);
		const ids = flows.map((_, i) => `y${i}`);
		const model = Model.open(
			workbookOf({
				sets: { year: { members: ids.map((id, number) => ({ id, number })) } },
				quantities: {
					rate: { value: number(inputs['rate']) },
					cash: {
						per: ['year'],
						value: Object.fromEntries(ids.map((id, i) => [id, flows[i]!]))
					},
					discounted: { per: ['year'], formula: 'cash / (1 + rate)^NUMBER(year)' },
					simple: { formula: 'PAYBACK(cash over year)' },
					later: { formula: 'PAYBACK(discounted over year)' },
					npv: { formula: 'cash[y0] + NPV(rate; cash over year where year > y0)' },
					irr: { formula: 'IRR(cash over year)' }
				}
			})
		);
		expect(model.problems).toEqual([]);
		const value = (name: string) => model.results('base').values[cellIn(model, name)]!;
		expect(value('simple')).toBeCloseTo(number(expected['simple_payback']), 9);
		expect(value('later')).toBeCloseTo(number(expected['discounted_payback_interpolated']), 6);
		expect(value('npv')).toBeCloseTo(number(expected['npv']), 3);
		expect(value('irr')).toBeCloseTo(number(expected['irr']), 7);
	});

	const perYear = (model: Model, years: number) =>
		Array.from(
			{ length: years },
			(_, i) => valueOf(model, 'base', 'answer', `y${i + 1}`) as number
		);
});
