/** The week to paint: what an hour is and costs, what a stroke covers and changes, and what is said of it. */
import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import { applyCommand } from '$lib/workbook/commands';
import type { Values } from '$lib/workbook/schema';
import {
	costOf,
	dayCost,
	meanCost,
	weekCautions,
	weekOf,
	type Week,
	type WeekPicture
} from '$lib/ui/pictures/week/week';
import {
	costSteps,
	dots,
	fieldsOf,
	frameOf,
	premiumBars,
	priceBars,
	strokes
} from '$lib/ui/pictures/week/week-drawing';
import { changedBy, moved, strokeCommand } from '$lib/ui/pictures/week/week-stroke';
import {
	dayFigures,
	hourWords,
	strokeWords,
	weekFacts,
	weekSummary,
	weekTable,
	weekTitle
} from '$lib/ui/pictures/week/week-words';
import { workbookOf } from '../../engine/plan-builder';

const DAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const HOURS = DAYS.flatMap((day) => Array.from({ length: 24 }, (_, hour) => `${day} ${hour}`));
const each = (value: (day: number, hour: number) => Values) =>
	Object.fromEntries(HOURS.map((id, at) => [id, value(Math.floor(at / 24), at % 24)]));

const picture: WeekPicture = {
	kind: 'week',
	title: 'The week',
	pattern: 'pattern',
	weekday: 'weekday',
	hour: 'hour',
	worked: 'on',
	premium: 'premium',
	price: 'price',
	costs: ['people', 'energy'],
	night: 'night',
	crew: 'crew_of',
	facts: ['hours_in_week'],
	cautions: ['nights_worked']
};

const workbook = workbookOf({
	sets: {
		pattern: { members: [{ id: 'early', label: 'early shift' }, { id: 'all' }] },
		weekday: { members: DAYS.map((id) => ({ id, label: `${id}day` })) },
		hour: HOURS,
		crew: ['week', 'weekend']
	},
	quantities: {
		on: {
			type: 'yes_no',
			per: ['pattern', 'hour'],
			value: {
				early: each((day, hour) => day < 5 && hour >= 6 && hour < 14),
				all: each(() => true)
			}
		},
		premium: {
			unit: '%',
			per: ['hour'],
			value: each((day, hour) => (day > 4 ? 50 : hour < 6 ? 25 : 0))
		},
		price: { unit: 'EUR/kWh', per: ['hour'], value: each((_, hour) => (hour < 6 ? 0.1 : 0.2)) },
		people: { unit: 'EUR/h', per: ['hour'], formula: '100[EUR/h] * (1 + premium)' },
		energy: { unit: 'EUR/h', per: ['hour'], formula: 'price * 500[kW]' },
		night: { type: 'yes_no', per: ['hour'], value: each((_, hour) => hour < 6) },
		crew_of: {
			type: { member_of: 'crew' },
			per: ['hour'],
			value: each((day) => (day > 4 ? 'weekend' : 'week'))
		},
		hours_in_week: { unit: 'h', per: ['pattern'], formula: 'SUM(on over hour) * 1[h]' },
		nights_worked: {
			type: 'yes_no',
			per: ['pattern'],
			label: 'Works at night',
			formula: 'ANY(AND(on; night) over hour)',
			caution: { message: 'The law of the place decides.' }
		}
	}
});

function opened(of = workbook) {
	const model = Model.open(of);
	const source = { layout: model.layout, results: model.results('base'), faults: undefined };
	const week = (pattern: string): Week => weekOf(picture, source, 'base', pattern)!;
	return { model, source, week, layout: model.layout };
}

const { source, week, layout } = opened();
const early = week('early');
const all = week('all');
const wide = frameOf(960, true);

