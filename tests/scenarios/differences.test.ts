/** Lines that differ, products that no line runs, coils cured on pallets: what the shipped plant makes of them, by hand. */
import { describe, expect, it } from 'vitest';
import { apply, enter, openShipped, read } from '../reference/shipped';

/** One of the closed months. */
const MONTH = '2027-03';

describe('a line of its own', () => {
	it('runs, is maintained, starts and burns as it does itself; an empty one follows the plant', () => {
		const model = openShipped('marram');
		enter(
			model,
			['own_speed_ratio', ['L2'], 90],
			['own_planned_maintenance', ['L2'], 10],
			['own_restart_time', ['L2'], 3],
			['own_start_scrap', ['L2'], 50],
			['own_process_energy', ['L2'], 0.7],
			['own_standby_power', ['L2'], 30]
		);
		const speed = read(model, 'line_speed', 'PX15B', 'L2');
		expect(read(model, 'running_metres', 'PX15B', 'L2')).toBeCloseTo(60 * speed * 0.9, 9);
		expect(read(model, 'running_metres', 'PX15B', 'L3')).toBeCloseTo(
			60 * read(model, 'line_speed', 'PX15B', 'L3') * 0.93,
			9
		);
		expect(read(model, 'net_hours', 'L2')).toBeCloseTo(5808 - 12 * 10 - 50 * 3, 9);
		expect(read(model, 'net_hours', 'L3')).toBeCloseTo(5808 - 12 * 8 - 50 * 2.5, 9);
		const scrap = read(model, 'scrap_cost_per_kilogram', 'PX15P'); // what L2 starts the week on
		expect(read(model, 'start_scrap_cost', 'L2')).toBeCloseTo(50 * 50 * scrap, 6);
		const energy =
			read(model, 'mass_extruded', 'PX15B', 'L2') * 0.7 +
			read(model, 'mass_per_metre', 'PX15B') * 0.28 +
			(read(model, 'setup_hours_per_metre', 'PX15B', 'L2') / 1000) * 30 +
			0.0007;
		expect(read(model, 'process_energy_per_metre', 'PX15B', 'L2')).toBeCloseTo(energy, 9);
	});

	it('gives the power of the peak its own part', () => {
		const model = openShipped('marram');
		const before = read(model, 'peak_power');
		enter(model, ['own_process_energy', ['L4'], 0.71]);
		const more = 0.95 * read(model, 'line_peak_output', 'L4') * 0.1;
		expect(read(model, 'peak_power') - before).toBeCloseTo(more, 9);
	});
});

describe('a machine-hour rate of the line', () => {
	it('bears more of the overheads where a line is dearer, and all of them in all', () => {
		const model = openShipped('marram');
		const before = read(model, 'line_overhead_rate', 'L1');
		expect(before).toBeCloseTo(read(model, 'overhead_rate', 'extrude'), 9);
		enter(model, ['line_rate_weight', ['L6'], 1.5]);
		// six lines at one, one at one and a half: 5,587 h each
		expect(read(model, 'line_overhead_rate', 'L6')).toBeCloseTo((before * 7 * 1.5) / 7.5, 9);
		expect(read(model, 'line_overhead_rate', 'L1')).toBeCloseTo((before * 7) / 7.5, 9);
		// PB22B is made on L6 alone
		expect(read(model, 'line_overhead_cost', 'PB22B')).toBeCloseTo(
			(read(model, 'hours_per_metre', 'PB22B', 'L6') / 1000) * ((before * 10.5) / 7.5),
			9
		);
		for (const check of ['result_closes', 'pools_close', 'full_cost_closes'])
			expect(read(model, check), check).toBeCloseTo(0, 4);
		expect(read(model, 'variances_close', MONTH)).toBeCloseTo(0, 4);
	});
});

describe('output by material', () => {
	it('lets an extruder give less of one than of another', () => {
		const model = openShipped('marram');
		const limit = (product: string) => read(model, 'speed_limit', product, 'L5', 'main');
		const before = limit('PB10B');
		enter(model, ['output_of_material', ['PB1'], 48.5]); // half of 97 %
		expect(limit('PB10B')).toBeCloseTo(before / 2, 9);
		// 110 kg/h at 92 % and 48.5 % of it, over what the main extruder feeds
		const fed = read(model, 'extruder_load', 'PB10B', 'main') / 1000;
		expect(limit('PB10B')).toBeCloseTo((110 * 0.92 * 0.485) / fed / 60, 9);
	});
});

