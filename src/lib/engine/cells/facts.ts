/**
 * What the plan's nodes tell without being computed: whether a value may be absent (so that a guard
 * must be written), and how many read a node (so that it is worth a cell of its own).
 */
import { nodesRead } from '$lib/engine/operands';
import { Op } from '$lib/engine/operations';
import type { Plan } from '$lib/engine/plan';
import { ABSENT } from '$lib/engine/state';
import type { Source } from './reach';

export interface Facts {
	mayBeAbsent(node: number): boolean;
	cellMayBeAbsent(cell: number): boolean;
	readers(node: number): number;
	/** How many operations lie on the longest way down to a cell or a constant. */
	height(node: number): number;
}

const UNKNOWN = 0;
const YES = 1;
const NO = 2;

export function factsOf(
	plan: Plan,
	sources: readonly Source[] = [],
	included: Uint8Array | null = null
): Facts {
	const { nodes } = plan;
	const { op, a, b, lists } = nodes;
	const known = new Uint8Array(nodes.count);
	const cells = new Uint8Array(plan.cells);

	const find = (node: number): boolean => {
		switch (op[node]) {
			case Op.Cell:
				return cells[a[node]!] === 1 || (b[node] === 1 && plan.isMeasuredByCopies === true);
			case Op.Nothing:
				return a[node] === ABSENT;
			case Op.Guard:
				return true;
			case Op.If:
				return absent(lists[a[node]! + 1]!) || absent(lists[a[node]! + 2]!);
			case Op.IfError:
				return absent(b[node]!);
			case Op.OrElse:
				return absent(a[node]!) || absent(b[node]!);
			case Op.InRange:
				return absent(a[node]!);
			case Op.Pick:
				return nodesRead(nodes, node).slice(1).some(absent);
			default:
				return false;
		}
	};
	const absent = (node: number): boolean => {
		if (known[node] === UNKNOWN) known[node] = find(node) ? YES : NO;
		return known[node] === YES;
	};
	for (const { entered } of sources)
		for (const [cell, { state }] of entered) if (state === ABSENT) cells[cell] = 1;
	for (const cell of plan.order) {
		const root = plan.roots[cell]!;
		if (root >= 0 && absent(root)) cells[cell] = 1;
	}

	const readers = new Int32Array(nodes.count);
	const heights = new Int32Array(nodes.count);
	const reached = reachedBy(plan, included);
	// Operands come before what reads them.
	for (let node = 0; node < nodes.count; node++) {
		if (!reached[node]) continue;
		for (const operand of nodesRead(nodes, node)) {
			readers[operand]!++;
			heights[node] = Math.max(heights[node]!, heights[operand]! + 1);
		}
	}
	return {
		mayBeAbsent: absent,
		cellMayBeAbsent: (cell) => cells[cell] === 1,
		readers: (node) => readers[node]!,
		height: (node) => heights[node]!
	};
}

/** The nodes of the included cells' formulas. */
function reachedBy(plan: Plan, included: Uint8Array | null): Uint8Array {
	const reached = new Uint8Array(plan.nodes.count);
	if (!included) return reached.fill(1);
	const stack: number[] = [];
	plan.roots.forEach((root, cell) => {
		if (root >= 0 && included[cell]) stack.push(root);
	});
	for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
		if (reached[node]) continue;
		reached[node] = 1;
		for (const operand of nodesRead(plan.nodes, node)) stack.push(operand);
	}
	return reached;
}
