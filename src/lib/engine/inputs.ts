/**
 * The inputs of a workbook as the engines carry them: in the quantity's own unit, members as their place in
 * their set, yes and no as 1 and 0; an empty one, one outside its range and one of a member that is not
 * present each with its state.
 *
 * Which scenario says what is `$lib/workbook/scenario`'s; what follows from the inputs is computed elsewhere.
 */
import { changesOf, findQuantity } from '$lib/workbook/lookup';
import { scenarioChain } from '$lib/workbook/scenario';
import type { Scalar, Scenario, Values, Workbook } from '$lib/workbook/schema';
import { flatten, valueAt } from '$lib/workbook/values';
import { cellAt, membersOf, type QuantityLayout } from './layout';
import type { Plan } from './plan';
import type { Outcome } from './results';
import { ABSENT, carried, NOT_ENTERED, OK, OUT_OF_RANGE, type State } from './state';

/** Values of some cells, ascending. */
export interface CellValues {
	readonly cells: Int32Array;
	readonly values: Float64Array;
	readonly states: Uint8Array;
}

/** The number that an entry stands for; undefined where it stands for none. */
export function numberOf(
	scalar: Scalar | undefined,
	ordinals: ReadonlyMap<string, number> | undefined
): number | undefined {
	if (typeof scalar === 'number') return Number.isFinite(scalar) ? scalar : undefined;
	if (typeof scalar === 'boolean') return scalar ? 1 : 0;
	return typeof scalar === 'string' ? ordinals?.get(scalar) : undefined;
}

export class Inputs {
	readonly #plan: Plan;
	readonly #workbook: Workbook;
	/** By quantity index: per axis the quantity that says which members are present, or null. */
	readonly #guards: readonly (readonly (QuantityLayout | null)[])[];

	constructor(plan: Plan, workbook: Workbook) {
		this.#plan = plan;
		this.#workbook = workbook;
		this.#guards = plan.layout.quantities.map((one) =>
			one.axes.map((axis) => this.#guardOf(axis.set, one))
		);
	}

	/** Every input cell of the layout, ascending. */
	all(): Int32Array {
		const { layout, roots } = this.#plan;
		const cells: number[] = [];
		for (let cell = 0; cell < layout.cells; cell++) if (roots[cell] === -1) cells.push(cell);
		return Int32Array.from(cells);
	}

	/**
	 * The input cells of these quantities, and those that are absent or not by what these quantities
	 * say; ascending.
	 */
	cellsOf(quantities: ReadonlySet<string>): Int32Array {
		const { layout, roots } = this.#plan;
		const cells: number[] = [];
		for (const one of layout.quantities) {
			const guards = this.#guards[one.index]!;
			const touched =
				quantities.has(one.quantity.name) ||
				guards.some((guard) => guard !== null && quantities.has(guard.quantity.name));
			if (!touched) continue;
			for (let cell = one.base; cell < one.base + one.count; cell++)
				if (roots[cell] === -1) cells.push(cell);
		}
		return Int32Array.from(cells);
	}

