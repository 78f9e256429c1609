/**
 * Two scenarios beside each other: only the quantities of which some cell differs.
 */
import type { Layout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { isSame } from '../cells';

/** Names of the quantities that differ between two scenarios; of inputs alone, or of all. */
export function differing(layout: Layout, one: Results, other: Results): Set<string> {
	const names = new Set<string>();
	for (const { quantity, base, count } of layout.quantities)
		for (let cell = base; cell < base + count; cell++)
			if (!isSame(one, other, cell)) {
				names.add(quantity.name);
				break;
			}
	return names;
}
