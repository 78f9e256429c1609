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
	if (op === Op.Npv || op === Op.Rank) return 1;
	return op === Op.Mirr ? 2 : 0;
}

/**
 * Writes the operands of a node into `into` (emptied first), NONE where one is left out. Limits of
 * `InRange` are no nodes and not among them.
 */
export function operandsOf(nodes: Nodes, node: number, into: number[]): void {
	into.length = 0;
	const op = nodes.op[node]!;
	const a = nodes.a[node]!;
	const b = nodes.b[node]!;
	if (op === Op.Constant || op === Op.Cell || op === Op.Nothing) return;
	if (isAggregate(op)) return list(nodes, a, 3 * b + parameterCount(op), into);
	switch (op) {
		case Op.And:
		case Op.Or:
			return list(nodes, a, b, into);
		case Op.If:
			return list(nodes, a, 3, into);
		case Op.Pick:
			into.push(a);
			return list(nodes, b + 1, nodes.lists[b]!, into);
		case Op.Present:
		case Op.InRange:
			into.push(a);
			return;
		default:
			into.push(a);
			if (!isUnary(op)) into.push(b);
	}
}

function list(nodes: Nodes, start: number, count: number, into: number[]): void {
	for (let i = start; i < start + count; i++) into.push(nodes.lists[i]!);
}
