/**
 * What the options of the invented plant teach: the reasons why its figures are as they are. That the
 * figures themselves are right is told in marram.test.ts.
 */
import { describe, expect, it } from 'vitest';
import { sum } from './independent/plant';
import { WorkbookFigures } from './workbook-figures';

const workbook = new WorkbookFigures('scenarios/marram-coil-works.json');

describe('what the options teach', () => {
	const npv = (id: string) => workbook.number(id, 'npv');

	it('is that a new rewinder alone never pays', () => {
		expect(npv('new_rewinder')).toBeLessThan(0);
		expect(workbook.answer('new_rewinder', 'payback')).toBeNull();
	});

	it('yet earns its outlay beside the new line', () => {
		expect(npv('new_line')).toBeGreaterThan(0);
		expect(npv('new_line_and_rewinder')).toBeGreaterThan(npv('new_line'));
	});

	it('so that two options together are not worth the sum of the two', () => {
		const apart = npv('new_line') + npv('new_rewinder');
		const rewinder = workbook.number('new_rewinder', 'outlay');
		expect(npv('new_line_and_rewinder')).toBeGreaterThan(apart + 2 * rewinder);
	});

	it('is that a thinner wall cools faster: better gauging frees line hours', () => {
		const speed = (id: string) => workbook.number(id, 'line_speed', 'PX15B', 'L3');
		expect(workbook.member('base', 'speed_limited_by', 'PX15B', 'L3')).toBe('cooling');
		// cooling goes with the square of the wall
		const walls = ['base', 'better_gauging'].map((id) =>
			workbook.number(id, 'wall_set_point', 'PX15B')
		);
		expect(speed('better_gauging') / speed('base')).toBeCloseTo((walls[0]! / walls[1]!) ** 2, 9);
	});

	it('and more good metres where lines hold the plant back', () => {
		const made = (id: string) => sum(workbook.row(id, 'good_metres'));
		expect(made('better_gauging')).toBeGreaterThan(made('base'));
	});

	it("is that a line is bought for growth: at today's demand it never earns its outlay back", () => {
		const gain = (year: number) =>
			workbook.row('new_line', 'earned_before_depreciation')[year]! -
			workbook.row('base', 'earned_before_depreciation')[year]!;
		const life = workbook.number('new_line', 'project_life');
		expect(life * gain(0)).toBeLessThan(workbook.number('new_line', 'outlay'));
		expect(gain(5)).toBeGreaterThan(5 * gain(0));
	});

	it('is that capacity times margin promises more than twice the plant with less the plant without', () => {
		// What one might hope for in year five: every net hour of the line, at its fastest product's
		// contribution, against the gain before depreciation.
		const hours = workbook.number('new_line', 'net_hours', 'L8');
		const perHour = 1000 / workbook.number('new_line', 'hours_per_metre', 'PB15B', 'L8');
		const margin = workbook.number('new_line', 'contribution_per_metre', 'PB15B');
		const gain =
			workbook.row('new_line', 'earned_before_depreciation')[5]! -
			workbook.row('base', 'earned_before_depreciation')[5]!;
		expect(hours * perHour * margin).toBeGreaterThan(2 * gain);
	});
});
