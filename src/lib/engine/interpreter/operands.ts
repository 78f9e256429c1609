/**
 * Which nodes a node reads, in the order of its meaning. The one place that knows how each
 * operation uses a, b and the lists; scheduling and the reasons both ask here.
 */
import { isAggregate, Op, type Nodes } from '$lib/engine/plan';
import { isUnary } from './scalar';

/** Stands where a term has no filter or position, a limit is not set, a picked pair does not exist. */
export const NONE = -1;

/** How many nodes follow the terms of an aggregate. */
export function parameterCount(op: number): number {
	if (op === Op.Npv || op === Op.Rank || op === Op.Percentile) return 1;
	return op === Op.Mirr ? 2 : 0;
}

/**
 * Writes the operands of a node into `into` from place 0 on, NONE where one is left out, and returns how
 * many they are; what stands further on is of no account. Limits of `InRange` are no nodes and not among them.
 */
export function readOperands(nodes: Nodes, node: number, into: number[]): number {
	const op = nodes.op[node]!;
	const a = nodes.a[node]!;
	const b = nodes.b[node]!;
	if (op === Op.Constant || op === Op.Cell || op === Op.Nothing) return 0;
	if (isAggregate(op)) return list(nodes, a, 3 * b + parameterCount(op), into, 0);
	switch (op) {
		case Op.And:
		case Op.Or:
			return list(nodes, a, b, into, 0);
		case Op.If:
			return list(nodes, a, 3, into, 0);
		case Op.Pick:
			into[0] = a;
			return list(nodes, b + 1, nodes.lists[b]!, into, 1);
		case Op.Present:
		case Op.InRange:
			into[0] = a;
			return 1;
		default:
			into[0] = a;
			if (isUnary(op)) return 1;
			into[1] = b;
			return 2;
	}
}

/** The same with nothing behind the operands: `into` is then a list of just these. */
export function operandsOf(nodes: Nodes, node: number, into: number[]): number {
	const count = readOperands(nodes, node, into);
	if (into.length !== count) into.length = count;
	return count;
}

function list(nodes: Nodes, start: number, count: number, into: number[], at: number): number {
	for (let i = 0; i < count; i++) into[at + i] = nodes.lists[start + i]!;
	return at + count;
}
