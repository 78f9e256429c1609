/**
 * The inputs of a workbook as the engines carry them: in the quantity's own unit, members as their place in
 * their set, yes and no as 1 and 0; an empty one and one outside its range with their state.
 *
 * Which scenario says what is `$lib/workbook/scenario`'s. That an input of a member who is not present is
 * absent follows from computed values: see `presence.ts`.
 */
import { changesOf, findQuantity } from '$lib/workbook/lookup';
import {
	activeProgrammes,
	filledQuantities,
	filledValues,
	ownPlan,
	shadowQuantities
} from '$lib/workbook/plans';
import { scenarioChain } from '$lib/workbook/scenario';
import type { Scalar, Scenario, Values, Workbook } from '$lib/workbook/schema';
import { flatten, valueAt } from '$lib/workbook/values';
import type { CellValues } from './cell-values';
import { numberOf } from './entry';
import { cellAt, membersOf, type QuantityLayout } from './layout';
import type { Plan } from './plan';
import type { Outcome } from './results';
import { NOT_ENTERED, OK, OUT_OF_RANGE } from './state';

export type { CellValues };

export class Inputs {
	readonly #plan: Plan;
	readonly #workbook: Workbook;
	/** Quantities that programmes fill, and by scenario what they fill in. */
	readonly #filled: ReadonlySet<string>;
	readonly #plans = new Map<string, ReadonlyMap<string, Values>>();

	constructor(plan: Plan, workbook: Workbook) {
		this.#plan = plan;
		this.#workbook = workbook;
		this.#filled = filledQuantities(workbook);
	}

	/** Every input cell of the layout, ascending. */
	all(): Int32Array {
		const { layout, roots } = this.#plan;
		const cells: number[] = [];
		for (let cell = 0; cell < layout.cells; cell++) if (roots[cell] === -1) cells.push(cell);
		return Int32Array.from(cells);
	}

	/** The input cells of these quantities, ascending. */
	cellsOf(quantities: ReadonlySet<string>): Int32Array {
		const { layout, roots } = this.#plan;
		const cells: number[] = [];
		for (const { quantity, base, count } of layout.quantities) {
			if (!quantities.has(quantity.name)) continue;
			for (let cell = base; cell < base + count; cell++) if (roots[cell] === -1) cells.push(cell);
		}
		return Int32Array.from(cells);
	}

	/** By place of a quantity: 1 for these. */
	marked(quantities: ReadonlySet<string>): Uint8Array {
		const { quantities: all } = this.#plan.layout;
		return Uint8Array.from(all, ({ quantity }) => (quantities.has(quantity.name) ? 1 : 0));
	}

	/** Those of the cells that are of quantities so marked. */
	among(cells: Int32Array, marks: Uint8Array): Int32Array {
		const { quantityOfCell } = this.#plan.layout;
		return cells.filter((cell) => marks[quantityOfCell[cell]!] === 1);
	}

	/** The input cells that a scenario itself changes, ascending. */
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
		}
		for (const programme of activeProgrammes(this.#workbook)) {
			if (!ownPlan(this.#workbook, programme.name, scenario.id)) continue;
			const filled = new Set([...programme.decisions, ...shadowQuantities(programme)]);
			for (const cell of this.cellsOf(filled)) cells.add(cell);
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
		let plan: Values | undefined;
		let quantity = -1;
		cells.forEach((cell, i) => {
			if (layout.quantityOfCell[cell] !== quantity) {
				quantity = layout.quantityOfCell[cell]!;
				layers = this.#layers(layout.quantities[quantity]!, chain);
				plan = this.#planned(layout.quantities[quantity]!, scenario);
			}
			const outcome = this.#outcome(cell, layers, plan);
			values[i] = outcome.value;
			states[i] = outcome.state;
		});
		return { cells, values, states };
	}

	/** The entered values of a quantity, the scenario's own first, the base's last. */
	#layers(quantity: QuantityLayout, chain: readonly Scenario[]): Values[] {
		const layers: Values[] = [];
		for (const scenario of chain) {
			const value = changesOf(scenario).get(quantity.quantity.name)?.value;
			if (value !== undefined) layers.push(value);
		}
		const entered = findQuantity(this.#workbook, quantity.quantity.name)?.value;
		if (entered !== undefined) layers.push(entered);
		return layers;
	}

	/** What the plan of the scenario fills in for a quantity; undefined where no programme does, or none is planned. */
	#planned(quantity: QuantityLayout, scenario: string): Values | undefined {
		const { name } = quantity.quantity;
		if (!this.#filled.has(name)) return undefined;
		let filled = this.#plans.get(scenario);
		if (!filled) this.#plans.set(scenario, (filled = filledValues(this.#workbook, scenario)));
		return filled.get(name);
	}

	#outcome(cell: number, layers: readonly Values[], plan: Values | undefined): Outcome {
		const { layout } = this.#plan;
		const quantity = layout.quantities[layout.quantityOfCell[cell]!]!;
		const at = membersOf(layout, cell);
		let scalar: Scalar | undefined;
		for (const layer of layers) {
			scalar = valueAt(layer, at);
			if (scalar !== undefined) break;
		}
		// A pin that was cleared is open again; what the plan does not speak of, it leaves at nothing.
		if (plan !== undefined) scalar ??= valueAt(plan, at) ?? 0;
		const type = quantity.quantity.type;
		const set = typeof type === 'object' ? type.member_of : '';
		const value = numberOf(scalar, layout.ordinals.get(set));
		if (value === undefined) return { value: NaN, state: NOT_ENTERED };
		return isInside(this.#plan, cell, value)
			? { value, state: OK }
			: { value: NaN, state: OUT_OF_RANGE };
	}

	#cellOf(quantity: QuantityLayout, at: readonly string[]): number {
		const { ordinals } = this.#plan.layout;
		return cellAt(
			quantity,
			at.map((id, axis) => ordinals.get(quantity.axes[axis]!.set)?.get(id) ?? -1)
		);
	}
}

/** Whether an entered value keeps to the range of its quantity. */
export function isInside(plan: Plan, cell: number, value: number): boolean {
	const { min, max, above, below } = limitsOf(plan, cell);
	return value >= min && value <= max && value > above && value < below;
}

export interface Limits {
	readonly min: number;
	readonly max: number;
	readonly above: number;
	readonly below: number;
}

const NO_LIMITS: Limits = { min: -Infinity, max: Infinity, above: -Infinity, below: Infinity };

/** The permitted range of an input; infinite where it has no limit. */
export function limitsOf({ nodes, inputRange }: Plan, cell: number): Limits {
	const start = inputRange[cell]!;
	if (start < 0) return NO_LIMITS;
	const limit = (place: number, none: number) =>
		nodes.lists[start + place]! < 0 ? none : nodes.constants[nodes.lists[start + place]!]!;
	return {
		min: limit(0, -Infinity),
		max: limit(1, Infinity),
		above: limit(2, -Infinity),
		below: limit(3, Infinity)
	};
}
