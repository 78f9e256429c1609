import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseFormula } from '$lib/formula/parse';
import { printFormula } from '$lib/formula/print';
import { referencedNames, renameInExpression, renameInText } from '$lib/formula/rename';
import type { Expression } from '$lib/formula/tree';
import { expressionArbitrary } from './arbitrary';

function read(text: string): Expression {
	const result = parseFormula(text);
	if (!result.ok) throw new Error(result.problem.message);
	return result.expression;
}

describe('renaming a quantity or a set', () => {
	it("keeps the author's spacing, brackets and the rest", () => {
		expect(renameInText('=  speed*( speed+2[h] )', 'speed', 'line_speed')).toBe(
			'=  line_speed*( line_speed+2[h] )'
		);
	});

	it.each([
		['cash[year - 1 else cash0]', 'year', 'yr', 'cash[yr - 1 else cash0]'],
		['SUM(x over l in line × line)', 'line', 'machine', 'SUM(x over l in machine × machine)'],
		['stage.rewind + stage', 'stage', 'step', 'step.rewind + step'],
		['price[material[layer]]', 'material', 'stuff', 'price[stuff[layer]]'],
		['SUM(x where y = 1 else z)', 'y', 'v', 'SUM(x where v = 1 else z)']
	])('%s: %s becomes %s', (text, from, to, expected) => {
		expect(renameInText(text, from, to)).toBe(expected);
	});

	it('leaves members, units, functions and words alone', () => {
		const text = "stage.line + hours['line'] + 2[line] + SUM(x over line)";
		expect(renameInText(text, 'line', 'machine')).toBe(
			"stage.line + hours['line'] + 2[line] + SUM(x over machine)"
		);
		expect(renameInText('MAX(a; MAX)', 'MAX', 'most')).toBe('MAX(a; most)');
	});

	it('an index that one argument gathers is known in the argument it is paired with', () => {
		expect(renameInText('l + SLOPE(y[l]; x[l] over l in layer)', 'l', 'load')).toBe(
			'load + SLOPE(y[l]; x[l] over l in layer)'
		);
	});

	it('leaves an index of the same name alone, inside its aggregate only', () => {
		expect(renameInText('l + SUM(x[l] over l in layer where l > 1 else l)', 'l', 'load')).toBe(
			'load + SUM(x[l] over l in layer where l > 1 else load)'
		);
	});

	it('moves an index out of the way that bears the new name', () => {
		expect(renameInText('SUM(x[l] * load over l in layer)', 'load', 'l')).toBe(
			'SUM(x[l_2] * l over l_2 in layer)'
		);
	});

	it('changes a text that cannot be read word by word', () => {
		expect(renameInText("load + (load * stage.load + 'load'", 'load', 'use')).toBe(
			"use + (use * stage.load + 'load'"
		);
	});
});

describe('renaming a member', () => {
	it('finds it bare, in quotes and after its set, and gives it the quotes it needs', () => {
		const text = "a[L2] + b['L2'] + line.L2 + line.'L2'";
		expect(renameInText(text, 'L2', 'L 2', { as: 'member' })).toBe(
			"a['L 2'] + b['L 2'] + line.'L 2' + line.'L 2'"
		);
	});

	it('is meant when the old name could be no quantity', () => {
		expect(renameInText("hours['5x24']", '5x24', '6x24')).toBe("hours['6x24']");
	});

	it('leaves the member of another set alone', () => {
		const options = { as: 'member', set: 'year' } as const;
		expect(renameInText('year.y1 + plan_year.y1', 'y1', 'first', options)).toBe(
			'year.first + plan_year.y1'
		);
		const only = { as: 'member', only: () => false } as const;
		expect(renameInText('x[y1]', 'y1', 'first', only)).toBe('x[y1]');
	});

	it('leaves quantities with members, sets and indices alone', () => {
		const text = 'y1[a] + SUM(x[y1] over y1 in year)';
		expect(renameInText(text, 'y1', 'first', { as: 'member' })).toBe(text);
	});
});

describe('the names that a formula uses', () => {
	it('are its quantities, sets and members, without its own indices', () => {
		const tree = read(
			"SUM(mass[l] * price['HDPE 1'] over l in layer where l > first) + x[month - 1]"
		);
		expect([...referencedNames(tree)].sort()).toEqual(
			['mass', 'price', 'HDPE 1', 'layer', 'first', 'x', 'month'].sort()
		);
	});

	it('include one that is also an index elsewhere', () => {
		expect(referencedNames(read('l + SUM(x[l] over l in layer)'))).toContain('l');
		expect(referencedNames(read('SUM(x[l] over l in layer)'))).not.toContain('l');
	});
});

describe('renaming there and back', () => {
	const names = ['a', 'b', 'layer', 'line'];
	const trees = expressionArbitrary({ names }).filter((tree) => printFormula(tree).length < 4000);

	it('gives the same formula', () => {
		fc.assert(
			fc.property(trees, fc.constantFrom(...names), (tree, name) => {
				const there = renameInExpression(tree, name, 'never_used');
				expect(referencedNames(there).has('never_used')).toBe(
					printFormula(there) !== printFormula(tree)
				);
				expect(printFormula(renameInExpression(there, 'never_used', name))).toBe(
					printFormula(tree)
				);
			})
		);
	});

	it('never lets an index catch the new name', () => {
		fc.assert(
			fc.property(trees, fc.constantFrom(...names), fc.constantFrom(...names), (tree, from, to) => {
				fc.pre(from !== to && !referencedNames(tree).has(to));
				const there = renameInExpression(tree, from, to);
				const meant = renameInExpression(tree, from, 'never_used');
				expect(referencedNames(there).has(to)).toBe(referencedNames(meant).has('never_used'));
			})
		);
	});
});
