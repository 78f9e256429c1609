/** Chosen results of two revisions side by side, read in the workbook as it is open, and the bridge between them. */
import { membersOf, type Layout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { OK } from '$lib/engine/state';
import type { StudyOf } from '$lib/workbook/study-schema';
import { viewCell, viewSpan } from '../cells';
import { unitShown } from '../format';
import { isNumber } from '../moves/moves';
import { cellFor } from '../show';

export interface ResultRow {
	readonly name: string;
	readonly label: string;
	readonly unit: string;
	readonly from: string;
	readonly to: string;
	/** With its sign; more in the second is a plus. */
	readonly difference: string;
	readonly relative: string;
	/** The members that a bridge of it is of; null where it has none: it is no single number, or the same in both. */
	readonly members: readonly string[] | null;
}

interface Sides {
	readonly layout: Layout;
	readonly from: Results;
	readonly to: Results;
	/** The member that the first screen shows. */
	readonly subject: string | null;
	readonly locale: string;
}

export function resultRows({ layout, from, to, subject, locale }: Sides, names: readonly string[]) {
	return names.flatMap((name): ResultRow[] => {
		const quantity = layout.byName.get(name);
		if (!quantity) return [];
		const cell = cellFor(layout, quantity, subject);
		const context = { layout, quantity, locale, base: from };
		const end = quantity.base + quantity.count;
		const [one, other] = [from, to].map((side) =>
			cell === null ? viewSpan(context, side, quantity.base, end) : viewCell(context, side, cell)
		) as [ReturnType<typeof viewCell>, ReturnType<typeof viewCell>];
		const isBridged =
			cell !== null &&
			isNumber(layout, name) &&
			[from, to].every(({ states }) => states[cell] === OK) &&
			other.difference !== null;
		const { label } = quantity.quantity;
		const of = cell === null ? [] : membersOf(layout, cell);
		return [
			{
				...{ name, unit: unitShown(quantity.quantity), from: one.text, to: other.text },
				label: of.length === 0 ? label : `${label} of ${of.join(', ')}`,
				difference: other.difference
					? other.difference.whole + other.difference.fraction
					: other.instead,
				relative: other.relative,
				members: isBridged ? of : null
			}
		];
	});
}

/** The difference of a result between two copies, planned anew for the inputs of each. */
export const bridgeBetween = (
	{ name, label, members }: ResultRow,
	from: string,
	to: string
): StudyOf<'bridge'> => ({
	...{ name: 'revisions', title: label, kind: 'bridge', quantity: name, from, to },
	...(members && members.length > 0 && { members: [...members] })
});
