/** Posts, premiums and what patterns cost side by side in the shipped plant, worked by hand. */
import { describe, expect, it } from 'vitest';
import { enter, makeInYear, openShipped, read } from '../reference/shipped';

describe('premiums', () => {
	it('count the highest, or add up by choice', () => {
		const model = openShipped('marram');
		expect(read(model, 'premium_of_hour', 'Sun 23')).toBe(50);
		enter(model, ['premiums_stack', [], true]);
		expect(read(model, 'premium_of_hour', 'Sun 23')).toBe(75); // Sunday 50, night 25
		expect(read(model, 'premium_of_hour', 'Mon 12')).toBe(0);
		// Saturday and Sunday 25 and 50 %, and eight night hours of 24 at 25 %
		expect(read(model, 'average_premium', 'weekend-48')).toBeCloseTo(37.5 + 25 / 3, 9);
	});
});

describe('night', () => {
	it('begins and ends when entered', () => {
		const model = openShipped('marram');
		enter(model, ['night_from', [], 20]);
		// ten hours of 24 at 25 %
		expect(read(model, 'average_premium', '5x24')).toBeCloseTo((10 / 24) * 25, 9);
	});
});

describe('a night that lies within one day', () => {
	it.each([0, 24])('from %i o’clock to six is six hours long', (from) => {
		const model = openShipped('marram');
		enter(model, ['night_from', [], from]);
		expect(read(model, 'night_hour', 'Tue 05')).toBe(1);
		expect(read(model, 'night_hour', 'Tue 06')).toBe(0);
		expect(read(model, 'average_premium', '5x24')).toBeCloseTo((6 / 24) * 25, 9);
	});
});

describe('absence', () => {
	it('is not what falls on a Saturday or Sunday: three of nine public holidays in 2028', () => {
		const model = openShipped('marram');
		enter(model, ['calendar_year', [], 2028]);
		// 1 January 2028 is a Saturday, 24 and 31 December are Sundays
		expect(read(model, 'attended_hours')).toBeCloseTo(
			2080 - ((25 + 6) * 8 * 0.95 + 2080 * 0.05 + 30.6),
			9
		);
		expect(read(model, 'weekend_absence')).toBeCloseTo(
			(100 * ((25 + 3) * 8 * 0.95 + 2080 * 0.05 + 30.6)) / 2080,
			9
		);
	});

	it('of weekend crews is counted once, alike in heads and cost', () => {
		const model = openShipped('marram');
		const weekend = { scenario: 'weekend_crews' };
		// leave and sickness of 2,080 h and the hours of training; no public holiday is on a weekend in 2027
		const absent = (25 * 8 * 0.95 + 2080 * 0.05 + 30.6) / 2080;
		const posts = ['shift leader', 'extrusion operator', 'rewind/pack operator'] as const;
		const hours = [...posts, 'material & cross-link', 'fitter/electrician'].reduce(
			(sum, post) => sum + read(model, 'weekend_post_hours', post, weekend),
			0
		);
		expect(read(model, 'weekend_heads', weekend)).toBeCloseTo(hours / (2080 * (1 - absent)), 9);
		// the leader: 2,448 h with a quarter of an hour for twelve, at 37.5 % premium on average
		const paid = (2448 * (1 + 0.25 / 12) * 1.375 * 1.15) / (1 - absent);
		expect(read(model, 'weekend_labour', 'shift leader', weekend)).toBeCloseTo(
			paid * 24.8 * 1.24,
			4
		);
	});
});

describe('posts that follow what runs', () => {
	const model = openShipped('marram');
	enter(
		model,
		['manning_rule_in_use', [], 'what_runs'],
		['lines_per_operator', [], 2],
		['rewinders_per_operator', [], 0.75],
		['chambers_per_operator', [], 3]
	);
	const hours = 5808 * (1 + 0.25 / 8);

	it('are one for two lines, four for three rewinders, one for three chambers', () => {
		expect(read(model, 'post_hours', 'extrusion operator')).toBeCloseTo(3.5 * hours, 6);
		expect(read(model, 'post_hours', 'rewind/pack operator')).toBeCloseTo(4 * hours, 6);
		expect(read(model, 'post_hours', 'material & cross-link')).toBeCloseTo(hours, 6);
	});

	it('fall where a line works fewer hours, which a whole crew does not', () => {
		enter(model, ['pattern_of_line', ['L7'], '2x8x5']);
		// six lines of 5,808 h and one of 242 days × 16 h
		const posts = ((6 * 5808 + 242 * 16) / 2) * (1 + 0.25 / 8);
		expect(read(model, 'post_hours', 'extrusion operator')).toBeCloseTo(posts, 6);
		// the leader stays while anything runs
		expect(read(model, 'post_hours', 'shift leader')).toBeCloseTo(hours, 6);
		enter(model, ['manning_rule_in_use', [], 'whole_crew']);
		expect(read(model, 'post_hours', 'extrusion operator')).toBeCloseTo(3 * hours, 6);
	});

	it('fall on a whole crew too once nothing runs at night', () => {
		const short = openShipped('marram');
		for (const line of ['L1', 'L2', 'L3', 'L4', 'L5', 'L6', 'L7'])
			enter(short, ['pattern_of_line', [line], '2x8x5']);
		expect(read(short, 'crew_hours')).toBe(5808); // rewinders still run
		for (const rewinder of ['R1', 'R2', 'R3'])
			enter(short, ['pattern_of_rewinder', [rewinder], '2x8x5']);
		expect(read(short, 'crew_hours')).toBe(242 * 16);
		expect(read(short, 'crew_premium_hours')).toBe(0);
	});
});

