/**
 * Two scenarios beside each other: only the quantities of which some cell differs.
 */
import type { Layout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { OK } from '$lib/engine/state';
import { isSame } from '../cells';

/** Names of the quantities that differ between two scenarios; of inputs alone, or of all. */
export function differing(layout: Layout, one: Results, other: Results): Set<string> {
	const names = new Set<string>();
	for (const { quantity, base, count } of layout.quantities)
		for (let cell = base; cell < base + count; cell++)
			if (!isSame(one, other, cell) && !isRounding(one, other, cell, quantity.check?.tolerance)) {
				names.add(quantity.name);
				break;
			}
	return names;
}

/** Whether both are checks that hold: what is left of them below their tolerance is no difference. */
function isRounding(one: Results, other: Results, cell: number, tolerance = -1): boolean {
	return [one, other].every(
		({ values, states }) => states[cell] === OK && Math.abs(values[cell] ?? NaN) <= tolerance
	);
}
