import { describe, expect, it } from 'vitest';
import { NOT_ENTERED } from '$lib/engine/state';
import { BAR_HEIGHT, barOf, fullLine } from '$lib/ui/pictures/capacity/bars';
import { capacityOf, missingLoad, tallest } from '$lib/ui/pictures/capacity/capacity';
import {
	capacitySummary,
	capacityTable,
	capacityTitle,
	monthsText
} from '$lib/ui/pictures/capacity/capacity-words';
import { sourceOf } from '$lib/ui/figure/open';
import type { Written } from './hand';
import { loads, opened, pictureOf } from './shifts-hand';

const picture = pictureOf('capacity');

function capacity(written: Written, before?: Written) {
	const open = opened({ base: written, ...(before && { line: before }) });
	return capacityOf({
		picture,
		source: sourceOf(open, 'base'),
		before: before ? sourceOf(open, 'line') : null,
		scenario: 'Base'
	});
}
const lineLoads = (changes: Record<string, number | { state: number }>): Written => ({
	...loads,
	line_load: { ...(loads.line_load as Record<string, number>), ...changes }
});

describe('loads by month', () => {
	it('have a row for each member of each kind of resource, with the months added up', () => {
		const { rows, groups, months } = capacity(loads);
		expect(rows.map((row) => row.id)).toEqual(['L1', 'L2', 'rewind']);
		expect(groups.map((group) => group.title)).toEqual(['Lines', 'Stages']);
		expect(months.map((month) => month.id)).toEqual(['Jan', 'Feb', 'Mar']);
		expect(rows[0]?.short?.value).toBe(100); // 0 + 40 + 60
		expect(rows[0]?.year?.value).toBe(110);
		expect(rows[2]?.year).toBeUndefined();
	});

	it('of two kinds on the same resources are told apart by what each is, and a resource is counted once', () => {
		const { loads: given } = picture;
		const twice = capacityOf({
			picture: { ...picture, loads: [...given, { ...given[0]! }] },
			source: sourceOf(opened({ base: loads }), 'base'),
			before: null,
			scenario: 'Base'
		});
		const label = opened({ base: loads }).layout.byName.get(given[0]!.load)!.quantity.label;
		expect(twice.groups.map(({ title }) => title)).toEqual([label, 'Stages', label]);
		expect(twice.rows).toHaveLength(5);
		expect(capacityTitle(twice, 'en')).toBe(capacityTitle(capacity(loads), 'en'));
	});

	it('are called by their labels where these are short, and months by theirs', () => {
		const open = opened({ base: loads });
		const named = {
			...open.layout,
			sets: new Map([
				...open.layout.sets,
				[
					'line',
					{
						...open.layout.sets.get('line')!,
						members: [
							{ id: 'L1', label: 'Line one' },
							{ id: 'L2', label: 'The line with five extruders' }
						]
					}
				],
				[
					'month',
					{
						...open.layout.sets.get('month')!,
						members: [{ id: 'Jan', label: 'January' }, { id: 'Feb' }, { id: 'March' }]
					}
				]
			])
		};
		const { rows, months } = capacityOf({
			picture,
			source: { ...sourceOf(open, 'base'), layout: named },
			before: null,
			scenario: 'Base'
		});
		expect(rows.slice(0, 2).map(({ name, aside }) => [name, aside])).toEqual([
			['Line one', ''],
			['L2', 'The line with five extruders']
		]);
		expect(months.map(({ short }) => short)).toEqual(['Jan', 'Feb', 'Mar']);
	});

	it('say who is fullest in each month', () => {
		const { rows } = capacity(loads);
		const fullest = rows.map((row) => row.months.map((month) => month.fullest));
		expect(fullest).toEqual([
			[false, true, true],
			[false, false, false],
			[true, false, false] // 95 of rewinding above 90 of L2
		]);
	});

	it('name one only where two are as full as each other', () => {
		const { rows } = capacity(lineLoads({ 'L2 Feb': 120 }));
		expect(rows.filter((row) => row.months[1]?.fullest).map((row) => row.id)).toEqual(['L1']);
	});

	it('leave out a resource that is not there', () => {
		const {
			'L2 Jan': _a,
			'L2 Feb': _b,
			'L2 Mar': _c,
			...rest
		} = loads.line_load as Record<string, number>;
		expect(capacity({ ...loads, line_load: rest }).rows.map((row) => row.id)).toEqual([
			'L1',
			'rewind'
		]);
	});

	it('are not drawn as zero where one has no value', () => {
		const open = lineLoads({ 'L2 Mar': { state: NOT_ENTERED } });
		expect(missingLoad(capacity(open))?.kind).toBe('not-entered');
		expect(missingLoad(capacity(loads))).toBeNull();
	});
});

