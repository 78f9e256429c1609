import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseFormula } from '$lib/formula/parse';
import { pieces, printFormula } from '$lib/formula/print';
import type { Expression } from '$lib/formula/tree';
import { expressionArbitrary } from './arbitrary';

function read(text: string): Expression {
	const result = parseFormula(text);
	if (!result.ok) throw new Error(result.problem.message);
	return result.expression;
}

describe('the pieces of a formula', () => {
	it('put together are the formula', () => {
		fc.assert(
			fc.property(expressionArbitrary(), (tree) => {
				const joined = pieces(tree)
					.map(({ text }) => text)
					.join('');
				expect(joined).toBe(printFormula(tree));
			})
		);
	});

	it('say what each of them is', () => {
		const found = pieces(
			read('SUM(2[kg] * price[steel] over l in layer × line where l > 1) - a[base]')
		);
		expect(found.map(({ text, role }) => `${role}:${text}`)).toEqual([
			'function:SUM',
			'bracket:(',
			'number:2[kg]',
			'operator: * ',
			'name:price',
			'bracket:[',
			'name:steel',
			'bracket:]',
			'words: over ',
			'name:l',
			'words: in ',
			'name:layer',
			'operator: × ',
			'name:line',
			'words: where ',
			'name:l',
			'operator: > ',
			'number:1',
			'bracket:)',
			'operator: - ',
			'name:a',
			'bracket:[',
			'words:base',
			'bracket:]'
		]);
	});

	it('begin and end a reference with the same node, so that a number can take its place', () => {
		const tree = read('2 * x[y[z]; month - 1 else 0] + w');
		const found = pieces(tree);
		const start = found.findIndex(({ text }) => text === 'x');
		const end = found.findLastIndex(({ node }) => node === found[start]!.node);
		expect(
			found
				.slice(start, end + 1)
				.map(({ text }) => text)
				.join('')
		).toBe('x[y[z]; month - 1 else 0]');
	});

	it('open the call at the name of its function', () => {
		const tree = read('1 + MAX(a; b)');
		const opening = pieces(tree).filter(({ opens }) => opens !== undefined);
		expect(opening).toMatchObject([{ text: 'MAX', opens: { kind: 'call', name: 'MAX' } }]);
	});
});

describe('a tree that was put together, not read', () => {
	const made = (name: string): Expression => {
		const span = { start: 0, end: 0 };
		const rest = { qualifier: null, quoted: false, indices: [], otherwise: null };
		return { kind: 'reference', name, ...rest, span, nameSpan: span };
	};

	it('is printed with the quotes that its names need', () => {
		expect(printFormula(made('5x24'))).toBe("'5x24'");
		expect(printFormula(made('over'))).toBe("'over'");
		expect(printFormula(made('L2'))).toBe('L2');
	});
});
