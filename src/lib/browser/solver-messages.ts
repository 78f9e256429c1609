/** What the page and the worker that plans say to each other. Plain data only. */
import type { AnyAnswer, Question } from '$lib/programmes/inquiry/questions';
import type { Resting } from '$lib/engine/resting';
import type { Command } from '$lib/workbook/commands';

export type ToSolver =
	/** The plan of cells comes from the first engine, at the other end of the port; the solver's binary lies at the address. */
	| { readonly kind: 'open'; readonly port: MessagePort; readonly wasmUrl: string }
	| { readonly kind: 'apply'; readonly command: Command }
	/** Ends the planning of a workbook that has been edited since: the edit comes with what is next asked. */
	| { readonly kind: 'halt' }
	/** Plans what no longer answers its programme; answered by `planned`. */
	| { readonly kind: 'plan'; readonly revision: number }
	/** Answered by `answered` with its number, once nothing is to be planned. */
	| { readonly kind: 'ask'; readonly id: number; readonly question: Question };

/** Why a programme has no plan in a scenario. */
export interface Unplanned {
	readonly programme: string;
	readonly scenario: string;
	/** One sentence for a person. */
	readonly message: string;
}

/** What a plan that is kept as it stands falls short of the best. */
export interface KeptShort {
	readonly programme: string;
	readonly scenario: string;
	/** Of the best plan and of the one that is kept, as the workbook is now, in the objective's unit. */
	readonly best: number;
	readonly kept: number;
	/** Whether all that is required still holds with it. */
	readonly fits: boolean;
}

export interface PlanReport {
	/** Plans that stand, each proven best; of how many. */
	readonly proven: number;
	readonly of: number;
	readonly unplanned: readonly Unplanned[];
	readonly kept: readonly KeptShort[];
}

export type FromSolver =
	/** Before anything is planned: which cells rest on plans, where that is not as it was. */
	| { readonly kind: 'resting'; readonly revision: number; readonly resting: Resting }
	| {
			readonly kind: 'planned';
			readonly revision: number;
			/** Puts the new plans into the workbook; null where all stand as they are. */
			readonly command: Command | null;
			readonly report: PlanReport;
	  }
	| { readonly kind: 'answered'; readonly id: number; readonly answer: AnyAnswer }
	| { readonly kind: 'failed'; readonly message: string };