describe('a product that no installed line can run', () => {
	const model = openShipped('marram');
	enter(model, ['line_installed', ['L1'], false]); // the only one of PX10B

	it('has no cost, rather than a small one', () => {
		for (const quantity of ['cost_per_metre', 'full_cost', 'contribution_per_metre'])
			expect(() => read(model, quantity, 'PX10B'), quantity).toThrow('state 1');
		expect(read(model, 'cost_per_metre', 'PX15B')).toBeGreaterThan(0.2);
	});

	it('says so by a check of its own, and no other of its checks fails', () => {
		expect(read(model, 'has_line', 'PX10B')).toBe(0);
		expect(read(model, 'has_line', 'PX15B')).toBe(1);
		expect(() => read(model, 'cost_parts_close', 'PX10B')).toThrow('state 1');
		expect(read(model, 'result_closes')).toBeCloseTo(0, 4);
		expect(read(model, 'variances_close', MONTH)).toBeCloseTo(0, 4);
	});
});

describe('a cross-linked product that is coiled in line', () => {
	it('is cured as finished coils on pallets', () => {
		const model = openShipped('marram');
		const onDrums = read(model, 'batch_load', 'PX15B');
		expect(onDrums).toBe(12 * 2000);
		enter(model, ['route_of_product', ['PX15B'], 'inline']);
		expect(read(model, 'batch_load', 'PX15B')).toBe(10 * 36 * 50); // pallets, coils, metres
		expect(read(model, 'chamber_need', 'PX15B')).toBeCloseTo(
			(1000 * read(model, 'batch_time', 'PX15B')) / (10 * 36 * 50 * 0.92),
			9
		);
		expect(read(model, 'rewind_need', 'PX15B')).toBe(0);
		expect(Number.isFinite(read(model, 'ebit'))).toBe(true);
		expect(read(model, 'result_closes')).toBeCloseTo(0, 4);
	});
});

describe('a line made like L6, for another scenario', () => {
	it('brings no second copy of the month that was booked on L6', () => {
		const model = openShipped('marram');
		const booked = read(model, 'actual_product_metres', 'PB22B', MONTH);
		apply(model, {
			kind: 'add_member',
			set: 'line',
			index: 8,
			like: 'L6',
			member: { id: 'L9', label: 'L9' }
		});
		apply(model, {
			kind: 'set_inputs',
			scenario: 'base',
			entries: [{ quantity: 'line_installed', at: ['L9'], value: false }]
		});
		const scenario = 'second_L6';
		apply(model, {
			kind: 'add_scenario',
			index: 1,
			scenario: {
				id: scenario,
				title: 'A second L6',
				parent: 'base',
				changes: [{ quantity: 'line_installed', value: { L9: true } }]
			}
		});
		const inIt = (quantity: string, ...at: string[]) => read(model, quantity, ...at, { scenario });
		expect(inIt('net_hours', 'L9')).toBe(inIt('net_hours', 'L6'));
		expect(inIt('actual_product_metres', 'PB22B', MONTH)).toBe(booked);
		expect(inIt('actual_scrap', 'PB22B', MONTH)).toBeGreaterThan(0);
		expect(inIt('efficiency_of_line', 'L9', MONTH)).toBe(0);
		expect(inIt('variances_close', MONTH)).toBeCloseTo(0, 4);
	});

	it('nor in the base, until something of its own is booked on it', () => {
		const model = openShipped('marram');
		const booked = read(model, 'actual_product_metres', 'PB22B', MONTH);
		apply(model, {
			...{ kind: 'add_member', set: 'line', index: 8, like: 'L6' },
			member: { id: 'L9', label: 'L9' }
		});
		expect(read(model, 'line_installed', 'L9')).toBe(1);
		expect(read(model, 'actual_product_metres', 'PB22B', MONTH)).toBe(booked);
		expect(read(model, 'booked_line_hours', 'L9', MONTH)).toBe(0);
		expect(read(model, 'booked_line_hours', 'L6', MONTH)).toBe(
			read(model, 'actual_line_hours', 'L6', MONTH)
		);
		const own = read(model, 'actual_line_hours', 'L6', MONTH) + 1;
		enter(model, ['actual_line_hours', ['L9', MONTH], own]);
		expect(read(model, 'booked_line_hours', 'L9', MONTH)).toBe(own);
	});
});

describe('a material that nothing uses', () => {
	it('has no days of cover, and no error', () => {
		const model = openShipped('marram');
		const lines = ['L7'] as const;
		const months = model.layout.sets.get('month')!.members.map(({ id }) => id);
		enter(
			model,
			...lines.flatMap((line) =>
				months.map((month) => ['made', ['RT15B', line, month, 'today'], 0] as const)
			),
			['own_start_scrap', ['L7'], 0]
		);
		expect(read(model, 'daily_use', 'PERT')).toBe(0);
		expect(() => read(model, 'days_of_cover', 'PERT')).toThrow('state 1');
		expect(() => read(model, 'days_between_deliveries', 'PERT')).toThrow('state 1');
		expect(read(model, 'smallest_cover')).toBeGreaterThan(0);
	});
});
