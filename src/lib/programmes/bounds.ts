/** Between what a cell that a programme decides may be chosen where nobody holds it, and what is held outside of that. */
import { isInside, limitsOf } from '$lib/engine/inputs';
import { quantityOf } from '$lib/engine/layout';
import { nameOf, valueText } from '$lib/engine/naming';
import type { Plan } from '$lib/engine/plan';

export function openBounds(plan: Plan, cell: number): readonly [number, number] {
	if (quantityOf(plan.layout, cell)?.quantity.type === 'yes_no') return [0, 1];
	const { min, max, above, below } = limitsOf(plan, cell);
	return [Math.max(min, above), Math.min(max, below)];
}

/** Why a cell cannot be held at a value; null where it can. */
export function outsideRange(plan: Plan, cell: number, value: number): string | null {
	if (isInside(plan, cell, value)) return null;
	const { min, max, above, below } = limitsOf(plan, cell);
	const limit = (word: string, bound: number) =>
		Number.isFinite(bound) ? [`${word} ${valueText(plan, cell, bound)}`] : [];
	const range = [
		...limit('at least', min),
		...limit('above', above),
		...limit('at most', max),
		...limit('below', below)
	].join(' and ');
	return `${nameOf(plan, cell)} is held at ${valueText(plan, cell, value)}, outside of its range (${range}). Let it go, enter a value inside, or change the range.`;
}
