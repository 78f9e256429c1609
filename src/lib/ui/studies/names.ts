/** What a study speaks of, in words: results, inputs and their cells, scenarios, kinds. */
import { findQuantity, scenarioTitle } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import type { Mode } from '$lib/workbook/study-shapes';
import { formatUnit } from '../format';

export interface CellsOf {
	readonly quantity: string;
	readonly members?: readonly (string | null)[] | undefined;
}

/** "Demand against today of y5"; all members go without saying. */
export function nameOf(workbook: Workbook, { quantity, members }: CellsOf): string {
	const label = findQuantity(workbook, quantity)?.label ?? quantity;
	const some = (members ?? []).filter((member) => member !== null);
	return some.length === 0 ? label : `${label} of ${some.join(', ')}`;
}

export const titleOf = (workbook: Workbook, scenario: string): string =>
	scenarioTitle(workbook, scenario);

/** The unit in which an input's range is given: its own, or none for a factor. */
export function unitOfRange(workbook: Workbook, quantity: string, mode: Mode): string {
	return mode === 'scale' ? '' : formatUnit(findQuantity(workbook, quantity)?.unit);
}

export const MODE_WORDS: Readonly<Record<Mode, string>> = {
	set: 'values',
	scale: 'factors',
	add: 'amounts added'
};

/** A name within a sentence begins small, unless it is more than a plain word: PX15B and EBIT stay. */
export const inSentence = (name: string): string =>
	/^\p{Lu}\p{Ll}/u.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
