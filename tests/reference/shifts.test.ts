/**
 * Crews, heads and the cautions on working time in the shipped plant, against published arithmetic (source and
 * standing of each in published/shifts-and-stages.json) and the limits of Directive 2003/88/EC.
 */
import { describe, expect, it } from 'vitest';
import { enter, openShipped, read, type Entry } from './shipped';
import published from './published/shifts-and-stages.json';

const of = (id: string) =>
	published.find((one) => one.id === id) as unknown as {
		inputs: Record<string, { value: number & number[] }>;
		expected: Record<string, { value: number & number[]; tolerance: number }>;
	};

describe('crews', () => {
	it('shift-4-crew-8h (found): four crews share 168 hours at 42 a head', () => {
		const model = openShipped('marram');
		enter(model, ['crews_manned', ['7x24', 'week'], 3], ['crews_manned', ['7x24', 'weekend'], 1]);
		const { value, tolerance } = of('shift-4-crew-8h').expected['average_hours_per_week']!;
		expect(read(model, 'hours_in_week', '7x24')).toBe(168);
		expect(Math.abs(read(model, 'hours_per_head', '7x24') - value)).toBeLessThanOrEqual(tolerance);
	});

	it('crews-168 (derived): 168 hours over the contract week', () => {
		const { inputs, expected } = of('crews-168');
		const model = openShipped('marram');
		const wanted: readonly number[] = expected['crews']!.value;
		(inputs['contract_hours']!.value as readonly number[]).forEach((week, at) => {
			enter(model, ['contract_hours', [], week * 52]);
			expect(read(model, 'crews_needed', '7x24'), `${week} h`).toBeCloseTo(wanted[at]!, 6);
		});
	});

	it.each([
		['2x8x5', 80, 40],
		['5x24', 120, 40],
		['6x24', 144, 36],
		['7x24', 168, 33.6]
	])('%s works %i hours a week, %f a head (common practice, no source)', (pattern, week, head) => {
		const model = openShipped('marram');
		expect(read(model, 'hours_in_week', pattern)).toBe(week);
		expect(read(model, 'hours_per_head', pattern)).toBeCloseTo(head, 9);
	});
});

describe('a pattern of one’s own, painted on a Saturday', () => {
	const model = openShipped('marram');
	const saturday = Array.from({ length: 16 }, (_, i) => `Sat ${String(6 + i).padStart(2, '0')}`);
	enter(model, ...saturday.map((hour): Entry => ['on', ['2x8x5', hour], true]), [
		'handover_time',
		[],
		0.25
	]);

	it('counts a person’s week by the hours that crews man, and says that nobody mans Saturday', () => {
		expect(read(model, 'hours_in_week', '2x8x5')).toBe(96);
		// 80 h of two week crews; 16 h on Saturday belong to weekend crews, of which there are none
		expect(read(model, 'hours_without_crew', '2x8x5')).toBe(16);
		expect(read(model, 'hours_per_head', '2x8x5')).toBeCloseTo(40, 9);
		expect(read(model, 'average_week', '2x8x5', 'week')).toBeCloseTo(40 * (1 + 0.25 / 8), 9);
		expect(read(model, 'painted_without_crew', '2x8x5')).toBe(1);
		expect(read(model, 'patterns_cautioned')).toBe(1);
		expect(read(model, 'crews_by_week_close', '2x8x5')).toBeCloseTo(0, 9);
	});

	it('is a caution no more once a crew is entered for it', () => {
		enter(model, ['crews_manned', ['2x8x5', 'weekend'], 1]);
		expect(read(model, 'hours_without_crew', '2x8x5')).toBe(0);
		// 96 h over three crews
		expect(read(model, 'hours_per_head', '2x8x5')).toBeCloseTo(32, 9);
		expect(read(model, 'painted_without_crew', '2x8x5')).toBe(0);
	});
});

describe('headcount-with-absence (derived)', () => {
	const { inputs, expected } = of('headcount-with-absence');
	const number = (name: string) => inputs[name]!.value;
	const model = openShipped('marram');
	enter(
		model,
		['contract_hours', [], number('contract_hours') * number('weeks')],
		['leave_days', [], number('leave_days')],
		['day_length', [], number('hours_per_day')],
		['sickness', [], 100 * number('sickness')],
		['training_hours', [], 0],
		['handover_time', [], 0]
	);

	it('attends what leave, nine holidays and sickness leave', () => {
		const { value, tolerance } = expected['net_hours_per_person']!;
		expect(Math.abs(read(model, 'attended_hours') - value)).toBeLessThan(tolerance);
	});

	it('needs as many heads for a post', () => {
		// The plant mans 5,808 h; the case 8,760 h.
		const heads = (read(model, 'heads_per_post') * number('coverage')) / 5808;
		expect(Math.abs(heads - expected['persons_per_post']!.value)).toBeLessThan(1e-5);
	});

	it('employs whole people', () => {
		// eleven posts of 5,808 h ÷ 1,648.896 h = 38.75
		expect(read(model, 'total_heads')).toBeCloseTo((11 * 5808) / 1648.896, 6);
		expect(read(model, 'people_to_employ')).toBe(39);
	});
});

