/** Which figures matter most among those that are not one's own yet: every number that a result stands on, moved by as much. */
import type { Layout } from '$lib/engine/layout';
import { OK } from '$lib/engine/state';
import type { OwnQuantity } from '$lib/review/template';
import type { SensitivityResult, SensitivityStudy } from '$lib/studies/sensitivity';
import { headlinesOf } from '$lib/workbook/headlines';
import { filledQuantities } from '$lib/workbook/plans';
import { placeCell } from '../place-cell';
import { cellLabel } from '../programmes/labels';

/** By how much each is moved. */
const PERCENT = 10;
/** How many are named. */
const MOST = 10;

/** A result of the first screens, at the subject or at the first member of a set. */
export interface Asked {
	readonly quantity: string;
	readonly members: readonly string[];
	readonly label: string;
}

/** The results that the workbook puts first, as far as they are numbers. */
export function resultsToAsk(layout: Layout, subject: string | null): Asked[] {
	return headlinesOf(layout.workbook).flatMap((name) => {
		const quantity = layout.byName.get(name);
		const type = quantity?.quantity.type ?? 'number';
		if (!quantity || type !== 'number' || quantity.quantity.shown) return [];
		const members = quantity.axes.map(({ set }) =>
			set === layout.workbook.front?.subject && subject !== null
				? subject
				: (layout.sets.get(set)?.members[0]?.id ?? '')
		);
		const label = [quantity.quantity.label, ...members].join(', ');
		return [{ quantity: name, members, label }];
	});
}

/** Plans stay as they stand: it is asked which figure to look up first, not what to do. */
export const studyOf = ({ quantity, members, label }: Asked, scenario: string) =>
	({
		...{ name: 'what_matters', title: label, kind: 'sensitivity', plans: 'keep' },
		...{ quantity, members: [...members], scenario, all: { percent: PERCENT } }
	}) as const satisfies SensitivityStudy;

export interface Mattering {
	readonly quantity: string;
	/** Members of the figure; of the first that is shipped where all of a quantity were moved together. */
	readonly at: readonly string[];
	readonly label: string;
	readonly cell: number;
	/** Of the result, for ten per cent of the figure; null where the result is zero. */
	readonly share: number | null;
}

/** Whether nothing moves it but what a plan decides. */
export function restsOnPlanAlone(
	{ workbook }: Layout,
	{ swings }: Pick<SensitivityResult, 'swings'>
): boolean {
	const planned = filledQuantities(workbook);
	return swings.every(({ quantity }) => planned.has(quantity));
}

/** The first that still stand as shipped, the widest reach first. */
export function mattering(
	layout: Layout,
	{ swings, base }: Pick<SensitivityResult, 'swings' | 'base'>,
	own: readonly OwnQuantity[]
): Mattering[] {
	const shipped = new Map(own.map((one) => [one.quantity.name, one.shipped]));
	const size = base.state === OK ? Math.abs(base.value) : 0;
	const found: Mattering[] = [];
	for (const { quantity, members, reach } of swings) {
		if (found.length === MOST) break;
		const some = shipped.get(quantity) ?? [];
		const at = members
			? some.find((place) => place.every((member, axis) => member === members[axis]))
			: some[0];
		const laid = layout.byName.get(quantity);
		if (!at || !laid || reach === 0) continue;
		// Half of what lies between ten per cent less and ten per cent more.
		const share = size > 0 ? (100 * reach) / 2 / size : null;
		const cell = placeCell(layout, quantity, at);
		const label = members ? cellLabel(layout, cell) : laid.quantity.label;
		found.push({ quantity, at, label, cell, share });
	}
	return found;
}
