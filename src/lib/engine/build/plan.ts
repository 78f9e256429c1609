/**
 * The plan of a workbook. Nothing that a user can write makes it fail: a formula that cannot be proven gives its
 * cells an error and the plan a problem, and everything else computes.
 */
import type { Workbook } from '$lib/workbook/schema';
import type { QuantityLayout } from '../layout';
import { Op, printedKey, type Plan, type PlanProblem } from '../plan';
import { BAD_FORMULA } from '../state';
import { maybeAbsent, type ProvenPart, type ProvenQuantity } from './absence';
import { Context } from './context';
import { readsOf, reversed } from './edges';
import { guard } from './fold';
import { conditionsOfInputs } from './input-conditions';
import { loopProblems } from './loops';
import { Lowering } from './lower';
import { remember } from './memory';
import type { NodeStore } from './node-store';
import { orderOf } from './order';
import { printed, proveQuantity, quantityProblems } from './part';
import { presenceOf, setMembers } from './read-cells';
import { INPUT, partOfCell } from './rules';

export function buildPlan(workbook: Workbook): Plan {
	const context = new Context(workbook);
	const { layout } = context;
	const proven = context.quantities.map((known) => proveQuantity(context, known));
	const absent = maybeAbsent(context, proven);
	const inputConditions = conditionsOfInputs(proven);
	const low = new Lowering(context, absent, inputConditions, layout.cells);

	const ownRoots = new Int32Array(layout.cells).fill(-1);
	const inputRange = new Int32Array(layout.cells).fill(-1);
	for (const one of proven) lowerQuantity(low, one, ownRoots, inputRange);

	const roots = new Int32Array(layout.cells + low.liftedRoots.length);
	roots.set(ownRoots);
	roots.set(low.liftedRoots.finish(), layout.cells);
	const liftedFrom = low.liftedFrom.finish();
	const nodes = low.store.finish();
	const { precedents, readsOtherScenario } = readsOf(roots, nodes);
	const { order, loops } = orderOf(roots, precedents);
	const quantityOf = (cell: number) =>
		cell < layout.cells
			? (layout.quantityOfCell[cell] ?? 0)
			: (liftedFrom[cell - layout.cells] ?? 0);
	const circular = loopProblems({ layout, proven, precedents, quantityOf }, loops);

	const plan: Plan = {
		layout,
		cells: roots.length,
		liftedFrom,
		nodes,
		roots,
		inputRange,
		order,
		circular: Int32Array.from(loops.flat()).sort(),
		precedents,
		dependents: reversed(precedents),
		readsOtherScenario,
		problems: [...problemsOf(context, proven), ...circular],
		warnings: partsOf(proven).flatMap(({ proof }) => proof.warnings),
		printed: printedFormulas(proven)
	};
	remember(plan, { context, absent, inputConditions });
	return plan;
}

const partsOf = (proven: readonly ProvenQuantity[]): ProvenPart[] =>
	proven.flatMap(({ parts, where }) => (where ? [...parts, where] : parts));

function problemsOf(context: Context, proven: readonly ProvenQuantity[]): PlanProblem[] {
	return proven.flatMap((one) => [
		...quantityProblems(context, one.known),
		...partsOf([one]).flatMap(({ proof }) => proof.problems)
	]);
}

function printedFormulas(proven: readonly ProvenQuantity[]): ReadonlyMap<string, string> {
	const texts = new Map<string, string>();
	for (const one of proven)
		for (const part of partsOf([one])) {
			const text = printed(part);
			if (text !== null) texts.set(printedKey(one.known.layout.index, part.proof.part), text);
		}
	return texts;
}

/** The roots of a quantity's cells. */
export function lowerQuantity(
	low: Lowering,
	{ known, parts, where }: ProvenQuantity,
	roots: Int32Array,
	inputRange: Int32Array,
	firstCell = 0
): void {
	const { layout, rules } = known;
	const limits = known.type.kind === 'number' ? limitsOf(low.store, layout) : -1;
	low.startQuantity(layout.index);
	for (let cell = layout.base; cell < layout.base + layout.count; cell++) {
		const at = cell - firstCell;
		const partIndex = partOfCell(rules, layout, cell);
		if (partIndex === INPUT) {
			inputRange[at] = limits;
			continue;
		}
		const part = parts[partIndex];
		roots[at] = low.store.nothing(BAD_FORMULA);
		if (!part || isBad(part) || (where && isBad(where)) || low.isTooLarge()) continue;
		setMembers(low, known, cell);
		let root = low.root(part);
		if (limits >= 0) root = inRange(low.store, root, limits);
		if (where) root = guard(low.store, low.root(where), root);
		for (const present of presenceOf(low, known, cell, 0).reverse())
			root = guard(low.store, present, root);
		roots[at] = root;
	}
	spoil(low.store, { known, parts, where }, roots, firstCell);
}

const isBad = ({ proof, typed }: ProvenPart) =>
	typed.kind === 'broken' || proof.problems.length > 0;

/** A formula that failed for one of its cells is an error in all of them. */
function spoil(
	store: NodeStore,
	{ known, parts, where }: ProvenQuantity,
	roots: Int32Array,
	firstCell: number
): void {
	const { layout, rules } = known;
	if (![...parts, ...(where ? [where] : [])].some(isBad)) return;
	for (let cell = layout.base; cell < layout.base + layout.count; cell++) {
		const part = parts[partOfCell(rules, layout, cell)];
		if (part && (isBad(part) || (where && isBad(where))))
			roots[cell - firstCell] = store.nothing(BAD_FORMULA);
	}
}

/** Where the permitted range stands among the lists, or −1. */
function limitsOf(store: NodeStore, { quantity: { range } }: QuantityLayout): number {
	if (!range) return -1;
	const places = [range.min, range.max, range.above, range.below].map((limit) =>
		limit === undefined ? -1 : store.constantPlace(limit)
	);
	return places.every((place) => place < 0) ? -1 : store.list(places);
}

function inRange(store: NodeStore, root: number, limits: number): number {
	return store.opOf(root) === Op.Nothing ? root : store.emit(Op.InRange, root, limits);
}
