/**
 * What each scenario of the invented plant frees, costs and earns, worked from the yearly figures that
 * other tests hold; and what the starting views rest on.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadWorkbook } from '$lib/workbook/load';
import { enter, openShipped, read } from '../reference/shipped';
import { sum } from './independent/plant';
import { WorkbookFigures } from './workbook-figures';

const PATH = 'scenarios/marram-coil-works.json';
const workbook = new WorkbookFigures(PATH);
const LINES = ['L1', 'L2', 'L3', 'L4', 'L5', 'L6', 'L7'];
const number = (scenario: string, name: string, ...at: string[]) =>
	workbook.number(scenario, name, ...at);

describe('hours freed', () => {
	it('by one more rewinder are its scheduled hours: 242 days of 24 h', () => {
		expect(number('new_rewinder', 'hours_freed')).toBeCloseTo(242 * 24, 6);
	});

	it('by better gauging are the hours that the same demand no longer takes', () => {
		const due = (id: string) => sum(LINES.map((line) => hoursDue(id, line)));
		const hoursDue = (id: string, line: string) =>
			(number(id, 'line_load_of_demand', line) / 100) * number(id, 'net_hours', line);
		// Chambers are short in August, whose shut-down they share, and a little in October: a thinner wall needs fewer of
		// their hours too, and its shorter batches run on for less after each stop.
		expect(number('base', 'stage_short_of_year', 'crosslink')).toBeGreaterThan(0);
		const left = (id: string) => number(id, 'hours_left_of_stage', 'crosslink');
		const chambers = left('better_gauging') - left('base');
		expect(chambers).toBeGreaterThan(0);
		expect(number('better_gauging', 'hours_freed')).toBeCloseTo(
			due('base') - due('better_gauging') + chambers,
			3
		);
	});

	it('leave out a stage that no month of the base is short of', () => {
		const model = openShipped('marram');
		enter(model, ['chambers', [], 4]);
		expect(read(model, 'stage_short_of_year', 'crosslink')).toBe(0);
		const gauged = { scenario: 'better_gauging' };
		const left = (scenario: string) => read(model, 'hours_left_of_stage', 'extrude', { scenario });
		expect(read(model, 'hours_freed', gauged)).toBeCloseTo(
			left('better_gauging') - left('base'),
			3
		);
	});

	it('are none in the base itself', () => {
		expect(number('base', 'hours_freed')).toBe(0);
		expect(number('base', 'ebit_gained')).toBe(0);
	});
});

describe('what a way earns and costs', () => {
	it('is EBIT less the depreciation of the option, against the base', () => {
		// The line's outlay is written off over its life.
		const depreciation = number('new_line', 'outlay') / number('new_line', 'project_life');
		expect(number('new_line', 'ebit_gained')).toBeCloseTo(
			number('new_line', 'earned_before_depreciation', 'today') -
				number('base', 'earned_before_depreciation', 'today') -
				depreciation,
			2
		);
	});

	it('of the rewinder is cost alone, as it brings no metre of its own', () => {
		expect(number('new_rewinder', 'cost_of_way')).toBeCloseTo(
			-number('new_rewinder', 'ebit_gained'),
			2
		);
		expect(number('new_rewinder', 'price_of_hour_freed')).toBeCloseTo(
			-number('new_rewinder', 'ebit_gained') / (242 * 24),
			6
		);
	});

	it('is that gauging alone pays today, and a line with the demand of year five', () => {
		expect(number('better_gauging', 'ebit_gained')).toBeGreaterThan(0);
		expect(number('new_line', 'ebit_gained')).toBeLessThan(0);
		expect(number('new_line', 'ebit_gained_later')).toBeGreaterThan(0);
		expect(number('new_rewinder', 'ebit_gained_later')).toBeLessThan(0);
	});

	it('says what the demand not met would have brought', () => {
		const open = workbook.row('base', 'unmet_metres')[0]!;
		const best = Math.max(...workbook.row('base', 'contribution_per_metre'));
		const lost = number('base', 'lost_contribution');
		expect(lost).toBeGreaterThan(0);
		expect(lost).toBeLessThan(open * 1e6 * best);
	});

	it('says how much of the gain may fail to come before the case is worth nothing', () => {
		const share = number('new_line', 'gain_case_can_lose') / 100;
		const gain =
			number('new_line', 'npv_of_part', 'cash_gain') +
			number('new_line', 'npv_of_part', 'cash_tax');
		expect(number('new_line', 'npv') - share * gain).toBeCloseTo(0, 3);
		expect(() => number('new_rewinder', 'gain_case_can_lose')).toThrow('state 1');
	});
});

describe('scenarios side by side', () => {
	it('add three lines on weekends to the hours of seven: 48 h more, 51 weekends', () => {
		expect(number('base', 'lines_scheduled')).toBeCloseTo(7 * 5808, 6);
		expect(number('weekend_crews', 'lines_scheduled')).toBeCloseTo(7 * 5808 + 3 * 51 * 48, 6);
	});

	it('weigh the factory cost with the metres made', () => {
		const metres = workbook.row('base', 'good_metres');
		const costs = workbook.row('base', 'cost_per_metre');
		const spent = sum(metres.map((metre, i) => metre * costs[i]!));
		expect(number('base', 'mean_factory_cost')).toBeCloseTo(spent / sum(metres), 9);
	});

	it('weigh the premium and the tariff with the hours scheduled', () => {
		expect(number('base', 'premium_of_lines')).toBeCloseTo(
			number('base', 'average_premium', '5x24'),
			6
		);
		expect(number('base', 'tariff_of_lines')).toBeCloseTo(
			number('base', 'average_tariff', '5x24'),
			9
		);
		expect(number('weekend_crews', 'premium_of_lines')).toBeGreaterThan(
			number('base', 'premium_of_lines')
		);
	});

	it('bridge from EBIT to EBIT without a rest', () => {
		for (const id of ['base', 'weekend_crews', 'new_line', 'better_gauging']) {
			const parts = [
				...['shift_labour', 'overheads', 'weekly_start_cost', 'site_energy'],
				...['stock_cost_today', 'option_depreciation']
			];
			const rest = parts.reduce(
				(left, name) => left - number(id, name),
				number(id, 'contribution_today') - number(id, 'ebit')
			);
			expect(rest).toBeCloseTo(0, 3);
		}
	});
});

it('the three starting views show what each reader looks for, in their order', () => {
	const opened = loadWorkbook(readFileSync(PATH, 'utf8'), PATH);
	const starts = opened.ok ? (opened.workbook.starts ?? []) : [];
	const shown = new Map(
		starts.map(({ id, findings }) => [
			id,
			findings.map((finding) =>
				finding.kind === 'picture' ? finding.picture : finding.quantities[0]
			)
		])
	);
	expect(shown.get('manager')).toEqual([
		'fullest_line',
		'unmet_metres',
		'capacity',
		'ways_out',
		'npv',
		'payback'
	]);
	expect(shown.get('commercial')?.slice(0, 5)).toEqual([
		'quote_product',
		'quote_floor',
		'ladder_floor',
		'coil_floor',
		'quote_validity'
	]);
	expect(shown.get('finance')?.slice(0, 2)).toEqual(['patterns', 'idle_capacity_cost']);
	expect(shown.get('finance')).toContain('bridge');
	// Everyone keeps what is decided with: a scenario in hand.
	for (const { facts } of starts)
		expect(facts?.filter((fact) => fact.of === 'in_hand')).toHaveLength(1);
});
