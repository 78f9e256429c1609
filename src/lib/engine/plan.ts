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

/** The code of the problem of formulas that need each other. */
export const LOOP = 'circular';

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
	/** What reads a cell in its own scenario: what a scenario's changes follow, while its reference is its parent's. */
	readonly ownDependents: Edges;
	/** Cells with a read of the reference or of the base scenario. */
	readonly readsOtherScenario: Int32Array;
	/** Whether reads of the reference may meet a frozen copy, in which what is always there otherwise may be absent. */
	readonly isMeasuredByCopies?: boolean;
	readonly problems: readonly PlanProblem[];
	/** What is permitted but may surprise; nothing is held back for it. */
	readonly warnings?: readonly PlanProblem[] | undefined;
	/** The formula of each quantity as proven and printed with gathering written out, by `printedKey`; for saving. */
	readonly printed: ReadonlyMap<string, string>;
}

/** Where `printed` keeps a formula: the quantity's index and the part as in `PlanProblem`. */
export const printedKey = (quantity: number, part: string | null): string =>
	part === null ? String(quantity) : `${quantity}:${part}`;
