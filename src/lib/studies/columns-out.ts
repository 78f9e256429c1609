/** What a run of columns gives: one list of values and one of states for each result. */
import type { Machine } from '$lib/engine/interpreter/machine';
import type { Outcome } from '$lib/engine/results';
import { ABSENT, carried, OK } from '$lib/engine/state';

/** Column by column, for each result in turn; NaN where the state is not OK. */
export interface ColumnsOut {
	readonly values: readonly Float64Array[];
	readonly states: readonly Uint8Array[];
}

/** For so many results of so many draws. */
export const roomFor = (results: number, count: number): ColumnsOut => ({
	values: Array.from({ length: results }, () => new Float64Array(count)),
	states: Array.from({ length: results }, () => new Uint8Array(count))
});

/** Of a cell of the study, or the same in every draw. */
type Condition = number | Outcome;

/** A result that moves: where its value comes from, and what must say yes for it to be seen. */
export interface Out {
	readonly result: number;
	readonly from: Condition;
	readonly conditions: readonly Condition[];
}

export function take(
	{ result, from, conditions }: Out,
	machine: Machine,
	into: ColumnsOut,
	start: number,
	count: number
): void {
	const values = into.values[result]!;
	const states = into.states[result]!;
	if (typeof from === 'number' && conditions.length === 0) {
		machine.read(from, values, states, start, count);
		return;
	}
	for (let i = 0; i < count; i++) {
		const one = seen(
			outcomeAt(machine, from, i),
			conditions.map((condition) => outcomeAt(machine, condition, i))
		);
		values[start + i] = one.value;
		states[start + i] = one.state;
	}
}

function outcomeAt(machine: Machine, from: Condition, i: number): Outcome {
	if (typeof from !== 'number') return from;
	const { at, by } = machine.place(from);
	return { value: machine.values[at + i * by]!, state: machine.states[at + i * by]! };
}

/** A condition that holds in every draw. */
export const says = (one: Condition) =>
	typeof one !== 'number' && one.state === OK && one.value !== 0;

/** What a result is in every draw: it does not move, or what does not move hides it. */
export function settledOf(from: Condition, conditions: readonly Condition[]): Outcome | undefined {
	const first = conditions.find((one) => !says(one));
	if (first === undefined) return typeof from === 'number' ? undefined : seen(from, []);
	return typeof first === 'number' ? undefined : seen({ value: NaN, state: OK }, [first]);
}

/** An entered value as it is seen where all its conditions must hold. */
export function seen(one: Outcome, conditions: readonly Outcome[]): Outcome {
	const no = conditions.find(({ value, state }) => state !== OK || value === 0);
	if (no) return { value: NaN, state: no.state === OK ? ABSENT : carried(no.state) };
	return { value: one.state === OK ? one.value + 0 : NaN, state: one.state };
}
