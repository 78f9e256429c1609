/** What becomes of one edit: refused, seen by which means, or passed; and what it does to the headline results. */
import { Model } from '$lib/engine/model';
import { tryFormula } from '$lib/engine/planner/check';
import { applyCommand, type Command, type InputEntry } from '$lib/workbook/commands';
import { jumpBetween } from '$lib/workbook/jump';
import { findQuantity } from '$lib/workbook/lookup';
import { isPermitted } from '$lib/workbook/range';
import { inputAt } from '$lib/workbook/scenario';
import type { Workbook } from '$lib/workbook/schema';
import type { Fault } from './fault';
import { seenOf, type Seen } from './state-of';

export type Means = 'refused' | 'error' | 'range' | 'check' | 'caution' | 'review' | 'jump';
export const MEANS: readonly Means[] = [
	'refused',
	'error',
	'range',
	'check',
	'caution',
	'review',
	'jump'
];

export interface Effect {
	/** "cost_per_metre 3 base" */
	readonly result: string;
	/** Of what it was. */
	readonly by: number;
}

export interface Verdict {
	readonly fault: Fault;
	/** Moves no result at all. */
	readonly inert: boolean;
	/** The first means by which it is met, in their order; null where it passes. */
	readonly means: Means | null;
	/** What it is that speaks, by its scenario and name: the first of those that the edit made speak. */
	readonly by: string | null;
	/** The headline result that moves most; null where none does. */
	readonly effect: Effect | null;
}

/** Whether any plan was made anew. */
export type Follow = (model: Model) => boolean;

/** What a plan that was left behind may say. */
const OF_PLANS: ReadonlySet<Means> = new Set(['error', 'range', 'check', 'caution']);

/** More cells of an edit than this are told by their number, without marks. */
const TOLD = 8;

export class Judge {
	readonly #model: Model;
	/** Makes the plans anew that an edit left behind; null where nothing is planned. */
	readonly #follow: Follow | null;
	readonly #sound: Workbook;
	readonly #clean: Seen;

	constructor(model: Model, follow: Follow | null) {
		this.#model = model;
		this.#follow = follow;
		this.#sound = model.workbook;
		this.#clean = kept(seenOf(model));
	}

