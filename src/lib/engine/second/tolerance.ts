/**
 * When two numbers count as the same: relative 1e-9. Near zero that asks too much of a difference of
 * large numbers, so a deviation also passes that is within 1e-12 of the largest number that the cell's own
 * formula adds, subtracts or rounds on its way (never of anything beyond that formula, nor across a unit
 * factor).
 */
import { nodesRead, NONE, operandsOf } from '$lib/engine/operands';
import { isAggregate, Op } from '$lib/engine/operations';
import type { Plan } from '$lib/engine/plan';

const RELATIVE = 1e-9;
const OF_OPERANDS = 1e-12;

export function isWithinTolerance(first: number, second: number): boolean {
	return Math.abs(first - second) <= RELATIVE * Math.max(Math.abs(first), Math.abs(second));
}

/** Whether the deviation is what adding numbers of this size costs. */
export function isRounding(first: number, second: number, magnitude: number): boolean {
	return Math.abs(first - second) <= OF_OPERANDS * magnitude;
}

/** The largest number on the way to a node's value; `read` gives the value of a cell. */
export function magnitudeOf(
	plan: Plan,
	root: number,
	read: (cell: number, which: number) => number
): number {
	const { nodes } = plan;
	const { op, a, b, constants } = nodes;
	const known = new Map<number, number>();
	const size = (node: number): number => known.get(node) ?? 0;
	const largest = (operands: readonly number[]) =>
		operands.reduce((most, node) => (node === NONE ? most : Math.max(most, size(node))), 0);
	const find = (node: number): number => {
		const code = op[node]!;
		const first = a[node]!;
		const second = b[node]!;
		switch (code) {
			case Op.Constant:
				return Math.abs(constants[first]!);
			case Op.Cell: {
				// A subterm that was given a cell of its own is still part of the formula.
				const lifted = first >= plan.layout.cells && second === 0 ? plan.roots[first]! : -1;
				return lifted >= 0 ? magnitudeOf(plan, lifted, read) : Math.abs(read(first, second));
			}
			case Op.Multiply:
				return size(first) * size(second);
			case Op.Divide: {
				// Only a divisor that is a cell or a constant has a size from below.
				const direct = op[second] === Op.Cell || op[second] === Op.Constant;
				return direct ? size(first) / size(second) : 0;
			}
			case Op.Add:
			case Op.Subtract:
			case Op.Mod:
			case Op.IfError:
			case Op.OrElse:
				return largest(operandsOf(nodes, node));
			case Op.Negate:
			case Op.Abs:
			case Op.Spread:
			case Op.Round:
			case Op.RoundUp:
			case Op.RoundDown:
			case Op.InRange:
				return size(first);
			case Op.Guard:
				return size(second);
			case Op.If:
			case Op.Pick:
				return largest(operandsOf(nodes, node).slice(1));
			// A rate is found to a fixed distance from 100 %.
			case Op.Irr:
			case Op.Mirr:
				return 100;
			// A value in standard deviations is found to a fixed distance from the mean.
			case Op.NormalQuantile:
				return 1;
			default:
				return isAggregate(code)
					? largest(operandsOf(nodes, node).filter((_, at) => at % 3 === 0 && at < 3 * second))
					: 0;
		}
	};
	// Operands come before what reads them; no recursion, as formulas may be deep.
	const reached = new Set<number>();
	const stack = [root];
	for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
		if (reached.has(node)) continue;
		reached.add(node);
		stack.push(...nodesRead(nodes, node));
	}
	for (const node of [...reached].sort((x, y) => x - y)) known.set(node, find(node) || 0);
	return size(root);
}
