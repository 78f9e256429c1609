import * as formulajs from '@formulajs/formulajs';
import { HyperFormula } from 'hyperformula';
import { FUNCTION_WORDS } from '$lib/formula/function-words';
import { describe, expect, it } from 'vitest';
import { argumentGathers, findFunction, FUNCTIONS } from '$lib/formula/functions';
import { parseFormula } from '$lib/formula/parse';

const elsewhere = new Set([
	...HyperFormula.getRegisteredFunctionNames('enGB'),
	...Object.keys(formulajs)
]);
const all = [...FUNCTIONS.values()];

describe('the table of functions', () => {
	it('holds these, each once', () => {
		const aggregates =
			'SUM MIN MAX AVERAGE COUNT PRODUCT ANY ALL STDEV MEDIAN NPV IRR MIRR RANK ARGMIN ARGMAX FIRST LAST PAYBACK PERCENTILE SLOPE INTERCEPT';
		const scalars =
			'IF AND OR NOT IFERROR TRUE FALSE ABS SQRT EXP LN PI ROUND ROUNDUP ROUNDDOWN CEILING FLOOR MOD ORD NUMBER SPAN DATE YEAR MONTH DAY WEEKDAY ISOWEEKNUM MEMBER NORMDIST NORMINV';
		const named = (kind: string) =>
			all
				.filter((spec) => spec.kind === kind)
				.map(({ name }) => name)
				.sort();
		expect(named('aggregate')).toEqual(aggregates.split(' ').sort());
		expect(named('scalar')).toEqual(scalars.split(' ').sort());
	});

	it.each(all.filter(({ standard }) => standard).map(({ name }) => name))(
		'%s is called so in OpenFormula: another library that follows it knows the name',
		(name) => {
			expect(elsewhere.has(name)).toBe(true);
		}
	);

	it.each(all.filter(({ standard }) => !standard).map(({ name }) => name))(
		'%s is our own: neither library knows it',
		(name) => {
			expect(elsewhere.has(name)).toBe(false);
		}
	);

	it.each(all)('$name has a sentence of help', ({ name, signature }) => {
		expect(FUNCTION_WORDS[name].help).toMatch(/^\S.*\.$/);
		expect(signature.startsWith(`${name}(`)).toBe(true);
	});

	it.each(all)('$name can be called as its signature says', ({ name, minimum, signature }) => {
		for (const written of signature.split(' or ')) {
			const text = written.replace('; …', '');
			expect(parseFormula(text), text).toMatchObject({
				ok: true,
				expression: { kind: 'call', name }
			});
		}
		const fewer = Array.from({ length: minimum - 1 }, () => 'x').join('; ');
		if (minimum > 0)
			expect(parseFormula(`${name}(${fewer})`)).toMatchObject({
				problem: { code: 'argument-count' }
			});
	});

	it('finds a function in any case', () => {
		expect(findFunction('sUm')?.name).toBe('SUM');
		expect(findFunction('toString')).toBeUndefined();
	});

	it('says which argument of an aggregate gathers and which are parameters', () => {
		const gathering = (name: string, count: number) =>
			Array.from({ length: count }, (_, place) => argumentGathers(FUNCTIONS.get(name)!, place));
		expect(gathering('SUM', 2)).toEqual([true, true]);
		expect(gathering('NPV', 2)).toEqual([false, true]);
		expect(gathering('RANK', 2)).toEqual([false, true]);
		expect(gathering('MIRR', 3)).toEqual([true, false, false]);
		expect(gathering('AND', 2)).toEqual([false, false]);
		expect(FUNCTIONS.get('MIRR')!.parameters).toEqual([
			{ position: 1, name: 'finance_rate' },
			{ position: 2, name: 'reinvest_rate' }
		]);
	});
});