	/**
	 * The input cells that a scenario itself changes, ascending; those of a member included whose
	 * presence it changes.
	 */
	changedBy(scenario: Scenario): Int32Array {
		const { layout, roots } = this.#plan;
		const cells = new Set<number>();
		for (const change of scenario.changes) {
			const one = layout.byName.get(change.quantity);
			if (!one) continue;
			for (const { at } of flatten(change.value)) {
				const cell = at.length === one.axes.length ? this.#cellOf(one, at) : -1;
				if (cell >= 0 && roots[cell] === -1) cells.add(cell);
			}
			for (const cell of this.#guardedBy(one, cells)) cells.add(cell);
		}
		return Int32Array.from(cells).sort();
	}

	/** What a scenario sees in these input cells. */
	read(scenario: string, cells: Int32Array): CellValues {
		const chain = scenarioChain(this.#workbook, scenario).reverse();
		const values = new Float64Array(cells.length);
		const states = new Uint8Array(cells.length);
		const { layout } = this.#plan;
		let layers: Values[] = [];
		let quantity = -1;
		cells.forEach((cell, i) => {
			if (layout.quantityOfCell[cell] !== quantity) {
				quantity = layout.quantityOfCell[cell]!;
				layers = this.#layers(layout.quantities[quantity]!, chain);
			}
			const outcome = this.#outcome(cell, layers, chain);
			values[i] = outcome.value;
			states[i] = outcome.state;
		});
		return { cells, values, states };
	}

	/** The entered values of a quantity, the scenario's own first, the base's last. */
	#layers(one: QuantityLayout, chain: readonly Scenario[]): Values[] {
		const layers: Values[] = [];
		for (const scenario of chain) {
			const value = changesOf(scenario).get(one.quantity.name)?.value;
			if (value !== undefined) layers.push(value);
		}
		const entered = findQuantity(this.#workbook, one.quantity.name)?.value;
		if (entered !== undefined) layers.push(entered);
		return layers;
	}

	#outcome(cell: number, layers: readonly Values[], chain: readonly Scenario[]): Outcome {
		const { layout } = this.#plan;
		const one = layout.quantities[layout.quantityOfCell[cell]!]!;
		const absence = this.#absence(one, cell, chain);
		if (absence !== OK) return { value: NaN, state: absence };
		const at = membersOf(layout, cell);
		let scalar: Scalar | undefined;
		for (const layer of layers) {
			scalar = valueAt(layer, at);
			if (scalar !== undefined) break;
		}
		const type = one.quantity.type;
		const set = typeof type === 'object' ? type.member_of : '';
		const value = numberOf(scalar, layout.ordinals.get(set));
		if (value === undefined) return { value: NaN, state: NOT_ENTERED };
		return isInside(this.#plan, cell, value)
			? { value, state: OK }
			: { value: NaN, state: OUT_OF_RANGE };
	}

	/** Why nobody can see the cell: a member of it is not present. OK where all are. */
	#absence(one: QuantityLayout, cell: number, chain: readonly Scenario[]): State {
		const guards = this.#guards[one.index]!;
		for (let axis = 0; axis < guards.length; axis++) {
			const guard = guards[axis];
			if (!guard) continue;
			const ordinal = one.members[(cell - one.base) * one.axes.length + axis]!;
			const present = this.#outcome(cellAt(guard, [ordinal]), this.#layers(guard, chain), chain);
			if (present.state !== OK) return carried(present.state);
			if (present.value === 0) return ABSENT;
		}
		return OK;
	}

	/** The input that says which members of a set are present, for a quantity that must heed it. */
	#guardOf(set: string, one: QuantityLayout): QuantityLayout | null {
		const { layout, roots } = this.#plan;
		const name = layout.sets.get(set)?.present;
		const guard = name === undefined ? undefined : layout.byName.get(name);
		if (!guard || guard.index === one.index || guard.count === 0) return null;
		// Where a formula says who is present, the plan guards each reading of the input instead.
		return roots[guard.base] === -1 && guard.axes.length === 1 ? guard : null;
	}

	/** The cells of members whose presence one of the changed cells says. */
	#guardedBy(present: QuantityLayout, changed: ReadonlySet<number>): number[] {
		const { layout, roots } = this.#plan;
		const found: number[] = [];
		for (const one of layout.quantities)
			this.#guards[one.index]!.forEach((guard, axis) => {
				if (guard?.index !== present.index) return;
				for (let cell = one.base; cell < one.base + one.count; cell++) {
					const ordinal = one.members[(cell - one.base) * one.axes.length + axis]!;
					if (roots[cell] === -1 && changed.has(cellAt(guard, [ordinal]))) found.push(cell);
				}
			});
		return found;
	}

	#cellOf(one: QuantityLayout, at: readonly string[]): number {
		const { ordinals } = this.#plan.layout;
		return cellAt(
			one,
			at.map((id, axis) => ordinals.get(one.axes[axis]!.set)?.get(id) ?? -1)
		);
	}
}

/** Whether an entered value keeps to the range of its quantity. */
function isInside({ nodes, inputRange }: Plan, cell: number, value: number): boolean {
	const start = inputRange[cell]!;
	if (start < 0) return true;
	const limit = (place: number, none: number) =>
		nodes.lists[start + place]! < 0 ? none : nodes.constants[nodes.lists[start + place]!]!;
	return (
		value >= limit(0, -Infinity) &&
		value <= limit(1, Infinity) &&
		value > limit(2, -Infinity) &&
		value < limit(3, Infinity)
	);
}
