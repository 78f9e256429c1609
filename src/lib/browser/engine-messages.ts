/**
 * What the page and the two engines' workers say to each other, and the first engine to whoever works with its
 * plan. Plain data only, and the ports by which workers speak without the page.
 */
import type { QuantityFault } from '$lib/engine/faults';
import type { Plan } from '$lib/engine/plan';
import type { Agreement, Results, Why } from '$lib/engine/results';
import type { PlanProblem } from '$lib/engine/plan';
import type { FiguresAsked, OrderFigures } from '$lib/engine/quote-figures';
import type { QuoteOver } from '$lib/engine/quote-over';
import type { Trial } from '$lib/engine/trial';
import type { Command } from '$lib/workbook/commands';
import type { Quantity, QuoteEntry, Workbook } from '$lib/workbook/schema';

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
			readonly command: Command;
			readonly order: readonly string[];
	  }
	| {
			readonly kind: 'why';
			readonly question: number;
			readonly scenario: string;
			readonly cell: number;
			/** The cell that was asked about before, if somebody went on from it. */
			readonly from: number | null;
	  }
	| {
			readonly kind: 'try';
			readonly question: number;
			readonly quantity: Quantity;
			readonly replaces: string | null;
	  }
	/** A quote over the workbook as it is; with what it stands on, if that is to be kept. */
	| {
			readonly kind: 'quote';
			readonly question: number;
			readonly entries: readonly QuoteEntry[];
			readonly keep: boolean;
	  }
	/** Figures of several orders over it. */
	| { readonly kind: 'figures'; readonly question: number; readonly asked: FiguresAsked }
	/** Where the second engine listens, before anything is handed to it. */
	| { readonly kind: 'connect'; readonly port: MessagePort }
	/** Hands the second engine what has been found since it was last asked to check. */
	| { readonly kind: 'check'; readonly revision: number }
	/** Gives the plan of this moment to whoever listens at the other end. */
	| { readonly kind: 'lend'; readonly port: MessagePort };

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
	/** All scenarios are answered. `plan` is another number for every plan that was made. */
	| { readonly kind: 'settled'; readonly revision: number; readonly plan: number }
	| { readonly kind: 'why'; readonly question: number; readonly why: Why | null }
	| { readonly kind: 'trial'; readonly question: number; readonly trial: Trial }
	| { readonly kind: 'quoted'; readonly question: number; readonly quoted: QuoteOver | null }
	| {
			readonly kind: 'figures';
			readonly question: number;
			readonly figures: readonly OrderFigures[] | null;
	  }
	/** Asked to check: there was something to hand over, or all is as it was when last asked. */
	| { readonly kind: 'handed'; readonly revision: number; readonly isNew: boolean }
	/** A command came that it has no workbook for: it must be opened again. */
	| { readonly kind: 'lost' }
	| { readonly kind: 'failed'; readonly message: string };

/** A plan as another thread gets it, with the workbook whose values go into it. */
export interface LentPlan {
	readonly workbook: Workbook;
	readonly plan: Plan;
}

/** From the first engine to the second. */
export interface Check {
	readonly revision: number;
	/** To begin anew with; null where the plan that it has still stands. */
	readonly fresh: LentPlan | null;
	/** What has been done since, where it does. */
	readonly commands: readonly Command[];
	/** What the first engine found, to be compared. */
	readonly results: readonly Results[];
}

export type ToVerifier =
	| { readonly kind: 'connect'; readonly port: MessagePort }
	/** The plan that it builds for stands no more. */
	| { readonly kind: 'stop' };

export type FromVerifier =
	| { readonly kind: 'agreement'; readonly revision: number; readonly agreement: Agreement }
	| { readonly kind: 'failed'; readonly message: string };
