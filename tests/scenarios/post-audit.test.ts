/** The Post-audit sheet: what a decided case promised, what was booked, and what lies between, adding up. */
import { npv as npvOf } from 'financial';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import { lookOver } from '$lib/exchange/table/look';
import { NO_CHOICES } from '$lib/exchange/table/new-members';
import { proposeMapping } from '$lib/exchange/table/propose';
import { readTables } from '$lib/exchange/table/read-file';
import type { Quantity, Values } from '$lib/workbook/schema';
import { apply, enter, openShipped, read, type Entry } from '../reference/shipped';

const CASE = 'Better gauging 2026';
const COPY = 'decided_better_gauging';
const CAUSES = ['outlay', 'volume', 'speed', 'margin', 'people', 'energy', 'other', 'timing'];
const YEARS = Array.from({ length: 13 }, (_, i) => `y${i}`);
const MONTHS = Array.from({ length: 12 }, (_, i) => {
	const at = 2026 * 12 + 10 + i;
	return `${Math.floor(at / 12)}-${String((at % 12) + 1).padStart(2, '0')}`;
});

const step = (model: Model, cause: string) => read(model, 'audit_step', `cause_${cause}`, CASE);
const steps = (model: Model) => CAUSES.map((cause) => step(model, cause));
const moved = (model: Model) => CAUSES.filter((cause) => Math.abs(step(model, cause)) > 1e-6);
const of = (model: Model, name: string, ...at: string[]) => read(model, name, CASE, ...at);
const cautions = (model: Model) => model.checks('base').cautions.map(({ place }) => place.quantity);

/**
 * The sheet by itself, with another promise: no tax, no working capital, what is given by year. Its formulas are those of
 * the shipped workbook; what they read of the frozen copy is entered.
 */
function promising(
	flows: readonly number[],
	rate: number,
	more: { readonly metres?: number; readonly hours?: number } = {}
): Model {
	const { sets, sheets, scenarios, ...rest } = openShipped('marram').workbook;
	const byYear = (value: (at: number) => number) =>
		Object.fromEntries(YEARS.map((id, at) => [id, value(at)]));
	const inside = (at: number) => at > 0 && flows[at] !== undefined;
	const gains = byYear((at) => (at === 0 ? 0 : (flows[at] ?? 0)));
	const promises: Record<string, unknown> = {
		promised_cash: { cash_outlay: byYear((at) => (at === 0 ? flows[0]! : 0)), cash_gain: gains },
		promised_line: { line_contribution: gains },
		promised_metres: byYear((at) => (inside(at) ? (more.metres ?? 0) : 0)),
		promised_hours: byYear((at) => (inside(at) ? (more.hours ?? 0) : 0)),
		...{ promised_start: 0, promised_rate: rate, promised_tax: 0 },
		promised_npv: npvOf(rate / 100, [...flows])
	};
	const full: Record<string, readonly string[]> = {
		promised_cash: ['outlay', 'gain', 'tax', 'shield', 'capital', 'residual'].map(
			(one) => `cash_${one}`
		),
		promised_line: ['contribution', 'people', 'energy', 'other'].map((one) => `line_${one}`)
	};
	const none = byYear(() => 0);
	const quantities = sheets
		.find(({ title }) => title === 'Post-audit')!
		.quantities.filter(
			({ name }) => !/^case_(line|metres|hours|factor|lines_close)$|plan_year$/.test(name)
		)
		.map(({ formula, value: _value, ...one }): Quantity => {
			if (one.name === 'decided_in') return { ...one, value: { [CASE]: '2026-10' } };
			const promise = promises[one.name] as Values | undefined;
			if (promise === undefined) return { ...one, ...(formula !== undefined && { formula }) };
			const parts = full[one.name];
			const whole = parts
				? Object.fromEntries(
						parts.map((id) => [id, (promise as Record<string, Values>)[id] ?? none])
					)
				: promise;
			return { ...one, value: { [CASE]: whole } };
		});
	const used = ['decided_case', 'audit_month', 'audit_line', 'audit_cause', 'year', 'cash_part'];
	return Model.open({
		...{ format: rest.format, version: rest.version, title: 'Post-audit' },
		sets: sets.filter(({ name }) => used.includes(name)).map(({ own: _own, ...set }) => set),
		sheets: [{ title: 'Post-audit', quantities }],
		scenarios: [scenarios[0]!]
	});
}

const paid = (amount: number): Entry[] => [
	['booked_outlay', [CASE, '2026-10'], amount],
	['outlay_finished', [CASE], true]
];
const booked = (amount: number, months: readonly string[] = MONTHS): Entry[] =>
	months.map((month) => ['booked_line', [CASE, 'line_contribution', month], amount]);

