import { describe, expect, it } from 'vitest';
import { DIVIDES_BY_ZERO } from '$lib/engine/state';
import { amounts, buildUpOf, columnDecimals } from '$lib/ui/pictures/build-up/build-up';
import {
	barFrame,
	barRange,
	barSets,
	gapOf,
	gapText,
	rowAt
} from '$lib/ui/pictures/build-up/build-up-bars';
import { tickText } from '$lib/ui/pictures/build-up/build-up-chart';
import {
	buildUpLine,
	buildUpSummary,
	buildUpTable,
	buildUpTitle
} from '$lib/ui/pictures/build-up/build-up-words';
import { takeUp } from '$lib/ui/figure/chart-parts';
import { handOf, sourceOf } from '$lib/ui/figure/open';
import { buildUpPicture, openWith, pipes, pipeValues, type Written } from './hand';

function buildUpWith(gauged: Written | null = null, base: Written = pipeValues) {
	const open = openWith(
		pipes,
		{ base, ...(gauged ? { gauged: { ...base, ...gauged } } : {}) },
		gauged ? 'gauged' : 'base'
	);
	return buildUpOf({ picture: buildUpPicture, base: sourceOf(open, 'base'), hand: handOf(open) });
}
const parts = pipeValues['part_cost'] as Record<string, number>;

describe('the finding', () => {
	it('gives material its span over the products', () => {
		// 0.12 of 0.20 is 60 %, 0.60 of 0.80 is 75 %.
		expect(buildUpTitle(buildUpWith(), 'en')).toBe(
			'Material is 60 to 75\u00a0% of the factory cost per metre'
		);
	});
	it('leaves out a product without a value', () => {
		const broken = { ...pipeValues, total: { A15: { state: DIVIDES_BY_ZERO }, B30: 0.8 } };
		expect(buildUpTitle(buildUpWith(null, broken), 'en')).toBe(
			'Material is 75\u00a0% of the factory cost per metre'
		);
	});
	it('gives the largest part where nothing is material', () => {
		const open = openWith(pipes, { base: pipeValues });
		const picture = { ...buildUpPicture, roles: { people: 'people' as const } };
		const buildUp = buildUpOf({ picture, base: sourceOf(open, 'base'), hand: null });
		expect(buildUpTitle(buildUp, 'en')).toMatch(/^Resin: /);
	});
	it('says whose error keeps it from a finding', () => {
		const total = { A15: { state: DIVIDES_BY_ZERO }, B30: { state: DIVIDES_BY_ZERO } };
		expect(buildUpTitle(buildUpWith(null, { ...pipeValues, total }), 'en')).toBe(
			'No value of the factory cost per metre: error of factory cost per metre itself'
		);
	});
	it('says what the scenario in hand does to the totals', () => {
		const line = buildUpLine(buildUpWith({ total: { A15: 0.19, B30: 0.784 } }), 'en');
		// −0.01 of 0.20 is −5 %, −0.016 of 0.80 is −2 %.
		expect(line).toBe(
			'Factory cost per metre by product, EUR/m: base, and Better gauging below it; totals change by −5.0 to −2.0\u00a0%'
		);
	});
	it('says so when no total differs', () => {
		expect(buildUpLine(buildUpWith({}), 'en')).toMatch(/no total differs$/);
	});
});

