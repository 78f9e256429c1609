/**
 * The plan: every formula lowered once, for every cell, into one array of nodes. Names are resolved,
 * references aligned, gathering written out, fixed mappings folded, and a factor stands only where
 * scales meet. Both engines, the reasons and the exports read this and nothing else, so the meaning of the
 * language lives in the folder that builds it (`planner/`).
 *
 * Every value in the plan is in its quantity's own unit.
 */
import type { FormulaProblem } from '$lib/formula/tree';
import type { Layout } from './layout';

/**
 * Operations. `a` and `b` are node numbers unless said otherwise. "List of n at p" means
 * `lists[p] … lists[p+n-1]`.
 */
export const Op = {
	/** constants[a] */
	Constant: 0,
	/** The value of cell a, in this scenario (b = 0), in the one it is measured against (b = 1), in the base (b = 2). As it stands: an absent or empty cell stays so until an operation meets it. */
	Cell: 1,
	/** No value; a is the state (NOT_ENTERED, OFF_END, NO_ANSWER, HITS_NOTHING, BAD_FORMULA …). */
	Nothing: 2,
	Add: 10,
	Subtract: 11,
	Multiply: 12,
	Divide: 13,
	Power: 14,
	Negate: 15,
	Equal: 20,
	NotEqual: 21,
	Less: 22,
	LessOrEqual: 23,
	Greater: 24,
	GreaterOrEqual: 25,
	/** List of b nodes at a. All are looked at: no short cut, so that an error is never hidden by order. */
	And: 30,
	Or: 31,
	Not: 32,
	/** List of 3 at a: condition, then, else. Only the chosen branch counts. */
	If: 33,
	/** a, or b where a has no value of any kind. */
	IfError: 34,
	Abs: 40,
	Sqrt: 41,
	Exp: 42,
	Ln: 43,
	/** a to b digits; half away from zero. */
	Round: 44,
	RoundUp: 45,
	RoundDown: 46,
	/** a to a multiple of b, up or down. OpenFormula's signs. */
	Ceiling: 47,
	Floor: 48,
	/** Sign of the divisor. */
	Mod: 49,
	/** Of date a: days since 1899-12-30, whole from 1900-03-01 to 9999-12-31; a fraction of a day does not count. */
	YearOf: 50,
	MonthOf: 51,
	DayOf: 52,
	IsoWeek: 53,
	/** By type b: where the week starts, and with which number. */
	Weekday: 54,
	/** The date of the first day of month b of year a, both cut to whole numbers; month 13 is in the next year. */
	FirstOfMonth: 55,
	/** Day b, cut to a whole number, counted from date a as 1. */
	DayFrom: 56,
	/** The ordinal of the member at place a, from 1, of a set with b members. */
	MemberAt: 57,
	/** Selector a (a member's ordinal); list at b: count n, then n nodes, −1 where the pair does not exist (HITS_NOTHING). */
	Pick: 60,
	/** ABSENT where condition a says no, else b. Condition errors are carried. */
	Guard: 61,
	/** 1 if node a (always a Cell) is not ABSENT, else 0. Never an error: an empty or failed cell is present. */
	Present: 62,
	/** Node a if inside limits, else OUT_OF_RANGE; list of 4 at b: min, max, above, below as places in constants, −1 for none. */
	InRange: 63,
	/** b where a is OFF_END or NO_ANSWER, else a: the `else` of an index or of an aggregate with nothing left. */
	OrElse: 64,
	/**
	 * Aggregates: b terms at list a, three entries a term: value node, filter node or −1 (kept when it says yes; an
	 * error in it is carried; the value of a term left out does not count), position node or −1. After the
	 * terms, the parameters' nodes: NPV rate; PERCENTILE share; MIRR finance rate, reinvestment rate; RANK the ranked value.
	 * ALL, ANY, COUNT count conditions or present values. ARGMIN, ARGMAX give the position of the first best;
	 * FIRST, LAST the value of the first or last kept term; PAYBACK interpolates positions.
	 */
	Sum: 80,
	Min: 81,
	Max: 82,
	Average: 83,
	Count: 84,
	Product: 85,
	Any: 86,
	All: 87,
	Stdev: 88,
	Median: 89,
	Npv: 90,
	Irr: 91,
	Mirr: 92,
	Rank: 93,
	ArgMin: 94,
	ArgMax: 95,
	First: 96,
	Last: 97,
	Payback: 98,
	/** Parameter: the share, 0 to 1. */
	Percentile: 99,
	/** The straight line of least squares: the values are y, the positions x. */
	Slope: 100,
	Intercept: 101
} as const;
export type Op = (typeof Op)[keyof typeof Op];

export const isAggregate = (op: number) => op >= Op.Sum;

export interface Nodes {
	readonly count: number;
	readonly op: Uint8Array;
	readonly a: Int32Array;
	readonly b: Int32Array;
	readonly lists: Int32Array;
	readonly constants: Float64Array;
}

export interface PlanProblem extends FormulaProblem {
	readonly quantity: string;
	/** Which of the quantity's formulas: null the one, "where", or the case's member id. */
	readonly part: string | null;
}

/** Compressed rows: the targets of cell c are targets[starts[c]] … targets[starts[c+1]-1], each once, ascending. */
export interface Edges {
	readonly starts: Int32Array;
	readonly targets: Int32Array;
}

export interface Plan {
	/** Cells of the workbook first; cells of lifted subterms (aggregates that do not depend on all members) after. */
	readonly layout: Layout;
	/** All cells, the lifted ones included. */
	readonly cells: number;
	/** For each lifted cell (from layout.cells): the quantity whose formula it comes from. */
	readonly liftedFrom: Int32Array;
	readonly nodes: Nodes;
	/** Root node of each cell; −1: an input (its value comes from the workbook and the scenario). */
	readonly roots: Int32Array;
	/** Input cells that a range guards: place in `constants` as in Op.InRange, list position by cell, −1 for none. */
	readonly inputRange: Int32Array;
	/** Formula cells, each after everything it needs (reference scenarios count as needs). Circular cells are left out. */
	readonly order: Int32Array;
	/** Cells on a loop, ascending; empty when there is none. Their roots stay; their value is the error. */
	readonly circular: Int32Array;
	/** What a cell's formula reads; and what reads a cell. Reads of a reference scenario are in both. */
	readonly precedents: Edges;
	readonly dependents: Edges;
	/** Cells with a read of the reference or of the base scenario. */
	readonly readsOtherScenario: Int32Array;
	readonly problems: readonly PlanProblem[];
	/** What is permitted but may surprise; nothing is held back for it. */
	readonly warnings?: readonly PlanProblem[] | undefined;
	/** The formula of each quantity as proven and printed with gathering written out, by `printedKey`; for saving. */
	readonly printed: ReadonlyMap<string, string>;
}

/** Where `printed` keeps a formula: the quantity's index and the part as in `PlanProblem`. */
export const printedKey = (quantity: number, part: string | null): string =>
	part === null ? String(quantity) : `${quantity}:${part}`;
