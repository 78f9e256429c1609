import { describe, expect, it } from 'vitest';
import { layOut } from '$lib/engine/layout';
import {
	askedWith,
	choicesFor,
	enterWith,
	otherwise,
	standing,
	type Reader
} from '$lib/ui/members/comes-with';
import { copyIn } from '$lib/ui/members/only-in';
import { UnitSystem } from '$lib/units/system';
import { apply, openShipped, read } from '../../reference/shipped';

const model = openShipped('marram');
const { workbook } = model;
const units = UnitSystem.create(workbook.units ?? []).system;
const layout = layOut(workbook);
const lines = workbook.sets.find(({ name }) => name === 'line')!;
const asked = askedWith(layout, lines);
const readerIn = (locale = 'en-GB'): Reader => ({
	...{ workbook, layout, units, locale, results: model.results('base'), like: 'L6' }
});
const entered = (typed: Record<string, string>, locale?: string) =>
	enterWith(readerIn(locale), { scenario: 'with_l9', member: 'L9' }, asked, typed);

describe('what one more line calls for', () => {
	it('is its speed, people, outlay, start, first month and life, and nothing where the set names nothing', () => {
		expect(asked.map(({ quantity }) => quantity.name)).toEqual([
			...['own_speed_ratio', 'other_operators'],
			...['other_outlay', 'other_start', 'other_first_month', 'life_without_option']
		]);
		// No line has a speed of its own: the plant's holds for it.
		const held = asked.map((place) => standing(readerIn(), place));
		expect(held).toEqual(['93', '0', '0', '0', 'January', '5']);
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

	it('may be a choice, one of its members: the month from which it runs', () => {
		const month = asked.find(({ quantity }) => quantity.name === 'other_first_month')!;
		expect(choicesFor(readerIn(), month)[6]).toEqual({ id: 'Jul', label: 'July' });
		expect(choicesFor(readerIn(), asked[0]!)).toEqual([]);
		expect(entered({ other_first_month: 'Jul' })).toEqual([
			{
				...{ kind: 'set_inputs', scenario: 'with_l9' },
				entries: [{ quantity: 'other_first_month', at: [], value: 'Jul' }]
			}
		]);
		expect(entered({ other_first_month: 'Jly' })).toMatch(/^Other investment runs from: /);
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
		const where = { scenario: made.scenario, member: 'L9' };
		const costs = enterWith(readerIn(), where, asked, {
			...{ own_speed_ratio: '*0.9', other_operators: '1' },
			...{ other_outlay: '1500000', life_without_option: '10' }
		});
		if (typeof costs === 'string') throw new Error(costs);
		apply(model, { kind: 'several', commands: [...made.commands, ...costs] });
		expect(read(model, 'outlay', { scenario: 'with_l9' })).toBe(1_500_000);
		expect(read(model, 'investment_missing', { scenario: 'with_l9' })).toBe(0);
		expect(read(model, 'other_outlay')).toBe(0);
		// Ten per cent slower than the line that it is like; that one, and the base, run as they did.
		const slower = { scenario: 'with_l9' };
		expect(read(model, 'speed_ratio_of_line', 'L9', slower)).toBeCloseTo(83.7, 9);
		expect(read(model, 'speed_ratio_of_line', 'L6', slower)).toBe(93);
		const manned = (scenario: string) =>
			read(model, 'posts_in_use', 'extrusion operator', { scenario });
		expect(manned('with_l9')).toBe(manned('base') + 1);
	});
});

describe('a line that is otherwise in a scenario', () => {
	const numbers = readerIn();

	it('is so there alone: worn by 8 %, and not the base', () => {
		const made = otherwise(numbers, 'L6 worn', asked, { own_speed_ratio: '*0.92' });
		if (typeof made === 'string') throw new Error(made);
		expect(made.scenario).toBe('l6_worn');
		const other = openShipped('marram');
		apply(other, { kind: 'several', commands: [...made.commands] });
		const worn = { scenario: 'l6_worn' };
		expect(read(other, 'speed_ratio_of_line', 'L6', worn)).toBeCloseTo(0.92 * 93, 9);
		expect(read(other, 'speed_ratio_of_line', 'L5', worn)).toBe(93);
		expect(read(other, 'speed_ratio_of_line', 'L6')).toBe(93);
	});

	it('says what is missing where nothing is, and what cannot be read', () => {
		expect(otherwise(numbers, 'x', asked, {})).toMatch(/^Nothing is otherwise yet/);
		expect(otherwise(numbers, 'x', asked, { own_speed_ratio: 'slow' })).toMatch(
			/^Running speed over technical limit/
		);
	});
});
