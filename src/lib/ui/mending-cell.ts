/**
 * Which cell of an input mends what a caution says of certain members. Where the input is by members that lie under those, as
 * items do under their product, it is the one among these that the scenario has entered itself, else the first of them.
 */
import { cellAt, membersOf, type Layout, type QuantityLayout } from '$lib/engine/layout';
import { inputAt } from '$lib/workbook/scenario';

/** The members of a caution: their ordinals by set. */
export type Spoken = ReadonlyMap<string, number>;

export function mendingCell(
	layout: Layout,
	input: QuantityLayout,
	spoken: Spoken,
	scenario: string
): number {
	const under = input.axes.findIndex(({ set }) => !spoken.has(set));
	const cells = (ordinal: number) =>
		cellAt(
			input,
			input.axes.map(({ set }, axis) => (axis === under ? ordinal : (spoken.get(set) ?? 0)))
		);
	if (under < 0) return cells(0);
	const set = input.axes[under]!.set;
	const members = layout.sets.get(set)?.members ?? [];
	const all = members.map((_, ordinal) => ordinal);
	const found = all.filter((ordinal) => lies(layout, set, members[ordinal]!.id, spoken, scenario));
	const isEntered = (ordinal: number) => {
		const at = membersOf(layout, cells(ordinal));
		return inputAt(layout.workbook, scenario, input.quantity.name, at).from === scenario;
	};
	return cells((found.length > 0 ? (found.find(isEntered) ?? found[0]) : all[0]) ?? 0);
}

/** Whether a choice of the member is one of those that are spoken of. */
function lies(layout: Layout, set: string, id: string, spoken: Spoken, scenario: string): boolean {
	return layout.quantities.some(({ quantity: { name, type }, axes }) => {
		if (typeof type !== 'object' || axes.length !== 1 || axes[0]!.set !== set) return false;
		const ordinal = spoken.get(type.member_of);
		if (ordinal === undefined) return false;
		const { value } = inputAt(layout.workbook, scenario, name, [id]);
		return layout.sets.get(type.member_of)?.members[ordinal]?.id === value;
	});
}
