/**
 * The plan of a workbook. Nothing that a user can write makes it fail: a formula that cannot be proven gives its
 * cells an error and the plan a problem, and everything else computes.
 */
import type { Workbook } from '$lib/workbook/schema';
import { printedKey, type Plan, type PlanProblem } from '../plan';
import { maybeAbsent, type ProvenPart, type ProvenQuantity } from './absence';
import { Context } from './context';
import { readsOf, reversed } from './edges';
import { conditionsOfInputs } from './input-conditions';
import { loopProblems } from './loops';
import { Lowering } from './lower';
import { remember } from './memory';
import { orderOf } from './order';
import { printed, proveQuantity, quantityProblems } from './part';
import { lowerQuantity } from './roots';

export function buildPlan(workbook: Workbook): Plan {
	const context = new Context(workbook);
	const { layout } = context;
	const proven = context.quantities.map((known) => proveQuantity(context, known));
	const absent = maybeAbsent(context, proven);
	const inputConditions = conditionsOfInputs(proven);
	const low = new Lowering(context, absent, inputConditions, layout.cells);

	const ownRoots = new Int32Array(layout.cells).fill(-1);
	const inputRange = new Int32Array(layout.cells).fill(-1);
	low.roots = ownRoots;
	// What rests on no input comes first: choices are known by it.
	const [first, others] = [
		proven.filter(restsOnNothing),
		proven.filter((one) => !restsOnNothing(one))
	];
	for (const one of [...first, ...others]) lowerQuantity(low, one, ownRoots, inputRange);

	const roots = new Int32Array(layout.cells + low.liftedRoots.length);
	roots.set(ownRoots);
	roots.set(low.liftedRoots.finish(), layout.cells);
	const liftedFrom = low.liftedFrom.finish();
	const nodes = low.store.finish();
	const { precedents, own, readsOtherScenario } = readsOf(roots, nodes);
	const { order, loops } = orderOf(roots, precedents);
	const quantityOf = (cell: number) =>
		cell < layout.cells
			? (layout.quantityOfCell[cell] ?? 0)
			: (liftedFrom[cell - layout.cells] ?? 0);
	const circular = loopProblems(
		{
			context,
			partsOf: (quantity) => proven[quantity]?.parts ?? [],
			precedents,
			quantityOf,
			cellOf: (cell) => cell
		},
		loops
	);

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
		ownDependents: reversed(own),
		readsOtherScenario,
		isMeasuredByCopies: context.isMeasuredByCopies,
		problems: [...problemsOf(context, proven), ...circular],
		warnings: partsOf(proven).flatMap(({ proof }) => proof.warnings),
		printed: printedFormulas(proven)
	};
	remember(plan, { context, absent, inputConditions });
	return plan;
}

const restsOnNothing = ({ parts, where }: ProvenQuantity): boolean =>
	parts.length > 0 && !where && parts.every(({ typed }) => typed.fixed);

const partsOf = (proven: readonly ProvenQuantity[]): ProvenPart[] =>
	proven.flatMap(({ parts, where }) => (where ? [...parts, where] : parts));

function problemsOf(context: Context, proven: readonly ProvenQuantity[]): PlanProblem[] {
	return proven.flatMap((provenQuantity) => [
		...quantityProblems(context, provenQuantity.known),
		...partsOf([provenQuantity]).flatMap(({ proof }) => proof.problems)
	]);
}

function printedFormulas(proven: readonly ProvenQuantity[]): ReadonlyMap<string, string> {
	const texts = new Map<string, string>();
	for (const provenQuantity of proven)
		for (const part of partsOf([provenQuantity])) {
			const text = printed(part);
			if (text !== null)
				texts.set(printedKey(provenQuantity.known.layout.index, part.proof.part), text);
		}
	return texts;
}
