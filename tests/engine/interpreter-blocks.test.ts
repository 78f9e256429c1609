import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emptyColumns, evaluateCells } from '$lib/engine/interpreter/evaluate';
import { Machine } from '$lib/engine/interpreter/machine';
import { schedule } from '$lib/engine/interpreter/program';
import { Op } from '$lib/engine/operations';
import type { Plan } from '$lib/engine/plan';
import { DIVIDES_BY_ZERO, OK } from '$lib/engine/state';
import { anyPlan, columnOf, entries, entryAt, HandPlan, missing } from './interpreter-hand';

const INPUTS = 6;
const FORMULAS = 8;
const CELLS = INPUTS + FORMULAS;

describe('a block of columns', () => {
	const columnsOfInputs = fc.array(fc.array(entries, { minLength: INPUTS, maxLength: INPUTS }), {
		minLength: 2,
		maxLength: 9
	});

	it('gives in every column what that column gives alone', () => {
		fc.assert(
			fc.property(anyPlan(INPUTS, FORMULAS), columnsOfInputs, (plan, rows) => {
				// 512 columns, so that good and bad ones meet in one block.
				const width = 512;
				const block = emptyColumns(CELLS, width);
				for (let i = 0; i < width; i++)
					rows[i % rows.length]!.forEach((entry, cell) => {
						block.values[cell * width + i] = typeof entry === 'number' ? entry : NaN;
						block.states[cell * width + i] = typeof entry === 'number' ? OK : entry.state;
					});
				evaluateCells(plan, plan.order, block, width);
				rows.forEach((row, i) => {
					const alone = columnOf(CELLS, row);
					evaluateCells(plan, plan.order, alone, 1);
					for (let cell = INPUTS; cell < CELLS; cell++)
						expect(entryAt(block, cell * width + i)).toEqual(entryAt(alone, cell));
				});
			}),
			{ numRuns: 150 }
		);
	});

	it('has a finite number or a state everywhere, never both, never neither', () => {
		fc.assert(
			fc.property(anyPlan(INPUTS, FORMULAS), columnsOfInputs, (plan, rows) => {
				for (const row of rows) {
					const column = columnOf(CELLS, row);
					evaluateCells(plan, plan.order, column, 1);
					for (let cell = 0; cell < CELLS; cell++)
						expect(Number.isFinite(column.values[cell])).toBe(column.states[cell] === OK);
				}
			}),
			{ numRuns: 100 }
		);
	});

	it('forgets the errors of the block before', () => {
		const plan = new HandPlan(2);
		plan.root(1, plan.node(Op.Divide, plan.constant(6), plan.cell(0)));
		const built = plan.build();
		const machine = new Machine(schedule(built, [1], { wide: [0] }), 4);
		const run = (...divisors: number[]) => {
			machine.write(0, divisors, [0, 0, 0, 0]);
			machine.runAll();
			const { at } = machine.place(1);
			return [0, 1, 2, 3].map((i) => entryAt(machine, at + i));
		};
		expect(run(1, 0, 2, 3)).toEqual([6, missing(DIVIDES_BY_ZERO), 3, 2]);
		expect(run(1, 6, 2, 3)).toEqual([6, 1, 3, 2]);
	});

	it('computes what no column moves only once', () => {
		const plan = new HandPlan(4);
		plan.root(2, plan.node(Op.Add, plan.cell(0), plan.constant(1)));
		plan.root(3, plan.node(Op.Add, plan.cell(2), plan.cell(1)));
		const program = schedule(plan.build(), [2, 3], { wide: [1] });
		expect(program.slots[2]).toBeGreaterThanOrEqual(0);
		expect(program.slots[3]).toBeLessThan(0);
	});
});

describe('the order of evaluation', () => {
	it('does not matter, as long as each cell comes after what it needs', () => {
		const shuffle = fc.array(fc.nat(), { minLength: FORMULAS, maxLength: FORMULAS });
		const row = fc.array(entries, { minLength: INPUTS, maxLength: INPUTS });
		fc.assert(
			fc.property(anyPlan(INPUTS, FORMULAS), row, shuffle, (plan, inputs, keys) => {
				const inOrder = columnOf(CELLS, inputs);
				evaluateCells(plan, plan.order, inOrder, 1);
				const shuffled = columnOf(CELLS, inputs);
				evaluateCells(plan, anotherOrder(plan, keys), shuffled, 1);
				for (let cell = 0; cell < CELLS; cell++)
					expect(entryAt(shuffled, cell)).toEqual(entryAt(inOrder, cell));
			}),
			{ numRuns: 150 }
		);
	});
});

/** Any topological order: of the cells that are ready, the keys say which comes next. */
function anotherOrder(plan: Plan, keys: readonly number[]): number[] {
	const { op, a, b } = plan.nodes;
	const reads = (cell: number) => {
		// Hand-made plans write the nodes of one cell after those of the cell before.
		const from = cell === INPUTS ? 0 : plan.roots[cell - 1]! + 1;
		const found: number[] = [];
		for (let node = from; node <= plan.roots[cell]!; node++)
			if (op[node] === Op.Cell && b[node] === 0) found.push(a[node]!);
		return found;
	};
	const order: number[] = [];
	const waiting = new Set(plan.order);
	for (const key of keys) {
		const ready = [...waiting].filter((cell) => reads(cell).every((c) => !waiting.has(c)));
		const next = ready[key % ready.length]!;
		order.push(next);
		waiting.delete(next);
	}
	return order;
}