describe('the week of a pattern', () => {
	it('has seven days of 24 hours, as entered', () => {
		expect(early.days.map((day) => day.hours.length)).toEqual([24, 24, 24, 24, 24, 24, 24]);
		expect([early.hoursWorked, all.hoursWorked]).toEqual([40, 168]);
		expect(early.paintable).toBe(true);
		expect(weekOf({ ...picture, hour: 'crew' }, source, 'base', 'early')).toBeNull();
	});

	it('an hour costs people with their premium and energy at its price', () => {
		expect(costOf(all.days[0]!.hours[0]!)).toBe(125 + 50);
		expect(costOf(all.days[0]!.hours[6]!)).toBe(100 + 100);
		expect(dayCost(all.days[6]!)).toEqual({ least: 200, most: 250, total: 6 * 200 + 18 * 250 });
		expect(dayCost(early.days[6]!)).toEqual({ least: null, most: null, total: 0 });
		expect(meanCost(early)).toBe(200);
	});

	it('a cost without a value is no zero', () => {
		const broken = { ...workbook, sheets: workbook.sheets.map((sheet) => ({ ...sheet })) };
		const quantities = broken.sheets[0]!.quantities.map((quantity) =>
			quantity.name === 'price' ? { ...quantity, value: { 'Mon 7': 0.2 } } : quantity
		);
		const { week: weekThere } = opened({
			...broken,
			sheets: [{ ...broken.sheets[0]!, quantities }]
		});
		const there = weekThere('early');
		expect(costOf(there.days[0]!.hours[6]!)).toBeNull();
		expect(meanCost(there)).toBeNull();
		expect(dayFigures(there.days[0]!, 'en').total).toBe('No value');
		expect(dayFigures(there.days[6]!, 'en')).toEqual({ least: '–', most: '–', total: '0' });
	});

	it('cautions for the pattern that has cause', () => {
		expect(weekCautions(picture, source, 'early')).toEqual([]);
		expect(weekCautions(picture, source, 'all')).toEqual([
			{ about: 'Works at night.', text: 'The law of the place decides.' }
		]);
	});
});

describe('a stroke', () => {
	const block = { from: { day: 5, hour: 20 }, to: { day: 4, hour: 12 } };

	it('covers the block between its ends, and changes only what differs', () => {
		// Friday and Saturday, 12 to 21: Friday 12 and 13 are worked already.
		expect(changedBy(early, block, 'worked')).toHaveLength(2 * 9 - 2);
		expect(changedBy(early, block, 'nobody').map(({ id }) => id)).toEqual(['Fri 12', 'Fri 13']);
		expect(strokeWords(early, block, 'worked')).toBe('Fri to Sat 12:00 to 21:00, +16 h');
		expect(strokeWords(early, block, 'nobody')).toBe('Fri to Sat 12:00 to 21:00, −2 h');
	});

	it('is one command, and its inverse takes the whole of it back', () => {
		const on = layout.byName.get('on')!;
		const command = strokeCommand(early, block, 'worked', on, 'hour', 'base')!;
		const painted = applyCommand(workbook, command);
		if (!painted.ok) throw new Error(painted.problem.message);
		expect(opened(painted.workbook).week('early').hoursWorked).toBe(56);
		const undone = applyCommand(painted.workbook, painted.inverse);
		expect(undone.ok && opened(undone.workbook).week('early').hoursWorked).toBe(40);
		const single = { from: { day: 0, hour: 7 }, to: { day: 0, hour: 7 } };
		expect(strokeCommand(early, single, 'worked', on, 'hour', 'base')).toBeNull();
		expect(strokeWords(early, single, 'worked')).toBe('Monday 07:00 to 08:00, as it is');
	});

	it('moves by arrows within the week, whichever way the days run', () => {
		const corner = { day: 6, hour: 23 };
		expect(moved({ day: 1, hour: 5 }, 'ArrowRight', true)).toEqual({ day: 1, hour: 6 });
		expect(moved({ day: 1, hour: 5 }, 'ArrowRight', false)).toEqual({ day: 2, hour: 5 });
		expect(moved({ day: 1, hour: 5 }, 'ArrowUp', false)).toEqual({ day: 1, hour: 4 });
		expect(moved(corner, 'ArrowRight', true)).toEqual(corner);
		expect(moved(corner, 'ArrowDown', true)).toEqual(corner);
		expect(moved(corner, 'Home', true)).toEqual({ day: 6, hour: 0 });
		expect(moved(corner, 'PageUp', true)).toEqual({ day: 0, hour: 23 });
		expect(moved(corner, 'x', true)).toBeNull();
	});
});