describe('the finding', () => {
	it('says who limits when, and how many are short in the worst month', () => {
		expect(capacityTitle(capacity(loads), 'en')).toBe(
			'L1 limits in Feb and Mar; Feb is short on three of three resources'
		);
	});

	it('says which is nearest where no month is short', () => {
		const within = lineLoads({ 'L1 Feb': 97, 'L1 Mar': 60, 'L2 Feb': 50 });
		const stage = {
			...within,
			stage_load: { 'rewind Jan': 95, 'rewind Feb': 20, 'rewind Mar': 60 }
		};
		expect(capacityTitle(capacity(stage), 'en')).toBe(
			'No month is short: L1 is fullest, 97\u00a0% in Feb'
		);
	});

	it('reads months as runs', () => {
		const labels = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun'];
		expect(monthsText([0, 2, 3, 4], labels)).toBe('in Jan and from Mar to May');
		expect(monthsText([5], labels)).toBe('in Jun');
		expect(monthsText([0, 1, 3, 4], labels)).toBe('in Jan, Feb, Apr and May');
		expect(monthsText([0, 1, 2, 4], labels)).toBe('from Jan to Mar and May');
	});
});

it('the summary and the table hold every load', () => {
	const one = capacity(loads);
	expect(capacitySummary(one, 'en')).toContain(
		'L1 above its hours in Feb and Mar, year 110 %, short of 100 h'
	);
	expect(capacitySummary(one, 'en')).toContain('Jan rewind 95 %');
	const table = capacityTable(one);
	expect(table.caption).toBe(`Load on the hours on offer, in ${one.scenario}`);
	expect(table.columns).toEqual([
		'Resource',
		'Kind',
		'Jan, %',
		'Feb, %',
		'Mar, %',
		'Year, %',
		'Short, h',
		'Fullest in'
	]);
	expect(table.rows[0]).toEqual(['L1', 'Lines', 80, 120, 130, 110, 100, 'Feb Mar']);
	expect(table.rows[2]).toEqual(['rewind', 'Stages', 95, 105, 60, null, null, 'Jan']);
});

describe('a bar', () => {
	const most = tallest(capacity(loads));
	const bar = (line: number, month: number, before?: Written) =>
		barOf(capacity(loads, before).rows[line]!.months[month]!, most)!;

	it('is grey up to the hours on offer, and goes on above them', () => {
		const full = fullLine(most);
		expect(most).toBe(130);
		expect(bar(0, 0).above).toBeNull();
		expect(bar(0, 0).within.height).toBeCloseTo((BAR_HEIGHT - full) * 0.8, 9); // 80 of 100
		const { within, above } = bar(0, 2);
		expect(within.y).toBeCloseTo(full, 9);
		expect(above!.y + above!.height).toBeCloseTo(full, 9);
		expect(above!.height).toBeCloseTo((BAR_HEIGHT - full) * 0.3, 9); // 30 above 100
	});

	it('marks where it stood before, if it moved', () => {
		const before = lineLoads({ 'L1 Jan': 90 });
		expect(bar(0, 0, before).before).not.toBeNull();
		expect(bar(0, 1, before).before).toBeNull();
		expect(bar(0, 0).before).toBeNull();
	});

	it('is cut where it would leave its row', () => {
		const wild = lineLoads({ 'L1 Jan': 900 });
		const limit = tallest(capacity(wild));
		expect(limit).toBe(250);
		const cut = barOf(capacity(wild).rows[0]!.months[0]!, limit)!;
		expect(cut.cut).toBe(true);
		expect(cut.above!.y).toBeGreaterThan(0);
	});
});
