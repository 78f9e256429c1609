/**
 * Which figures matter most among those that are not one's own yet: every number that a result stands on, moved by as
 * much, times how far it may lie off.
 */
import type { Layout } from '$lib/engine/layout';
import { OK } from '$lib/engine/state';
import type { OwnQuantity } from '$lib/review/template';
import type { SensitivityResult, SensitivityStudy } from '$lib/studies/sensitivity';
import type { Quantity } from '$lib/workbook/schema';
import { valueAt } from '$lib/workbook/values';
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
	/** By how much of itself the figure may lie off. */
	readonly spread: number;
	/** Of the result, for what it may lie off; null where the result is zero. */
	readonly moves: number | null;
}

/** Nobody's typical value is told to be further off. */
const MOST_SPREAD = 0.5;
const NOTHING_KNOWN = 0.1;

/**
 * How far a typical value may lie off, as a share of it: by its own spread where one is entered; else a quarter of its usual
 * range, the range that is permitted standing in for an end that is missing; a tenth where nothing is said.
 */
export function spreadOf({ spread, usual, range }: Quantity, value: number): number {
	if (value === 0) return 0;
	const share = (width: number) => Math.min(MOST_SPREAD, width / Math.abs(value));
	if (spread) return share((spread.max - spread.min) / 2);
	const low = usual?.min ?? range?.min ?? range?.above;
	const high = usual?.max ?? range?.max ?? range?.below;
	return usual && low !== undefined && high !== undefined ? share((high - low) / 4) : NOTHING_KNOWN;
}

/** Whether nothing moves it but what a plan decides. */
export function restsOnPlanAlone(
	{ workbook }: Layout,
	{ swings }: Pick<SensitivityResult, 'swings'>
): boolean {
	const planned = filledQuantities(workbook);
	return swings.every(({ quantity }) => planned.has(quantity));
}

/** The first that still stand as shipped: what moves the result most by as much as it may lie off comes first. */
export function mattering(
	layout: Layout,
	{ swings, base }: Pick<SensitivityResult, 'swings' | 'base'>,
	own: readonly OwnQuantity[]
): Mattering[] {
	const shipped = new Map(own.map((one) => [one.quantity.name, one.shipped]));
	const size = base.state === OK ? Math.abs(base.value) : 0;
	const found: (Mattering & { readonly weight: number })[] = [];
	for (const { quantity, members, reach } of swings) {
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
		const value = valueAt(laid.quantity.value, at);
		const spread = typeof value === 'number' ? spreadOf(laid.quantity, value) : NOTHING_KNOWN;
		const weight = reach * spread;
		const moves = share === null ? null : (share * spread * 100) / PERCENT;
		found.push({ quantity, at, label, cell, share, spread, moves, weight });
	}
	return found.sort((a, b) => b.weight - a.weight).slice(0, MOST);
}