	judge(fault: Fault): Verdict {
		const { edit } = fault;
		const passed = { fault, inert: false, effect: null, by: null };
		if (edit.kind === 'set_inputs') {
			if (isRefusedByRange(this.#model.workbook, edit.entries))
				return { ...passed, means: 'range' };
			const applied = this.#model.apply(edit);
			if (!applied.ok) return { ...passed, means: 'refused' };
			const verdict = this.#afterPlans(fault, this.#model);
			this.#model.take(this.#sound);
			return verdict;
		}
		if (this.#isUnproven(edit)) return { ...passed, means: 'refused' };
		const applied = applyCommand(this.#model.workbook, edit);
		if (!applied.ok) return { ...passed, means: 'refused' };
		const model = Model.open(applied.workbook);
		if (model.problems.length > this.#model.problems.length) return { ...passed, means: 'refused' };
		return this.#afterPlans(fault, model);
	}

	/** A formula with a problem is not kept; that is known without a new plan. */
	#isUnproven(edit: Command): boolean {
		return (
			edit.kind === 'replace_quantity' &&
			edit.name === edit.quantity.name &&
			tryFormula(this.#model.plan, edit.quantity).problems.length > 0
		);
	}

	/**
	 * Plans follow edits, and what a plan left behind says is nobody's slip: where an error, a range, a check or a caution
	 * speaks, the plans are made anew before it counts. Where nothing does, the plan that stands will do.
	 */
	#afterPlans(fault: Fault, model: Model): Verdict {
		const { edit } = fault;
		const known = {
			scenario: (id: string) => this.#knownScenario(model.workbook, id),
			member: (id: string) =>
				edit.kind === 'add_member' && id === edit.member.id ? (edit.like ?? id) : id
		};
		const found = this.#seen(fault, seenOf(model, known));
		const isOfPlans = found.means !== null && OF_PLANS.has(found.means);
		if (!isOfPlans || !this.#follow?.(model)) return found;
		return this.#seen(fault, seenOf(model, known));
	}

	/** The scenario itself, or the nearest above it that was there before the edit. */
	#knownScenario(workbook: Workbook, id: string): string {
		const isKnown = (one: string) => this.#sound.scenarios.some((scenario) => scenario.id === one);
		let here = id;
		while (!isKnown(here)) {
			const parent = workbook.scenarios.find((scenario) => scenario.id === here)?.parent;
			if (!parent) return here;
			here = parent;
		}
		return here;
	}

	#seen(fault: Fault, seen: Seen): Verdict {
		const clean = this.#clean;
		const effect = largestMove(clean.headlines, seen.headlines);
		const firstNew = (now: ReadonlySet<string>, was: ReadonlySet<string>) =>
			[...now].find((key) => !was.has(key));
		const found: Readonly<Record<Exclude<Means, 'refused'>, string | undefined>> = {
			error: firstNew(seen.errors, clean.errors),
			range: firstNew(seen.outOfRange, clean.outOfRange),
			check: firstNew(seen.failing, clean.failing),
			caution: firstNew(seen.cautions, clean.cautions),
			review: [...seen.review].find(([id, mark]) => clean.review.get(id) !== mark)?.[0],
			jump: isJump(this.#sound, fault.edit) ? fault.quantity : undefined
		};
		const speaking = MEANS.find((one) => one !== 'refused' && found[one] !== undefined) ?? null;
		const inert = effect === null && !this.#hasMoved(seen);
		const by = speaking === null || speaking === 'refused' ? null : (found[speaking] ?? null);
		return { fault, inert, means: speaking, by, effect };
	}

	/** Whether any computed value, in any scenario, is another. */
	#hasMoved({ columns }: Seen): boolean {
		const { plan } = this.#model;
		return this.#clean.columns.some(({ values, states }, s) => {
			const now = columns[s];
			if (!now || now.values.length < plan.layout.cells) return true;
			for (let cell = 0; cell < plan.layout.cells; cell++) {
				if (plan.roots[cell] === -1) continue;
				if (states[cell] !== now.states[cell]) return true;
				const [a, b] = [values[cell]!, now.values[cell]!];
				if (a !== b && Math.abs(a - b) > 1e-10 * Math.max(Math.abs(a), Math.abs(b))) return true;
			}
			return false;
		});
	}
}

/** The model hands out arrays that it may write to again. */
const kept = (seen: Seen): Seen => ({
	...seen,
	columns: seen.columns.map(({ values, states }) => ({
		values: values.slice(),
		states: states.slice()
	}))
});

function isRefusedByRange(workbook: Workbook, entries: readonly InputEntry[]): boolean {
	return entries.some(
		({ quantity, value }) =>
			typeof value === 'number' &&
			!isPermitted(value, findQuantity(workbook, quantity)?.range ?? null)
	);
}

/** Doubled, halved or turned in sign, as undo and change lists mark it. */
function isJump(before: Workbook, edit: Command): boolean {
	if (edit.kind !== 'set_inputs' || edit.entries.length > TOLD) return false;
	return edit.entries.some(({ quantity, at, value }) => {
		const was = inputAt(before, edit.scenario, quantity, at).value;
		return typeof was === 'number' && typeof value === 'number' && jumpBetween(was, value) !== null;
	});
}

/** As a share of what is largest of the same quantity: below this, a value is what rounding and a plan's margin leave of none. */
const NONE = 1e-7;

function largestMove(
	was: ReadonlyMap<string, number>,
	now: ReadonlyMap<string, number>
): Effect | null {
	const quantityOf = (result: string) => result.slice(0, result.indexOf(' '));
	const largest = new Map<string, number>();
	for (const values of [was, now])
		for (const [result, value] of values) {
			const name = quantityOf(result);
			largest.set(name, Math.max(largest.get(name) ?? 0, Math.abs(value)));
		}
	let most: Effect | null = null;
	for (const [result, value] of was) {
		const least = NONE * largest.get(quantityOf(result))!;
		const some = (of: number) => (Math.abs(of) < least ? 0 : of);
		const before = some(value);
		const after = now.has(result) ? some(now.get(result)!) : Infinity;
		const by = before === 0 ? (after === 0 ? 0 : 1) : after / before - 1;
		if (Math.abs(by) > 1e-9 && (!most || Math.abs(by) > Math.abs(most.by))) most = { result, by };
	}
	return most;
}
