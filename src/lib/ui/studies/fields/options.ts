/** What the fields of a study offer: results, inputs and their members, scenarios. */
import { axesOf } from '$lib/workbook/axes';
import { hasInputs } from '$lib/workbook/cells';
import { findQuantity, findSet } from '$lib/workbook/lookup';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { memberOptions } from '../../choose/options';

const isNumber = ({ type }: Quantity) => type === undefined || type === 'number';
export const isResult = (quantity: Quantity): boolean =>
	isNumber(quantity) && quantity.formula !== undefined;
/** Inputs that a study can move over a range. */
export const isMovable = (quantity: Quantity): boolean =>
	isNumber(quantity) && hasInputs(quantity) && quantity.fixed !== true;

/** Where a new input of a study starts. */
export const firstMovable = ({ sheets }: Workbook): string =>
	sheets.flatMap(({ quantities }) => quantities).find(isMovable)?.name ?? 'input';

/** One list for each axis of a quantity. */
export function memberLists(workbook: Workbook, quantity: string) {
	const found = findQuantity(workbook, quantity);
	return (found ? axesOf(found) : []).map(({ set: name }) => {
		const set = findSet(workbook, name);
		return {
			label: set?.label ?? name,
			all: `all ${(set?.plural ?? set?.label ?? name).toLowerCase()}`,
			options: memberOptions(set?.members ?? [])
		};
	});
}

/** The first member along each axis: where a result starts when its quantity is chosen. */
export function firstMembers(workbook: Workbook, quantity: string): string[] | undefined {
	const lists = memberLists(workbook, quantity);
	return lists.length === 0 ? undefined : lists.map(({ options }) => options[0]?.value ?? '');
}
