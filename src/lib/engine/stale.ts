/** Figures that are out of date, because they rest on a plan that does not answer the workbook as it is now. */
import { baseOf } from '$lib/workbook/lookup';
import { referenceOf } from '$lib/workbook/scenario';
import type { Workbook } from '$lib/workbook/schema';
import { ACROSS, HERE, type Resting } from './resting';
import type { StaleBecause } from './stale-words';

export interface StalePlan {
	readonly programme: string;
	readonly scenario: string;
	readonly because: StaleBecause;
}

interface Mask {
	readonly marks: Uint8Array;
	readonly of: number;
	readonly because: StaleBecause;
}

export class StaleCells {
	readonly #workbook: Workbook;
	readonly #resting: Resting;
	readonly #plans: readonly StalePlan[];
	readonly #masks = new Map<string, readonly Mask[]>();

	constructor(workbook: Workbook, resting: Resting, plans: readonly StalePlan[]) {
		this.#workbook = workbook;
		this.#resting = resting;
		this.#plans = plans;
	}

	/** Why a cell, or one of several from the first up to the last, is out of date; null where none is. */
	of(scenario: string, from: number, to = from + 1): StaleBecause | null {
		for (const { marks, of, because } of this.#masksOf(scenario))
			for (let cell = from; cell < to; cell++) if ((marks[cell]! & of) !== 0) return because;
		return null;
	}

	/** Why any figure of a scenario is. */
	inScenario(scenario: string): StaleBecause | null {
		return this.of(scenario, 0, this.#resting.values().next().value?.length ?? 0);
	}

	#masksOf(scenario: string): readonly Mask[] {
		const known = this.#masks.get(scenario);
		if (known) return known;
		const others = measuredAgainst(this.#workbook, scenario);
		const masks = this.#plans.flatMap((plan) => {
			const marks = this.#resting.get(plan.programme);
			const of = (plan.scenario === scenario ? HERE : 0) | (others.has(plan.scenario) ? ACROSS : 0);
			return marks && of > 0 ? [{ marks, of, because: plan.because }] : [];
		});
		this.#masks.set(scenario, masks);
		return masks;
	}
}

/** Every scenario that one of these may read: what it is measured against, what that is, and the base. */
function measuredAgainst(workbook: Workbook, scenario: string): ReadonlySet<string> {
	const found = new Set([baseOf(workbook).id]);
	let { id } = referenceOf(workbook, scenario);
	while (!found.has(id)) {
		found.add(id);
		({ id } = referenceOf(workbook, id));
	}
	return found;
}
