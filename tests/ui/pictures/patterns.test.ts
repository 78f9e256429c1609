import { describe, expect, it } from 'vitest';
import { ABSENT, DIVIDES_BY_ZERO } from '$lib/engine/state';
import { sourceOf } from '$lib/ui/figure/open';
import {
	firstAgainst,
	patternSides,
	patternsTitle,
	scenarioSides,
	scenariosTitle,
	sidesSummary,
	weekRuns
} from '$lib/ui/pictures/patterns/patterns';
import { onPaper, shownSides, sideRows, sideTable } from '$lib/ui/pictures/patterns/sides';
import { stepped } from '$lib/ui/figure/steps';
import type { Written } from './hand';
import { opened, pictureOf, result, shifts } from './shifts-hand';

const picture = pictureOf('patterns');
const sidesOf = (written: Written) => patternSides(opened({ base: written }), picture, 'base');
const rowsOf = (written: Written, against = '5x24') =>
	sideRows(sidesOf(written), picture.rows, against, 'en');

describe('patterns side by side', () => {
	it('differ from the one compared with, in amount and in percent', () => {
		const [hours, metres] = rowsOf(shifts);
		expect(hours?.cells.map((cell) => cell.text)).toEqual(['5,800', '8,200']);
		expect(hours?.cells[0]).toMatchObject({ same: null, difference: '' });
		expect(hours?.cells[1]).toMatchObject({ difference: '+2,400', relative: '+41.4 %' });
		expect(metres?.cells[1]).toMatchObject({ difference: '+15', relative: '+30.0 %' });
	});

	it('turn round with the pattern compared with', () => {
		const [hours] = rowsOf(shifts, '7x24');
		expect(hours?.cells[0]).toMatchObject({ difference: '−2,400', relative: '−29.3 %' });
		expect(hours?.cells[1]?.same).toBeNull();
	});

	it('say "same" for what does not differ, words included', () => {
		const limits = rowsOf(shifts)[3];
		expect(limits?.cells[1]).toMatchObject({ text: 'rewind', same: true, difference: '' });
	});

	it('carry an error and a missing value as such', () => {
		const broken = { ...shifts, hours: { '5x24': 5800, '7x24': { state: DIVIDES_BY_ZERO } } };
		const [hours] = rowsOf(broken);
		expect(hours?.cells[1]).toMatchObject({ text: 'No value', same: null, difference: '' });
		const absent = { ...shifts, hours: { '5x24': 5800, '7x24': { state: ABSENT } } };
		expect(rowsOf(absent)[0]?.cells[1]?.text).toBe('n/a');
	});

	it('begin with what the picture says to compare with, else with the first', () => {
		const { layout } = opened({});
		expect(firstAgainst(layout, picture)).toBe('5x24');
		expect(firstAgainst(layout, { ...picture, against: '7x24' })).toBe('7x24');
	});
});

describe('the finding', () => {
	it('says who makes the most, and what a metre then costs', () => {
		expect(patternsTitle(picture, sidesOf(shifts), '5x24', 'en')).toBe(
			'7x24 makes 30 % more good metres than 5x24, at 2.5 % less for conversion cost'
		);
		expect(patternsTitle(picture, sidesOf(shifts), '7x24', 'en')).toBe(
			'No pattern makes more good metres than 7x24'
		);
	});

	it('says so where there is nothing to compare', () => {
		expect(patternsTitle(picture, sidesOf({}), '5x24', 'en')).toBe(
			'5x24 has no good metres to compare with'
		);
	});

	it('of scenarios names the one with the most of the first figure', () => {
		const sides = scenarioSides(
			opened({ base: result(1_000_000, 300_000), weekends: result(1_200_000, 400_000) })
		).slice(0, 2);
		const rows = sideRows(sides, ['ebit'], 'base', 'en');
		// 1,200 − 400 − 200 = 600, against 1,000 − 300 − 200 = 500 thousand
		expect(scenariosTitle(sides, rows, 'base')).toBe(
			'Weekends has the most EBIT, +100,000 EUR/year against Base'
		);
		expect(scenariosTitle(sides, rows, 'weekends')).toBe('No scenario has more EBIT than Weekends');
	});
});

it('the small week has a run for each stretch of worked hours', () => {
	const source = sourceOf(opened({ base: shifts }), 'base');
	expect(weekRuns(source, picture, 0)).toEqual([
		[[0, 24]],
		[
			[6, 6],
			[18, 6]
		]
	]);
	const { worked: _worked, ...without } = picture;
	expect(weekRuns(source, without, 0)).toBeNull();
});

it('the summary and the table hold every figure', () => {
	const sides = sidesOf(shifts);
	const rows = rowsOf(shifts);
	expect(sidesSummary(sides, rows)).toContain('Scheduled hours in h/year: 5x24 5,800, 7x24 8,200');
	const table = sideTable('Shifts', sides, rows);
	expect(table.columns).toEqual(['Quantity', 'Unit', '5x24', '7x24']);
	expect(table.rows[0]).toEqual(['Scheduled hours', 'h/year', 5800, 8200]);
	expect(table.rows[3]).toEqual(['limits', '', 'rewind', 'rewind']);
});

it('arrow keys go from one figure to the next and stay inside the table', () => {
	expect(stepped({ row: 0, column: 0 }, 'ArrowDown', 3, 2)).toEqual({ row: 1, column: 0 });
	expect(stepped({ row: 0, column: 0 }, 'ArrowUp', 3, 2)).toEqual({ row: 0, column: 0 });
	expect(stepped({ row: 2, column: 1 }, 'ArrowRight', 3, 2)).toEqual({ row: 2, column: 1 });
	expect(stepped({ row: 2, column: 1 }, 'Home', 3, 2)).toEqual({ row: 2, column: 0 });
	expect(stepped({ row: 2, column: 0 }, 'End', 3, 2)).toEqual({ row: 2, column: 1 });
	expect(stepped({ row: 2, column: 0 }, 'Tab', 3, 2)).toBeNull();
});

describe('columns of a table of comparisons', () => {
	const sides = Array.from({ length: 17 }, (_, at) => ({ ...sidesOf(shifts)[0]!, id: `s${at}` }));
	it('are left out as somebody chose, but for the one that the others are compared with', () => {
		const isLeftOut = (id: string) => ['s1', 's3'].includes(id);
		expect(shownSides(sides, 's1', isLeftOut)).toHaveLength(16);
		expect(shownSides(sides, 's0', isLeftOut).map(({ id }) => id)).not.toContain('s1');
	});
	it('all stand on paper, in as many tables as there is need of, each with the one compared with', () => {
		const parts = onPaper(sides, 's2');
		expect(parts[0]).toEqual([2, 0, 1, 3, 4]);
		expect(parts.every(([first, ...others]) => first === 2 && others.length <= 4)).toBe(true);
		expect(new Set(parts.flat()).size).toBe(17);
		expect(onPaper(sides.slice(0, 1), 's0')).toEqual([[0]]);
	});
});
