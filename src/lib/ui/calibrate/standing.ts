/** What stands in the base, entered or by formula, for the fits that are laid beside it. */
import { cellAt, type Layout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { OK } from '$lib/engine/state';
import { convert } from '$lib/units/convert';
import { sameDimension } from '$lib/units/algebra';
import { UnitSystem } from '$lib/units/system';
import type { Standing } from '$lib/calibration/candidates';
import { axesOf } from '$lib/workbook/axes';
import type { Calibration } from '$lib/workbook/calibration-schema';
import { findQuantity } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';

export const standingIn =
	(layout: Layout | null, results: Results | undefined): Standing =>
	(name, at) => {
		const quantity = layout?.byName.get(name);
		if (!quantity || !results) return null;
		const ordinals = quantity.axes.map(
			({ set }, axis) => layout!.ordinals.get(set)?.get(at[axis] ?? '') ?? -1
		);
		const cell = cellAt(quantity, ordinals);
		return cell >= 0 && results.states[cell] === OK ? (results.values[cell] ?? null) : null;
	};

/** What x is today, in the unit of x; null where the fit does not say, or nothing stands. */
export function todayOf(
	{ today, x, each }: Calibration,
	member: string | null,
	workbook: Workbook,
	standing: Standing
): number | null {
	const quantity = today === undefined ? undefined : findQuantity(workbook, today);
	if (!quantity) return null;
	const at = axesOf(quantity).map(({ set }) => (set === each ? member : null));
	if (at.some((id) => id === null)) return null;
	const value = standing(quantity.name, at as string[]);
	const { system } = UnitSystem.create(workbook.units ?? []);
	const [from, to] = [system.parse(quantity.unit ?? '1'), system.parse(x?.unit ?? '1')];
	if (value === null || !from.ok || !to.ok || !sameDimension(from.unit, to.unit)) return null;
	return convert(value, from.unit, to.unit);
}
