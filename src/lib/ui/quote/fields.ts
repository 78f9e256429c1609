/**
 * The inputs that a quote offers to change, each at the member that the page's choices hold: the payment days
 * of the customer in question, the discount of the order's own step.
 */
import { membersOf, type QuantityLayout } from '$lib/engine/layout';
import { cellAt, type Layout } from '$lib/engine/layout';
import { inputAt } from '$lib/workbook/scenario';
import type { Scalar } from '$lib/workbook/schema';
import { isInputCell } from '$lib/engine/input-cell';
import type { Source } from '../figure/read';
import { chosenOf } from './quote';

export interface OfferedInput {
	readonly name: string;
	readonly label: string;
	/** "Skerrow", "60 km": whose value it is; empty for a quantity without axes. */
	readonly whose: string;
	readonly quantity: QuantityLayout;
	/** Member ids of the cell. */
	readonly at: readonly string[];
	readonly value: Scalar;
	/** Whether the scenario says it itself, and the base something else. */
	readonly isChanged: boolean;
	readonly baseValue: Scalar;
}

/** Choices without axes on a sheet, by the set that they choose from: the first of each. */
function chooserOf(layout: Layout, sheet: number, set: string): string | undefined {
	return layout.quantities.find(
		({ quantity, axes, sheet: own }) =>
			own === sheet &&
			axes.length === 0 &&
			typeof quantity.type === 'object' &&
			quantity.type.member_of === set
	)?.quantity.name;
}

export interface InputsOf {
	readonly source: Source;
	readonly scenario: string;
	readonly base: string;
}

/** Those of the names that hold an input where the choices point; others are left out. */
export function offeredInputs(
	names: readonly string[],
	{ source, scenario, base }: InputsOf
): OfferedInput[] {
	const { layout } = source;
	return names.flatMap((name) => {
		const quantity = layout.byName.get(name);
		if (!quantity) return [];
		const whose: string[] = [];
		const ordinals: number[] = [];
		for (const axis of quantity.axes) {
			const chooser = chooserOf(layout, quantity.sheet, axis.set);
			const chosen = chooser === undefined ? null : chosenOf(source, chooser);
			if (!chosen) return [];
			whose.push(chosen.id);
			ordinals.push(chosen.ordinal);
		}
		const cell = cellAt(quantity, ordinals);
		if (cell < 0 || !isInputCell(layout.workbook, quantity, cell)) return [];
		const at = membersOf(layout, cell);
		const { value } = inputAt(layout.workbook, scenario, name, at);
		const baseValue = inputAt(layout.workbook, base, name, at).value;
		return [
			{
				...{ name, label: quantity.quantity.label, whose: whose.join(', '), quantity, at },
				...{ value, baseValue, isChanged: scenario !== base && value !== baseValue }
			}
		];
	});
}
