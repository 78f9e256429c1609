/** What a column may be chosen to mean, what is decided of a name, and the look in one line. */
import { describe, expect, it } from 'vitest';
import type { Mapping, Meaning } from '$lib/exchange/table/mapping';
import { decisionOf, decisionOptions } from '$lib/ui/files/member-decisions';
import {
	intoScenario,
	meaningOf,
	optionsFor,
	scenarioOf,
	textOf,
	withColumn,
	withMeaning
} from '$lib/ui/files/meanings';
import { openShipped } from '../reference/shipped';

const { workbook } = openShipped('shop');
const column = (meaning: Meaning) => ({ meaning, unit: '', decimal: null, dayFirst: null });
const value = (quantity: string | null, scenario = 'base'): Meaning => ({
	is: 'value',
	scenario,
	quantity,
	member: null
});
const asked: Meaning = { is: 'asked', between: ['price', 'coil_length'] };
const mapping: Mapping = {
	quantity: null,
	columns: [{ is: 'member', of: 'product' } as const, value('demand'), asked].map(column)
};

describe('the choices for a column', () => {
	it('hold the inputs by sheet that the rows name a thing for, and no others', () => {
		const options = optionsFor(workbook, mapping, { is: 'nothing' });
		const values = options.filter(({ group }) => group?.startsWith('Values: '));
		expect(values.map(({ text, group }) => `${group} / ${text}`)).toEqual([
			'Values: Pipe / Outside diameter',
			'Values: Pipe / Minimum wall',
			'Values: Line and time / Scrap',
			'Values: Plan / Demand',
			'Values: Plan / Good metres',
			'Values: Cost and price / Standard coil length',
			'Values: Cost and price / Packaging of a coil',
			'Values: Cost and price / Net-net price'
		]);
	});

	it('begin with those that a heading fits, each once', () => {
		const options = optionsFor(workbook, mapping, asked);
		expect(options.slice(0, 4).map(({ text }) => text)).toEqual([
			'choose what it holds',
			'Net-net price',
			'Standard coil length',
			'left out'
		]);
		expect(new Set(options.map(({ value }) => value)).size).toBe(options.length);
		expect(meaningOf(options[1]!.value)).toEqual(value('price'));
	});

	it('always hold what the column means now', () => {
		for (const now of [value('resin_price'), { is: 'member', of: 'from' } as const])
			expect(optionsFor(workbook, mapping, now).map(({ value }) => value)).toContain(textOf(now));
	});
});

describe('a mapping', () => {
	it('has one column for a set at most', () => {
		const changed = withMeaning(mapping, 2, { is: 'member', of: 'product' });
		expect(changed.columns.map(({ meaning }) => meaning.is)).toEqual([
			'nothing',
			'value',
			'member'
		]);
	});

	it('puts all values with a quantity of their own into one scenario', () => {
		const other = workbook.scenarios[1]!.id;
		expect(scenarioOf(mapping, workbook)).toBe('base');
		const moved = intoScenario(mapping, other);
		expect(scenarioOf(moved, workbook)).toBe(other);
		expect(moved.columns[1]!.meaning).toEqual(value('demand', other));
		expect(moved.columns[2]!.meaning).toEqual(asked);
	});

	it('keeps the rest where a unit or a sign is chosen', () => {
		expect(withColumn(mapping, 1, { unit: 'km/year' }).columns).toEqual([
			mapping.columns[0],
			{ ...column(value('demand')), unit: 'km/year' },
			mapping.columns[2]
		]);
	});
});

describe('a name that no member has', () => {
	it('may be new, a copy, or the new name of another, the nearest first', () => {
		const name = { set: 'product', text: 'R21', label: 'PE-RT 21' };
		const options = decisionOptions(workbook, name);
		expect(options.map(({ value }) => decisionOf(value))).toEqual([
			{ as: 'left_out' },
			{ as: 'new', like: null, label: name.label },
			...['R20', 'R16'].map((like) => ({ as: 'new', like, label: name.label })),
			...['R20', 'R16'].map((from) => ({ as: 'renamed', from }))
		]);
	});
});
