/** Swings, cases, elasticities, the map, and break-even: on a small book whose answers can be said by hand. */
import { describe, expect, it } from 'vitest';
import { runBreakEven, type BreakEvenStudy } from '$lib/studies/break-even';
import { runMap } from '$lib/studies/map';
import { runSensitivity, type SensitivityStudy } from '$lib/studies/sensitivity';
import { OUT_OF_RANGE } from '$lib/engine/state';
import type { Workbook } from '$lib/workbook/schema';
import { book, metre } from './small-book';

function swing(workbook: Workbook, more: Partial<SensitivityStudy>) {
	const result = runSensitivity(workbook, {
		kind: 'sensitivity',
		name: 'swing',
		title: 'Swing',
		quantity: 'margin',
		scenario: 'base',
		...more
	});
	if (!result.ok) throw new Error(result.problem.message);
	return result.value;
}

describe('sensitivity', () => {
	it('swings each input over its own range, the widest reach first', () => {
		const { swings, base, check } = swing(metre(), {
			inputs: [
				{ quantity: 'price', members: ['PX'], mode: 'set', low: 1, high: 4 },
				{ quantity: 'sales', mode: 'add', low: -0.2, high: 0.2 },
				{ quantity: 'price', label: 'All resins', mode: 'scale', low: 0.9, high: 1.1 }
			]
		});
		expect(base.value).toBeCloseTo(0.15, 12);
		expect(swings.map(({ label }) => label)).toEqual(['sales', 'price of PX', 'All resins']);
		expect(swings.map(({ reach }) => Number(reach.toFixed(9)))).toEqual([0.4, 0.15, 0.05]);
		expect(swings[1]!.atLow.value).toBeCloseTo(0.2, 12);
		// 1 % of sales is 0.004, of the margin 2.667 %; PX takes 0.1 of 0.15, all resins 0.25.
		expect(swings.map(({ elasticity }) => Number(elasticity!.toFixed(9)))).toEqual([
			2.666666667, -0.666666667, -1.666666667
		]);
		expect(check!.compared).toBeGreaterThan(0);
	});

	it('measures one per cent more and one per cent less apart, for a mean of them says nothing across a kink', () => {
		const kinked = book([
			{ name: 'hours', value: 100 },
			{ name: 'output', formula: 'IF(hours < 100; 50; 3 * hours - 200)' }
		]);
		const { swings } = swing(kinked, { quantity: 'output', all: { percent: 10 } });
		// 101 h give 103, 99 h give 50, both against 100.
		expect(swings[0]!.elasticity).toBeCloseTo(3, 9);
		expect(swings[0]!.elasticityLess).toBeCloseTo(-50, 9);
	});

	it('swings every number that the result stands on by a percentage, and none besides', () => {
		const { swings, idle } = swing(metre(), { quantity: 'cost', all: { percent: 10 } });
		expect(swings.map(({ label }) => label).sort()).toEqual([
			'mass of PE',
			'mass of PX',
			'price of PE',
			'price of PX'
		]);
		expect(idle).toEqual([]);
		const gain = swing(metre(), { quantity: 'gain', all: { percent: 10 } });
		// In the base nothing is gained on itself, whatever moves.
		expect(gain.swings).toEqual([]);
		expect(gain.idle).toHaveLength(5);
	});

	it('carries an end that has no value, and ranks by the other', () => {
		const { swings } = swing(metre(), {
			inputs: [
				{ quantity: 'mass', members: ['PE'], mode: 'set', low: 0, high: 2 },
				{ quantity: 'sales', mode: 'scale', low: 0.9, high: 1.1 }
			]
		});
		expect(swings.map(({ quantity }) => quantity)).toEqual(['mass', 'sales']);
		expect(swings[0]!.atHigh.state).toBe(OUT_OF_RANGE);
		expect(swings[0]!.reach).toBeCloseTo(0.15, 12);
	});

	it('computes cases that move several inputs at once', () => {
		const { cases } = swing(metre(), {
			inputs: [{ quantity: 'sales', mode: 'scale', low: 0.9, high: 1.1 }],
			cases: [
				{
					label: 'Downside',
					moves: [
						{ quantity: 'sales', mode: 'scale', value: 0.9 },
						{ quantity: 'price', mode: 'scale', value: 1.2 }
					]
				},
				{ label: 'As it is', moves: [] }
			]
		});
		expect(cases.map(({ label, result }) => [label, Number(result.value.toFixed(9))])).toEqual([
			['Downside', 0.06],
			['As it is', 0.15]
		]);
	});

	it('takes hundreds of inputs, in batches that do not show', () => {
		const members = Array.from({ length: 300 }, (_, i) => ({ id: `m${i}` }));
		const value = Object.fromEntries(members.map(({ id }, i) => [id, i + 1]));
		const many = book(
			[
				{ name: 'x', per: ['part'], value },
				{ name: 'margin', formula: 'SUM(x over part)' }
			],
			{ sets: [{ name: 'part', label: 'Part', members }] }
		);
		const { swings } = swing(many, { all: { percent: 10 } });
		expect(swings).toHaveLength(300);
		swings.forEach(({ members: of, reach }, i) => {
			expect(of).toEqual([`m${299 - i}`]);
			expect(reach).toBeCloseTo((300 - i) / 5, 9);
		});
	});

	it('refuses to swing nothing', () => {
		const nothing = runSensitivity(metre(), {
			kind: 'sensitivity',
			name: 's',
			title: 'S',
			quantity: 'margin',
			scenario: 'base'
		});
		expect(nothing).toMatchObject({ ok: false, problem: { code: 'nothing-asked' } });
	});
});

