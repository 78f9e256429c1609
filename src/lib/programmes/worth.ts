/**
 * The unit of what the next unit of a constraint is worth: the objective's over the sides'. The quantity that is filled
 * with it may have another unit of the same dimension, and then a factor stands between.
 */
import type { Plan } from '$lib/engine/plan';
import { unitOfQuantity, unitOfSides } from '$lib/engine/planner/sides';
import { divide, sameDimension } from '$lib/units/algebra';
import { factor } from '$lib/units/convert';
import type { Programme } from '$lib/workbook/programme-schema';

export type WorthFactor =
	{ readonly ok: true; readonly factor: number } | { readonly ok: false; readonly message: string };

/** `cell`: one of the constraint's. */
export function worthFactor(
	plan: Plan,
	programme: Programme,
	quantity: string,
	cell: number
): WorthFactor {
	const objective = unitOfQuantity(plan, programme.maximise ?? programme.minimise ?? '');
	const sides = unitOfSides(plan, cell);
	const filled = unitOfQuantity(plan, quantity);
	if (!objective || !sides || !filled) return { ok: true, factor: 1 };
	const worth = divide(objective, sides);
	if (sameDimension(worth, filled)) return { ok: true, factor: factor(worth, filled) };
	const constraint = programme.shadow_prices?.[quantity] ?? '';
	return {
		ok: false,
		message: `${quantity} is in ${filled.text}, and what the next unit of ${constraint} is worth is in ${worth.text}: give it that unit.`
	};
}
