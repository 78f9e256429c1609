/**
 * The line time of the shipped plant, in the terms of ISO 22400-2, held to worked figures: line L7 is given the
 * losses of each published case, and its own formulas must come to the published rates. Source and standing of
 * each case stand beside it in published/oee-and-set-point.json.
 */
import { describe, expect, it } from 'vitest';
import { ABSENT } from '$lib/engine/state';
import { enter, makeInYear, openShipped, read } from './shipped';
import published from './published/oee-and-set-point.json';

interface Case {
	readonly id: string;
	readonly basis: string;
	readonly inputs: Record<string, { value: number }>;
	readonly expected: Record<string, { value: number; tolerance: number }>;
}
const cases = published.filter(
	({ topic, expected }) => topic === 'OEE' && 'availability' in expected
) as unknown as readonly Case[];

/** L7 makes one product and here loses time to breakdowns, speed and scrap alone. */
function lineOf({ inputs }: Case) {
	const of = (...names: string[]) =>
		names.map((name) => inputs[name]?.value).find((value) => value !== undefined)!;
	const busy = of('planned_time', 'planned_busy_time');
	const producing = of('run_time', 'actual_production_time');
	const made = of('total_count', 'produced_quantity');
	const good = of('good_count', 'good_quantity');
	const planned = of('ideal_cycle', 'planned_runtime_per_item') * made;
	const model = openShipped('marram');
	enter(
		model,
		['pattern_of_line', ['L7'], '7x24'], // no weekly restarts
		['setup_time', ['RT15B'], 0],
		['restart_scrap', ['L7'], 0],
		['mtbf', ['L7'], producing],
		['mttr', ['L7'], busy - producing],
		['speed_ratio', [], (100 * planned) / producing],
		['running_scrap', ['RT15B'], 100 * (1 - good / made)],
		['coil_loss', ['RT15B'], 0],
		...makeInYear('RT15B', 'L7', 1_000_000)
	);
	return model;
}

describe('line time against worked cases', () => {
	it.each(cases)('$id ($basis)', (one) => {
		const model = lineOf(one);
		const rates: Record<string, string> = {
			availability: 'availability_of_busy_time',
			performance: 'effectiveness',
			effectiveness: 'effectiveness',
			quality: 'quality_rate',
			quality_ratio: 'quality_rate',
			oee: 'oee',
			oee_index: 'oee'
		};
		for (const [name, { value, tolerance }] of Object.entries(one.expected))
			expect(Math.abs(read(model, rates[name]!, 'L7') / 100 - value), name).toBeLessThan(tolerance);
	});
});

describe('total effective equipment performance', () => {
	it('is effectiveness against all hours of the year: oee-teep (derived)', () => {
		const { inputs, expected } = published.find(({ id }) => id === 'oee-teep') as unknown as Case;
		const model = openShipped('marram');
		// planned busy time over calendar time takes the place of 7,200 over 8,760 h
		const share = read(model, 'teep', 'L2') / read(model, 'oee', 'L2');
		expect(share).toBeCloseTo(read(model, 'planned_busy_time', 'L2') / 8760, 12);
		const ours = (inputs['oee']!.value * inputs['planned_hours']!.value) / 8760;
		expect(ours).toBeCloseTo(expected['teep']!.value, 6);
	});
});

describe('the parts of a line year', () => {
	const model = openShipped('marram');
	const of = (name: string) => read(model, name, 'L1');

	it('leave 5,587 h between the calendar and set-ups of L1', () => {
		expect(read(model, 'calendar_time')).toBe(8760);
		expect(of('not_scheduled_time')).toBeCloseTo(8760 - 5808, 6);
		expect(of('maintenance_hours')).toBeCloseTo(96, 6); // 12 × 8
		expect(of('restart_hours')).toBeCloseTo(125, 6); // 50 × 2.5
		// what is neither of these, nor without orders, is set-up, breakdown and production
		const busy = of('setup_hours') + of('breakdown_hours') + of('actual_production_time');
		expect(busy + of('no_order_time')).toBeCloseTo(5587, 6);
	});

	it('count a breakdown for each time between two, and scrap after each', () => {
		// breakdowns of 1.9 h each; 50 weekly starts of 44 kg, which is L1’s own, 16 kg after each breakdown
		expect(of('breakdown_hours') / of('breakdowns')).toBeCloseTo(1.9, 9);
		expect(of('restart_scrap_of_line')).toBeCloseTo(50 * 44 + of('breakdowns') * 16, 6);
	});

	it('lie between 75 and 88 % for steady extrusion (common practice, no source)', () => {
		for (const line of ['L1', 'L2', 'L3', 'L4', 'L5', 'L6', 'L7']) {
			expect(read(model, 'oee', line), line).toBeGreaterThan(75);
			expect(read(model, 'oee', line), line).toBeLessThan(88);
		}
	});
});

describe('a line that makes nothing', () => {
	// Its weekly start-ups are planned all the same: busy without production.
	it('has no rates, and no error in their place', () => {
		const model = openShipped('marram');
		enter(model, ...['PX15B', 'PX22B'].flatMap((product) => makeInYear(product, 'L3', 0)));
		expect(read(model, 'planned_busy_time', 'L3')).toBeGreaterThan(0);
		for (const rate of [
			'availability_of_busy_time',
			'effectiveness',
			'quality_rate',
			'oee',
			'teep'
		])
			expect(() => read(model, rate, 'L3'), rate).toThrow(`${rate} has state ${ABSENT}`);
		expect(model.faults('base')).toEqual([]);
	});
});
