/**
 * The computed columns of all scenarios. The base is held whole; every other scenario holds only the
 * cells that its changes reach, and reads the rest from its parent.
 *
 * A scenario that is measured against another one than its parent also holds whatever reads the
 * reference. An edit computes only what follows from it, in the base and in every scenario that
 * inherits or reads it, and stops where a value comes out as it was.
 */
import { baseOf, changesOf, findQuantity, findScenario } from '$lib/workbook/lookup';
import { filledQuantities } from '$lib/workbook/plans';
import { findFrozen } from '$lib/workbook/frozen';
import { copyMeasuredAgainst, referenceOf } from '$lib/workbook/scenario';
import type { Frozen, Workbook } from '$lib/workbook/schema';
import { referenceColumn } from './frozen';
import { isOther, placeOfCell, replaceValues, type CellValues } from './cell-values';
import { Inputs } from './inputs';
import { Machine, type Source } from './interpreter/machine';
import { wholeProgram } from './interpreter/program';
import { reachIn, type Reach } from './interpreter/reach';
import { Ripple } from './interpreter/ripple';
import type { Plan } from './plan';
import { orderScenarios, type ScenarioOrder } from './scenario-order';
import { CIRCULAR } from './state';

/** One number and one state for every cell of the plan. */
export interface Column {
	readonly values: Float64Array;
	readonly states: Uint8Array;
}

interface Stored extends CellValues {
	/** The input cells that the scenario itself changes; none for the base. */
	readonly own: Int32Array;
	/** By cell of the plan: 1 where the scenario holds it. */
	readonly holds: Uint8Array;
}

export class Scenarios {
	readonly #plan: Plan;
	readonly #machine: Machine;
	readonly #reach: Reach;
	readonly #ripple: Ripple;
	readonly #isReader: Uint8Array;
	readonly #stored = new Map<string, Stored>();
	#workbook: Workbook;
	#inputs: Inputs;
	#order: ScenarioOrder;

