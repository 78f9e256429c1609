import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseFormula } from '$lib/formula/parse';
import { printFormula } from '$lib/formula/print';
import { FORMULA_LIMITS, tokenize } from '$lib/formula/tokens';
import { referencedNames, renameInText } from '$lib/formula/rename';

const real = [
	'wall_min + eccentricity[gauging] + k_factor * SQRT(wall_sigma[gauging]^2 + gauge_u[gauging]^2)',
	'PI() * (layer_od - layer_thickness) * layer_thickness * density[layer_material]',
	'SUM(layer_mass over layer where extruder_of_layer = extruder)',
	'IF(extruder_load[tie] = 0; 9999[m/min]; max_output[tie] * run_at[tie] / extruder_load[tie])',
	"SUM(works * 1[day] over day where AND(month_of_day = month; weekday = 'day 1'))",
	'(running_speed - restart_scrap / (pipe_mass * mtbf)) * (1 - run_scrap) * (1 - 2.5%)',
	'MAX(0; share * MAX(revenue - revenue[reference] over plan_year where plan_year > today))',
	'cumulative[year - 1 else 0] + cash',
	'SUM(layer_thickness[l] over l in layer × p in product where l > layer else 0[mm])',
	'cash[year_0] + NPV(wacc; cash over year where year > year_0)'
];

function examine(text: string): void {
	const result = parseFormula(text);
	if (result.ok) {
		expect(parseFormula(printFormula(result.expression)).ok).toBe(true);
		referencedNames(result.expression);
		return;
	}
	const { span, message } = result.problem;
	expect(span.start).toBeGreaterThanOrEqual(0);
	expect(span.end).toBeGreaterThanOrEqual(span.start);
	expect(span.end).toBeLessThanOrEqual(text.length);
	expect(message).toMatch(/^\S.*[.?]$/su);
	expect(message.length).toBeLessThanOrEqual(400);
	expect(message).not.toMatch(/undefined|NaN|null|\[object/);
}

describe('whatever is typed', () => {
	it.each(real)('%s can be read', (text) => {
		expect(parseFormula(text)).toMatchObject({ ok: true });
	});

	it('gets a tree, or a sentence and a place inside the text', () => {
		fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 60 }), examine), {
			numRuns: 2000
		});
	});

	it('in the letters of the language as well', () => {
		const letters = [...'ab1205.,;:()[]+-*/^%=<>"\'&|!{}$ ×·÷−≤≥≠²\n', ' over ', ' where ', ' in '];
		const words = [' else ', 'base', 'SUM(', 'IF(', 'x[', 'm - 1', '5[kg]', "'5x24'", '1e9', '_'];
		const text = fc.array(fc.constantFrom(...letters, ...words), { maxLength: 25 });
		fc.assert(
			fc.property(text, (parts) => examine(parts.join(''))),
			{ numRuns: 5000 }
		);
	});

	it('and in real formulas with a few characters lost, doubled, swapped or cut', () => {
		const change = fc.record({
			at: fc.nat(200),
			length: fc.nat(4),
			with: fc.constantFrom(
				'',
				' ',
				'(',
				')',
				'[',
				']',
				';',
				',',
				'-',
				'^',
				'x',
				'1',
				'in',
				"'",
				'é'
			)
		});
		const mutated = fc
			.tuple(fc.constantFrom(...real), fc.array(change, { minLength: 1, maxLength: 4 }))
			.map(([text, changes]) =>
				changes.reduce((now, { at, length, with: put }) => {
					const place = at % (now.length + 1);
					return now.slice(0, place) + put + now.slice(place + length);
				}, text)
			);
		fc.assert(fc.property(mutated, examine), { numRuns: 4000 });
	});

	it('is renamed, readable or not, without losing a word', () => {
		fc.assert(
			fc.property(fc.string({ unit: 'binary', maxLength: 40 }), (text) => {
				expect(renameInText(`${text} x`, 'no_such_name', 'y')).toBe(`${text} x`);
			})
		);
	});
});

describe('a formula beyond all measure is refused by name', () => {
	const cases: readonly (readonly [what: string, text: string, code: string])[] = [
		['100 KB', `1${' + 1'.repeat(25_000)}`, 'too-long'],
		['10,000 round brackets', '('.repeat(10_000), 'too-long'],
		['4,000 round brackets', '('.repeat(4000), 'too-deep'],
		['closed brackets', `${'('.repeat(3000)}x${')'.repeat(3000)}`, 'too-deep'],
		['square brackets', `${'x['.repeat(2000)}m${']'.repeat(2000)}`, 'too-deep'],
		['calls', `${'ABS('.repeat(1000)}x${')'.repeat(1000)}`, 'too-deep'],
		['signs', `${'-'.repeat(4900)}x`, 'too-deep'],
		['percents', `5${'%'.repeat(4900)}`, 'too-deep'],
		['a sum', `1${'+1'.repeat(2000)}`, 'too-deep'],
		['more than 5,000 parts', 'SUM(' + '1;'.repeat(3000), 'too-many-parts'],
		['one long name', `${'x'.repeat(7000)} y`, 'missing-operator'],
		['digits', '9'.repeat(7000), 'bad-number'],
		['a name of 7,000 letters before (', `${'x'.repeat(7000)}(1)`, 'unknown-function'],
		[
			'text that would outgrow the limit when saved',
			`MAX(${'1;'.repeat(2400)}${'a'.repeat(3000)})`,
			'too-long'
		]
	];
	it.each(cases)('%s', (_what, text, code) => {
		const result = parseFormula(text);
		expect(result).toMatchObject({ ok: false, problem: { code } });
		examine(text);
	});

	it('and just below the limits it is read', () => {
		const { nesting, height, characters } = FORMULA_LIMITS;
		expect(parseFormula(`${'('.repeat(nesting)}x${')'.repeat(nesting)}`).ok).toBe(true);
		expect(parseFormula(`${'('.repeat(nesting + 1)}x${')'.repeat(nesting + 1)}`).ok).toBe(false);
		expect(parseFormula(`1${'+1'.repeat(height - 1)}`).ok).toBe(true);
		expect(parseFormula(`1${'+1'.repeat(height)}`).ok).toBe(false);
		expect(parseFormula('x'.repeat(characters)).ok).toBe(true);
		expect(parseFormula('x'.repeat(characters + 1)).ok).toBe(false);
	});

	it('and its tokens end at the first that has no meaning', () => {
		expect(tokenize('a # b').map(({ kind }) => kind)).toEqual(['name', 'bad']);
	});
});
