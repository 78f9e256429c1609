/**
 * A member of the plant's own takes its typical values from the shipped member that is nearest to it by the numbers that the set
 * names: by ratio, so that 16 and 20 mm lie as far apart as 32 and 40. All of them from one member, values and pairs
 * together: a median of pipes with and without a barrier would be a pipe that nobody makes.
 */
import { axesOf } from '../axes';
import type { Command, InputEntry } from '../commands';
import { hasInputs } from '../cells';
import { baseOf, findQuantity, findSet, quantityPlaces } from '../lookup';
import type { Quantity, Workbook } from '../schema';
import { flatten, valueAt } from '../values';
import { isTypical } from './typical';

/** The shipped member to be like; the one that it is like now where nothing is known, or none is nearer. */
export function nearestShipped(
	workbook: Workbook,
	template: Workbook,
	{ set, id, given }: Settling
): string | null {
	const shipped = findSet(template, set);
	const member = findSet(workbook, set)?.members.find((one) => one.id === id);
	if (!shipped?.own || !member) return null;
	const now = member.like ?? shipped.own.like;
	const known = (shipped.own.near ?? []).flatMap((name): [string, number][] => {
		if (given && !given.has(name)) return [];
		const value = valueAt(findQuantity(workbook, name)?.value, [id]);
		return typeof value === 'number' && value > 0 ? [[name, value]] : [];
	});
	const apart = (other: string) =>
		known.reduce((sum, [name, value]) => {
			const there = valueAt(findQuantity(template, name)?.value, [other]);
			return sum + (typeof there === 'number' && there > 0 ? Math.abs(Math.log(there / value)) : 9);
		}, 0);
	let best = { id: now, apart: apart(now) };
	for (const { id: other } of shipped.members)
		if (apart(other) < best.apart - 1e-9) best = { id: other, apart: apart(other) };
	return best.id;
}

export interface Settling {
	readonly set: string;
	readonly id: string;
	/** What was given for a new member: all else of it is typical. Left out: what stands as shipped is. */
	readonly given?: ReadonlySet<string>;
	/** Entries that are one's own though they stand as shipped. */
	readonly isMine?: (quantity: Quantity, at: readonly string[]) => boolean;
}

/** What makes a member like the nearest shipped one, entries that are one's own apart; `workbook` already has the member. */
export function settled(workbook: Workbook, template: Workbook, settling: Settling): Command[] {
	const { set, id, given, isMine } = settling;
	const member = findSet(workbook, set)?.members.find((one) => one.id === id);
	const like = nearestShipped(workbook, template, settling);
	if (!member || like === null) return [];
	if (like === member.like && given === undefined) return [];
	const isFree = (quantity: Quantity, at: readonly string[]): boolean => {
		if (given !== undefined) return !given.has(quantity.name);
		if (isMine?.(quantity, at)) return false;
		const value = valueAt(quantity.value, at);
		return value === undefined || isTypical(workbook, template, quantity, at, value);
	};
	const entries = [...quantityPlaces(workbook).values()].flatMap(({ quantity }) =>
		entriesLike(workbook, template, quantity, { set, id, like }, isFree)
	);
	const commands: Command[] = [
		{ kind: 'replace_member', set, id, member: { ...member, like } },
		...pairsLike(workbook, template, { set, id, like })
	];
	return entries.length > 0
		? [...commands, { kind: 'set_inputs', scenario: baseOf(workbook).id, entries }]
		: commands;
}

interface Like {
	readonly set: string;
	readonly id: string;
	readonly like: string;
}

/** Of quantities per this set and structure alone: what stands between two of one's own sets is nobody's typical value. */
function entriesLike(
	workbook: Workbook,
	template: Workbook,
	quantity: Quantity,
	{ set, id, like }: Like,
	isFree: (quantity: Quantity, at: readonly string[]) => boolean
): InputEntry[] {
	const axes = axesOf(quantity);
	const own = axes.filter((axis) => findSet(template, axis.set)?.own);
	const place = axes.findIndex((axis) => axis.set === set);
	if (place < 0 || own.length > 1 || quantity.fixed || !hasInputs(quantity)) return [];
	if (findSet(template, set)?.not_copied?.includes(quantity.name)) return [];
	// Whose member a choice is here depends on what one has.
	if (typeof quantity.type === 'object' && findSet(template, quantity.type.member_of)?.own)
		return [];
	return flatten(findQuantity(template, quantity.name)?.value).flatMap(({ at, value }) => {
		if (at[place] !== like) return [];
		const here = at.map((one, i) => (i === place ? id : one));
		const stands = valueAt(quantity.value, here);
		return stands !== value && isFree(quantity, here)
			? [{ quantity: quantity.name, at: here, value }]
			: [];
	});
}

/** The layers of a pipe: pairs with what belongs to the structure. */
function pairsLike(workbook: Workbook, template: Workbook, { set, id, like }: Like): Command[] {
	return (workbook.relations ?? []).flatMap((relation): Command[] => {
		const place = relation.sets.indexOf(set);
		const others = relation.sets.filter((_, i) => i !== place);
		if (place < 0 || others.some((name) => findSet(template, name)?.own)) return [];
		const of = (pairs: readonly (readonly string[])[], member: string) =>
			pairs
				.filter((pair) => pair[place] === member)
				.map((pair) => pair.map((one, i) => (i === place ? id : one)));
		const shipped = template.relations?.find(({ name }) => name === relation.name)?.pairs ?? [];
		const [is, shall] = [of(relation.pairs, id), of(shipped, like)];
		const lacks = (pairs: readonly string[][], pair: readonly string[]) =>
			!pairs.some((one) => one.every((member, i) => member === pair[i]));
		const put = (pair: string[], exists: boolean): Command => ({
			...{ kind: 'set_relation_pair', relation: relation.name, pair, exists }
		});
		return [
			...is.filter((pair) => lacks(shall, pair)).map((pair) => put(pair, false)),
			...shall.filter((pair) => lacks(is, pair)).map((pair) => put(pair, true))
		];
	});
}
