/**
 * Which cells a study means by a quantity and its members, and what keeps it from meaning any: a quantity that
 * was deleted, a member that left its set, an input that follows from a formula.
 */
import { cellAt, type QuantityLayout } from '$lib/engine/layout';
import type { Plan } from '$lib/engine/plan';
import { answer, refuse, type Answer } from '../problem';

/** Member ids axis by axis; null, or nothing at the end: every member. */
export type MemberPath = readonly (string | null)[];

export interface PlaceOfStudy {
	readonly quantity: string;
	readonly members?: MemberPath | undefined;
}

/** The cells, in the order of the sets. At least one. */
export function cellsAt(plan: Plan, place: PlaceOfStudy): Answer<readonly number[]> {
	const { layout } = plan;
	const one = layout.byName.get(place.quantity);
	if (!one)
		return refuse(
			'no-such-quantity',
			`The study reads ${place.quantity}, but there is no quantity of that name: it was deleted or renamed. Choose another in the study.`,
			place.quantity
		);
	const path = place.members ?? [];
	if (path.length > one.axes.length)
		return refuse(
			'no-such-member',
			`The study names ${path.length} members for ${place.quantity}, which is per ${one.axes.length === 0 ? 'nothing' : one.axes.map(({ name }) => name).join(' and ')}. Choose its members again.`,
			place.quantity
		);
	const wanted: number[] = [];
	for (const [at, axis] of one.axes.entries()) {
		const member = path[at] ?? null;
		const ordinal = member === null ? -1 : layout.ordinals.get(axis.set)?.get(member);
		if (ordinal === undefined)
			return refuse(
				'no-such-member',
				`The study reads ${place.quantity} of ${member}, but there is no ${member} in the set ${axis.set}: it was deleted or renamed. Choose another in the study.`,
				place.quantity
			);
		wanted.push(ordinal);
	}
	const cells = matching(one, wanted);
	if (cells.length === 0)
		return refuse(
			'no-such-member',
			`${place.quantity} has no value for ${path.filter((id) => id !== null).join(', ')}: the pair does not exist. Choose other members in the study.`,
			place.quantity
		);
	return answer(cells);
}

/** The cells of a quantity whose members are the wanted ones, −1 for any. */
function matching(quantity: QuantityLayout, wanted: readonly number[]): number[] {
	if (wanted.every((ordinal) => ordinal >= 0)) {
		const cell = cellAt(quantity, wanted);
		return cell < 0 ? [] : [cell];
	}
	const cells: number[] = [];
	for (let i = 0; i < quantity.count; i++)
		if (
			wanted.every(
				(ordinal, at) => ordinal < 0 || quantity.members[i * wanted.length + at] === ordinal
			)
		)
			cells.push(quantity.base + i);
	return cells;
}

/** The input cells of a place: what a study may vary. */
export function inputCellsAt(plan: Plan, place: PlaceOfStudy): Answer<readonly number[]> {
	const found = cellsAt(plan, place);
	if (!found.ok) return found;
	const { quantity } = plan.layout.byName.get(place.quantity)!;
	const inputs = found.value.filter((cell) => plan.roots[cell] === -1);
	if (inputs.length === 0)
		return refuse(
			'not-an-input',
			`${place.quantity} follows from a formula, so a study cannot vary it. Vary one of the inputs that it is computed from.`,
			place.quantity
		);
	if (quantity.fixed === true)
		return refuse(
			'fixed-input',
			`${place.quantity} is fixed with the structure of the workbook, so nothing may vary it. Take the mark "fixed" off the quantity, or vary another input.`,
			place.quantity
		);
	return answer(inputs);
}
