/** Numbers that stand in formulas where a quantity of their own could. */
import { printFormula } from '$lib/formula/print';
import type { Expression, NumberLiteral } from '$lib/formula/tree';
import { children } from '$lib/formula/walk';
import type { Quantity } from '$lib/workbook/schema';
import { readFormulas, shapeOf } from './formulas';
import type { Line } from './line';

/** Functions whose arguments after the first say how, not how much; a date is made of counted parts. */
const HOW = new Set(['ROUND', 'ROUNDUP', 'ROUNDDOWN', 'WEEKDAY', 'EDATE', 'EOMONTH', 'DATE']);

export function literalLine(quantity: Quantity): Line | null {
	const { trees } = readFormulas(quantity);
	const told = trees.flatMap((tree) => {
		const found = literalsIn(tree);
		return found.length > 0 ? [{ tree, found }] : [];
	});
	if (told.length === 0) return null;
	const texts = [...new Set(told.flatMap(({ found }) => found.map(printFormula)))];
	return {
		kind: 'literal',
		quantity,
		at: [],
		scenario: null,
		what: `${listed(texts)} ${texts.length === 1 ? 'stands' : 'stand'} in the formula`,
		speaksOf: told.map(({ tree }) => shapeOf(tree)).join('\n')
	};
}

const listed = (texts: readonly string[]) =>
	texts.length > 4
		? `${texts.slice(0, 3).join(', ')} and ${texts.length - 3} more`
		: texts.join(', ');

/** What the clock and the calendar count is no assumption either. */
const COUNTED: Readonly<Record<string, readonly number[]>> = {
	...{ 's/min': [60], 'min/h': [60], 's/h': [3600], 'h/day': [24], 'day/week': [7] },
	...{ month: [12], 'month/year': [12], 'day/year': [365, 366], 'h/week': [168] }
};

/** 0, 1 and 100 % are no assumptions, and "1[h]" takes a unit away. */
function isPlain({ value, unit }: NumberLiteral): boolean {
	return value === 0 || value === 1 || (unit !== null && COUNTED[unit]?.includes(value) === true);
}

function literalsIn(expression: Expression): Expression[] {
	if (expression.kind === 'number') return isPlain(expression) ? [] : [expression];
	if (expression.kind === 'percent') {
		const { of } = expression;
		if (of.kind === 'number') return of.value === 0 || of.value === 100 ? [] : [expression];
	}
	// A square or a cube is a shape, no assumption.
	if (expression.kind === 'binary' && expression.operator === '^') {
		const { left, right } = expression;
		const isShape = right.kind === 'number' && (right.value === 2 || right.value === 3);
		return [...literalsIn(left), ...(isShape ? [] : literalsIn(right))];
	}
	if (expression.kind === 'call' && HOW.has(expression.name))
		return expression.args.slice(0, 1).flatMap(({ value }) => literalsIn(value));
	return children(expression).flatMap(literalsIn);
}
