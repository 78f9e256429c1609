/** The month-end of the shipped workbook: variances add up to result less budget, whatever came. */
import { describe, expect, it } from 'vitest';
import { enter, openShipped, read } from '../reference/shipped';
import { WorkbookFigures } from './workbook-figures';

const figures = new WorkbookFigures('scenarios/marram-coil-works.json');
const of = (name: string, ...at: string[]) => figures.number('base', name, ...at);

describe('the month as shipped', () => {
	it('is budgeted as a twelfth of the year', () => {
		expect(of('budget_result')).toBeCloseTo(of('ebit') / 12, 6);
	});

	it('is explained to the cent, in every scenario', () => {
		for (const id of ['base', 'weekend_crews', 'new_line', 'better_gauging']) {
			const sum = figures.row(id, 'variance_amount').reduce((all, one) => all + one, 0);
			expect(sum, id).toBeCloseTo(figures.number(id, 'variance_in_all'), 6);
		}
	});

	it('says in words which way each variance goes', () => {
		expect(of('variance_amount', 'usage_giveaway')).toBeLessThan(0);
		expect(figures.member('base', 'variance_reads', 'usage_giveaway')).toBe('adverse');
		expect(of('variance_amount', 'capacity')).toBeGreaterThan(0);
		expect(figures.member('base', 'variance_reads', 'capacity')).toBe('favourable');
	});
});

describe('each cause moves its own variance', () => {
	const model = openShipped('marram');
	const variances = model.layout.sets.get('variance')!.members.map(({ id }) => id);
	const amounts = () => variances.map((variance) => read(model, 'variance_amount', variance));

	it.each([
		['a price obtained', 'actual_net_price', ['PX15B'], ['selling_price']],
		['a heavier metre', 'actual_mass_per_metre', ['PB15B'], ['usage_giveaway', 'usage_scrap']],
		['more dosed', 'actual_dosed', ['RT15B'], ['price_of_material', 'usage_scrap']],
		['a dearer resin', 'actual_material_price', ['PB1'], ['price_of_material']],
		['slower lines', 'actual_line_hours', ['L4'], ['efficiency', 'capacity']],
		['dearer hours', 'actual_hour_cost', ['shift leader'], ['rate']],
		['more hours paid', 'actual_paid_hours', ['shift leader'], ['rate', 'paid_hours']],
		['a repair', 'actual_overhead', ['maintenance'], ['overhead_spend']],
		['a dearer kilowatt hour', 'actual_process_energy', [], ['variable_spend']],
		[
			'metres made on another line',
			'actual_metres',
			['PX15P', 'L1'],
			['selling_price', 'volume', 'mix', 'usage_giveaway', 'usage_scrap', 'variable_spend']
		]
	] as const)('%s', (_cause, quantity, at, expected) => {
		const before = amounts();
		const total = read(model, 'variance_in_all');
		enter(model, [quantity, at, read(model, quantity, ...at) * 1.005]);
		const moved = variances.filter((_, i) => Math.abs(amounts()[i]! - before[i]!) > 1e-6);
		expect(moved).toEqual(expect.arrayContaining([...expected]));
		const explained = amounts().reduce((sum, amount, i) => sum + amount - before[i]!, 0);
		expect(explained).toBeCloseTo(read(model, 'variance_in_all') - total, 6);
		if (quantity !== 'actual_metres') expect(moved).toHaveLength(expected.length);
	});
});
