/**
 * Entered values cell by cell: where two scenarios differ, and what a change of several cells at once puts
 * into each of them.
 */
import { axesOf } from '$lib/workbook/axes';
import { cellGuide, isInput, placeProblem } from '$lib/workbook/cells';
import { findQuantity, findSet, memberPlaces } from '$lib/workbook/lookup';
import { inputAt, scenarioChain } from '$lib/workbook/scenario';
import type { Change, Scalar, Workbook } from '$lib/workbook/schema';
import { flatten } from '$lib/workbook/values';
import { numberOf } from '$lib/engine/entry';

/** One input cell. */
export interface Cell {
	readonly quantity: string;
	readonly at: readonly string[];
}

export interface Difference extends Cell {
	readonly from: Scalar;
	readonly to: Scalar;
}

export const cellKey = ({ quantity, at }: Cell): string => [quantity, ...at].join('\u0001');

/** The input cells in which two scenarios differ, in the order of the sheets and sets. */
export function differences(workbook: Workbook, from: string, to: string): Difference[] {
	const touched = new Map<string, Map<string, string[]>>();
	for (const id of [from, to])
		for (const { changes } of scenarioChain(workbook, id))
			for (const { quantity, value } of changes) {
				const cells = touched.get(quantity) ?? new Map<string, string[]>();
				touched.set(quantity, cells);
				for (const { at } of flatten(value)) cells.set(at.join('\u0001'), at);
			}
	const found: Difference[] = [];
	for (const { name } of workbook.sheets.flatMap(({ quantities }) => quantities)) {
		const places = [...(touched.get(name)?.values() ?? [])];
		for (const at of inSetOrder(workbook, name, places)) {
			const before = inputAt(workbook, from, name, at).value;
			const after = inputAt(workbook, to, name, at).value;
			if (before !== after && takesValue(workbook, name, at))
				found.push({ quantity: name, at, from: before, to: after });
		}
	}
	return found;
}

function takesValue(workbook: Workbook, name: string, at: readonly string[]): boolean {
	const quantity = findQuantity(workbook, name);
	const guide = quantity && cellGuide(workbook, quantity);
	return guide ? placeProblem(guide, at) === null && isInput(guide, at) : false;
}

function inSetOrder(workbook: Workbook, name: string, places: readonly string[][]): string[][] {
	const quantity = findQuantity(workbook, name);
	const orders = (quantity ? axesOf(quantity) : []).map(({ set: of }) => {
		const set = findSet(workbook, of);
		return set ? memberPlaces(set) : new Map<string, number>();
	});
	const place = (at: readonly string[], axis: number) => orders[axis]?.get(at[axis] ?? '') ?? -1;
	return [...places].sort((a, b) => {
		for (let axis = 0; axis < orders.length; axis++) {
			const ahead = place(a, axis) - place(b, axis);
			if (ahead !== 0) return ahead;
		}
		return 0;
	});
}

/** What a change puts into each cell that it names. */
export const entriesOf = ({ quantity, value }: Change): (Cell & { readonly value: Scalar })[] =>
	flatten(value).map(({ at, value: scalar }) => ({ quantity, at, value: scalar }));

/** An entered value as the engines carry it; NaN: nothing is entered. */
export function carriedValue(workbook: Workbook, quantity: string, scalar: Scalar): number {
	const type = findQuantity(workbook, quantity)?.type;
	const set = typeof type === 'object' ? findSet(workbook, type.member_of) : undefined;
	return numberOf(scalar, set && memberPlaces(set)) ?? NaN;
}

/** Whether a cell is among those that a study names: null stands for every member of an axis. */
export function isAmong(
	cell: Cell,
	named: { readonly quantity: string; readonly members?: readonly (string | null)[] | undefined }
): boolean {
	if (cell.quantity !== named.quantity) return false;
	return (named.members ?? []).every((member, axis) => member === null || member === cell.at[axis]);
}
