/** `functions` and `units`: the reference on the command line. */
import { expect, it } from 'vitest';
import { FUNCTION_WORDS } from '$lib/formula/function-words';
import { FUNCTIONS } from '$lib/formula/functions';
import { KNOWN } from '$lib/units/known';
import { answer } from '../../src/cli/answer';

it('functions lists every function with its help and an example', async () => {
	const { out, code } = await answer(['functions']);
	expect(code).toBe(0);
	for (const { name, signature } of FUNCTIONS.values())
		expect(out).toContain(`${signature}\n    ${FUNCTION_WORDS[name].help}`);
	expect(out).toContain('    For example: ROUND(1.005; 2) gives 1.01\n');
	const { out: json } = await answer(['functions', '--json']);
	expect(JSON.parse(json)).toHaveLength(FUNCTIONS.size);
});

it('functions NAME says what one does, in any case of letters', async () => {
	const { out, code } = await answer(['functions', 'irr']);
	expect(code).toBe(0);
	expect(out).toBe(
		'IRR(cash over set)\n    The rate of return at which the present value is zero, where there is exactly one.\n    For example: IRR(cash over year)\n'
	);
	expect((await answer(['functions', 'ARGMIN'])).out).toContain('Not in OpenFormula.');
	expect(JSON.parse((await answer(['functions', 'IRR', '--json'])).out)).toMatchObject({
		name: 'IRR',
		standard: true
	});
});

it('a function that is not there is advised on as in a formula', async () => {
	expect(await answer(['functions', 'SUMIF'])).toEqual({
		out: '',
		err: 'There is no function SUMIF. There are no cells here: write SUM(x where …).',
		code: 2
	});
	expect((await answer(['functions', 'SUMM'])).err).toContain('Did you mean SUM?');
	expect((await answer(['functions', 'SUM', 'MIN'])).err).toContain('takes one name');
});

it('units lists every unit; one is found by its other spelling too', async () => {
	const { out, code } = await answer(['units']);
	expect(code).toBe(0);
	for (const { symbol, label } of KNOWN)
		expect(out).toMatch(new RegExp(`^  ${symbol} +${label.replace(/[()]/g, '\\$&')} `, 'm'));
	expect(JSON.parse((await answer(['units', '€', '--json'])).out)).toEqual({
		symbol: 'EUR',
		label: 'euro',
		measures: 'money',
		dimension: 'EUR',
		factor: 1,
		aliases: ['€']
	});
	expect((await answer(['units', 'min'])).out).toContain('60 s');
});

it('a unit that is not there is advised on', async () => {
	expect(await answer(['units', 'hours'])).toEqual({
		out: '',
		err: 'Unknown unit "hours". Write h.',
		code: 2
	});
	expect((await answer(['units', 'EUR/kg'])).err).toBe(
		'EUR/kg is made of several symbols: ask for one of them.'
	);
});
