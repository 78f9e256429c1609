/**
 * Cautions that name the figures which mislead without them: those that hold in a scenario, whom they speak of, and the
 * way to the inputs that mend them. Strip, starting views, pictures and notices say them beside these figures.
 */
import { isCaution } from '$lib/engine/check-verdict';
import { membersOf, type Layout, type QuantityLayout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import type { State } from '$lib/engine/state';
import { isInputCell } from '$lib/engine/input-cell';
import { midSentence } from './figure/words';
import { mendingCell } from './mending-cell';
import { texts } from './said-beside-texts';

/** A cell of an input, in the scenario that the caution is said of. */
export interface Way {
	readonly quantity: string;
	readonly text: string;
	readonly cell: number;
	readonly scenario: string;
}

export interface Said {
	readonly scenario: string;
	/** What holds, and for whom: "Demand differs from its reference: PX10B and PX15P". */
	readonly text: string;
	readonly message: string;
	readonly ways: readonly Way[];
}

const known = new WeakMap<Layout, readonly QuantityLayout[]>();

/** Of hundreds of quantities a few have such a caution, and every figure on screen asks. */
function naming(layout: Layout): readonly QuantityLayout[] {
	const before = known.get(layout);
	if (before) return before;
	const found = layout.quantities.filter(({ quantity }) => quantity.caution?.beside);
	known.set(layout, found);
	return found;
}

/** What holds in a scenario and is to be said beside one of these quantities; beside any, where none are given. */
export function saidBeside(
	layout: Layout,
	results: Results | undefined,
	names?: ReadonlySet<string>
): Said[] {
	if (!results) return [];
	const where = { workbook: layout.workbook, scenario: results.scenario };
	return naming(layout).flatMap((warning): Said[] => {
		const { quantity, base, count } = warning;
		if (names && !quantity.caution?.beside?.some((name) => names.has(name))) return [];
		const cells: number[] = [];
		for (let cell = base; cell < base + count; cell++)
			if (isCaution(quantity, results.values[cell]!, results.states[cell]! as State, where))
				cells.push(cell);
		const [first] = cells;
		if (first === undefined) return [];
		return [
			{
				scenario: results.scenario,
				text: texts.of(quantity.label, whom(layout, cells), cells.length === count),
				message: quantity.caution?.message ?? '',
				ways: waysOf(layout, warning, first, results.scenario)
			}
		];
	});
}

/** The same as one text, to stand in a row: why its figures are not to be read as they are; empty where they are. */
export const doubtOf = (
	layout: Layout,
	results: Results | undefined,
	names: ReadonlySet<string>
): string =>
	saidBeside(layout, results, names)
		.map(({ text }, i) => (i === 0 ? text : midSentence(text)))
		.join('; ');

/** The members that it holds for; none of a quantity without a set. */
function whom(layout: Layout, cells: readonly number[]): string[] {
	const named = cells.map((cell) => membersOf(layout, cell).join(', '));
	return named.every((name) => name === '') ? [] : named;
}

/** To each input that mends it, at the members of the first cell that cautions. */
function waysOf(layout: Layout, warning: QuantityLayout, first: number, scenario: string): Way[] {
	const start = (first - warning.base) * warning.axes.length;
	const spoken = new Map(
		warning.axes.map(({ set }, axis) => [set, warning.members[start + axis] ?? 0])
	);
	return (warning.quantity.caution?.mended_by ?? []).flatMap((name): Way[] => {
		const input = layout.byName.get(name);
		if (!input) return [];
		const cell = mendingCell(layout, input, spoken, scenario);
		if (cell < 0 || !isInputCell(layout.workbook, input, cell)) return [];
		return [{ quantity: name, text: input.quantity.label, cell, scenario }];
	});
}
