/**
 * Two scenarios beside each other: only the quantities of which some cell differs.
 */
import type { Layout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { OK } from '$lib/engine/state';
import { filledQuantities } from '$lib/workbook/plans';
import { isInputCell } from '$lib/engine/input-cell';
import { isSame } from '../cells';

/** What differs between two scenarios: what was entered, the causes; or all that follows from it too. */
export type Scope = 'inputs' | 'all';

/** Names of the quantities that differ between two scenarios. */
export function differing(
	layout: Layout,
	results: Results,
	other: Results,
	scope: Scope = 'all'
): Set<string> {
	const names = new Set<string>();
	// What the plan decides follows from what was entered, as results do.
	const planned = filledQuantities(layout.workbook);
	for (const place of layout.quantities) {
		const { quantity, base, count } = place;
		for (let cell = base; cell < base + count; cell++) {
			if (isSame(results, other, cell)) continue;
			if (isRounding(results, other, cell, quantity.check?.tolerance)) continue;
			const isEntered = isInputCell(layout.workbook, place, cell) && !planned.has(quantity.name);
			if (scope === 'inputs' && !isEntered) continue;
			names.add(quantity.name);
			break;
		}
	}
	return names;
}

/** Whether both are checks that hold: what is left of them below their tolerance is no difference. */
function isRounding(results: Results, other: Results, cell: number, tolerance = -1): boolean {
	return [results, other].every(
		({ values, states }) => states[cell] === OK && Math.abs(values[cell] ?? NaN) <= tolerance
	);
}