describe('the case as shipped', () => {
	const model = openShipped('marram');

	it('is invented, frozen, and promises what the scenario came to', () => {
		const copy = model.workbook.frozen!.find(({ id }) => id === COPY)!;
		expect([copy.note, copy.by]).toEqual([
			expect.stringContaining('Invented'),
			expect.stringContaining('invented')
		]);
		const then = copy.quantities.find(({ name }) => name === 'npv')!.value;
		expect(of(model, 'promised_npv')).toBe(then);
		const sum = YEARS.reduce(
			(all, year, at) =>
				all +
				['outlay', 'gain', 'tax', 'shield', 'capital', 'residual'].reduce(
					(one, part) => one + of(model, 'promised_cash', `cash_${part}`, year),
					0
				) /
					1.09 ** at,
			0
		);
		expect(sum).toBeCloseTo(then as number, 4);
	});

	it('adds up from the promise to what is likely, by what came so far and the rest as planned', () => {
		const likely = of(model, 'likely_npv');
		const sum = steps(model).reduce((all, one) => all + one, 0);
		expect(of(model, 'promised_npv') + sum).toBeCloseTo(likely, 4);
		expect(of(model, 'npv_to_date') + of(model, 'npv_of_rest')).toBeCloseTo(likely, 6);
		expect(of(model, 'npv_to_date')).toBeLessThan(0);
		expect(moved(model)).toEqual(CAUSES.filter((cause) => cause !== 'speed'));
		// The package `financial`, a translation of numpy-financial, on the cash as it now looks.
		const cash = YEARS.map((year) => of(model, 'likely_cash', year));
		expect(npvOf(0.09, cash)).toBeCloseTo(likely, 4);
	});

	it('stands when the base moves, and so does what was promised', () => {
		const edited = openShipped('marram');
		const before = [of(edited, 'promised_npv'), of(edited, 'likely_npv'), ...steps(edited)];
		enter(
			edited,
			['wacc', [], 14],
			['outlay_amount', ['gauging_heads'], 1],
			['list_price', ['PX15B'], 9]
		);
		expect([of(edited, 'promised_npv'), of(edited, 'likely_npv'), ...steps(edited)]).toEqual(
			before
		);
	});
});

describe('against published examples (each with its source in reference/published/finance.json)', () => {
	const cases = (
		JSON.parse(readFileSync('tests/reference/published/finance.json', 'utf8')) as {
			cases: { id: string; inputs: Record<string, never>; expected: Record<string, number> }[];
		}
	).cases;
	const caseOf = (id: string) => cases.find((one) => one.id === id)!;

	it('promises the net present value of npv-bmm-A-11 and pays back as payback-bmm-A', () => {
		const { inputs, expected } = caseOf('npv-bmm-A-11');
		const flows = inputs['cash_flows_from_t0'] as unknown as number[];
		const rate = Number(inputs['rate']) * 100;
		const model = promising(flows, rate);
		const npv = Object.values(expected)[0]!;
		// The source rounds its factors; the package does not.
		expect(of(model, 'likely_npv')).toBeCloseTo(npvOf(rate / 100, flows), 6);
		expect(Math.abs(of(model, 'likely_npv') - npv)).toBeLessThan(1);
		expect(of(model, 'likely_payback')).toBeCloseTo(
			caseOf('payback-bmm-A').expected['payback_interpolated']!,
			9
		);
		expect(moved(model)).toEqual([]);
	});
});

