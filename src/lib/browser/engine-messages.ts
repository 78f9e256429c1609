/**
 * What the page and the two engines' workers say to each other. Plain data only.
 */
import type { QuantityFault } from '$lib/engine/faults';
import type { Agreement, Results, Why } from '$lib/engine/results';
import type { PlanProblem } from '$lib/engine/plan';
import type { Trial } from '$lib/engine/trial';
import type { Command } from '$lib/workbook/commands';
import type { Quantity, Workbook } from '$lib/workbook/schema';

export type { QuantityFault as Fault } from '$lib/engine/faults';

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
			readonly faults: readonly QuantityFault[];
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

export type ToVerifier =
	| { readonly kind: 'open'; readonly revision: number; readonly workbook: Workbook }
	| { readonly kind: 'apply'; readonly revision: number; readonly commands: readonly Command[] }
	/** What the first engine found, to be compared once the second is as far. */
	| { readonly kind: 'compare'; readonly revision: number; readonly results: readonly Results[] };

export type FromVerifier =
	| { readonly kind: 'agreement'; readonly revision: number; readonly agreement: Agreement }
	| { readonly kind: 'failed'; readonly message: string };
