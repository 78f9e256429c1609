import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseFormula } from '$lib/formula/parse';
import { printFormula } from '$lib/formula/print';
import type { Expression } from '$lib/formula/tree';
import { children, map, visit } from '$lib/formula/walk';
import { expressionArbitrary } from './arbitrary';

function read(text: string): Expression {
	const result = parseFormula(text);
	if (!result.ok) throw new Error(result.problem.message);
	return result.expression;
}

describe('walking a tree', () => {
	it('meets every part in the order in which it is written', () => {
		const tree = read('a[b; month - 1 else c] * -SUM(d over s where e else f%)');
		const names: string[] = [];
		visit(tree, (node) => {
			if (node.kind === 'reference') names.push(node.name);
		});
		expect(names).toEqual(['a', 'b', 'c', 'd', 'e', 'f']);
	});

	it('leaves out the parts of a node that is answered with false', () => {
		const kinds: string[] = [];
		visit(read('1 + ABS(x)'), (node) => {
			kinds.push(node.kind);
			return node.kind !== 'call';
		});
		expect(kinds).toEqual(['binary', 'number', 'call']);
	});

	it('reaches as many nodes as there are parts of parts', () => {
		const count = (node: Expression): number =>
			children(node).reduce((sum, child) => sum + count(child), 1);
		fc.assert(
			fc.property(expressionArbitrary(), (tree) => {
				let met = 0;
				visit(tree, () => {
					met++;
				});
				expect(met).toBe(count(tree));
			})
		);
	});
});

describe('changing a tree', () => {
	it('replaces nodes in every place that can hold one', () => {
		const tree = read('a[x; month - 1 else x] * -SUM(x over s where x > 1 else x%)');
		const changed = map(tree, (node) =>
			node.kind === 'reference' && node.name === 'x' ? { ...node, name: 'y' } : node
		);
		expect(printFormula(changed)).toBe(
			'a[y; month - 1 else y] * -SUM(y over s where y > 1 else y%)'
		);
		expect(printFormula(tree)).toContain('x');
	});

	it('gives the same object where nothing changes', () => {
		fc.assert(
			fc.property(expressionArbitrary(), (tree) => {
				expect(map(tree, (node) => node)).toBe(tree);
			})
		);
	});
});
