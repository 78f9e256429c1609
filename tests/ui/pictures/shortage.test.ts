import { describe, expect, it } from 'vitest';
import { NO_ANSWER } from '$lib/engine/state';
import {
	freedShare,
	wayFigures,
	waysOf,
	waysSummary,
	waysTable,
	waysTitle
} from '$lib/ui/pictures/shortage/shortage-options';
import { opened, pictureOf, way } from './shifts-hand';

const picture = pictureOf('ways_out');
const written = {
	base: way(0, 0, 0),
	weekends: way(2000, 182_000, 71),
	line: way(5000, 310_000, 88),
	buy: way(420, -14_000, 12),
	nothing: way(0, 500, 0)
};
const open = opened(written, 'line');
const ways = waysOf(open, picture);

describe('ways out', () => {
	it('come with the cheapest hours that pay first, and what does not pay last', () => {
		expect(ways.ways.map(({ id }) => id)).toEqual(['weekends', 'line', 'buy']);
		expect(ways.ways.map(({ pays }) => pays)).toEqual([true, true, false]);
		expect(ways.ways.map(({ selectedScenario }) => selectedScenario)).toEqual([false, true, false]);
	});

	it('name apart those that free no hours', () => {
		expect(ways.others).toEqual(['Paint the hall']);
	});

	it('say in the title how many pay and where the cheapest hours come from', () => {
		expect(waysTitle(ways, 'en')).toBe(
			'Three ways out, two would pay today; the cheapest hours that pay come from Weekends, at 71 EUR/h'
		);
		const none = waysOf(
			opened({ ...written, weekends: way(10, -1, 5), line: way(0, 0, 0) }),
			picture
		);
		expect(waysTitle(none, 'en')).toBe('Two ways out, and none would pay in the years shown');
	});

	it('leave out of the finding what the workbook says is no comparison, and list it last', () => {
		const doubted = { ...written, weekends: { ...written.weekends, unfair: 1 } };
		const found = waysOf(opened(doubted, 'line'), picture);
		expect(found.ways.map(({ id }) => id)).toEqual(['line', 'buy', 'weekends']);
		expect(found.ways[2]).toMatchObject({ pays: false, doubt: 'Other demand' });
		expect(waysTitle(found, 'en')).toBe(
			'Two ways out, one would pay today; the cheapest hours that pay come from New line, at 88 EUR/h'
		);
		const alone = { base: written.base, weekends: doubted.weekends };
		expect(waysTitle(waysOf(opened(alone), picture), 'en')).toBe(
			'No scenario frees hours on equal terms'
		);
	});

	it('give money in thousands where it is long, with its sign', () => {
		expect(ways.money.unit).toBe('kEUR/year');
		expect(wayFigures(ways, ways.ways[0]!, 'en')).toEqual({
			freed: '2,000',
			earned: '+182',
			later: '',
			price: '71'
		});
		expect(wayFigures(ways, ways.ways[2]!, 'en').earned).toBe('−14');
	});

	it('show bars in proportion to the hours', () => {
		expect(ways.ways.map((way) => freedShare(ways, way))).toEqual([40, 100, 8.4]);
	});

	it('keep a scenario without a price, behind those that have one', () => {
		const free = { ...way(100, 900, 0), price: { state: NO_ANSWER } };
		const some = waysOf(opened({ ...written, weekends: free }), picture);
		expect(some.ways.map(({ id }) => id)).toEqual(['line', 'weekends', 'buy']);
		expect(wayFigures(some, some.ways[1]!, 'en').price).toBe('none');
	});

	it('that pay only with growth come after those that pay today, and before those that never do', () => {
		const growing = { ...picture, earned_later: 'sales' };
		const later = {
			...written,
			line: { ...way(5000, -90_000, 50), sales: 400_000 },
			weekends: { ...way(2000, 182_000, 71), sales: 90_000 },
			buy: { ...way(420, -14_000, 12), sales: -1000 }
		};
		const some = waysOf(opened(later), growing);
		expect(some.ways.map(({ id, pays, paysLater }) => [id, pays, paysLater])).toEqual([
			['weekends', true, false],
			['line', false, true],
			['buy', false, false]
		]);
		expect(waysTitle(some, 'en')).toContain('one would pay today, one more later');
		expect(wayFigures(some, some.ways[1]!, 'en').later).toBe('+400');
		expect(waysTable(some, growing, opened(later)).rows[1]).toEqual([
			'New line',
			5000,
			50,
			-90_000,
			400_000,
			''
		]);
	});

	it('wait for scenarios that are not computed', () => {
		const early = waysOf(opened({ base: way(0, 0, 0) }), picture);
		expect(early.pending).toBe(true);
		expect(waysTitle(early, 'en')).toBe('The scenarios are being computed');
	});
});

it('the summary and the table hold every way', () => {
	expect(waysSummary(ways, picture, open)).toContain(
		'1, Weekends: frees 2,000 h/year, earns +182 kEUR/year, 71 EUR/h'
	);
	const table = waysTable(ways, picture, open);
	expect(table.columns).toEqual([
		'Scenario',
		'Hours freed, h/year',
		'price, EUR/h',
		'EBIT, EUR/year',
		'Note'
	]);
	expect(table.rows[0]).toEqual(['Weekends', 2000, 71, 182_000, 'Crews on L1.']);
});