describe('what is booked', () => {
	const flows = [-1200, 600, 600, 600];
	const rate = 10;
	const factor = (year: number) => 1 / 1.1 ** year;

	it('as promised moves nothing, whole years and single months alike', () => {
		const model = promising(flows, rate);
		enter(model, ...paid(1200), ...booked(50, MONTHS.slice(0, 5)));
		expect(moved(model)).toEqual([]);
		expect(of(model, 'npv_to_date')).toBeCloseTo(-1200 + 250 * factor(1), 9);
		enter(model, ...booked(50));
		expect(of(model, 'likely_npv')).toBeCloseTo(of(model, 'promised_npv'), 9);
		expect(of(model, 'likely_payback')).toBeCloseTo(2, 9);
	});

	it('more outlay, and less, is of the investment alone; the rest is expected until all is paid', () => {
		const model = promising(flows, rate);
		enter(model, ['booked_outlay', [CASE, '2026-10'], 1000]);
		expect(moved(model)).toEqual([]);
		enter(model, ...paid(1300));
		expect(moved(model)).toEqual(['outlay']);
		expect(step(model, 'outlay')).toBeCloseTo(-100, 9);
		enter(model, ['booked_outlay', [CASE, '2026-10'], 1000]);
		expect(step(model, 'outlay')).toBeCloseTo(200, 9);
	});

	it('an outlay that comes later is of timing alone', () => {
		const model = promising(flows, rate);
		enter(model, ['booked_outlay', [CASE, '2027-10'], 1200], ['outlay_finished', [CASE], true]);
		expect(moved(model)).toEqual(['timing']);
		// Twelve months later is a year later.
		expect(step(model, 'timing')).toBeCloseTo(1200 * (1 - factor(1)), 9);
	});

	it('a gain that begins later is of timing alone: all of it moves by as many months', () => {
		const model = promising(flows, rate);
		enter(model, ['begun_in', [CASE], '2027-11']);
		const later = [1, 2, 3].reduce((sum, year) => sum + 600 * (factor(year + 1) - factor(year)), 0);
		expect(moved(model)).toEqual(['timing']);
		expect(step(model, 'timing')).toBeCloseTo(later, 9);
		enter(model, ['begun_in', [CASE], '2027-05']);
		expect(step(model, 'timing')).toBeCloseTo(later / 2, 9);
		expect(of(model, 'months_in_operation', 'y1')).toBe(6);
	});

	it('metres, speed and margin each move their own', () => {
		const model = promising(flows, rate, { metres: 12_000, hours: 120 });
		enter(model, ...paid(1200));
		const month = MONTHS[0]!;
		const at = [CASE, month];
		enter(
			model,
			...booked(50, [month]),
			['case_metres_booked', at, 1000],
			['case_hours_booked', at, 10]
		);
		expect(moved(model)).toEqual([]);
		// Half the hours at the promised speed and margin.
		enter(
			model,
			...booked(25, [month]),
			['case_metres_booked', at, 500],
			['case_hours_booked', at, 5]
		);
		expect(moved(model)).toEqual(['volume']);
		expect(step(model, 'volume')).toBeCloseTo(-25 * factor(1), 9);
		// All hours at half the speed.
		enter(model, ['case_hours_booked', at, 10]);
		expect(moved(model)).toEqual(['speed']);
		// All metres at half the margin.
		enter(model, ['case_metres_booked', at, 1000]);
		expect(moved(model)).toEqual(['margin']);
		expect(step(model, 'margin')).toBeCloseTo(-25 * factor(1), 9);
		enter(
			model,
			['booked_line', [CASE, 'line_people', month], -7],
			['booked_line', [CASE, 'line_energy', month], 3],
			['booked_line', [CASE, 'line_other', month], -1]
		);
		expect(['people', 'energy', 'other'].map((cause) => step(model, cause) * 1.1)).toEqual([
			expect.closeTo(-7, 9),
			expect.closeTo(3, 9),
			expect.closeTo(-1, 9)
		]);
		expect(of(model, 'audit_closes')).toBeCloseTo(0, 9);
	});

	it('without its metres or hours stands as promised, or says it all by volume', () => {
		const model = promising(flows, rate, { metres: 12_000, hours: 120 });
		enter(model, ...paid(1200));
		const month = MONTHS[0]!;
		enter(model, ...booked(40, [month]));
		expect(moved(model)).toEqual(['margin']);
		enter(model, ['case_metres_booked', [CASE, month], 800]);
		expect(moved(model)).toEqual(['volume']);
	});

	it('with a month left out takes the plan for it, and says so', () => {
		const model = promising(flows, rate);
		enter(model, ...paid(1200), ...booked(50, [MONTHS[0]!, MONTHS[2]!]));
		expect(read(model, 'month_is_missing', CASE, MONTHS[1]!)).toBe(1);
		expect(read(model, 'month_is_missing', CASE, MONTHS[3]!)).toBe(0);
		expect(cautions(model)).toContain('month_is_missing');
		expect(moved(model)).toEqual([]);
	});
});

describe('a file of a month', () => {
	it('comes in like any table: case, month, and figures by their labels', async () => {
		const text = [
			'Decided case;Month of a decided case;Investment paid;Metres that the case brought',
			'Better gauging 2026;2027-04;1.500,00;95.000,0',
			'Better gauging 2026;2027-05;;99.000,5'
		].join('\n');
		const read = await readTables(new TextEncoder().encode(text), 'april.csv');
		const grid = read.ok ? read.sheets[0]!.grid : null;
		if (!grid?.ok) throw new Error('no table');
		const model = openShipped('marram');
		const mapping = proposeMapping(grid.grid, model.workbook);
		const looked = lookOver(grid.grid, mapping, NO_CHOICES, model.layout);
		if (!looked.ok) throw new Error(looked.message);
		const found = looked.look.changes.map(({ quantity, at, after }) => [quantity.name, at, after]);
		expect(found).toEqual([
			['booked_outlay', [CASE, '2027-04'], 1500],
			['case_metres_booked', [CASE, '2027-04'], 95_000],
			['case_metres_booked', [CASE, '2027-05'], 99_000.5]
		]);
	});
});

describe('where nothing is decided', () => {
	it('is nothing amiss', () => {
		const model = openShipped('marram');
		apply(model, { kind: 'remove_member', set: 'decided_case', id: CASE, also: true });
		expect(model.problems).toEqual([]);
		expect(model.checks('base').fail).toEqual([]);
		expect(model.layout.byName.get('likely_npv')!.count).toBe(0);
	});
});
