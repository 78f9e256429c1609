/**
 * One quantity as somebody is writing it, judged against a workbook that is open: what is wrong with it, what its
 * formula gives, how it will be printed. Only its own cells are lowered; nothing else is planned anew.
 */
import type { Quantity, Workbook } from '$lib/workbook/schema';
import type { Unit } from '$lib/units/unit';
import { layOutOne } from '../layout';
import type { Plan, PlanProblem } from '../plan';
import type { ProvenPart, ProvenQuantity } from './absence';
import type { Context } from './context';
import { draftLoops } from './draft-loops';
import { readsOf } from './edges';
import { Lowering } from './lower';
import { memoryOf, type Memory } from './memory';
import { printed, proveQuantity, quantityProblems, WHERE } from './part';
import { buildPlan } from './plan';
import { lowerQuantity } from './roots';

export interface Gives {
	readonly part: string | null;
	readonly kind: 'number' | 'yes_no' | 'member';
	/** In which unit a number comes out, before it is converted into the quantity's own. */
	readonly unit: Unit | null;
	/** Of which set a member is. */
	readonly set: string | null;
}

export interface Tried {
	readonly problems: readonly PlanProblem[];
	readonly warnings: readonly PlanProblem[];
	/** By part; a formula that could not be resolved gives nothing. */
	readonly gives: readonly Gives[];
	/** The canonical text by part; a formula with a problem has none. */
	readonly printed: readonly { readonly part: string | null; readonly text: string }[];
}

/** A quantity of the same name is replaced, another is added. */
export function tryFormula(open: Plan | Workbook, draft: Quantity): Tried {
	const plan = 'layout' in open ? open : buildPlan(open);
	const memory = memoryOf(plan);
	const { layout } = plan;
	const before = layout.byName.get(draft.name);
	const keepsCells = before !== undefined && sameShape(before.quantity, draft);
	const index = before?.index ?? layout.quantities.length;
	const laid = layOutOne(layout, draft, index, keepsCells ? before.base : plan.cells);
	const context = memory.context.withDraft(laid.quantity);
	const proven = proveQuantity(context, context.know(laid.quantity));
	const parts = proven.where ? [...proven.parts, proven.where] : proven.parts;
	const own = laid.problem
		? [{ quantity: draft.name, part: null, span: { start: 0, end: 0 }, ...laid.problem }]
		: quantityProblems(context, proven.known);
	// Lowering finds problems too: it comes before they are counted.
	const loops = laid.problem ? [] : loopsOfDraft(plan, memory, context, proven);
	return {
		problems: [...own, ...parts.flatMap(({ proof }) => proof.problems), ...loops],
		warnings: parts.flatMap(({ proof }) => proof.warnings),
		gives: parts.flatMap(givenBy),
		printed: parts.flatMap((part) => {
			const text = printed(part);
			return text === null ? [] : [{ part: part.proof.part, text }];
		})
	};
}

const sameShape = (a: Quantity, b: Quantity) =>
	JSON.stringify([a.per ?? [], a.in ?? []]) === JSON.stringify([b.per ?? [], b.in ?? []]);

function givenBy({ proof, given }: ProvenPart): Gives[] {
	if (!given || given.kind === 'bad' || proof.part === WHERE) return [];
	return [
		{
			part: proof.part,
			kind: given.kind,
			unit: given.kind === 'number' ? given.unit : null,
			set: given.kind === 'member' ? given.set : null
		}
	];
}

/** Lowers the draft beside the plan, and looks for loops of its cells with the plan's. */
function loopsOfDraft(
	plan: Plan,
	memory: Memory,
	context: Context,
	proven: ProvenQuantity
): PlanProblem[] {
	const draft = proven.known.layout;
	const firstLifted = Math.max(plan.cells, draft.base + draft.count);
	const absent = new Uint8Array(context.quantities.length);
	absent.set(memory.absent.subarray(0, absent.length));
	const low = new Lowering(context, absent, memory.inputConditions, firstLifted);
	const roots = new Int32Array(draft.count).fill(-1);
	lowerQuantity(low, proven, roots, new Int32Array(draft.count), draft.base);
	const all = new Int32Array(firstLifted + low.liftedRoots.length).fill(-1);
	all.set(roots, draft.base);
	all.set(low.liftedRoots.finish(), firstLifted);
	const { precedents } = readsOf(all, low.store.finish());
	return draftLoops(plan, context, proven, { roots: all, precedents });
}