describe('the drawing', () => {
	it('has a field for each hour worked, its tone by crew and night', () => {
		expect(fieldsOf(early, wide)).toHaveLength(40);
		const tones = fieldsOf(all, wide).map((field) => field.tone);
		expect(tones.filter((tone) => tone === 'crew')).toHaveLength(48);
		expect(tones.filter((tone) => tone === 'night')).toHaveLength(30);
		expect(fieldsOf(early, wide)[0]).toMatchObject({ x: 240, width: 40, height: 24 });
	});

	it('days run across where there is little room', () => {
		const narrow = frameOf(350, false);
		const [first] = fieldsOf(early, narrow);
		expect(first).toMatchObject({ y: 144, height: 24 });
		expect(first!.width).toBeGreaterThanOrEqual(24);
		expect(narrow.height).toBe(576);
	});

	it('premiums and prices are bars of runs, as thick as they are high against the highest', () => {
		const premiums = premiumBars(early, wide);
		expect(premiums).toHaveLength(5 + 2);
		expect(premiums[0]!.height / premiums[6]!.height).toBeCloseTo(25 / 50, 9);
		const prices = priceBars(early, wide);
		expect(prices).toHaveLength(14);
		expect(prices[0]!.width).toBe(240);
		expect(prices[1]!.height / prices[0]!.height).toBeCloseTo(2, 9);
	});

	it('the steps of a day break where nobody works', () => {
		expect(costSteps(early.days[0]!, 250, 240, 40).match(/M/g)).toHaveLength(1);
		expect(costSteps(early.days[6]!, 250, 240, 40)).toBe('');
	});

	it('dots and strokes stay in their box', () => {
		const box = { x: 10, y: 20, width: 30, height: 12 };
		const numbers = (path: string) => [...path.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)];
		for (const path of [dots(box), strokes(box)])
			for (const [, x, y] of numbers(path)) {
				expect(Number(x)).toBeGreaterThanOrEqual(10);
				expect(Number(x)).toBeLessThanOrEqual(40);
				expect(Number(y)).toBeGreaterThanOrEqual(20);
				expect(Number(y)).toBeLessThanOrEqual(32);
			}
	});
});

describe('the words', () => {
	it('the finding counts the hours and says what one costs', () => {
		expect(weekTitle(early, layout, picture, 'en')).toBe(
			'40 of 168 hours worked on early shift; an hour costs 200 EUR'
		);
	});

	it('an hour says all that lies over it', () => {
		expect(hourWords(all, { day: 6, hour: 3 }, layout, picture, 'en')).toBe(
			'Sunday 03:00 to 04:00, worked, weekend, premium 50 %, energy price 0.1 EUR/kWh, people 150 EUR/h, energy 50 EUR/h'
		);
		expect(hourWords(early, { day: 6, hour: 3 }, layout, picture, 'en')).toContain(
			'nobody, premium'
		);
	});

	it('figures and summary are those of the pattern', () => {
		expect(weekFacts(picture, source, 'early', 'en')).toEqual([
			{ label: 'hours_in_week', text: '40', unit: 'h', because: '' }
		]);
		expect(weekSummary(early, 'EUR', 'en')).toContain('Monday 8 h, 1,600 EUR');
	});

	it('the table has all hours in full', () => {
		const table = weekTable(early, layout, picture, 'In Base');
		expect(table.caption).toMatch(/\. In Base$/);
		expect(table.rows).toHaveLength(168);
		expect(table.columns).toHaveLength(table.rows[0]!.length);
		expect(table.rows[6]).toEqual(['Monday', '06:00', 'yes', 'week', 0, 0.2, 100, 100]);
	});
});
