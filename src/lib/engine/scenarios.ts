/**
 * The computed columns of all scenarios. The base is computed; every other scenario computes what reads a value that
 * differs from its parent's, and takes the rest over from it (`interpreter/inheriting.ts`).
 *
 * A scenario that is measured against another one than its parent also computes whatever reads the reference. An edit
 * computes only what follows from it, in the base and in every scenario that inherits or reads it, and stops where a
 * value comes out as it was.
 */
import { baseOf, changesOf, findQuantity, findScenario } from '$lib/workbook/lookup';
import { filledQuantities } from '$lib/workbook/plans';
import { findFrozen } from '$lib/workbook/frozen';
import { copyMeasuredAgainst, referenceOf } from '$lib/workbook/scenario';
import type { Frozen, Workbook } from '$lib/workbook/schema';
import { referenceColumn } from './frozen';
import { isOther, type CellValues } from './cell-values';
import { Inputs } from './inputs';
import { asParent, Inheriting, isHeld, type Inherited } from './interpreter/inheriting';
import { Machine, type Source } from './interpreter/machine';
import { wholeProgram } from './interpreter/program';
import { Ripple } from './interpreter/ripple';
import type { Plan } from './plan';
import { orderScenarios, type ScenarioOrder } from './scenario-order';
import { CIRCULAR } from './state';

/** One number and one state for every cell of the plan. */
export interface Column {
	readonly values: Float64Array;
	readonly states: Uint8Array;
}

interface Own {
	/** The input cells that the scenario itself changes, ascending. */
	readonly own: Int32Array;
	readonly inherited: Inherited;
}

export class Scenarios {
	readonly #plan: Plan;
	readonly #machine: Machine;
	readonly #ripple: Ripple;
	readonly #inheriting: Inheriting;
	readonly #isReader: Uint8Array;
	#base: Column | null = null;
	/** Of the scenarios built on it. */
	readonly #stored = new Map<string, Own>();
	#workbook: Workbook;
	#inputs: Inputs;
	#order: ScenarioOrder;

	constructor(plan: Plan, workbook: Workbook) {
		this.#plan = plan;
		this.#workbook = workbook;
		this.#machine = new Machine(wholeProgram(plan));
		this.#ripple = new Ripple(plan, this.#machine);
		this.#inheriting = new Inheriting(plan, this.#machine);
		this.#isReader = new Uint8Array(plan.cells);
		for (const cell of plan.readsOtherScenario) this.#isReader[cell] = 1;
		this.#inputs = new Inputs(plan, workbook);
		this.#order = orderScenarios(workbook);
	}

