/**
 * The neighbour along an axis: the next member for which the pair exists and, in a set whose members come and go,
 * that is present.
 */
import { cellAt } from '../layout';
import { Op } from '../operations';
import { ABSENT, OFF_END } from '../state';
import { readCell } from './cells-as-read';
import type { KnownSet } from './context';
import type { Lowering } from './lower';
import type { Read } from './types';

/** Steps along axis `at` to the next members for which the pair exists and that are present. */
export function neighbour(low: Lowering, read: Read, ordinals: number[], at: number): number {
	const index = read.indices[at];
	const set = low.context.sets.get(read.quantity.axes[at]?.set ?? '');
	if (index?.kind !== 'neighbour' || !set) return low.store.nothing(OFF_END);
	const further = read.indices.findIndex(
		(index, place) => place > at && index.kind === 'neighbour'
	);
	const candidates = candidatesFrom(read, ordinals, at, index.offset, set);
	const arrive = (ordinal: number) => {
		ordinals[at] = ordinal;
		if (further >= 0) return neighbour(low, read, [...ordinals], further);
		const cell = cellAt(read.quantity, ordinals);
		if (low.tracing && read.source && low.depth === 0 && !low.tracing.cellOf.has(read.source))
			low.tracing.cellOf.set(read.source, cell);
		return cell < 0
			? low.store.nothing(ABSENT)
			: readCell(low, read.quantity.index, cell, read.scenario);
	};
	const end = () => (read.otherwise ? low.lower(read.otherwise) : low.store.nothing(OFF_END));
	const steps = Math.abs(index.offset);
	if (!set.present || set.present.index === read.quantity.index) {
		const ordinal = candidates[steps - 1];
		return ordinal === undefined ? end() : arrive(ordinal);
	}
	return nextPresent(low, read, set.present.index, candidates, steps, arrive, end);
}

/** The members in the direction of the step for which the pair exists, nearest first. */
function candidatesFrom(
	read: Read,
	ordinals: readonly number[],
	at: number,
	offset: number,
	set: KnownSet
): number[] {
	const size = set.ids.length;
	const direction = Math.sign(offset);
	const start = ordinals[at] ?? 0;
	const there = [...ordinals];
	const exists = (ordinal: number) => {
		there[at] = ordinal;
		return cellAt(read.quantity, there) >= 0;
	};
	const candidates: number[] = [];
	// Of a set whose members come and go, any further one may be the next.
	const enough = set.present ? Infinity : Math.abs(offset);
	const rounds = set.cyclic ? Math.abs(offset) * size : size;
	for (let step = 1; step <= rounds && candidates.length < enough; step++) {
		let ordinal = start + direction * step;
		if (set.cyclic) ordinal = ((ordinal % size) + size) % size;
		else if (ordinal < 0 || ordinal >= size) break;
		if (exists(ordinal)) candidates.push(ordinal);
		else if (step === size && candidates.length === 0) break;
	}
	return candidates;
}

/** The `steps`-th of the candidates that are present, from the far end backwards: one choice for each. */
function nextPresent(
	low: Lowering,
	read: Read,
	present: number,
	candidates: readonly number[],
	steps: number,
	arrive: (ordinal: number) => number,
	end: () => number
): number {
	const { store } = low;
	const known = low.context.at(present);
	if (!known) return end();
	// By number of steps left, the node that holds from the candidate in hand on.
	let left = new Array<number>(steps + 1).fill(end());
	for (const ordinal of [...candidates].reverse()) {
		const isPresent = readCell(low, present, cellAt(known.layout, [ordinal]), read.scenario);
		const next = [...left];
		for (let step = 1; step <= steps; step++) {
			const taken = step === 1 ? arrive(ordinal) : (left[step - 1] ?? 0);
			const passed = left[step] ?? 0;
			if (store.isConstant(isPresent)) next[step] = store.valueOf(isPresent) !== 0 ? taken : passed;
			else next[step] = store.emit(Op.If, store.list([isPresent, taken, passed]), 0);
		}
		left = next;
	}
	return left[steps] ?? end();
}
