/**
 * The formula of one cell lowered once more as it is written, for the question why: nothing shared with other
 * cells, no fixed reference folded, so that every name and every aggregate in it has a node to look at.
 */
import { parseFormula } from '$lib/formula/parse';
import type { Expression } from '$lib/formula/tree';
import { quantityOf } from '../layout';
import { printedKey, type Nodes, type Plan } from '../plan';
import { Lowering } from './lower';
import { memoryOf } from './memory';
import { provePart } from './part';
import { setMembers } from './cells-as-read';
import { partOfCell } from './rules';

export interface Trace {
	/** The formula as printed, gathering written out; spans are places in that text. */
	readonly expression: Expression;
	/** The part it is of its quantity: null for the one formula, else the case. */
	readonly part: string | null;
	readonly nodes: Nodes;
	/** The node of the whole formula, in the quantity's unit. */
	readonly root: number;
	/** The node of each name and each call outside aggregates, in its own unit. */
	readonly nodeOf: ReadonlyMap<Expression, number>;
	/** The unit in which that node's number is; nothing for yes/no and members. */
	readonly unitOf: ReadonlyMap<Expression, string>;
	/** The cell of each name that stands for one. */
	readonly cellOf: ReadonlyMap<Expression, number>;
}

/** Null for an input, and for a formula that could not be proven. */
export function trace(plan: Plan, cell: number): Trace | null {
	const place = quantityOf(plan.layout, cell);
	const { context, absent, inputConditions } = memoryOf(plan);
	const known = place && context.at(place.index);
	if (!known) return null;
	const rule = known.rules.parts[partOfCell(known.rules, known.layout, cell)];
	const text = rule && plan.printed.get(printedKey(known.layout.index, rule.name));
	if (!rule || text === undefined || !parseFormula(text).ok) return null;
	const part = provePart(context, known, rule.name, text, known.type);
	if (!part.expression || part.typed.kind === 'broken') return null;
	const tracing = {
		nodeOf: new Map<Expression, number>(),
		unitOf: new Map<Expression, string>(),
		cellOf: new Map<Expression, number>()
	};
	const low = new Lowering(context, absent, inputConditions, plan.cells, tracing);
	low.startQuantity(known.layout.index);
	setMembers(low, known, cell);
	const root = low.root(part);
	if (low.failed) return null;
	return {
		expression: part.expression,
		part: rule.name,
		nodes: low.store.finish(),
		root,
		...tracing
	};
}
