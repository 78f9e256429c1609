/**
 * Which operator binds first, checked against HyperFormula 3.5 reading the same text. Left out is what the two do
 * not share: a sign before a power and a chain of powers, which are refused here.
 */
import fc from 'fast-check';
import { HyperFormula } from 'hyperformula';
import { afterAll, describe, expect, it } from 'vitest';
import { parseFormula } from '$lib/formula/parse';
import { printFormula } from '$lib/formula/print';
import type { Expression } from '$lib/formula/tree';
import { children } from '$lib/formula/walk';
import { arithmeticArbitrary } from './arbitrary';

const other = HyperFormula.buildFromArray([[]], { licenseKey: 'gpl-v3', smartRounding: false });
afterAll(() => other.destroy());

/** The value of arithmetic, or NaN as soon as any part of it has none. */
function compute(node: Expression): number {
	const parts = children(node).map(compute);
	const [left, right] = parts as [number, number];
	const value = parts.some((part) => !Number.isFinite(part))
		? Number.NaN
		: apply(node, left, right);
	return Number.isFinite(value) ? value : Number.NaN;
}

function apply(node: Expression, left: number, right: number): number {
	if (node.kind === 'number') return node.value;
	if (node.kind === 'negation') return -left;
	if (node.kind === 'percent') return left / 100;
	if (node.kind !== 'binary') throw new Error(`${node.kind} is no arithmetic`);
	if (node.operator === '+') return left + right;
	if (node.operator === '-') return left - right;
	if (node.operator === '*') return left * right;
	if (node.operator === '/') return left / right;
	// Zero to the power zero is 1 here and an error there.
	return left === 0 && right === 0 ? Number.NaN : left ** right;
}

function expectAgreement(text: string): void {
	const result = parseFormula(text);
	if (!result.ok) throw new Error(result.problem.message);
	const mine = compute(result.expression);
	fc.pre(!Number.isNaN(mine));
	const theirs = other.calculateFormula(`=${text}`, 0);
	expect(theirs, text).toBeTypeOf('number');
	expect(Math.abs(Number(theirs) - mine), text).toBeLessThanOrEqual(1e-9 * Math.abs(mine));
}

describe('operators bind as in OpenFormula', () => {
	it.each(['1+2*3', '2*3^2', '7-4-2', '24/4/2', '2^-1', '5%^2', '-5%', '1--2', '2*-3', '8/2*4'])(
		'%s',
		expectAgreement
	);

	it('in random arithmetic, printed with as few brackets as it needs', () => {
		fc.assert(
			fc.property(arithmeticArbitrary(), (tree) => expectAgreement(printFormula(tree))),
			{ numRuns: 500 }
		);
	});

	it('in random arithmetic as typed, without spaces and with brackets where they fell', () => {
		const piece = fc.constantFrom('1', '2', '3', '(4+5)', '(6-7*2)', '8%');
		const operator = fc.constantFrom('+', '-', '*', '/', '+-', '*-');
		const sum = fc
			.array(fc.tuple(operator, piece), { minLength: 1, maxLength: 8 })
			.map((rest) => `1${rest.flat().join('')}`);
		fc.assert(fc.property(sum, expectAgreement), { numRuns: 300 });
	});

	it.each(['1+1=2', '1+1<3*1', '2<>1+1', '3>=2-1', '2^2<=4', '10%>1/5'])(
		'%s: a comparison comes last',
		(text) => {
			const result = parseFormula(text);
			if (!result.ok || result.expression.kind !== 'binary') throw new Error(text);
			const { operator, left, right } = result.expression;
			const [a, b] = [compute(left), compute(right)];
			const holds = {
				'=': a === b,
				'<>': a !== b,
				'<': a < b,
				'<=': a <= b,
				'>': a > b,
				'>=': a >= b
			};
			const mine = new Map<string, boolean>(Object.entries(holds)).get(operator);
			expect(other.calculateFormula(`=${text}`, 0)).toBe(mine);
		}
	);
});
