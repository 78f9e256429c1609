/** How many values of two engines agree, which do not, and which were not judged and why. */
import { classOf } from '$lib/engine/cells/literals';
import { placeOf } from '$lib/engine/layout';
import type { Plan } from '$lib/engine/plan';
import type { Agreement, Outcome, Results } from '$lib/engine/results';
import { OK } from '$lib/engine/state';
import { NOT_COMPARED } from './hyperformula';
import { isWithinTolerance, isRounding, magnitudeOf } from './tolerance';

/** Not a state of any value: the cell is outside the sample. */
export const NOT_CHECKED = 254;

/** How many disagreements are listed one by one. */
const LISTED = 100;

export interface Column {
	readonly values: Float64Array;
	/** Classes (`cells/literals.ts`), NOT_COMPARED or NOT_CHECKED. */
	readonly states: Uint8Array;
}

export interface Pair {
	readonly id: string;
	/** Place of the scenario that it is measured against, −1 for none. */
	readonly reference: number;
	/** The frozen copy that it is measured against. */
	readonly copy?: { readonly values: Float64Array } | undefined;
	/** Null: the interpreter has not computed it, and nothing is compared. */
	readonly first: Results | null;
	readonly second: Column;
}

type Found = Pick<Agreement, 'compared' | 'agreeing' | 'notCompared' | 'disagreements'>;

/** `reasonAt` says why a cell was not judged, null where it was. */
export function compareColumns(
	plan: Plan,
	pairs: readonly Pair[],
	base: number,
	reasonAt: (cell: number) => string | null
): Found {
	let compared = 0;
	let agreeing = 0;
	const notCompared = new Map<string, number>();
	const disagreements: Found['disagreements'][number][] = [];
	const anyUnjudged = pairs.some(({ second }) => second.states.includes(NOT_COMPARED));

	pairs.forEach(({ id, first: column, second }, scenario) => {
		if (!column) return;
		for (let cell = 0; cell < plan.layout.cells; cell++) {
			if (second.states[cell] === NOT_CHECKED) continue;
			const one = { value: column.values[cell]!, state: column.states[cell]! };
			const two = { value: second.values[cell]!, state: second.states[cell]! };
			const agree = agreesAt(scenario, cell, one, two);
			const reason = !agree && anyUnjudged ? whyUnjudged(plan, cell, reasonAt) : null;
			if (reason !== null) {
				notCompared.set(reason, (notCompared.get(reason) ?? 0) + 1);
				continue;
			}
			compared++;
			if (agree) agreeing++;
			else if (disagreements.length < LISTED)
				disagreements.push({
					...placeOf(plan.layout, cell),
					scenario: id,
					first: one,
					second: two
				});
		}
	});
	return {
		compared,
		agreeing,
		notCompared: [...notCompared].map(([reason, count]) => ({ reason, count })),
		disagreements
	};

	function agreesAt(scenario: number, cell: number, outcome: Outcome, two: Outcome): boolean {
		if (classOf(outcome.state) !== classOf(two.state) || two.state === NOT_COMPARED) return false;
		if (outcome.state !== OK || isWithinTolerance(outcome.value, two.value)) return true;
		const root = plan.roots[cell]!;
		if (root < 0) return false;
		const magnitude = magnitudeOf(plan, root, (read, which) => {
			const { reference, copy } = pairs[scenario]!;
			if (which === 1 && copy) return copy.values[read] || 0;
			const from = which === 0 ? scenario : which === 1 ? reference : base;
			return pairs[from]?.second.values[read] ?? 0;
		});
		return isRounding(outcome.value, two.value, magnitude);
	}
}

const TOO_MUCH = 'its formula is more than the second engine takes in one cell';

/** Why a value was not judged: it could not be, or something that it is computed from could not. */
function whyUnjudged(
	plan: Plan,
	cell: number,
	reasonAt: (cell: number) => string | null
): string | null {
	const { starts, targets } = plan.precedents;
	const seen = new Set<number>();
	const stack = [cell];
	for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
		if (seen.has(at)) continue;
		seen.add(at);
		const reason = reasonAt(at);
		if (reason !== null) return reason || TOO_MUCH;
		for (let i = starts[at]!; i < starts[at + 1]!; i++) stack.push(targets[i]!);
	}
	return null;
}
