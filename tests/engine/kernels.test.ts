import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { Machine } from '$lib/engine/interpreter/machine';
import { CallList } from '$lib/engine/interpreter/kernels/call-list';
import { schedule } from '$lib/engine/interpreter/program';
import { compute } from '$lib/engine/scalar';
import { Op } from '$lib/engine/operations';
import { OK } from '$lib/engine/state';
import { HandPlan } from './interpreter-hand';

const WIDTH = 8;
const numbers = fc.array(fc.oneof(fc.double(), fc.constantFrom(0, -0, 1, -2.5, 1e308)), {
	minLength: WIDTH,
	maxLength: WIDTH
});

const BINARY = [
	Op.Add,
	Op.Subtract,
	Op.Multiply,
	Op.Divide,
	Op.Equal,
	Op.NotEqual,
	Op.Less,
	Op.LessOrEqual,
	Op.Greater,
	Op.GreaterOrEqual
];
const UNARY = [Op.Negate, Op.Abs, Op.Not, Op.Sqrt];

/** Runs one formula over cells 0 and 1 and counts the instructions that no loop did. */
function runOne(op: number, wide: readonly number[], columns: readonly (readonly number[])[]) {
	const plan = new HandPlan(3);
	plan.root(2, plan.node(op, plan.cell(0), plan.cell(1)));
	const program = schedule(plan.build(), [2], { wide });
	const turns = CallList.open(program, Math.ceil(program.narrow / 8) * 8, WIDTH)!;
	columns.forEach((column, cell) => {
		const slot = program.slots[cell]!;
		const at = slot < 0 ? Math.ceil(program.narrow / 8) * 8 - (slot + 1) * WIDTH : slot;
		turns.values.set(slot < 0 ? column : column.slice(0, 1), at);
	});
	let aside = 0;
	turns.run(() => aside++);
	const to = Math.ceil(program.narrow / 8) * 8 - (program.slots[2]! + 1) * WIDTH;
	return { aside, results: [...turns.values.subarray(to, to + WIDTH)] };
}

describe('the loops over a block', () => {
	it.each([
		['both wide', [0, 1]],
		['the second narrow', [0]],
		['the first narrow', [1]]
	])('give what the plain operation gives, and leave what is not finite: %s', (_, wide) => {
		fc.assert(
			fc.property(fc.constantFrom(...BINARY), numbers, numbers, (op, a, b) => {
				const { aside, results } = runOne(op, wide, [a, b]);
				const expected = a.map((_x, i) =>
					compute(op, a[wide.includes(0) ? i : 0]!, b[wide.includes(1) ? i : 0]!)
				);
				const good = expected.every(Number.isFinite);
				expect(aside).toBe(good ? 0 : 1);
				if (good) expect(results).toEqual(expected);
			}),
			{ numRuns: 300 }
		);
	});

	it('give what the plain operation on one number gives', () => {
		fc.assert(
			fc.property(fc.constantFrom(...UNARY), numbers, (op, a) => {
				const finite = a.map((x) => (Number.isFinite(x) ? x : 3));
				const { aside, results } = runOne(op, [0], [finite, finite]);
				const expected = finite.map((x) => compute(op, x, 0));
				const good = expected.every(Number.isFinite);
				expect(aside).toBe(good ? 0 : 1);
				if (good) expect(results).toEqual(expected);
			}),
			{ numRuns: 200 }
		);
	});

	it('do sums, extremes, choices, conditions and ranges whole', () => {
		const plan = new HandPlan(3);
		const [a, b] = [plan.cell(0), plan.cell(1)];
		const yes = plan.node(Op.Less, a, b);
		const parts = [
			plan.aggregate(Op.Sum, [[a], [b, yes], [plan.constant(2)]]),
			plan.aggregate(Op.Min, [
				[a, yes],
				[b, plan.node(Op.Not, yes)]
			]),
			plan.aggregate(Op.Max, [[a], [b]]),
			plan.aggregate(Op.Any, [[yes]]),
			plan.aggregate(Op.All, [[yes, yes]]),
			plan.every(Op.And, yes, yes),
			plan.every(Op.Or, yes, plan.node(Op.Not, yes)),
			plan.if(yes, a, b),
			plan.inRange(a, { min: 0, below: 100 }),
			plan.node(Op.Guard, plan.node(Op.LessOrEqual, a, plan.constant(100)), a),
			plan.node(Op.IfError, a, b)
		];
		const sum = parts.reduce((so, part) => plan.node(Op.Add, so, part));
		plan.root(2, sum);
		const program = schedule(plan.build(), [2], { wide: [0, 1] });
		const narrow = Math.ceil(program.narrow / 8) * 8;
		const turns = CallList.open(program, narrow, 4)!;
		turns.values.set(program.plan.nodes.constants, program.constants);
		turns.values.set([1, 5, 3, 0], narrow);
		turns.values.set([2, 4, 3, 7], narrow + 4);
		let aside = 0;
		turns.run(() => aside++);
		expect(aside).toBe(0);
		const to = narrow - (program.slots[2]! + 1) * 4;
		// Sum, least, greatest, any, all, and, or, the lesser, and a three times over.
		expect([...turns.values.subarray(to, to + 4)]).toEqual([
			5 + 1 + 2 + 1 + 1 + 1 + 1 + 1 + 3,
			7 + 4 + 5 + 0 + 1 + 0 + 1 + 4 + 15,
			5 + 3 + 3 + 0 + 1 + 0 + 1 + 3 + 9,
			9 + 0 + 7 + 1 + 1 + 1 + 1 + 0 + 0
		]);
	});
});

describe('without WebAssembly', () => {
	afterEach(() => {
		vi.unstubAllGlobals();
		vi.resetModules();
	});

	it('a block is computed column by column, to the same results', async () => {
		const run = (Kind: typeof Machine) => {
			const plan = new HandPlan(3);
			plan.root(2, plan.node(Op.Divide, plan.cell(0), plan.cell(1)));
			const machine = new Kind(schedule(plan.build(), [2], { wide: [0, 1] }), 4);
			machine.write(0, [1, 2, 3, 4], [OK, OK, OK, OK]);
			machine.write(1, [3, 0, 7, 11], [OK, OK, OK, OK]);
			machine.runAll();
			const { at } = machine.place(2);
			return [machine.values.slice(at, at + 4), machine.states.slice(at, at + 4)];
		};
		const usual = run(Machine);
		vi.resetModules();
		vi.stubGlobal('WebAssembly', undefined);
		const { Machine: Plain } = await import('$lib/engine/interpreter/machine');
		expect(Plain).not.toBe(Machine);
		expect(run(Plain)).toEqual(usual);
	});
});
