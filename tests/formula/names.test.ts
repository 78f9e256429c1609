import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { freshName, isName, nearest, quoteIfNeeded, RESERVED } from '$lib/formula/names';
import { parseFormula } from '$lib/formula/parse';
import { memberArbitrary } from './arbitrary';

describe('a name', () => {
	it.each(['a', 'L2', 'wall_set_point', 'Größe', 'сталь', '壁厚', 'constructor'])(
		'is %s',
		(text) => {
			expect(isName(text)).toBe(true);
		}
	);

	it.each(['', '5x24', '_a', 'a b', 'a-b', 'a.b', "a'", ' a', 'a\n', '__proto__'])(
		'is not "%s"',
		(text) => {
			expect(isName(text)).toBe(false);
		}
	);
});

describe('a member in a formula', () => {
	it('stands bare if it reads as a name, else in quotes', () => {
		expect(quoteIfNeeded('PX15B')).toBe('PX15B');
		expect(quoteIfNeeded('5x24')).toBe("'5x24'");
		expect(quoteIfNeeded('over')).toBe("'over'");
	});

	it('is read back as itself, whatever its letters', () => {
		fc.assert(
			fc.property(memberArbitrary, (id) => {
				expect(parseFormula(quoteIfNeeded(id))).toMatchObject({
					ok: true,
					expression: { kind: 'reference', name: id, qualifier: null }
				});
			})
		);
	});

	it.each([...RESERVED])('called %s needs its quotes', (word) => {
		expect(parseFormula(`x[${quoteIfNeeded(word)}]`)).toMatchObject({ ok: true });
		expect(parseFormula(`1 + ${word}`)).toMatchObject({ ok: false });
	});
});

describe('the nearest name', () => {
	const known = ['mass_per_metre', 'line_speed', 'load', 'cost_per_coil', 'cost_per_metre', 'L1'];

	it.each([
		['mas_per_metre', 'mass_per_metre'],
		['line_sepeed', 'line_speed'],
		['laod', 'load'],
		['LOAD', 'load'],
		['cost_per_coils', 'cost_per_coil'],
		['L2', 'L1']
	])('to %s is %s', (typed, meant) => {
		expect(nearest(typed, known)).toBe(meant);
	});

	it.each(['revenue', 'x', 'speed', ''])('to "%s" is none of them', (typed) => {
		expect(nearest(typed, known)).toBeUndefined();
	});

	it('is itself if it is known, before one that differs in case', () => {
		expect(nearest('load', ['Load', 'load'])).toBe('load');
	});

	it('counts a swap of neighbours as one mistake', () => {
		// SUM to MUS: two letters changed; a third of three letters is one.
		expect(nearest('MUS', ['SUM'])).toBeUndefined();
		// one swap of neighbours
		expect(nearest('SMU', ['SUM'])).toBe('SUM');
	});
});

describe('a fresh name', () => {
	it('is the one wanted, or the first number that is free', () => {
		expect(freshName('l', new Set())).toBe('l');
		expect(freshName('l', new Set(['l', 'l_2']))).toBe('l_3');
		expect(freshName('over', new Set())).toBe('over_2');
	});
});
