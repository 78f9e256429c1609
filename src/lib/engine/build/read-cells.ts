/**
 * References to cells: the pair that is meant, the neighbour that exists, the option that a choice picks, and what
 * guards an entered value of a member that is present in some scenarios only.
 */
import { cellAt } from '../layout';
import { Op } from '../plan';
import { ABSENT, carried, HITS_NOTHING, OFF_END, OK } from '../state';
import type { KnownQuantity, KnownSet } from './context';
import { guard } from './fold';
import type { Lowering } from './lower';
import { INPUT, partOfCell } from './rules';
import type { Read } from './types';

export type ScenarioRead = Read['scenario'];

/** Stands where a reference takes more than the members in hand. */
const NOT_DIRECT = -2;

/** The cell of a reference at the members in hand, −1 where the pair does not exist. */
export function directCell(low: Lowering, { quantity, indices }: Read): number {
	let place = 0;
	for (let at = 0; at < indices.length; at++) {
		const index = indices[at];
		let ordinal: number;
		if (index?.kind === 'variable') ordinal = low.members[index.slot] ?? 0;
		else if (index?.kind === 'member') ordinal = index.ordinal;
		else return NOT_DIRECT;
		place = place * (quantity.sizes[at] ?? 0) + ordinal;
	}
	if (!quantity.cellOfPlace) return quantity.base + place;
	const within = quantity.cellOfPlace[place] ?? -1;
	return within < 0 ? -1 : quantity.base + within;
}

/** A reference at the members in hand. */
export function readCells(low: Lowering, read: Read): number {
	const direct = low.tracing ? NOT_DIRECT : directCell(low, read);
	if (direct >= 0) return readCell(low, read.quantity.index, direct, read.scenario);
	const ordinals: number[] = [];
	const selectors: number[] = [];
	let isChosen = false;
	for (const index of read.indices) {
		let ordinal = -1;
		let selector = -1;
		if (index.kind === 'member') ordinal = index.ordinal;
		else if (index.kind !== 'choice') ordinal = low.members[index.slot] ?? 0;
		else {
			const node = low.lower(index.of);
			isChosen = true;
			if (low.store.isConstant(node)) ordinal = low.store.valueOf(node);
			else if (low.store.opOf(node) === Op.Nothing)
				return low.store.nothing(carried(low.store.aOf(node)));
			else selector = node;
		}
		ordinals.push(ordinal);
		selectors.push(selector);
	}
	const moving = selectors.findIndex((selector) => selector >= 0);
	if (moving >= 0) return pick(low, read, ordinals, selectors, moving);
	return readPair(low, read, ordinals, isChosen);
}

/** One of all options, by the choice on axis `moving`; further choices inside. */
function pick(
	low: Lowering,
	read: Read,
	ordinals: number[],
	selectors: readonly number[],
	moving: number
): number {
	const isPlain =
		!low.tracing &&
		selectors.every((selector, at) => selector < 0 || at === moving) &&
		read.indices.every((index) => index.kind !== 'neighbour') &&
		read.otherwise === null;
	const key = isPlain ? optionsKey(read, ordinals, moving) : -1;
	let lists = low.optionLists.get(read);
	let list = key < 0 ? undefined : lists?.get(key);
	if (list === undefined) {
		const next = selectors.findIndex((selector, at) => at > moving && selector >= 0);
		const nodes: number[] = [];
		for (let ordinal = 0; ordinal < (read.quantity.sizes[moving] ?? 0); ordinal++) {
			if (low.isTooLarge()) break;
			ordinals[moving] = ordinal;
			nodes.push(
				next >= 0 ? pick(low, read, ordinals, selectors, next) : optionAt(low, read, ordinals)
			);
		}
		ordinals[moving] = -1;
		list = low.store.list([nodes.length, ...nodes]);
		if (key >= 0) {
			lists ??= new Map();
			lists.set(key, list);
			low.optionLists.set(read, lists);
		}
	}
	return low.store.emit(Op.Pick, selectors[moving] ?? 0, list);
}

/** The options are the same for all cells that agree on the other axes. */
function optionsKey(read: Read, ordinals: readonly number[], moving: number): number {
	let key = moving;
	ordinals.forEach((ordinal, at) => {
		key = key * (read.quantity.sizes[at] ?? 0) + (at === moving ? 0 : ordinal);
	});
	return key;
}