describe('the map', () => {
	it('has a result for each pair of values, row by row', () => {
		const result = runMap(metre(), {
			kind: 'map',
			name: 'map',
			title: 'Map',
			quantity: 'margin',
			scenario: 'base',
			across: { quantity: 'sales', mode: 'set', from: 0.2, to: 0.6, steps: 3 },
			down: { quantity: 'price', mode: 'scale', from: 1, to: 2, steps: 2 }
		});
		if (!result.ok) throw new Error(result.problem.message);
		const { across, down, values, today } = result.value;
		expect([across, down]).toEqual([
			[0.2, 0.4, 0.6],
			[1, 2]
		]);
		expect([...values].map((value) => Number(value.toFixed(9)))).toEqual([
			-0.05, 0.15, 0.35, -0.3, -0.1, 0.1
		]);
		expect(today).toEqual({ across: 0.4, down: 1 });
	});
});

function evenAt(workbook: Workbook, more: Partial<BreakEvenStudy>) {
	const result = runBreakEven(workbook, {
		kind: 'break_even',
		name: 'even',
		title: 'Even',
		quantity: 'y',
		scenario: 'base',
		input: { quantity: 'x', mode: 'set', from: -3, to: 3 },
		target: 0,
		...more
	});
	if (!result.ok) throw new Error(result.problem.message);
	return result.value;
}
const curve = (formula: string) =>
	book([
		{ name: 'x', value: 1 },
		{ name: 'y', formula }
	]);

const X = { quantity: 'x', mode: 'set' } as const;

