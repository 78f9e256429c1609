/**
 * What stands in the shipped workbook where an entry of this one stands: a typical value, as long as the entry is the same.
 * A member that is called otherwise here says by `like` which shipped one it began with.
 */
import { axesOf } from '../axes';
import { findQuantity, findSet, memberPlaces } from '../lookup';
import { kept } from '../kept';
import type { Quantity, Scalar, Workbook } from '../schema';
import { valueAt } from '../values';

/** The shipped member that each member of a set is like; itself where it says nothing. */
export const likeOf = (workbook: Workbook, set: string, id: string): string =>
	likesOf(workbook).get(set)?.get(id) ?? id;

const likesOf = kept(
	({ sets }: Workbook): ReadonlyMap<string, ReadonlyMap<string, string>> =>
		new Map(
			sets.map(({ name, members }) => [
				name,
				new Map(members.flatMap(({ id, like }) => (like === undefined ? [] : [[id, like]])))
			])
		)
);

/** Whether an entry is no more than what the shipped workbook offers there, or what a new member begins with. */
export function isTypical(
	workbook: Workbook,
	template: Workbook,
	quantity: Quantity,
	at: readonly string[],
	value: Scalar
): boolean {
	const offered = findQuantity(template, quantity.name);
	const axes = axesOf(quantity);
	const own = axes.flatMap(({ set }, i) => {
		const id = at[i] ?? '';
		return likeOf(workbook, set, id) !== id || isNamedAnew(workbook, template, set, id)
			? [set]
			: [];
	});
	if (value === 0 && own.some((set) => startsWithout(template, set, quantity.name))) return true;
	if (!offered) return false;
	const there = axes.map(({ set }, i) => likeOf(workbook, set, at[i] ?? ''));
	const stands = valueAt(offered.value, there);
	if (typeof quantity.type === 'object' && typeof value === 'string')
		return (
			stands !== undefined &&
			isSameChoice(workbook, template, quantity.type.member_of, value, stands)
		);
	// A pair of members that are no pair in the shipped workbook has what the first of them has elsewhere.
	if (stands === undefined && own.length > 1) return standsElsewhere(offered.value, there, value);
	return stands === value;
}

/** It was copied from one that was begun with, and the shipped workbook has none of that name. */
const isNamedAnew = (workbook: Workbook, template: Workbook, set: string, id: string): boolean => {
	const shipped = findSet(template, set);
	return shipped?.own !== undefined && !memberPlaces(shipped).has(id);
};

const startsWithout = (template: Workbook, set: string, name: string): boolean => {
	const shipped = findSet(template, set);
	return shipped?.own !== undefined && shipped.not_copied?.includes(name) === true;
};

/** A choice of one that is gone fell on the first; one of a member that was renamed followed it. */
function isSameChoice(
	workbook: Workbook,
	template: Workbook,
	set: string,
	value: string,
	stands: Scalar
): boolean {
	if (likeOf(workbook, set, value) === stands) return true;
	const shipped = findSet(template, set);
	return shipped?.own !== undefined && findSet(workbook, set)?.members[0]?.id === value;
}

function standsElsewhere(
	values: Quantity['value'],
	[first = '']: readonly string[],
	value: Scalar
): boolean {
	const below = typeof values === 'object' && values !== null ? values[first] : undefined;
	return typeof below === 'object' && below !== null && Object.values(below).includes(value);
}
