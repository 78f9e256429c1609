/** What a reader asks about a programme's plan, and the answers: plain data, by the cells of the workbook. */
import type { Programme } from '$lib/workbook/programme-schema';
import type { Priced } from '../planning';

/** A programme in a scenario, for one member of each set that it is solved apart for. */
export interface Where {
	readonly programme: string;
	readonly scenario: string;
	readonly members: readonly string[];
}

export type Question =
	| { readonly kind: 'look'; readonly where: Where }
	| {
			readonly kind: 'curve';
			readonly where: Where;
			readonly cell: number;
			readonly amounts: readonly number[];
	  }
	| { readonly kind: 'reason'; readonly where: Where; readonly cell: number }
	/** So much of a requirement goes to something that the plan knows nothing of. */
	| {
			readonly kind: 'taking';
			readonly where: Where;
			readonly cell: number;
			readonly amount: number;
	  }
	/** So much is taken of several cells of requirements at once; and what is free of the one named. */
	| {
			readonly kind: 'placing';
			readonly where: Where;
			readonly takes: readonly Share[];
			readonly hours: string;
	  }
	| { readonly kind: 'examine'; readonly programme: Programme; readonly scenario: string };

export type AnswerTo<K extends Question['kind']> =
	{ readonly ok: true; readonly answer: Answers[K] } | Unanswered;

/** Why there is none: sentences for a person. */
export interface Unanswered {
	readonly ok: false;
	readonly problems: readonly string[];
}

interface Answers {
	readonly look: Look;
	readonly curve: readonly (number | null)[];
	readonly reason: Reason;
	readonly taking: Taking;
	readonly placing: Placing;
	readonly examine: Statement;
}
export type AnyAnswer = AnswerTo<Question['kind']>;

/** The plan that stands, and what the best one says about it. */
export interface Look {
	/** What the objective comes to: of the best plan, in its own unit. */
	readonly best: number;
	/** How far it may be from the best in whole numbers, relative; null where nothing is whole. */
	readonly gap: number | null;
	readonly rooms: readonly Room[];
	readonly worth: readonly Priced[];
	readonly unmet: readonly Unmet[];
	readonly pins: Pins;
}

export interface Share {
	readonly cell: number;
	readonly amount: number;
}

/** A requirement: how much of what is there is used. */
export interface Room {
	readonly cell: number;
	/** At most, at least, or just so much. */
	readonly way: 'most' | 'least' | 'equal';
	readonly used: number;
	readonly there: number;
	/** In which unit; empty for none. */
	readonly unit: string;
	/** What each decision takes of it. */
	readonly shares: readonly Share[];
}

/** A decision that would be larger if nothing stood in its way. */
export interface Unmet {
	readonly cell: number;
	/** What is chosen, and what could be at most. */
	readonly value: number;
	readonly most: number;
	/** What the rest would bring if what is scarce had no end; null where that has no answer. */
	readonly money: number | null;
}

/** What somebody entered, and what that costs. */
export interface Pins {
	readonly each: readonly Pin[];
	/** Of all that are held together; null where it has no answer. */
	readonly together: number | null;
	/** How many there are beyond those told one by one. */
	readonly more: number;
}

export interface Pin {
	readonly cell: number;
	readonly value: number;
	/** What the objective would gain if it were let go; null where there is no plan with it, or none without. */
	readonly cost: number | null;
}

export interface Taking {
	/** What the objective loses; null where no plan is left. */
	readonly cost: number | null;
	/** Of what pays by itself, what is done less, most money first. */
	readonly gives: readonly Given[];
}

export interface Placing {
	/** What the objective loses; null where no plan is left. */
	readonly cost: number | null;
	/** What is done less, or more where it is negative, most money first. */
	readonly gives: readonly Given[];
	/** What is free of a requirement without it, and with it where there is a plan. */
	readonly rooms: readonly {
		readonly cell: number;
		readonly free: number;
		readonly freeWith: number | null;
	}[];
	/** The largest share that fits, where not all does. */
	readonly fits: number | null;
}

export interface Given {
	readonly cell: number;
	readonly amount: number;
	/** What that brought by itself; what it took comes free for something else. */
	readonly money: number;
}

/** Why a decision is not larger, or what stands in a requirement. */
export type Reason = DecisionReason | RequirementReason;

export interface DecisionReason {
	readonly kind: 'decision';
	readonly cell: number;
	readonly value: number;
	/** Infinite where there is no limit. */
	readonly lower: number;
	readonly upper: number;
	readonly isPinned: boolean;
	/** What the objective gains by one unit more: of the decision by itself, and with all that it takes. */
	readonly own: number;
	readonly gain: number;
	readonly takes: readonly Take[];
}

/** What one unit of a decision takes of a requirement that is scarce. */
export interface Take {
	readonly cell: number;
	readonly unit: string;
	/** By unit of the decision; negative where it gives instead. */
	readonly amount: number;
	/** What one unit of room is worth, and what the objective loses by the amount. */
	readonly price: number;
	readonly loss: number;
	/** Who gives room to the requirement, the nearest to pay first; empty where it is simply there. */
	readonly ways: readonly Way[];
}

export interface Way {
	readonly cell: number;
	/** What one unit more of the decision asked about changes if it comes by this way. */
	readonly gain: number;
	/** By unit of the decision asked about: what the way costs by itself, and what it takes. */
	readonly own: number;
	readonly takes: readonly Omit<Take, 'ways'>[];
}

export interface RequirementReason {
	readonly kind: 'requirement';
	readonly cell: number;
	readonly rows: readonly {
		readonly room: Room;
		/** What one unit of room is worth. */
		readonly price: number;
	}[];
	/** The decisions that take of it, the nearest to pay first. */
	readonly takers: readonly Taker[];
}

export interface Taker {
	readonly cell: number;
	readonly value: number;
	/** Of the requirement, by unit of the decision. */
	readonly amount: number;
	/** What the objective gains by one unit more. */
	readonly gain: number;
	readonly isPinned: boolean;
}

/** A programme as it is solved: sizes, and one row of each kind in full. */
export interface Statement {
	readonly decisions: number;
	readonly requirements: number;
	readonly factors: number;
	readonly whole: number;
	/** How many programmes are solved apart. */
	readonly apart: number;
	readonly objective: Sum;
	readonly samples: readonly Sample[];
}

export interface Sum {
	readonly cell: number;
	readonly constant: number;
	/** The first few; `more` counts the rest. */
	readonly terms: readonly { readonly cell: number; readonly factor: number }[];
	readonly more: number;
}

/** A requirement as a sum of decisions and what it must come to. */
export interface Sample extends Sum {
	readonly way: Room['way'];
	readonly bound: number;
	readonly unit: string;
}
