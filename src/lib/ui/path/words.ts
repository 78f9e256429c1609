/**
 * A path in time in words: one step, "+3 %" or "19 EUR/h", and the whole of it, "24.80 EUR/h, from April 2027 +3 %". What is
 * entered stands in `workbook/paths.ts`.
 */
import type { Layout, QuantityLayout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { OK } from '$lib/engine/state';
import { stepWords } from '$lib/workbook/compare/quantity-change-words';
import { pathsOf, stepsOf, type Step } from '$lib/workbook/paths';
import type { Quantity } from '$lib/workbook/schema';
import { unitShown } from '../format';
import { asEntered } from '../scalar-words';
import { figureText } from '../show';
import { texts } from './texts';

/** "+3 %", "19 EUR/h"; where both are entered, both. */
export function stepText(
	{ set, moved }: Pick<Step, 'set' | 'moved'>,
	quantity: Quantity,
	locale: string
): string {
	const write = (value: number) => asEntered(value, locale);
	const level = set === null ? '' : stepWords(set, unitShown(quantity), false, write);
	const share = moved === null ? '' : stepWords(moved, '%', true, write);
	return level && share ? texts.and(level, share) : level || share;
}

/** The same beside the value that it gives: "+3 %", "set". */
export const stepMark = ({ moved }: Pick<Step, 'set' | 'moved'>, locale: string): string =>
	moved === null ? texts.set : stepWords(moved, '%', true, (value) => asEntered(value, locale));

export interface PathWords {
	readonly steps: readonly Step[];
	/** "24.80, 2027-04 +3 %": as much as a cell has room for. */
	readonly short: string;
	readonly full: string;
}

/** A path for the members beside its months; `first` is the cell of its first month. Null where it has no step. */
export function pathWords(
	layout: Layout,
	results: Results,
	scenario: string,
	place: QuantityLayout,
	{ first, at }: { readonly first: number; readonly at: readonly string[] },
	locale: string
): PathWords | null {
	const path = pathsOf(layout.workbook).byPath.get(place.quantity.name);
	if (!path) return null;
	const steps = stepsOf(layout.workbook, scenario, path, at);
	if (steps.length === 0) return null;
	const isFromStart =
		steps[0]?.member.id === layout.sets.get(place.axes.at(-1)?.set ?? '')?.members[0]?.id;
	const isKnown = !isFromStart && results.states[first] === OK;
	const start = isKnown ? figureText(layout, place, results.values[first] ?? 0, locale) : '';
	const unit = unitShown(place.quantity);
	const told = (name: (step: Step) => string) =>
		steps.map((step) => texts.from(name(step), stepText(step, place.quantity, locale)));
	return {
		steps,
		// Two steps would run into the next column: the tip and the reasons say them.
		short: [
			start,
			steps.length > 1
				? texts.steps(steps.length)
				: `${steps[0]!.member.id} ${stepText(steps[0]!, { ...place.quantity, unit: '1' }, locale)}`
		]
			.filter(Boolean)
			.join(', '),
		full: [
			start && unit ? `${start} ${unit}` : start,
			...told(({ member }) => member.label ?? member.id)
		]
			.filter(Boolean)
			.join(', ')
	};
}
