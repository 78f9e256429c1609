/** Formulas that say something odd about themselves: a bare copy, or the same operand twice. */
import { printFormula } from '$lib/formula/print';
import type { Binary, Expression } from '$lib/formula/tree';
import { visit } from '$lib/formula/walk';
import { findQuantity } from '$lib/workbook/lookup';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { readFormulas } from './formulas';
import type { Line } from './line';

const line = (kind: 'copy' | 'twice', quantity: Quantity, what: string): Line => ({
	...{ kind, quantity, at: [], scenario: null, what, speaksOf: what }
});

/** One formula for all members that is nothing but another quantity of the same unit. */
export function copyLine(workbook: Workbook, quantity: Quantity): Line | null {
	if (typeof quantity.formula !== 'string' || quantity.where !== undefined) return null;
	const tree = readFormulas(quantity).trees[0];
	if (tree?.kind !== 'reference' || tree.indices.length > 0) return null;
	const other = findQuantity(workbook, tree.name);
	if (!other || other.type !== quantity.type) return null;
	const isSame = (other.per ?? []).join() === (quantity.per ?? []).join();
	return isSame ? line('copy', quantity, `It is nothing but ${other.label}`) : null;
}

const ALIKE = new Set(['-', '/', '=', '<>', '<', '<=', '>', '>=']);
const CHOOSING = new Set(['MIN', 'MAX', 'AND', 'OR']);

export function twiceLine(quantity: Quantity): Line | null {
	const found = new Set<string>();
	const look = (parts: readonly Expression[], words: string) => {
		const seen = new Set<string>();
		for (const part of parts) {
			if (part.kind === 'number') continue;
			const text = printFormula(part);
			if (seen.has(text)) found.add(`${text} ${words}`);
			seen.add(text);
		}
	};
	for (const tree of readFormulas(quantity).trees)
		visit(tree, (node) => {
			if (node.kind === 'call') {
				const values = node.args.filter(({ over }) => over.length === 0).map(({ value }) => value);
				if (CHOOSING.has(node.name)) look(values, `stands twice in ${node.name}`);
				if (node.name === 'IF') look(values.slice(1), 'is both answers of an IF');
			}
			if (node.kind !== 'binary') return;
			if (ALIKE.has(node.operator))
				look([node.left, node.right], `stands on both sides of ${node.operator}`);
			else if (node.operator === '+' || node.operator === '*')
				look(
					chain(node, node.operator),
					node.operator === '+' ? 'is added twice' : 'is multiplied by itself'
				);
		});
	return found.size === 0 ? null : line('twice', quantity, [...found].join('; '));
}

const chain = (expression: Expression, operator: Binary['operator']): Expression[] =>
	expression.kind === 'binary' && expression.operator === operator
		? [...chain(expression.left, operator), ...chain(expression.right, operator)]
		: [expression];
