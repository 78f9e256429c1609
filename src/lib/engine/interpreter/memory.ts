/**
 * What an instruction works on: the numbers and states of all slots, and where its operands stand.
 */
import type { State } from '$lib/engine/state';

export interface Memory {
	readonly values: Float64Array;
	readonly states: Uint8Array;
	/** Operands of the instruction in hand: first place, −1 where left out, and step from column to column (0 or 1). */
	at: Int32Array;
	by: Uint8Array;
}

/** Writes one result; returns whether it is a bad one. */
export function put(memory: Memory, place: number, value: number, state: State): boolean {
	memory.states[place] = state;
	memory.values[place] = state === 0 ? value : NaN;
	return state !== 0;
}

/** Copies value and state as they stand; returns whether it is a bad one. */
export function copy(memory: Memory, to: number, from: number): boolean {
	const state = memory.states[from]!;
	memory.states[to] = state;
	memory.values[to] = memory.values[from]!;
	return state !== 0;
}