/** The limits stand in the workbook as inputs, each with its article. */
describe('Directive 2003/88/EC', () => {
	const articles = [
		['limit_of_daily_rest', 11], // Article 3: eleven consecutive hours in each 24
		['limit_of_weekly_rest', 24], // Article 5: 24 hours in each seven days, plus the eleven
		['limit_of_week', 48], // Article 6(b): 48 hours on average, overtime included
		['limit_of_leave', 4], // Article 7: four weeks
		['limit_of_nights', 8] // Article 8: eight hours on average in any 24
	] as const;

	it.each(articles)('%s is %i', (limit, value) => {
		expect(read(openShipped('marram'), limit)).toBe(value);
	});

	it('cautions on no pattern as shipped', () => {
		const model = openShipped('marram');
		for (const caution of ['long_week', 'short_daily_rest', 'short_weekly_rest', 'long_nights'])
			for (const pattern of ['2x8x5', '5x24', '6x24', '7x24', 'weekend-48'])
				expect(read(model, caution, pattern), `${caution} of ${pattern}`).toBe(0);
		expect(read(model, 'short_leave')).toBe(0);
	});

	it('lets an average week be 48 hours and cautions beyond', () => {
		const model = openShipped('marram');
		enter(model, ['handover_time', [], 0], ['crews_manned', ['5x24', 'week'], 2.5]);
		expect(read(model, 'average_week', '5x24', 'week')).toBeCloseTo(48, 12); // 120 ÷ 2.5
		expect(read(model, 'long_week', '5x24')).toBe(0);
		enter(model, ['overtime', [], 0.5]);
		expect(read(model, 'long_week', '5x24')).toBe(1);
	});

	it('counts the paid hand-over into the week', () => {
		const model = openShipped('marram');
		// 120 h ÷ 3 crews × (1 + 0.25 ÷ 8)
		expect(read(model, 'average_week', '5x24', 'week')).toBeCloseTo(41.25, 12);
	});

	it('cautions below eleven hours between two shifts', () => {
		const model = openShipped('marram');
		enter(model, ['rest_between_shifts', ['7x24', 'week'], 11]);
		expect(read(model, 'short_daily_rest', '7x24')).toBe(0);
		enter(model, ['rest_between_shifts', ['7x24', 'week'], 8]);
		expect(read(model, 'short_daily_rest', '7x24')).toBe(1);
	});

	it('cautions below 24 hours and the daily eleven in a week', () => {
		const model = openShipped('marram');
		enter(model, ['rest_in_week', ['6x24', 'week'], 35]);
		expect(read(model, 'short_weekly_rest', '6x24')).toBe(0);
		enter(model, ['rest_in_week', ['6x24', 'week'], 34]);
		expect(read(model, 'short_weekly_rest', '6x24')).toBe(1);
	});

	it('cautions on nights beyond eight hours, on average or under special hazard in any 24', () => {
		const model = openShipped('marram');
		enter(model, ['special_hazard', ['week'], true]);
		// 8 h and 15 min of hand-over
		expect(read(model, 'long_nights', '5x24')).toBe(1);
		// two shifts end at 22 o'clock
		expect(read(model, 'long_nights', '2x8x5')).toBe(0);
		enter(model, ['special_hazard', ['week'], false], ['overtime', [], 7]);
		// (41.25 + 7) ÷ 6 = 8.04 h
		expect(read(model, 'long_nights', '5x24')).toBe(1);
	});

	it('cautions on leave below four weeks', () => {
		const model = openShipped('marram');
		enter(model, ['leave_days', [], 20]); // 20 × 8 h = 4 × 40 h
		expect(read(model, 'short_leave')).toBe(0);
		enter(model, ['leave_days', [], 19]);
		expect(read(model, 'short_leave')).toBe(1);
	});
});

describe('two stages with room between them', () => {
	it('buffer-limits (from memory, Buzacott 1967): the lower availability sets the pace', () => {
		const { inputs, expected } = of('buffer-limits');
		const rate = (name: string) => inputs[name]!.value;
		const model = openShipped('marram');
		const up = (r: number, p: number) => r / (r + p);
		// L5 is the first stage, the rewinders the second: as fast as the line when nothing stops.
		enter(
			model,
			['mtbf', ['L5'], 1 / rate('p1')],
			['mttr', ['L5'], 1 / rate('r1')],
			['rewinder_oee', [], 100 * up(rate('r2'), rate('p2'))],
			['setup_time', ['PB10B'], 0],
			['restart_scrap', ['L5'], 0]
		);
		const line = 1000 / read(model, 'hours_per_metre', 'PB10B', 'L5') / up(rate('r1'), rate('p1'));
		// a coil cycle at the line's pace: metres an hour the same on both
		const seconds = (3600 * 100) / line;
		enter(
			model,
			['doff_time', ['PB10B'], 0],
			['acceleration_time', ['PB10B'], 0],
			['drum_change_time', ['PB10B'], 0],
			['rewind_speed', ['PB10B'], (100 / seconds) * 60]
		);
		const paces = [
			1000 / read(model, 'hours_per_metre', 'PB10B', 'L5'),
			1000 / read(model, 'rewind_need', 'PB10B')
		];
		const wanted = expected['efficiency_infinite_buffer']!;
		expect(Math.abs(Math.min(...paces) / line - wanted.value)).toBeLessThan(wanted.tolerance);
		expect(paces.indexOf(Math.min(...paces))).toBe(1);
	});
});