describe('a post through the year', () => {
	it('is a step: eleven of them are the shift labour, whatever is made', () => {
		const model = openShipped('marram');
		const posts: Record<string, number> = {
			'shift leader': 1,
			'extrusion operator': 3,
			'rewind/pack operator': 4,
			'material & cross-link': 1,
			'quality technician': 1,
			'fitter/electrician': 1
		};
		const labour = () =>
			Object.entries(posts).reduce(
				(sum, [post, count]) => sum + count * read(model, 'cost_of_post', post),
				0
			);
		expect(labour()).toBeCloseTo(read(model, 'shift_labour'), 4);
		const before = read(model, 'shift_labour');
		enter(model, ...makeInYear('RT15B', 'L7', 1_000_000));
		expect(read(model, 'shift_labour')).toBe(before);
	});
});

describe('patterns side by side', () => {
	const model = openShipped('marram');

	it('cost on five days round the clock what the base pays its people', () => {
		// every line and rewinder works it: the year's labour over 5,808 h
		expect(read(model, 'crew_cost', '5x24')).toBeCloseTo(read(model, 'shift_labour') / 5808, 9);
		expect(read(model, 'heads_of_pattern', '5x24')).toBeCloseTo(read(model, 'total_heads'), 9);
		expect(read(model, 'net_hours_of_pattern', '5x24')).toBeCloseTo(5587, 9);
		expect(read(model, 'starts_of_pattern', '2x8x5')).toBe(250);
	});

	it('add the weekend hour by hour', () => {
		// Posts at the weekend: leader 24.8, 7/3 operators at 20.6, three packers at 17.9, half of 18.6 and of 25.2
		const wages = 24.8 + (7 / 3) * 20.6 + 3 * 17.9 + 0.5 * 18.6 + 0.5 * 25.2;
		// leave, sickness and training of 2,080 h; no public holiday of 2027 is on a weekend
		const absent = (25 * 8 * 0.95 + 2080 * 0.05 + 30.6) / 2080;
		const paid = ((1 + 0.25 / 12) * 1.15 * 1.24) / (1 - absent);
		// 2,448 h with 37.5 % premium on average
		const weekend = wages * paid * 2448 * 1.375;
		const week = read(model, 'people_cost_of_pattern', '5x24');
		expect(read(model, 'people_cost_of_pattern', '7x24')).toBeCloseTo(week + weekend, 4);
		expect(read(model, 'people_cost_of_hour', '7x24', 'Sun 12')).toBeCloseTo(wages * paid * 1.5, 6);
	});

	it('price a metre more against the pattern chosen, where there is one', () => {
		const total = (pattern: string) =>
			read(model, 'conversion_cost_of_pattern', pattern) *
			read(model, 'good_metres_of_pattern', pattern);
		const more =
			read(model, 'good_metres_of_pattern', '6x24') - read(model, 'good_metres_of_pattern', '5x24');
		expect(read(model, 'cost_of_metre_more', '6x24')).toBeCloseTo(
			(total('6x24') - total('5x24')) / more,
			9
		);
		expect(() => read(model, 'cost_of_metre_more', '2x8x5')).toThrow('state 1');
	});

	it('let the chambers work the pattern too, and find them once they are too few', () => {
		const limit = (pattern: string) => read(model, 'stage_that_limits_pattern', pattern);
		const stages = ['extrude', 'rewind', 'crosslink'];
		expect(read(model, 'chamber_hours_of_pattern', '7x24')).toBeCloseTo(3 * 0.97 * 8256, 6);
		expect(read(model, 'chamber_hours_of_pattern', '2x8x5')).toBeCloseTo(
			3 * 0.97 * (242 * 16 + 250 * read(model, 'mean_batch_time')),
			6
		);
		expect(stages[limit('2x8x5')]).toBe('extrude');
		const fewer = openShipped('marram');
		enter(fewer, ['chambers', [], 2]);
		expect(stages[read(fewer, 'stage_that_limits_pattern', '7x24')]).toBe('crosslink');
	});
});