/** −1 where the pair does not exist. */
function optionAt(low: Lowering, read: Read, ordinals: readonly number[]): number {
	if (read.indices.some((index) => index.kind === 'neighbour'))
		return readPair(low, read, ordinals, true);
	const cell = cellAt(read.quantity, ordinals);
	return cell < 0 ? -1 : readCell(low, read.quantity.index, cell, read.scenario);
}

function readPair(
	low: Lowering,
	read: Read,
	ordinals: readonly number[],
	isChosen: boolean
): number {
	const steps = read.indices.findIndex((index) => index.kind === 'neighbour');
	if (steps >= 0) return neighbour(low, read, [...ordinals], steps);
	const cell = cellAt(read.quantity, ordinals);
	if (cell < 0) return low.store.nothing(isChosen ? HITS_NOTHING : ABSENT);
	if (low.tracing && read.source && low.depth === 0) low.tracing.cellOf.set(read.source, cell);
	return readCell(low, read.quantity.index, cell, read.scenario);
}

/** Steps along axis `at` to the next members for which the pair exists and that are present. */
function neighbour(low: Lowering, read: Read, ordinals: number[], at: number): number {
	const index = read.indices[at];
	const set = low.context.sets.get(read.quantity.axes[at]?.set ?? '');
	if (index?.kind !== 'neighbour' || !set) return low.store.nothing(OFF_END);
	const further = read.indices.findIndex((one, place) => place > at && one.kind === 'neighbour');
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

/** The value of a cell as a formula sees it. */
export function readCell(
	low: Lowering,
	quantity: number,
	cell: number,
	scenario: ScenarioRead
): number {
	const known = low.context.at(quantity);
	if (!known) return low.store.nothing(ABSENT);
	if (!isEnteredCell(known, cell)) return low.store.cell(cell, scenario);
	const conditions = presenceOf(low, known, cell, scenario);
	if (conditions.length === 0) return enteredCell(low, known, cell, scenario);
	const key = 3 * cell + scenario;
	const before = low.guardedInputs.get(key);
	if (before !== undefined) return before;
	let node = enteredCell(low, known, cell, scenario);
	for (const condition of [...conditions].reverse()) node = guard(low.store, condition, node);
	low.guardedInputs.set(key, node);
	return node;
}

function enteredCell(
	low: Lowering,
	known: KnownQuantity,
	cell: number,
	scenario: ScenarioRead
): number {
	if (!known.fixed || low.tracing) return low.store.cell(cell, scenario);
	const at = cell - known.layout.base;
	const state = known.fixed.states[at] ?? OK;
	return state === OK
		? low.store.constant(known.fixed.values[at] ?? NaN)
		: low.store.nothing(state);
}

export function isEnteredCell(known: KnownQuantity, cell: number): boolean {
	return partOfCell(known.rules, known.layout, cell) === INPUT;
}

/**
 * The conditions under which a cell has a value: the presence of its members, and for an entered value the
 * quantity's `where`.
 */
export function presenceOf(
	low: Lowering,
	known: KnownQuantity,
	cell: number,
	scenario: ScenarioRead
): number[] {
	const { layout } = known;
	const start = (cell - layout.base) * layout.axes.length;
	const conditions = low.comings(layout.index).map(({ axis, present }) => {
		const ordinal = layout.members[start + axis] ?? 0;
		return readCell(low, present.index, cellAt(present, [ordinal]), scenario);
	});
	if (low.inputConditions.has(layout.index) && isEnteredCell(known, cell) && !low.tracing)
		conditions.push(whereCell(low, known, cell, scenario));
	return conditions;
}

/** The cell of its own in which an entered value's `where` is judged. */
function whereCell(
	low: Lowering,
	known: KnownQuantity,
	cell: number,
	scenario: ScenarioRead
): number {
	const part = low.inputConditions.get(known.layout.index);
	if (!part) return low.store.constant(1);
	let lifted = low.whereCells.get(cell);
	if (lifted === undefined) {
		const { members, proof, failed, depth } = low;
		low.members = new Int32Array(32);
		low.depth = 1;
		setMembers(low, known, cell);
		const root = low.root(part);
		Object.assign(low, { members, proof, failed, depth });
		lifted = low.lifted(root);
		low.whereCells.set(cell, lifted);
	}
	return low.store.cell(lifted, scenario);
}

/** Puts the members of a cell in hand: a quantity's own axes are the first variables of its formulas. */
export function setMembers(low: Lowering, known: KnownQuantity, cell: number): void {
	const { layout } = known;
	const start = (cell - layout.base) * layout.axes.length;
	for (let axis = 0; axis < layout.axes.length; axis++)
		low.members[axis] = layout.members[start + axis] ?? 0;
}
