/** Between what a cell that a programme decides may be chosen where nobody holds it. */
import { limitsOf } from '$lib/engine/inputs';
import { quantityOf } from '$lib/engine/layout';
import type { Plan } from '$lib/engine/plan';

export function openBounds(plan: Plan, cell: number): readonly [number, number] {
	if (quantityOf(plan.layout, cell)?.quantity.type === 'yes_no') return [0, 1];
	const { min, max, above, below } = limitsOf(plan, cell);
	return [Math.max(min, above), Math.min(max, below)];
}