describe('break-even', () => {
	it('finds the price at which nothing is left', () => {
		const result = evenAt(metre(), {
			quantity: 'margin',
			input: { quantity: 'price', members: ['PE'], label: 'PE', mode: 'set', from: 1, to: 5 }
		});
		expect(result.crossings).toEqual([{ kind: 'crosses', input: 3, to: 3 }]);
		expect(result.sentence).toBe(
			'The result meets the target at PE 3, and nowhere else between 1 and 5.'
		);
		expect(result.today).toMatchObject({ input: 1.5 });
		expect(result.curve).toHaveLength(401);
	});

	it('finds several, and says how many', () => {
		const { crossings, sentence } = evenAt(curve('x^3 - 2 * x + 0.5'), {});
		expect(crossings).toHaveLength(3);
		for (const { input } of crossings) expect(input ** 3 - 2 * input + 0.5).toBeCloseTo(0, 12);
		expect(sentence).toContain('at 3 values of x');
	});

	it('says when there is none', () => {
		const { crossings, sentence } = evenAt(curve('x * x + 1'), {});
		expect(crossings).toEqual([]);
		expect(sentence).toBe('The result does not meet the target for any x between -3 and 3.');
	});

	it('tells a touch, a jump and a stretch from a crossing', () => {
		const touch = evenAt(curve('(x - 0.123)^2'), {});
		expect(touch.crossings).toMatchObject([{ kind: 'touches' }]);
		expect(touch.crossings[0]!.input).toBeCloseTo(0.123, 5);
		// Two straight lines that meet at zero, between two points of the walk; and lines that do not come down to it.
		const kink = evenAt(curve('ABS(x - 0.1111) * IF(x < 0.1111; 3; 1)'), {});
		expect(kink.crossings).toMatchObject([{ kind: 'touches' }]);
		expect(kink.crossings[0]!.input).toBeCloseTo(0.1111, 10);
		expect(evenAt(curve('ABS(x - 0.1111) + 0.02'), {}).crossings).toEqual([]);
		const jump = evenAt(curve('IF(x < 0.777; -1; 1)'), {});
		expect(jump.crossings).toMatchObject([{ kind: 'jumps' }]);
		expect(jump.crossings[0]!.input).toBeCloseTo(0.777, 12);
		expect(jump.sentence).toContain('jumps over it');
		const stretch = evenAt(curve('MAX(0; x)'), {});
		expect(stretch.crossings).toEqual([{ kind: 'stretch', input: -3, to: 0 }]);
	});

	it('says that the result does not depend on the input, whether or not it has gaps', () => {
		const still = evenAt(curve('0 * x + 7.5'), {});
		expect(still.steady).toBe(7.5);
		expect(still.sentence).toBe(
			'The result stays at 7.5 whatever x is between -3 and 3: choose an input that it depends on.'
		);
		expect(evenAt(curve('IF(x < 1; 7.5; SQRT(-1 - x * x))'), {}).steady).toBe(7.5);
		expect(evenAt(curve('7.5 + 0.000001 * x'), {}).steady).toBeNull();
		expect(evenAt(curve('SQRT(-1 - x * x)'), {}).steady).toBeNull();
		// Where it stays on the target, every value of the input meets it.
		expect(evenAt(curve('0 * x'), {}).crossings).toEqual([{ kind: 'stretch', input: -3, to: 3 }]);
	});

	it('walks over gaps, says where they are and why', () => {
		const { crossings, without } = evenAt(curve('SQRT(x) - 1'), {});
		expect(crossings).toHaveLength(1);
		expect(crossings[0]!.input).toBeCloseTo(1, 12);
		// Steps of 0.015 from −3; the last below 0.
		expect(without!.spans).toEqual([{ from: -3, to: expect.closeTo(-0.015, 12) }]);
		expect(without!.reason).toContain('No real number');
		const edges = evenAt(curve('SQRT(1 - x * x)'), { input: { ...X, from: -2, to: 2 } });
		expect(edges.without!.spans).toHaveLength(2);
	});

	it('finds the rate of return of a published project as the rate at which it is worth nothing', () => {
		// numpy-financial, irr([-100, 39, 59, 55, 20]): 0.28095.
		const flows = { y0: -100, y1: 39, y2: 59, y3: 55, y4: 20 };
		const years = Object.keys(flows).map((id, number) => ({ id, number }));
		const project = book(
			[
				{ name: 'x', unit: '%', value: 10 },
				{ name: 'flow', unit: 'EUR', per: ['year'], value: flows },
				{ name: 'y', unit: 'EUR', formula: 'SUM(flow / (1 + x)^(ORD(year) - 1) over year)' }
			],
			{ sets: [{ name: 'year', label: 'Year', members: years }] }
		);
		const { crossings } = evenAt(project, {
			input: { quantity: 'x', mode: 'set', from: 0, to: 100 }
		});
		expect(crossings).toHaveLength(1);
		expect(crossings[0]!.input).toBeCloseTo(28.095, 3);
	});

	it('refuses a range that ends before it starts', () => {
		const result = runBreakEven(metre(), {
			kind: 'break_even',
			name: 'e',
			title: 'E',
			quantity: 'margin',
			scenario: 'base',
			input: { quantity: 'sales', mode: 'set', from: 2, to: 1 },
			target: 0
		});
		expect(result).toMatchObject({ ok: false, problem: { code: 'bad-range' } });
	});
});
