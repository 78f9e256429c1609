/**
 * Where a missing value arose: follows the operand that was to blame, from node to node and from cell to
 * cell, to the one that fails of itself. Words for it belong to `reason.ts`.
 */
import { probe, type Probe } from './interpreter/probe';
import type { Layout } from './layout';
import { NONE } from './operands';
import { isAggregate, Op, parameterCount } from './operations';
import type { Nodes, Plan } from './plan';
import type { Conditions } from './presence';
import type { Column } from './scenarios';
import { CIRCULAR, NO_ANSWER, OFF_END, OK } from './state';

/** What is known of the scenarios of an open workbook. */
export interface Answers {
	readonly plan: Plan;
	/** Of the workbook as it is now: an edit of words alone leaves the plan's as it was. */
	readonly layout: Layout;
	column(scenario: string): Column;
	/** The scenario or frozen copy that `x[reference]` reads; null where that one is built on this one in turn. */
	referenceOf(scenario: string): string | null;
	readonly base: string;
	/** Whether values are those of a frozen copy, which no formula gave. */
	isCopy(id: string): boolean;
	/** What must say yes for an entered value to count. */
	readonly conditions: Conditions;
}

export interface Fault {
	readonly scenario: string;
	/** The cell in which it arose, and the nearest cell that has a name. */
	readonly cell: number;
	readonly named: number;
	/** The formula of the cell and the node that failed; null for an input and for a cell on a loop. */
	readonly formula: { readonly probe: Probe; readonly node: number } | null;
}

/** The formula under a node of a plan or a trace, computed as a scenario sees it. */
export function probeIn(answers: Answers, scenario: string, nodes: Nodes, root: number): Probe {
	return probe(nodes, root, ({ cell, which }) => {
		// A trace may bring conditions of its own, past the plan's cells; what they guard is hidden already.
		if (cell >= answers.plan.cells) return { value: 1, state: OK };
		const other = scenarioOf(answers, scenario, which);
		if (other === null) return { value: NaN, state: CIRCULAR };
		const { values, states } = answers.column(other);
		return { value: values[cell]!, state: states[cell]! };
	});
}

export function scenarioOf(answers: Answers, scenario: string, which: number): string | null {
	if (which === 0) return scenario;
	return which === 2 || scenario === answers.base ? answers.base : answers.referenceOf(scenario);
}

export function findFault(answers: Answers, scenario: string, cell: number): Fault {
	const { plan } = answers;
	const seen = new Set<string>();
	let here = { scenario, cell };
	let named = cell;
	for (;;) {
		if (here.cell < plan.layout.cells) named = here.cell;
		seen.add(`${here.cell} ${here.scenario}`);
		if (answers.isCopy(here.scenario)) return { ...here, named, formula: null };
		const root = plan.roots[here.cell]!;
		const condition = root < 0 ? badCondition(answers, here) : undefined;
		if (condition !== undefined) {
			here = { scenario: here.scenario, cell: condition };
			continue;
		}
		const state = answers.column(here.scenario).states[here.cell];
		if (root < 0 || (state === CIRCULAR && isOnLoop(plan, here.cell)))
			return { ...here, named, formula: null };
		const own = probeIn(answers, here.scenario, plan.nodes, root);
		const node = blamed(own, own.root);
		const next = readingAt(own, node);
		const there = next && scenarioOf(answers, here.scenario, next.which);
		if (!next || !there || seen.has(`${next.cell} ${there}`))
			return { ...here, named, formula: { probe: own, node } };
		here = { scenario: there, cell: next.cell };
	}
}

/** A condition of an input that has itself no value. */
function badCondition(
	{ conditions, column }: Answers,
	{ scenario, cell }: { readonly scenario: string; readonly cell: number }
): number | undefined {
	const { states } = column(scenario);
	return conditions.get(cell)?.find((condition) => states[condition] !== OK);
}

const isOnLoop = (plan: Plan, cell: number) => plan.circular.includes(cell);

const readingAt = (own: Probe, node: number) =>
	own.nodes.op[node] === Op.Cell ? own.reading(node) : null;

/** From a node without a value down to the one that is to blame: a reading, or one that fails of itself. */
export function blamed(own: Probe, from: number): number {
	let node = from;
	for (;;) {
		const next = guilty(own, node);
		if (next === NONE) return node;
		node = next;
	}
}

/** The operand whose missing value this node has, NONE where it fails of itself. */
function guilty(own: Probe, node: number): number {
	const op = own.nodes.op[node]!;
	const operands = own.operands(node);
	const bad = (operand: number) => operand !== NONE && own.value(operand).state !== OK;
	const [a = NONE, b = NONE, c = NONE] = operands;
	if (isAggregate(op)) return guiltyTerm(own, op, operands);
	switch (op) {
		case Op.If:
			if (bad(a)) return a;
			return own.value(a).value !== 0 ? b : c;
		case Op.Guard:
			if (bad(a)) return a;
			return own.value(a).value === 0 ? NONE : b;
		case Op.IfError:
			return b;
		case Op.OrElse: {
			const { state } = own.value(a);
			return state === OFF_END || state === NO_ANSWER ? b : a;
		}
		case Op.Pick:
			return bad(a) ? a : (operands[own.value(a).value + 1] ?? NONE);
		default:
			return operands.find(bad) ?? NONE;
	}
}

/** The first bad one in the order in which aggregates look: filter, value, position; parameters last. */
function guiltyTerm(own: Probe, op: number, operands: readonly number[]): number {
	const bad = (operand: number) => operand !== NONE && own.value(operand).state !== OK;
	const end = operands.length - parameterCount(op);
	for (let term = 0; term < end; term += 3) {
		const [value = NONE, filter = NONE, position = NONE] = operands.slice(term, term + 3);
		if (bad(filter)) return filter;
		if (filter !== NONE && own.value(filter).value === 0) continue;
		if (bad(value)) return value;
		if (bad(position)) return position;
	}
	return operands.slice(end).find(bad) ?? NONE;
}
