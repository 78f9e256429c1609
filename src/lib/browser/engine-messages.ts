/**
 * What the page and the two engines' workers say to each other. Plain data only.
 */
import type { Agreement, Origin, Results, Why } from '$lib/engine/results';
import type { PlanProblem } from '$lib/engine/plan';
import type { Command } from '$lib/workbook/commands';
import type { Quantity, Workbook } from '$lib/workbook/schema';

/** Why the values of one quantity are in error in one scenario: its first cell in error stands for all. */
export interface Fault {
	readonly quantity: string;
	readonly cell: number;
	/** How many of its cells are in error. */
	readonly count: number;
	readonly origin: Origin;
}

/** A formula that is being written: what it would give, or what is wrong with it. */
export interface Trial {
	readonly problems: readonly PlanProblem[];
	/** The formula as it would be saved, gathering written out; null where it cannot be proven. */
	readonly printed: string | null;
	/** Unit that the formula gives, where it can be told. */
	readonly unit: string | null;
	/** Its values in the base, in the order of its cells; null where it cannot be proven. */
	readonly values: Float64Array | null;
	readonly states: Uint8Array | null;
}

export type ToEngine =
	| {
			readonly kind: 'open';
			readonly revision: number;
			readonly workbook: Workbook;
			/** Which scenario to answer first. */
			readonly order: readonly string[];
	  }
	| {
			readonly kind: 'apply';
			readonly revision: number;
			readonly commands: readonly Command[];
			readonly order: readonly string[];
	  }
	| {
			readonly kind: 'why';
			readonly question: number;
			readonly scenario: string;
			readonly cell: number;
	  }
	| {
			readonly kind: 'try';
			readonly question: number;
			readonly quantity: Quantity;
			readonly replaces: string | null;
	  };

export type FromEngine =
	| { readonly kind: 'results'; readonly revision: number; readonly results: Results }
	| {
			readonly kind: 'faults';
			readonly revision: number;
			readonly scenario: string;
			readonly faults: readonly Fault[];
	  }
	| {
			readonly kind: 'problems';
			readonly revision: number;
			readonly problems: readonly PlanProblem[];
	  }
	/** All scenarios are answered. */
	| { readonly kind: 'settled'; readonly revision: number }
	| { readonly kind: 'why'; readonly question: number; readonly why: Why | null }
	| { readonly kind: 'trial'; readonly question: number; readonly trial: Trial }
	| { readonly kind: 'failed'; readonly message: string };

export type ToReferee =
	| { readonly kind: 'open'; readonly revision: number; readonly workbook: Workbook }
	| { readonly kind: 'apply'; readonly revision: number; readonly commands: readonly Command[] }
	/** What the first engine found, to be compared once the second is as far. */
	| { readonly kind: 'compare'; readonly revision: number; readonly results: readonly Results[] };

export type FromReferee =
	| { readonly kind: 'agreement'; readonly revision: number; readonly agreement: Agreement }
	| { readonly kind: 'failed'; readonly message: string };
