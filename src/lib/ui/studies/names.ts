/** What a study speaks of, in words: results, inputs and their cells, scenarios, kinds. */
import { findQuantity, findScenario } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import type { Mode, StudyKind } from '$lib/workbook/study-schema';
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
	findScenario(workbook, scenario)?.title ?? scenario;

export const KIND_WORDS: Readonly<Record<StudyKind, { name: string; asks: string }>> = {
	bridge: { name: 'Bridge', asks: 'Which changes make the difference between two scenarios' },
	sensitivity: { name: 'Swings', asks: 'Which inputs matter most, each moved by itself' },
	map: { name: 'Map of two inputs', asks: 'What a result is over the ranges of two inputs' },
	break_even: { name: 'Break-even', asks: 'At which value of an input a result meets a target' },
	risk: { name: 'Risk', asks: 'How sure a result is when inputs are not' },
	optimise: { name: 'Best combination', asks: 'Which of all combinations of alternatives is best' }
};

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
