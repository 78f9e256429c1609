/** Whatever is written in formulas, a plan comes out, its problems point into the text, and all cells have an answer. */
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { tryFormula } from '$lib/engine/planner/check';
import { trace } from '$lib/engine/planner/trace';
import { buildPlan } from '$lib/engine/planner/plan';
import { workbookOf, type Shop } from './plan-builder';

const words = [
	...'x y per_month flag pick installed month line product A L1 L2 jan feb l result constructor'.split(
		' '
	),
	...'SUM( MAX( IF( COUNT( ARGMIN( FIRST( NPV( IRR( RANK( ROUND( CEILING( SQRT( ORD( NUMBER( SPAN('.split(
		' '
	),
	...'AND( OR( NOT( IFERROR( ANY( ABS( MOD( PAYBACK( ( ) ) ) ) [ ] ] ] ; ; over where else in'.split(
		' '
	),
	...'+ - * / ^ = < > % 0 1 2 0.5 1[m] 1[h] 5% -1 + 1 reference base . '.split(' ')
];
const formulas = fc
	.array(fc.constantFrom(...words), { minLength: 1, maxLength: 14 })
	.map((list) => list.join(' ').replace(/ \[ /g, '['));

/** Formulas that can be read, of every kind of node, right or wrong. */
const { tree } = fc.letrec<{ tree: string }>((tie) => ({
	tree: fc.oneof(
		{ depthSize: 'small' },
		fc.constantFrom('x', 'y', 'per_month', 'flag', 'pick', 'month', 'line', 'A', 'L1', '0', '2'),
		fc.constantFrom('1[m]', 'x[L1]', 'pair[L2; A]', 'y[pick]', 'per_month[month - 1 else 0]'),
		fc.constantFrom('y[base]', 'pair', 'result', 'ORD(line)', 'SPAN(month)', 'x[line + 1]'),
		fc
			.tuple(tie('tree'), fc.constantFrom('+', '-', '*', '/', '=', '<'), tie('tree'))
			.map(([a, operator, b]) => `(${a} ${operator} ${b})`),
		fc
			.tuple(
				fc.constantFrom('SUM', 'MIN', 'COUNT', 'ANY', 'FIRST', 'STDEV', 'ARGMAX', 'IRR'),
				tie('tree')
			)
			.map(([name, a]) => `${name}(${a})`),
		fc
			.tuple(
				fc.constantFrom('line', 'month', 'l in line', 'product × line'),
				tie('tree'),
				tie('tree')
			)
			.map(([over, a, b]) => `SUM(${a} over ${over} where ${b})`),
		fc.tuple(tie('tree'), tie('tree'), tie('tree')).map(([a, b, c]) => `IF(${a}; ${b}; ${c})`),
		fc.tuple(tie('tree'), tie('tree')).map(([a, b]) => `MAX(${a}; ${b})`)
	)
}));

const shop = (result: string, where?: string): Shop => ({
	sets: {
		product: ['A', 'B'],
		line: { members: [{ id: 'L1' }, { id: 'L2' }], present: 'installed' },
		month: {
			members: [
				{ id: 'jan', number: 0 },
				{ id: 'feb', number: 1 }
			],
			spans: '1 year'
		}
	},
	relations: {
		runs: {
			sets: ['line', 'product'],
			pairs: [
				['L1', 'A'],
				['L2', 'B']
			]
		}
	},
	quantities: {
		installed: { per: ['line'], type: 'yes_no' },
		x: { per: ['line'], unit: 'm' },
		y: { per: ['product'], fixed: true, value: { A: 3 } },
		pair: { per: ['line', 'product'], in: ['runs'], range: { min: 0 } },
		per_month: { per: ['month'], formula: 'per_month[month - 1 else 1] * 2', where: 'flag' },
		flag: { type: 'yes_no' },
		pick: { per: ['line'], type: { member_of: 'product' } },
		result: { per: ['line'], formula: result, ...(where === undefined ? {} : { where }) }
	}
});

function look(text: string, where?: string): void {
	const workbook = workbookOf(shop(text, where));
	const plan = buildPlan(workbook);
	for (const problem of plan.problems) {
		const own = problem.part === 'where' ? (where ?? '') : text;
		if (problem.quantity === 'result') expect(problem.span.end).toBeLessThanOrEqual(own.length);
		expect(problem.span.start).toBeLessThanOrEqual(problem.span.end);
		expect(problem.message).not.toMatch(/undefined|null|NaN|\[object/);
	}
	// Every formula cell is in the order or on a loop, and every read is of a cell that exists.
	const formulaCells = plan.roots.filter((root) => root >= 0).length;
	expect(plan.order.length + plan.circular.length).toBe(formulaCells);
	for (const target of plan.precedents.targets) expect(target).toBeLessThan(plan.cells);
	const again = plan.layout.byName.get('result')?.quantity;
	const tried = again && tryFormula(plan, again);
	expect(tried?.problems.length ?? 0).toBe(
		plan.problems.filter((problem) => problem.quantity === 'result').length
	);
	for (let cell = 0; cell < plan.layout.cells; cell++) trace(plan, cell);
	// What was printed is read back as what it is.
	const printed = plan.printed.get('7');
	if (printed !== undefined) {
		const second = buildPlan(workbookOf(shop(printed, where)));
		expect(second.printed.get('7')).toBe(printed);
		expect(second.nodes).toEqual(plan.nodes);
	}
}

describe('any text', () => {
	it('as a formula gives a plan', () => {
		fc.assert(
			fc.property(formulas, (text) => look(text)),
			{ numRuns: 400 }
		);
	});

	it('that can be read gives a plan', () => {
		fc.assert(
			fc.property(tree, (text) => look(text)),
			{ numRuns: 600 }
		);
	});

	it('as a condition gives a plan', () => {
		fc.assert(
			fc.property(tree, tree, (text, where) => look(text, where)),
			{ numRuns: 200 }
		);
	});
});
