/** What a run of columns gives: one list of values and one of states for each result. */
import type { Machine } from '$lib/engine/interpreter/machine';
import type { Outcome } from '$lib/engine/results';
import { ABSENT, carried, OK } from '$lib/engine/state';

/** Column by column, for each result in turn; NaN where the state is not OK. */
export interface ColumnsOut {
	readonly values: readonly Float64Array[];
	readonly states: readonly Uint8Array[];
}

/** The same with all results in a row, `count` columns each. */
export interface ColumnsRoom extends ColumnsOut {
	readonly count: number;
	readonly allValues: Float64Array;
	readonly allStates: Uint8Array;
}

/** Of a cell of the study, or the same in every draw. */
type Condition = number | Outcome;

/** A result that moves: where its value comes from, and what must say yes for it to be seen. */
interface Out {
	readonly result: number;
	readonly from: Condition;
	readonly conditions: readonly Condition[];
}

/** Takes the results out of a machine, block by block. */
export class ResultReader {
	readonly #settled: readonly (Outcome | undefined)[];
	readonly #moving: readonly Out[];
	/** Of the machine in hand, the results that stand there as they are: result, cell and place of each. */
	#machine: Machine | null = null;
	#plain = new Int32Array(0);
	#other: readonly Out[] = [];

	/** By result: what it comes from, and what must say yes for it to be seen. */
	constructor(all: readonly Omit<Out, 'result'>[]) {
		this.#settled = all.map(({ from, conditions }) => settledOf(from, conditions));
		this.#moving = all.flatMap(({ from, conditions }, result) =>
			this.#settled[result]
				? []
				: [{ result, from, conditions: conditions.filter((condition) => !says(condition)) }]
		);
	}

	/** Room for so many draws; what no draw moves stands in it already. */
	room(count: number): ColumnsRoom {
		const results = this.#settled.length;
		const allValues = new Float64Array(results * count);
		const allStates = new Uint8Array(results * count);
		this.#settled.forEach((one, i) => {
			if (!one) return;
			allValues.fill(one.value, i * count, (i + 1) * count);
			allStates.fill(one.state, i * count, (i + 1) * count);
		});
		const own = <T extends { subarray(from: number, to: number): T }>(all: T): T[] =>
			Array.from({ length: results }, (_, i) => all.subarray(i * count, (i + 1) * count));
		return { count, allValues, allStates, values: own(allValues), states: own(allStates) };
	}

	take(machine: Machine, room: ColumnsRoom, start: number, count: number): void {
		if (this.#machine !== machine) this.#place(machine);
		const { values, states } = machine;
		const { allValues, allStates } = room;
		const plain = this.#plain;
		for (let k = 0; k < plain.length; k += 3) {
			const to = plain[k]! * room.count + start;
			const at = plain[k + 2]!;
			// Minus zero is zero to everyone who reads it; a bad one holds NaN already.
			for (let i = 0; i < count; i++) allValues[to + i] = values[at + i]! + 0;
			if (machine.isClean(plain[k + 1]!)) allStates.fill(OK, to, to + count);
			else for (let i = 0; i < count; i++) allStates[to + i] = states[at + i]!;
		}
		for (const out of this.#other) takeOne(out, machine, room, start, count);
	}

	#place(machine: Machine): void {
		const isPlain = ({ from, conditions }: Out) =>
			typeof from === 'number' && conditions.length === 0 && machine.place(from).by === 1;
		this.#machine = machine;
		this.#other = this.#moving.filter((out) => !isPlain(out));
		this.#plain = Int32Array.from(
			this.#moving
				.filter(isPlain)
				.flatMap(({ result, from }) => [result, from as number, machine.place(from as number).at])
		);
	}
}

function takeOne(
	{ result, from, conditions }: Out,
	machine: Machine,
	room: ColumnsRoom,
	start: number,
	count: number
): void {
	const to = result * room.count + start;
	for (let i = 0; i < count; i++) {
		const outcome = seen(
			outcomeAt(machine, from, i),
			conditions.map((condition) => outcomeAt(machine, condition, i))
		);
		room.allValues[to + i] = outcome.value;
		room.allStates[to + i] = outcome.state;
	}
}

function outcomeAt(machine: Machine, from: Condition, i: number): Outcome {
	if (typeof from !== 'number') return from;
	const { at, by } = machine.place(from);
	return { value: machine.values[at + i * by]!, state: machine.states[at + i * by]! };
}

/** A condition that holds in every draw. */
const says = (condition: Condition) =>
	typeof condition !== 'number' && condition.state === OK && condition.value !== 0;

/** What a result is in every draw: it does not move, or what does not move hides it. */
function settledOf(from: Condition, conditions: readonly Condition[]): Outcome | undefined {
	const first = conditions.find((condition) => !says(condition));
	if (first === undefined) return typeof from === 'number' ? undefined : seen(from, []);
	return typeof first === 'number' ? undefined : seen({ value: NaN, state: OK }, [first]);
}

/** An entered value as it is seen where all its conditions must hold. */
export function seen(outcome: Outcome, conditions: readonly Outcome[]): Outcome {
	const no = conditions.find(({ value, state }) => state !== OK || value === 0);
	if (no) return { value: NaN, state: no.state === OK ? ABSENT : carried(no.state) };
	return { value: outcome.state === OK ? outcome.value + 0 : NaN, state: outcome.state };
}
