/**
 * Which nodes a node reads, in the order of its meaning: the one place that reads `a`, `b` and the lists by the
 * shape of an operation, and that makes a node anew with other operands.
 */
import { Op, parameterCount, Shape, shapeOf } from './operations';
import type { Nodes } from './plan';

/** Stands where a term has no filter or position, a limit is not set, a picked pair does not exist. */
export const NONE = -1;

/**
 * Writes the operands of a node into `into` from place 0 on, NONE where one is left out, and returns how
 * many they are; what stands further on is of no account. Limits of `InRange` are no nodes and not among them.
 */
export function readOperands(nodes: Nodes, node: number, into: number[]): number {
	const op = nodes.op[node]!;
	const a = nodes.a[node]!;
	const b = nodes.b[node]!;
	switch (shapeOf(op)) {
		case Shape.Leaf:
			return 0;
		case Shape.One:
		case Shape.Limits:
			into[0] = a;
			return 1;
		case Shape.Two:
			into[0] = a;
			into[1] = b;
			return 2;
		case Shape.List:
			return list(nodes, a, b, into, 0);
		case Shape.Three:
			return list(nodes, a, 3, into, 0);
		case Shape.Choice:
			into[0] = a;
			return list(nodes, b + 1, nodes.lists[b]!, into, 1);
		case Shape.Terms:
			return list(nodes, a, 3 * b + parameterCount(op), into, 0);
	}
}

/** The same with nothing behind the operands: `into` is then a list of just these. */
export function operandsOf(nodes: Nodes, node: number, into: number[] = []): number[] {
	const count = readOperands(nodes, node, into);
	if (into.length !== count) into.length = count;
	return into;
}

/** The nodes that a node reads, those that are left out not among them. */
export function nodesRead(nodes: Nodes, node: number): number[] {
	return operandsOf(nodes, node).filter((operand) => operand !== NONE);
}

/** Where a node that is made anew keeps its lists and constants. */
export interface Keeping {
	list(entries: readonly number[]): number;
	constant(value: number): number;
}

/** `a` and `b` of a node with other operands in place of its own, as many terms and options as these are. */
export function withOperands(
	{ op, a, b, lists, constants }: Nodes,
	node: number,
	own: readonly number[],
	keeping: Keeping
): [a: number, b: number] {
	const code = op[node]!;
	switch (shapeOf(code)) {
		case Shape.Leaf:
			return code === Op.Constant
				? [keeping.constant(constants[a[node]!]!), 0]
				: [a[node]!, b[node]!];
		case Shape.One:
			return [own[0]!, 0];
		case Shape.Two:
			return [own[0]!, own[1]!];
		case Shape.Limits: {
			const limits = [0, 1, 2, 3].map((i) => {
				const limit = lists[b[node]! + i]!;
				return limit < 0 ? NONE : keeping.constant(constants[limit]!);
			});
			return [own[0]!, keeping.list(limits)];
		}
		case Shape.List:
			return [keeping.list(own), own.length];
		case Shape.Three:
			return [keeping.list(own), 0];
		case Shape.Choice:
			return [own[0]!, keeping.list([own.length - 1, ...own.slice(1)])];
		case Shape.Terms:
			return [keeping.list(own), (own.length - parameterCount(code)) / 3];
	}
}

function list(nodes: Nodes, start: number, count: number, into: number[], at: number): number {
	for (let i = 0; i < count; i++) into[at + i] = nodes.lists[start + i]!;
	return at + count;
}
