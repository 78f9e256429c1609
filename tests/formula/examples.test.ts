/** The examples of the reference: each is a formula of the language that calls its function, and gives what it says. */
import { describe, expect, it } from 'vitest';
import { FUNCTION_WORDS } from '$lib/formula/function-words';
import { FUNCTIONS } from '$lib/formula/functions';
import { parseFormula } from '$lib/formula/parse';
import { exampleText, functionEntries } from '$lib/formula/reference';
import { dateText } from '$lib/workbook/date-text';
import { computed, planOf, type Part, type Shop } from '../engine/plan-builder';

const numbered = (ids: readonly string[], from: number) =>
	ids.map((id, i) => ({ id, number: from + i }));

/** What the examples read: a pipe of layers, a year of months, a purchase. */
const shop = (x: Omit<Part, 'name'>): Shop => ({
	sets: {
		layer: ['inner', 'outer'],
		stage: ['extrude', 'coil'],
		month: { spans: '1 year', members: numbered(['jan', 'feb', 'mar'], 1) },
		year: { number_unit: 'year', members: numbered(['y0', 'y1', 'y2'], 0) }
	},
	quantities: {
		mass: { per: ['layer'], unit: 'kg', value: { inner: 0.1, outer: 0.2 } },
		thickness: { per: ['layer'], unit: 'mm', value: { inner: 1.5, outer: 0.3 } },
		scrap: { per: ['stage'], unit: '%', value: { extrude: 3, coil: 1 } },
		stock: { per: ['month'], unit: 'm', value: { jan: 50, feb: -20, mar: 10 } },
		output: { per: ['month'], unit: 'm', value: { jan: 500, feb: 200, mar: 100 } },
		energy: { per: ['month'], unit: 'kWh', value: { jan: 900, feb: 500, mar: 400 } },
		cash: { per: ['year'], unit: 'EUR', value: { y0: -100, y1: 80, y2: 90 } },
		total: { unit: 'm', value: 120 },
		x
	}
});
const KINDS: readonly Omit<Part, 'name'>[] = [
	...['1', 'm', 'mm', 'kg', 'kWh', 'kWh/m', 'EUR', 'year', 'm/year', 'pallet', 'day'].map(
		(unit) => ({ unit })
	),
	{ type: 'yes_no' },
	{ type: { member_of: 'month' } },
	{ per: ['month'], unit: '1' }
];

describe('the example of a function', () => {
	it.each(Object.entries(FUNCTION_WORDS))(
		'%s calls it and is proven',
		(name, { example: { formula } }) => {
			expect(parseFormula(formula)).toMatchObject({ ok: true });
			expect(formula).toContain(`${name}(`);
			const proven = KINDS.filter(
				(kind) => planOf(shop({ ...kind, formula })).problems.length === 0
			);
			const problems = () => planOf(shop({ ...KINDS[0]!, formula })).problems;
			expect(proven, JSON.stringify(problems())).not.toEqual([]);
			const [kind] = proven;
			const members = kind?.per ? ['jan'] : [];
			expect(typeof computed(shop({ ...kind!, formula }), 'x', ...members)).toBe('number');
		}
	);

	const giving = Object.values(FUNCTION_WORDS)
		.map(({ example }) => example)
		.filter(({ gives }) => gives !== undefined);
	it.each(giving)('$formula gives $gives', ({ formula, gives }) => {
		const [figure, unit] = gives!.split(' ');
		if (figure === 'yes' || figure === 'no') {
			expect(computed(shop({ type: 'yes_no', formula }), 'x')).toBe(figure === 'yes' ? 1 : 0);
		} else if (/^\d{4}-/.test(gives!)) {
			expect(dateText(computed(shop({ unit: 'day', formula }), 'x') as number)).toBe(gives);
		} else {
			const value = computed(shop({ ...(unit ? { unit } : {}), formula }), 'x') as number;
			expect(String(Number(value.toPrecision(10)))).toBe(figure);
		}
	});
});

it('every function is in the reference, with how many arguments it takes', () => {
	const entries = functionEntries();
	expect(entries.map(({ name }) => name)).toEqual([...FUNCTIONS.keys()]);
	expect(entries.find(({ name }) => name === 'ROUND')).toEqual({
		name: 'ROUND',
		kind: 'scalar',
		arguments: { minimum: 1, maximum: 2 },
		signature: 'ROUND(x; digits)',
		help: 'x to so many digits after the point, a half away from zero.',
		standard: true,
		example: { formula: 'ROUND(1.005; 2)', gives: '1.01' }
	});
	expect(entries.find(({ name }) => name === 'SUM')!.arguments.maximum).toBeNull();
	expect(exampleText(FUNCTION_WORDS.ROUND.example)).toBe('ROUND(1.005; 2) gives 1.01');
});
