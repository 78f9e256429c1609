/** What each cell's formula reads, found by walking its nodes, and the same the other way round. */
import { readOperands } from '../operands';
import { Op } from '../operations';
import type { Edges, Nodes } from '../plan';
import { GrowingInts } from './growing';

export interface Reads {
	readonly precedents: Edges;
	/** Those of them that are read in the cell's own scenario. */
	readonly own: Edges;
	/** Cells with a read of another scenario, ascending. */
	readonly readsOtherScenario: Int32Array;
}

export function readsOf(roots: ArrayLike<number>, nodes: Nodes): Reads {
	const cells = roots.length;
	const starts = new Int32Array(cells + 1);
	const targets = new GrowingInts();
	const ownStarts = new Int32Array(cells + 1);
	const ownTargets = new GrowingInts();
	const other = new GrowingInts();
	// By node and by cell, the cell + 1 that was last seen to hold or to read it.
	const heldBy = new Int32Array(nodes.count);
	const readBy = new Int32Array(cells);
	const readHereBy = new Int32Array(cells);
	const stack: number[] = [];
	const operands: number[] = [];
	let found: number[] = [];
	for (let cell = 0; cell < cells; cell++) {
		const root = roots[cell] ?? -1;
		let readsOther = false;
		if (root >= 0) stack.push(root);
		while (stack.length > 0) {
			const node = stack.pop() ?? 0;
			if (heldBy[node] === cell + 1) continue;
			heldBy[node] = cell + 1;
			if (nodes.op[node] === Op.Cell) {
				const target = nodes.a[node] ?? 0;
				if (nodes.b[node] !== 0) readsOther = true;
				else readHereBy[target] = cell + 1;
				if (readBy[target] !== cell + 1) found.push(target);
				readBy[target] = cell + 1;
				continue;
			}
			const count = readOperands(nodes, node, operands);
			for (let i = 0; i < count; i++) if (operands[i]! >= 0) stack.push(operands[i]!);
		}
		if (found.length > 0) {
			found.sort((a, b) => a - b);
			for (const target of found) {
				targets.push(target);
				if (readHereBy[target] === cell + 1) ownTargets.push(target);
			}
			found = [];
		}
		if (readsOther) other.push(cell);
		starts[cell + 1] = targets.length;
		ownStarts[cell + 1] = ownTargets.length;
	}
	return {
		precedents: { starts, targets: targets.finish() },
		own: { starts: ownStarts, targets: ownTargets.finish() },
		readsOtherScenario: other.finish()
	};
}

/** Who reads each cell. */
export function reversed({ starts, targets }: Edges): Edges {
	const cells = starts.length - 1;
	const back = new Int32Array(cells + 1);
	for (const target of targets) back[target + 1] = (back[target + 1] ?? 0) + 1;
	for (let cell = 0; cell < cells; cell++)
		back[cell + 1] = (back[cell + 1] ?? 0) + (back[cell] ?? 0);
	const next = back.slice();
	const sources = new Int32Array(targets.length);
	for (let cell = 0; cell < cells; cell++)
		for (let at = starts[cell] ?? 0; at < (starts[cell + 1] ?? 0); at++) {
			const target = targets[at] ?? 0;
			const place = next[target] ?? 0;
			sources[place] = cell;
			next[target] = place + 1;
		}
	return { starts: back, targets: sources };
}
