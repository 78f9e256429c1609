import { describe, expect, it } from 'vitest';
import { layOut } from '$lib/engine/layout';
import { askedWith, enterWith, standing } from '$lib/ui/members/comes-with';
import { copyIn } from '$lib/ui/members/only-in';
import { UnitSystem } from '$lib/units/system';
import { apply, openShipped, read } from '../../reference/shipped';

const model = openShipped('marram');
const { workbook } = model;
const units = UnitSystem.create(workbook.units ?? []).system;
const layout = layOut(workbook);
const lines = workbook.sets.find(({ name }) => name === 'line')!;
const asked = askedWith(layout, lines);
const entered = (typed: Record<string, string>, locale = 'en-GB') =>
	enterWith({ workbook, layout, units, locale }, 'with_l9', asked, typed);

describe('what one more line calls for', () => {
	it('is its outlay, start and life, and nothing where the set names nothing', () => {
		expect(asked.map(({ quantity }) => quantity.name)).toEqual([
			'other_outlay',
			'other_start',
			'life_without_option'
		]);
		expect(asked.map((place) => standing(workbook, place, 'en-GB'))).toEqual(['0', '0', '5']);
		expect(askedWith(layout, workbook.sets[0]!)).toEqual([]);
	});

	it('is read as the grid reads it, with units and in the reader’s numbers; an empty field enters nothing', () => {
		const value = (typed: string, locale?: string) =>
			entered({ other_outlay: typed, other_start: ' ' }, locale);
		const outlay = (value: number) => [
			{
				...{ kind: 'set_inputs', scenario: 'with_l9' },
				entries: [{ quantity: 'other_outlay', at: [], value }]
			}
		];
		expect(value('1,500,000')).toEqual(outlay(1_500_000));
		expect(value('1.500.000', 'de-DE')).toEqual(outlay(1_500_000));
		expect(value('1500 kEUR')).toEqual(outlay(1_500_000));
		expect(entered({})).toEqual([]);
	});

	it('names the field that cannot be read', () => {
		expect(entered({ other_outlay: 'much' })).toMatch(/^Other investment: /);
		expect(entered({ life_without_option: '40' })).toMatch(/^Life of the other investment: .*12/);
	});

	it('is entered in the scenario that the copy stands in, in the same step', () => {
		const copy = {
			kind: 'add_member',
			set: 'line',
			index: 6,
			member: { id: 'L9' },
			like: 'L6'
		} as const;
		const made = copyIn(workbook, copy, 'line_installed', { in: 'new', title: 'With L9' });
		const costs = enterWith({ workbook, layout, units, locale: 'en-GB' }, made.scenario, asked, {
			other_outlay: '1500000',
			life_without_option: '10'
		});
		if (typeof costs === 'string') throw new Error(costs);
		apply(model, { kind: 'several', commands: [...made.commands, ...costs] });
		expect(read(model, 'outlay', { scenario: 'with_l9' })).toBe(1_500_000);
		expect(read(model, 'investment_missing', { scenario: 'with_l9' })).toBe(0);
		expect(read(model, 'other_outlay')).toBe(0);
	});
});