	/** The whole column of a scenario, fresh; computed with all it needs on first asking. */
	column(id: string): Column {
		const copy = this.#copy(id);
		if (copy) {
			const { values, states } = referenceColumn(this.#plan, copy);
			return { values: values.slice(), states: states.slice() };
		}
		const { values, states } = this.#ensure(id);
		return { values: values.slice(), states: states.slice() };
	}

	/** The scenario or frozen copy that `x[reference]` reads; null where that one is built on this one in turn. */
	referenceOf(id: string): string | null {
		return this.#order.circular.has(id) ? null : referenceOf(this.#workbook, id).id;
	}

	isCopy(id: string): boolean {
		return this.#copy(id) !== undefined;
	}

	/** How many cells a scenario enters or computes itself. */
	ownCells(id: string): number {
		this.#ensure(id);
		const stored = this.#stored.get(id);
		if (!stored) return this.#plan.cells;
		const { own, inherited } = stored;
		let count = own.length;
		for (let cell = 0; cell < this.#plan.cells; cell++) if (isHeld(inherited, cell)) count++;
		return count;
	}

	/** The input cells that a scenario itself changes, ascending. */
	inputsChangedBy(id: string): Int32Array {
		const scenario = findScenario(this.#workbook, id);
		if (!scenario || this.#isBase(id)) return new Int32Array(0);
		return this.#inputs.changedBy(scenario);
	}

	/**
	 * Takes up a workbook that differs in entered values or in its scenarios only, and computes again
	 * what follows, in the scenarios that were computed. Gives the ids of those whose values changed, and
	 * of those not computed yet whose values may have.
	 */
	update(workbook: Workbook): string[] {
		const before = this.#workbook;
		this.#workbook = workbook;
		this.#inputs = new Inputs(this.#plan, workbook);
		this.#order = orderScenarios(workbook);
		if (baseOf(before).id !== baseOf(workbook).id) {
			this.#base = null;
			this.#stored.clear();
		}
		const gone = [...this.#stored.keys()].filter((id) => !findScenario(workbook, id));
		for (const id of gone) this.#stored.delete(id);
		const changes = new Map<string, Dirty>();
		const edited = this.#editedSince(before);
		const marks = this.#inputs.marked(edited);
		for (const id of this.#order.ids) {
			const dirty = this.#isBase(id)
				? this.#updateBase(edited)
				: this.#updateScenario(id, before, marks, changes);
			changes.set(id, dirty);
		}
		return this.#order.ids.filter((id) => changes.get(id)?.changed);
	}

	#copy(id: string): Frozen | undefined {
		return findScenario(this.#workbook, id) ? undefined : findFrozen(this.#workbook, id);
	}

	#isBase(id: string): boolean {
		return id === baseOf(this.#workbook).id;
	}

	#parentOf(id: string): string {
		return findScenario(this.#workbook, id)?.parent ?? baseOf(this.#workbook).id;
	}

	#ensure(id: string): Column {
		const known = this.#known(id);
		if (known) return known;
		if (this.#isBase(id)) return (this.#base = this.#computeBase());
		const parent = this.#ensure(this.#parentOf(id));
		const reference = referenceOf(this.#workbook, id).id;
		const isOwn = reference === id || this.#copy(reference) !== undefined;
		if (!isOwn && !this.#order.circular.has(id)) this.#ensure(reference);
		const stored = this.#compute(id, parent);
		this.#stored.set(id, stored);
		return stored.inherited;
	}

	#known(id: string): Column | null {
		return this.#isBase(id) ? this.#base : (this.#stored.get(id)?.inherited ?? null);
	}

	#computeBase(): Column {
		const base = baseOf(this.#workbook).id;
		const machine = this.#machine;
		this.#write(this.#inputs.read(base, this.#inputs.all()));
		for (const cell of this.#plan.circular) {
			machine.values[cell] = NaN;
			machine.states[cell] = CIRCULAR;
		}
		machine.others[1] = machine.others[2] = machine;
		machine.run(this.#plan.order);
		return {
			values: machine.values.slice(0, this.#plan.cells),
			states: machine.states.slice(0, this.#plan.cells)
		};
	}

	#compute(id: string, parent: Column): Own {
		const own = this.inputsChangedBy(id);
		const reference = (of: string) => referenceOf(this.#workbook, of).id;
		const readsElse =
			reference(id) !== reference(this.#parentOf(id)) || this.#order.circular.has(id);
		const inherited = asParent(parent, readsElse ? this.#isReader : null);
		this.#inheriting.begin(inherited, parent, []);
		this.#enter(this.#inputs.read(id, own));
		if (readsElse) for (const cell of this.#plan.readsOtherScenario) this.#inheriting.ask(cell);
		this.#run(id);
		return { own, inherited };
	}

	/** The quantities that say something else than before, in the base, a scenario or a plan: no other input can have another value. */
	#editedSince(before: Workbook): ReadonlySet<string> {
		const after = this.#workbook;
		const edited = new Set<string>();
		for (const { quantity } of this.#plan.layout.quantities) {
			const value = findQuantity(after, quantity.name)?.value;
			if (value !== findQuantity(before, quantity.name)?.value) edited.add(quantity.name);
		}
		for (const scenario of after.scenarios) {
			const earlier = findScenario(before, scenario.id);
			if (!earlier || earlier.changes === scenario.changes) continue;
			const [was, is] = [changesOf(earlier), changesOf(scenario)];
			for (const name of [...was.keys(), ...is.keys()])
				if (was.get(name)?.value !== is.get(name)?.value) edited.add(name);
		}
		if (hasOtherPlan(before, after))
			for (const book of [before, after])
				for (const name of filledQuantities(book)) edited.add(name);
		return edited;
	}

	#updateBase(edited: ReadonlySet<string>): Dirty {
		const base = baseOf(this.#workbook).id;
		if (edited.size === 0) return CLEAN;
		const known = this.#base;
		if (!known) return { ...CLEAN, changed: true };
		const fresh = this.#inputs.read(base, this.#inputs.cellsOf(edited));
		const edits = fresh.cells.filter((cell, i) => isOther(known, cell, fresh, i));
		if (edits.length === 0) return CLEAN;
		const machine = this.#machine;
		machine.values.set(known.values);
		machine.states.set(known.states);
		this.#write(fresh);
		machine.others[1] = machine.others[2] = machine;
		for (const cell of edits) this.#ripple.changed(cell);
		const cells = [...edits, ...this.#ripple.run()];
		for (const cell of cells) {
			known.values[cell] = machine.values[cell]!;
			known.states[cell] = machine.states[cell]!;
		}
		return { changed: true, moved: false, cells };
	}

	#updateScenario(
		id: string,
		before: Workbook,
		/** Of the quantities that were edited. */
		marks: Uint8Array,
		changes: ReadonlyMap<string, Dirty>
	): Dirty {
		const parent = changes.get(this.#parentOf(id)) ?? CLEAN;
		const reference = changes.get(referenceOf(this.#workbook, id).id) ?? CLEAN;
		const base = changes.get(baseOf(this.#workbook).id) ?? CLEAN;
		if (parent.moved || reference.moved || hasMoved(before, this.#workbook, id)) {
			this.#stored.delete(id);
			return { ...CLEAN, changed: true, moved: true };
		}
		const known = this.#stored.get(id);
		const isEdited =
			findScenario(before, id)?.changes !== findScenario(this.#workbook, id)?.changes ||
			hasOtherPlan(before, this.#workbook);
		if (!known) return { ...CLEAN, changed: isEdited || parent.changed || reference.changed };

		const own = isEdited ? this.inputsChangedBy(id) : known.own;
		const { inherited } = known;
		// A scenario with a plan of its own has thousands, of which an edit touches few.
		const asked = new Set(this.#inputs.among(own, marks));
		const left = isEdited ? new Set(known.own) : NONE;
		if (isEdited)
			for (const cell of own) {
				left.delete(cell);
				if (inherited.isOwn[cell] === 0) asked.add(cell);
			}
		const readers = [...new Set([reference, base])].flatMap((source) =>
			this.#readersOf(source).filter((cell) => isHeld(inherited, cell))
		);
		if (asked.size + left.size + parent.cells.length + readers.length === 0) return CLEAN;
		const above = this.#known(this.#parentOf(id))!;
		this.#inheriting.begin(inherited, above, parent.cells);
		for (const cell of left) this.#inheriting.follow(cell);
		this.#enter(this.#inputs.read(id, Int32Array.from(asked).sort()));
		for (const cell of readers) this.#inheriting.ask(cell);
		const cells = this.#run(id);
		if (isEdited) this.#stored.set(id, { own, inherited });
		return { changed: cells.length > 0, moved: false, cells };
	}

	/** The cells that read another scenario's value of something that changed there. */
	#readersOf({ cells }: Dirty): number[] {
		if (this.#plan.readsOtherScenario.length === 0) return [];
		const { starts, targets } = this.#plan.dependents;
		const readers: number[] = [];
		for (const cell of cells)
			for (let i = starts[cell]!; i < starts[cell + 1]!; i++)
				if (this.#isReader[targets[i]!] === 1) readers.push(targets[i]!);
		return readers;
	}

	#enter({ cells, values, states }: CellValues): void {
		for (let i = 0; i < cells.length; i++)
			this.#inheriting.enter(cells[i]!, values[i]!, states[i]!);
	}

	#write({ cells, values, states }: CellValues): void {
		for (let i = 0; i < cells.length; i++) {
			this.#machine.values[cells[i]!] = values[i]!;
			this.#machine.states[cells[i]!] = states[i]!;
		}
	}

	/** Runs what is due in a scenario; gives the cells whose values changed. */
	#run(id: string): number[] {
		const machine = this.#machine;
		machine.others[1] = machine.others[2] = machine;
		let alone = true;
		return this.#inheriting.run((cell) => {
			if (!alone || this.#isReader[cell] === 0) return;
			// What another scenario holds is fetched only where somebody reads it.
			alone = false;
			machine.others[1] = this.#referenceSource(id);
			machine.others[2] = { ...this.#base!, narrow: 0 };
		});
	}

	#referenceSource(id: string): Source {
		const reference = referenceOf(this.#workbook, id).id;
		if (this.#order.circular.has(id)) {
			const states = new Uint8Array(this.#plan.cells).fill(CIRCULAR);
			return { values: new Float64Array(this.#plan.cells).fill(NaN), states, narrow: 0 };
		}
		if (reference === id) return this.#machine;
		const copy = this.#copy(reference);
		if (copy) return { ...referenceColumn(this.#plan, copy), narrow: 0 };
		return { ...this.#ensure(reference), narrow: 0 };
	}
}

/** What an edit did to one scenario. */
interface Dirty {
	readonly changed: boolean;
	/** Its place among the scenarios changed: it is computed afresh. */
	readonly moved: boolean;
	/** All cells that have, or may have, another value there than before. */
	readonly cells: readonly number[];
}

const NONE: Set<number> = new Set();
const CLEAN: Dirty = { changed: false, moved: false, cells: [] };

/** Whether programmes or what they decided differ, and so inputs that nobody entered. */
const hasOtherPlan = (before: Workbook, after: Workbook): boolean =>
	before.plans !== after.plans || before.programmes !== after.programmes;

/** Whether a scenario is new, or starts from or is measured against another one than before. */
function hasMoved(before: Workbook, after: Workbook, id: string): boolean {
	const [was, is] = [findScenario(before, id), findScenario(after, id)];
	if (was?.parent !== is?.parent || was?.against !== is?.against || was === undefined) return true;
	// A copy does not change, but may have gone and come back as another.
	const [held, holds] = [before, after].map((book) => copyMeasuredAgainst(book, id)?.quantities);
	return held !== holds;
}
