/**
 * What the engines hand out: for one scenario, one number and one state for every cell of the layout.
 */
import type { State } from './state';

export interface Results {
	readonly scenario: string;
	/** In each quantity's own unit; NaN where the state is not OK. */
	readonly values: Float64Array;
	/** See `state.ts`. */
	readonly states: Uint8Array;
}

/** One value as shown: the number and its state. */
export interface Outcome {
	readonly value: number;
	readonly state: State;
}

/** One cell as a person names it. */
export interface Place {
	readonly quantity: string;
	/** Member ids, axis by axis. */
	readonly members: readonly string[];
	readonly cell: number;
}

/** A piece of a formula as written, with the number that stands in its place. */
export interface FormulaPiece {
	readonly text: string;
	readonly role: 'name' | 'number' | 'operator' | 'bracket' | 'function' | 'words';
	/** For a name or a whole aggregate call: its value here and in the reference scenario. */
	readonly here?: Outcome | undefined;
	readonly reference?: Outcome | undefined;
	readonly unit?: string | undefined;
	/** For a name: the quantity it stands for, so that one can go there. */
	readonly quantity?: string | undefined;
	/** It stands within an aggregate, for as many values as that gathers. */
	readonly isGathered?: true;
}

export interface Feed extends Place {
	readonly here: Outcome;
	readonly reference: Outcome;
}

/** Whose error a value carries, in words. */
export interface Origin {
	/** Where the fault arose; null when the value itself is at fault. */
	readonly from: Place | null;
	/** A sentence: what happened, why (with the value and the name at fault), what to do. */
	readonly reason: string;
}

/** Everything the page says of one value when asked why. */
export interface Why extends Place {
	readonly scenario: string;
	/** The scenario that it is measured against. */
	readonly reference: string;
	readonly here: Outcome;
	readonly there: Outcome;
	/** Null for an input. */
	readonly formula: readonly FormulaPiece[] | null;
	/** What it reads directly, in the order of the formula; at most `FEED_LIMIT` entries, and how many there are. */
	readonly feeds: readonly Feed[];
	readonly feedCount: number;
	readonly fedInto: readonly Feed[];
	readonly fedIntoCount: number;
	/** The inputs behind it, however far, by quantity: its name and which of its cells. */
	readonly inputs: readonly {
		readonly quantity: string;
		readonly cells: readonly number[];
		readonly changed: number;
	}[];
	/** From the value that was asked about before down to this one, both included; empty where it does not rest on it. */
	readonly way: readonly Place[];
	readonly origin: Origin | null;
}

export const FEED_LIMIT = 600;

/** What the second engine found. */
export interface Agreement {
	/** Values compared over all scenarios, and how many agree (relative 1e-9, kinds of nothing and errors included). */
	readonly compared: number;
	readonly agreeing: number;
	/** Values that the second engine did not judge, and why. */
	readonly notCompared: readonly { readonly reason: string; readonly count: number }[];
	/** Where it checks a sample only: how large, and of what. */
	readonly sample: {
		readonly scenarios: readonly string[];
		readonly cells: number;
		readonly of: number;
	} | null;
	readonly disagreements: readonly (Place & {
		readonly scenario: string;
		readonly first: Outcome;
		readonly second: Outcome;
	})[];
	/** Whether it is still at work on the last edit. */
	readonly busy: boolean;
	/** How far it is with that, 0 to 1. */
	readonly done?: number | undefined;
}
