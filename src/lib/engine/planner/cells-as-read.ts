/**
 * What a cell is to its readers: an input that no scenario changes is its value, and an entered value of a member
 * that comes and goes, or under a condition, is guarded.
 */
import { cellAt } from '../layout';
import { ABSENT, CIRCULAR, OK } from '../state';
import type { KnownQuantity } from './context';
import { guard } from './fold';
import type { Lowering } from './lower';
import { INPUT, partOfCell } from './rules';
import type { Read } from './types';

export type ScenarioRead = Read['scenario'];

/** The value of a cell as a formula sees it. */
export function readCell(
	low: Lowering,
	quantity: number,
	cell: number,
	scenario: ScenarioRead
): number {
	const known = low.context.at(quantity);
	if (!known) return low.store.nothing(ABSENT);
	if (known.frozen !== undefined) return enteredCell(low, known, cell, scenario);
	if (!isEnteredCell(known, cell)) return low.store.cell(cell, scenario);
	const conditions = presenceOf(low, known, cell, scenario);
	if (conditions.length === 0) return enteredCell(low, known, cell, scenario);
	const key = 3 * cell + scenario;
	const isShared = low.judging.at(-1) !== cell;
	const before = isShared ? low.guardedInputs.get(key) : undefined;
	if (before !== undefined) return before;
	let node = enteredCell(low, known, cell, scenario);
	for (const condition of [...conditions].reverse()) node = guard(low.store, condition, node);
	if (isShared) low.guardedInputs.set(key, node);
	return node;
}

function enteredCell(
	low: Lowering,
	known: KnownQuantity,
	cell: number,
	scenario: ScenarioRead
): number {
	const isCell = scenario === 1 && low.context.isMeasuredByCopies;
	if (!known.fixed || isCell || (low.tracing && known.frozen === undefined))
		return low.store.cell(cell, scenario);
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
	const conditions = low.presenceAxes(layout.index).map(({ axis, present }) => {
		const ordinal = layout.members[start + axis] ?? 0;
		return readCell(low, present.index, cellAt(present, [ordinal]), scenario);
	});
	// A condition may ask about the entered value that it is the condition of: it reads it as entered.
	const judgesItself = low.judging.at(-1) === cell;
	if (low.inputConditions.has(layout.index) && isEnteredCell(known, cell) && !low.tracing)
		if (!judgesItself) conditions.push(whereCell(low, known, cell, scenario));
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
	// Two entered values whose conditions need each other: neither can be judged first.
	if (low.judging.includes(cell)) return low.store.nothing(CIRCULAR);
	let lifted = low.whereCells.get(cell);
	if (lifted === undefined) {
		low.judging.push(cell);
		const { members, proof, failed, depth } = low;
		low.members = new Int32Array(32);
		low.depth = 1;
		setMembers(low, known, cell);
		const root = low.root(part);
		Object.assign(low, { members, proof, failed, depth });
		low.judging.pop();
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