	constructor(plan: Plan, workbook: Workbook) {
		this.#plan = plan;
		this.#workbook = workbook;
		this.#machine = new Machine(wholeProgram(plan));
		this.#reach = reachIn(plan);
		this.#ripple = new Ripple(plan, this.#machine);
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
		this.#ensure(id);
		const column = {
			values: new Float64Array(this.#plan.cells),
			states: new Uint8Array(this.#plan.cells)
		};
		this.#load(id, column);
		return column;
	}

	/** The scenario or frozen copy that `x[reference]` reads; null where that one is built on this one in turn. */
	referenceOf(id: string): string | null {
		return this.#order.circular.has(id) ? null : referenceOf(this.#workbook, id).id;
	}

	isCopy(id: string): boolean {
		return this.#copy(id) !== undefined;
	}

	/** How many cells a scenario holds of its own. */
	ownCells(id: string): number {
		return this.#ensure(id).cells.length;
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
		const gone = [...this.#stored.keys()].filter((id) => !findScenario(workbook, id));
		for (const id of gone) this.#stored.delete(id);
		const changes = new Map<string, Dirty>();
		const edited = this.#editedSince(before);
		for (const id of this.#order.ids) {
			const dirty = this.#isBase(id)
				? this.#updateBase(edited)
				: this.#updateScenario(id, before, edited, changes);
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

	#ensure(id: string): Stored {
		const known = this.#stored.get(id);
		if (known) return known;
		if (!this.#isBase(id)) {
			this.#ensure(this.#parentOf(id));
			const reference = referenceOf(this.#workbook, id).id;
			const isOwn = reference === id || this.#copy(reference) !== undefined;
			if (!isOwn && !this.#order.circular.has(id)) this.#ensure(reference);
		}
		const stored = this.#isBase(id) ? this.#computeBase() : this.#compute(id);
		this.#stored.set(id, stored);
		return stored;
	}

	#computeBase(): Stored {
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
			own: new Int32Array(0),
			cells: Int32Array.from({ length: this.#plan.cells }, (_, cell) => cell),
			values: machine.values.slice(0, this.#plan.cells),
			states: machine.states.slice(0, this.#plan.cells),
			holds: new Uint8Array(this.#plan.cells).fill(1)
		};
	}

	#compute(id: string): Stored {
		const parent = this.#parentOf(id);
		const own = this.inputsChangedBy(id);
		const reference = (of: string) => referenceOf(this.#workbook, of).id;
		const readsElse = reference(id) !== reference(parent) || this.#order.circular.has(id);
		const reached = this.#reach.from(readsElse ? [...own, ...this.#plan.readsOtherScenario] : own);
		this.#load(parent, this.#machine);
		const fresh = this.#inputs.read(id, own);
		const differing = own.filter((cell, i) => isOther(this.#machine, cell, fresh, i));
		this.#write(fresh);
		this.#follow(id, differing, readsElse ? this.#plan.readsOtherScenario : [], null);
		const holds = new Uint8Array(this.#plan.cells);
		for (const cell of reached.cells) holds[cell] = 1;
		return { own, holds, ...this.#take(reached.cells) };
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
		const known = this.#stored.get(base);
		if (!known) return { ...CLEAN, changed: true };
		const fresh = this.#inputs.read(base, this.#inputs.cellsOf(edited));
		const edits = fresh.cells.filter((cell, i) => isOther(known, cell, fresh, i));
		if (edits.length === 0) return CLEAN;
		this.#load(base, this.#machine);
		this.#write(fresh);
		const cells = [...edits, ...this.#follow(base, edits, [], null)];
		replaceValues(known, this.#take(Int32Array.from(cells).sort()));
		return { changed: true, moved: false, cells };
	}

	#updateScenario(
		id: string,
		before: Workbook,
		edited: ReadonlySet<string>,
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
		// A scenario with a plan of its own has thousands, of which an edit touches few.
		const fresh = this.#inputs.read(id, this.#inputs.among(own, edited));
		const edits = fresh.cells.filter((cell, i) =>
			isOther(known, placeOfCell(known.cells, cell), fresh, i)
		);
		if (isEdited && !isSame(own, known.own)) return this.#computeAgain(id, known, own, parent);
		const inherited = parent.cells.filter((cell) => known.holds[cell] === 0);
		const readers = [...new Set([reference, base])].flatMap((source) =>
			this.#readersOf(source).filter((cell) => known.holds[cell] === 1)
		);
		if (edits.length + inherited.length + readers.length === 0) return CLEAN;
		this.#load(id, this.#machine);
		this.#write(fresh);
		const mine = [...edits, ...this.#follow(id, [...edits, ...inherited], readers, known.holds)];
		replaceValues(known, this.#take(Int32Array.from(mine).sort()));
		const cells = [...inherited, ...mine];
		return { changed: cells.length > 0, moved: false, cells };
	}

	/** After an edit that changes which inputs the scenario changes, and so what its changes reach. */
	#computeAgain(id: string, known: Stored, own: Int32Array, parent: Dirty): Dirty {
		this.#stored.set(id, this.#compute(id));
		const { cells } = this.#reach.from([...known.own, ...own, ...parent.cells]);
		return { changed: true, moved: false, cells: [...cells] };
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

	/** Puts a scenario's cells where the machine, or a column, holds them. */
	#load(id: string, into: Column): void {
		const chain: Stored[] = [];
		for (let here = id; ; here = this.#parentOf(here)) {
			chain.push(this.#stored.get(here)!);
			if (this.#isBase(here)) break;
		}
		const base = chain.pop()!;
		into.values.set(base.values);
		into.states.set(base.states);
		for (const { cells, values, states } of chain.reverse())
			for (let i = 0; i < cells.length; i++) {
				into.values[cells[i]!] = values[i]!;
				into.states[cells[i]!] = states[i]!;
			}
	}

	#write({ cells, values, states }: CellValues): void {
		for (let i = 0; i < cells.length; i++) {
			this.#machine.values[cells[i]!] = values[i]!;
			this.#machine.states[cells[i]!] = states[i]!;
		}
	}

	/** Runs what reads these cells, and these formulas; gives the formulas whose values changed. */
	#follow(
		id: string,
		changed: Iterable<number>,
		asked: Iterable<number>,
		holds: Uint8Array | null
	): number[] {
		const machine = this.#machine;
		machine.others[1] = machine.others[2] = machine;
		for (const cell of changed) this.#ripple.changed(cell, holds);
		for (const cell of asked) this.#ripple.ask(cell);
		let alone = !this.#isBase(id);
		return this.#ripple.run(holds, (cell) => {
			if (!alone || this.#isReader[cell] === 0) return;
			// What another scenario holds is fetched only where somebody reads it.
			alone = false;
			machine.others[1] = this.#referenceSource(id);
			machine.others[2] = { ...this.#stored.get(baseOf(this.#workbook).id)!, narrow: 0 };
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
		if (this.#isBase(reference)) return { ...this.#stored.get(reference)!, narrow: 0 };
		return { ...this.column(reference), narrow: 0 };
	}

	#take(cells: Int32Array): CellValues {
		const values = new Float64Array(cells.length);
		const states = new Uint8Array(cells.length);
		for (let i = 0; i < cells.length; i++) {
			values[i] = this.#machine.values[cells[i]!]!;
			states[i] = this.#machine.states[cells[i]!]!;
		}
		return { cells, values, states };
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

const isSame = (a: Int32Array, b: Int32Array) =>
	a.length === b.length && a.every((cell, i) => cell === b[i]);