describe('the bars', () => {
	const wide = barFrame(true, true);
	it('stand on the rows of the table', () => {
		const sets = barSets(buildUpWith({}), wide);
		expect(sets).toHaveLength(6); // three parts, base and scenario in hand
		expect(sets[0]!.points).toEqual([
			{ x: 0.12, y: wide.base },
			{ x: 0.6, y: wide.row + wide.base }
		]);
		expect(rowAt(wide, wide.row + wide.hand)).toBe(1);
	});
	it('are thinner for the scenario in hand', () => {
		const [base, hand] = [barSets(buildUpWith({}), wide)[0]!, barSets(buildUpWith({}), wide)[3]!];
		expect(hand.stack).toBe('hand');
		expect(hand.thickness).toBeLessThan(base.thickness);
	});
	it('leave out a product one part of which has no value, and say which', () => {
		const broken = {
			...pipeValues,
			part_cost: { ...parts, 'A15 scrap': { state: DIVIDES_BY_ZERO } }
		};
		const buildUp = buildUpWith(null, broken);
		for (const set of barSets(buildUp, barFrame(true, false)))
			expect(set.points.map((point) => rowAt(barFrame(true, false), point.y))).toEqual([1]);
		expect(gapOf(buildUp.rows[0]!.base)?.because).toBe('error of part cost itself');
		expect(gapText(buildUp.rows[0]!.base)).toBe('no bar: error of part cost itself');
		expect(gapOf(buildUp.rows[1]!.base)).toBeUndefined();
	});
	it('reach below zero for a part that gives money back', () => {
		const credit = { ...pipeValues, part_cost: { ...parts, 'A15 scrap': -0.03 } };
		const { low, high } = barRange(buildUpWith(null, credit));
		expect(low).toBeCloseTo(-0.03, 12);
		expect(high).toBeCloseTo(0.8, 12); // B30: 0.6 + 0.05 + 0.15
	});
	it('have ticks with the decimals of their step', () => {
		const ticks = [{ value: 0 }, { value: 0.2 }];
		expect(tickText(1, ticks, 'en')).toBe('1.0');
		expect(tickText(1500, [{ value: 0 }, { value: 500 }], 'de')).toBe('1.500');
	});
});

describe('the figures of a row', () => {
	it('give the total its difference and the sales unit its percentage', () => {
		const buildUp = buildUpWith({
			total: { A15: 0.19, B30: 0.8 },
			per_coil: { A15: 9.5, B30: 20 }
		});
		const [first, second] = buildUp.rows.map((row) => amounts(buildUp, row, 'en'));
		expect(first!.total).toMatchObject({ text: '0.2000', difference: '−0.0100' });
		expect(first!.perUnit).toMatchObject({ text: '10.00', difference: '−5.0 %' });
		expect(second!.total.difference).toBe('same');
	});
	it('say No value with whose error, never zero', () => {
		const buildUp = buildUpWith(null, {
			...pipeValues,
			total: { A15: { state: DIVIDES_BY_ZERO }, B30: 1 }
		});
		expect(amounts(buildUp, buildUp.rows[0]!, 'en').total).toEqual({
			text: 'No value',
			isError: true,
			because: 'error of factory cost per metre itself',
			difference: ''
		});
	});
	it('take the decimals of the middle value', () => {
		expect(columnDecimals([0.198, 0.335, 1.07], 4)).toBe(4);
		expect(columnDecimals([7.46, 21.9, 33.5], 4)).toBe(2);
		expect(columnDecimals([], 4)).toBe(2);
	});
});

describe('what goes along', () => {
	it('holds every part of base and scenario in hand', () => {
		const table = buildUpTable(buildUpWith({ total: { A15: 0.19, B30: 0.8 } }));
		expect(table.columns).toEqual([
			'Product',
			'Name',
			'Scenario',
			'resin, EUR/m',
			'scrap, EUR/m',
			'people, EUR/m',
			'Factory cost per metre, EUR/m',
			'Factory cost per metre, EUR/coil'
		]);
		expect(table.rows[1]).toEqual([
			'A15',
			'barrier pipe 15 mm',
			'Better gauging',
			0.12,
			0.02,
			0.06,
			0.19,
			10
		]);
		expect(table.rows).toHaveLength(4);
	});
	it('says the totals in words', () => {
		expect(buildUpSummary(buildUpWith(), 'en')).toBe(
			'Stacked bars of three parts (resin, scrap and people) for two products. A15 0.2000 EUR/m; B30 0.8000 EUR/m.'
		);
	});
});

describe('a chart that changes', () => {
	it('keeps the objects of its sets, so that bars move from where they stood', () => {
		const first = { label: 'resin', data: [{ x: 1, y: 15 }] };
		const gone = { label: 'scrap', data: [] };
		const data = { datasets: [first, gone] };
		const chart = { data } as unknown as Parameters<typeof takeUp>[0];
		takeUp(chart, [{ label: 'resin', data: [{ x: 2, y: 15 }] }]);
		expect(data.datasets).toHaveLength(1);
		expect(data.datasets[0]).toBe(first);
		expect(first.data).toEqual([{ x: 2, y: 15 }]);
		takeUp(chart, [first, gone]);
		expect(data.datasets).toEqual([first, gone]);
	});
});
