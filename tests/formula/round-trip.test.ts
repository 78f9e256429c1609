import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseFormula } from '$lib/formula/parse';
import { printFormula } from '$lib/formula/print';
import { children, visit } from '$lib/formula/walk';
import type { Expression } from '$lib/formula/tree';
import { expressionArbitrary, withoutSpans } from './arbitrary';

function read(text: string): Expression {
	const result = parseFormula(text);
	if (!result.ok) throw new Error(`${text}: ${result.problem.message}`);
	return result.expression;
}

/** Random trees may print longer than a formula may be; those say so and are left out. */
const trees = expressionArbitrary().filter((tree) => printFormula(tree).length <= 6000);

describe('a printed formula', () => {
	it('is read back as the same tree', () => {
		fc.assert(
			fc.property(trees, (tree) => {
				expect(withoutSpans(read(printFormula(tree)))).toEqual(withoutSpans(tree));
			}),
			{ numRuns: 1500 }
		);
	});

	it('is printed the same the second time', () => {
		fc.assert(
			fc.property(trees, (tree) => {
				const text = printFormula(tree);
				expect(printFormula(read(text))).toBe(text);
			})
		);
	});

	it('has no pair of brackets that could be left out', () => {
		fc.assert(
			fc.property(trees, (tree) => {
				const text = printFormula(tree);
				for (const [open, close] of groupingPairs(text, read(text))) {
					const without = text.slice(0, open) + text.slice(open + 1, close) + text.slice(close + 1);
					const again = parseFormula(without);
					if (again.ok) expect(withoutSpans(again.expression)).not.toEqual(withoutSpans(tree));
				}
			})
		);
	});

	it('gives every node the span of its own words', () => {
		fc.assert(
			fc.property(trees, (tree) => {
				const text = printFormula(tree);
				visit(read(text), (node) => {
					// Read alone, the words of a node are that node.
					const alone = read(text.slice(node.span.start, node.span.end));
					expect(withoutSpans(alone)).toEqual(withoutSpans(node));
					for (const { span } of children(node)) {
						expect(span.start).toBeGreaterThanOrEqual(node.span.start);
						expect(span.end).toBeLessThanOrEqual(node.span.end);
					}
				});
			})
		);
	});
});

/** Bracket pairs around an operation, by position: those of calls and of quoted or unit text left out. */
function groupingPairs(text: string, tree: Expression): [number, number][] {
	const taken = new Set<number>();
	const skip = (start: number, end: number) => {
		for (let at = start; at < end; at++) taken.add(at);
	};
	visit(tree, (node) => {
		if (node.kind === 'number') skip(node.span.start, node.span.end);
		if (node.kind === 'reference') skip(node.nameSpan.start, node.nameSpan.end);
		if (node.kind === 'call') {
			skip(node.nameSpan.end, node.nameSpan.end + 1);
			skip(node.span.end - 1, node.span.end);
		}
	});
	const pairs: [number, number][] = [];
	const open: number[] = [];
	for (let at = 0; at < text.length; at++) {
		if (taken.has(at)) continue;
		if (text[at] === '(') open.push(at);
		if (text[at] === ')') pairs.push([open.pop()!, at]);
	}
	return pairs;
}
