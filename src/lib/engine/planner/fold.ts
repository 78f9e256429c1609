/**
 * Operations whose operands are known when the plan is made are done at once: fixed facts of the workbook
 * cost nothing when it is computed, and a condition that is fixed takes the branch it drops, with everything
 * that branch reads, out of the plan. What cannot be done without a fault is left to the engines.
 */
import { isUnary, operation, Op, type AggregateOp, type ScalarOp } from '../operations';
import { compute } from '../scalar';
import { ABSENT } from '../state';
import type { NodeStore } from './node-store';

/** An operation on one or two numbers; of a unary one `right` is 0. */
export function operate(store: NodeStore, op: ScalarOp, left: number, right: number): number {
	const unary = isUnary(op);
	if (store.isConstant(left) && (unary || store.isConstant(right))) {
		const value = compute(op, store.valueOf(left), unary ? 0 : store.valueOf(right));
		if (Number.isFinite(value)) return store.constant(value);
	}
	return store.emit(op, left, right);
}

/** AND, OR of conditions: a fixed one that decides is the result, one that does not is left out. */
export function junction(store: NodeStore, op: Op, items: readonly number[]): number {
	const decides = op === Op.And ? 0 : 1;
	const open: number[] = [];
	for (const item of items) {
		if (!store.isConstant(item)) open.push(item);
		else if ((store.valueOf(item) !== 0) === (decides === 1)) return store.constant(decides);
	}
	const [only] = open;
	if (only === undefined) return store.constant(1 - decides);
	if (open.length === 1 && hasOwnState(store.opOf(only))) return only;
	return store.emit(op, store.list(open), open.length);
}

/** ABSENT where the condition says no. */
export function guard(store: NodeStore, condition: number, value: number): number {
	if (!store.isConstant(condition)) return store.emit(Op.Guard, condition, value);
	return store.valueOf(condition) !== 0 ? value : store.nothing(ABSENT);
}

/** Whether an operation turns an absent or empty operand into an error itself, rather than passing it on. */
function hasOwnState(op: number): boolean {
	return (op >= Op.Add && op <= Op.GreaterOrEqual) || op === Op.Not || op === Op.Present;
}

/** The result of an aggregate whose kept values are all known, or null where the engines decide. */
export function foldAggregate(
	op: AggregateOp,
	values: readonly number[],
	positions: readonly number[]
): number | null {
	const result = known(op, values, positions);
	return result !== null && Number.isFinite(result) ? result : null;
}

function known(
	op: AggregateOp,
	values: readonly number[],
	positions: readonly number[]
): number | null {
	const best = (better: (a: number, b: number) => boolean) =>
		values.reduce((at, value, here) => (better(value, values[at] ?? NaN) ? here : at), 0);
	switch (op) {
		case Op.Sum:
			return values.reduce((sum, value) => sum + value, 0);
		case Op.Count:
			return values.length;
		case Op.Any:
			return values.some((value) => value !== 0) ? 1 : 0;
		case Op.All:
			return values.every((value) => value !== 0) ? 1 : 0;
		case Op.Min:
			return values[best((a, b) => a < b)] ?? null;
		case Op.Max:
			return values[best((a, b) => a > b)] ?? null;
		case Op.ArgMin:
			return positions[best((a, b) => a < b)] ?? null;
		case Op.ArgMax:
			return positions[best((a, b) => a > b)] ?? null;
		case Op.First:
			return values[0] ?? null;
		case Op.Last:
			return values.at(-1) ?? null;
		default:
			return null;
	}
}

/** What an aggregate of nothing is: a number, or null where there is no answer. */
export function ofNothing(op: AggregateOp): number | null {
	return operation(op).ofNothing ?? null;
}
