/**
 * Adding, duplicating, renaming, ordering and removing members.
 *
 * Whatever is kept by member follows: values in the base and in every scenario, pairs, formulas by
 * member, choices that hold it, colours of pictures. Names in formulas are changed by `$lib/formula/rename`.
 */
import { renameInText } from '$lib/formula/rename';
import { axesOf } from '../axes';
import { caseOf, INPUT, OTHERS } from '../cells';
import { roleSetOf } from '../picture-names';
import { formulasOf, mentionsMember, mentionsMemberAlone, withFormulas } from '../formula-names';
import { findSet, memberPlaces, quantityPlaces } from '../lookup';
import {
	memberSchema,
	type Member,
	type Picture,
	type Quantity,
	type SetDefinition,
	type Workbook
} from '../schema';
import { flatten } from '../values';
import { mapCalibrationNames } from './calibrations';
import { mapFrozenNames } from './frozen';
import { mapQuoteNames } from './quotes';
import { edited, refused, type Edit, type MemberCommand } from './command';
import { copiedMember, renamedMember } from './member-values';
import { mapTableNames } from './tables';
import { withMemberRenamedInTicks } from './ticks';
import { inserted, listed, mapped, withEntry, without } from './lists';
import { setPair, withoutMisfits } from './pairs';
import { mapPictures, mapQuantities } from './parts';
import { shapeRefusal } from './refusal';

type Of<K extends MemberCommand['kind']> = Extract<MemberCommand, { kind: K }>;

export function editMember(workbook: Workbook, command: MemberCommand): Edit {
	if (command.kind === 'set_relation_pair') return setPair(workbook, command);
	const set = findSet(workbook, command.set);
	if (!set)
		return refused(
			'unknown-set',
			`There is no set "${command.set}". Choose one of the workbook's sets.`
		);
	if (command.kind === 'add_member') return addMember(workbook, set, command);
	const place = memberPlaces(set).get(command.id);
	if (place === undefined) return noMember(set, command.id);
	switch (command.kind) {
		case 'remove_member':
			return removeMember(workbook, set, place, command);
		case 'replace_member':
			return replaceMember(workbook, set, place, command);
		case 'move_member': {
			const member = set.members[place];
			if (!member) return noMember(set, command.id);
			const members = inserted(without(set.members, place), command.index, member);
			return edited(withMembers(workbook, set, members));
		}
	}
}

function addMember(workbook: Workbook, set: SetDefinition, command: Of<'add_member'>): Edit {
	const { like } = command;
	const member = asTypical(set, command.member, like);
	const bad = shapeRefusal(memberSchema, member, `The new member of ${set.label}`);
	if (bad) return bad;
	if (memberPlaces(set).has(member.id))
		return refused(
			'duplicate-member',
			`${set.label} already has a member "${member.id}". Choose another id.`
		);
	if (like !== undefined && !memberPlaces(set).has(like)) return noMember(set, like);
	const next = withMembers(workbook, set, inserted(set.members, command.index, member));
	const withCases = mapQuantities(next, (quantity) => withCase(quantity, set, member.id, like));
	return edited(
		like === undefined ? withCases : copiedMember(withCases, set.name, like, member.id)
	);
}

/** A copy of one that began with typical values began with the same ones. */
function asTypical(set: SetDefinition, member: Member, like: string | undefined): Member {
	const shipped = set.members.find(({ id }) => id === like)?.like;
	return shipped === undefined || member.like !== undefined ? member : { ...member, like: shipped };
}

/** A formula by member gets a case for the new one: that of the member it is like, else an entered value. */
function withCase(
	quantity: Quantity,
	set: SetDefinition,
	id: string,
	like: string | undefined
): Quantity {
	const { formula } = quantity;
	if (typeof formula !== 'object') return quantity;
	const axis = axesOf(quantity).find(({ name }) => name === formula.by);
	if (axis?.set !== set.name) return quantity;
	const own = like !== undefined && Object.hasOwn(formula.cases, like);
	const text = own ? caseOf(quantity, like) : undefined;
	if (text === undefined && Object.hasOwn(formula.cases, OTHERS)) return quantity;
	const cases = { ...formula.cases, [id]: text ?? INPUT };
	return { ...quantity, formula: { ...formula, cases } };
}

function replaceMember(
	workbook: Workbook,
	set: SetDefinition,
	place: number,
	{ id, member }: Of<'replace_member'>
): Edit {
	const bad = shapeRefusal(memberSchema, member, `Member ${id} of ${set.label}`);
	if (bad) return bad;
	const next = withMembers(workbook, set, withEntry(set.members, place, member));
	if (member.id === id) return edited(next);
	if (memberPlaces(set).has(member.id))
		return refused(
			'duplicate-member',
			`${set.label} already has a member "${member.id}". Choose another id.`
		);
	const twin = workbook.sets.find((other) => other !== set && memberPlaces(other).has(id));
	const unclear =
		twin &&
		[...quantityPlaces(workbook).values()].find(({ quantity }) =>
			formulasOf(quantity).some((text) => mentionsMemberAlone(text, set.name, id))
		);
	if (unclear)
		return refused(
			'unclear-member',
			`The formula of ${unclear.quantity.label} names ${id}, which is a member of ${set.label} and of ${twin.label}. Write ${set.name}.${id} or ${twin.name}.${id} there first.`
		);
	const rename = (text: string) =>
		renameInText(text, id, member.id, { as: 'member', set: set.name });
	const named = mapQuantities(next, (quantity) => withFormulas(quantity, rename));
	const names = {
		member: (of: string, old: string) => (of === set.name && old === id ? member.id : old)
	};
	const inTables = mapTableNames(renamedMember(named, set.name, id, member.id), names);
	const inCopies = mapFrozenNames(mapCalibrationNames(inTables, names), names);
	const inQuotes = mapQuoteNames(inCopies, workbook, names);
	return edited(withMemberRenamedInTicks(inQuotes, set.name, id, member.id));
}

function removeMember(
	workbook: Workbook,
	set: SetDefinition,
	place: number,
	{ id, also }: Of<'remove_member'>
): Edit {
	const users = memberUsers(workbook, set, id);
	if (users.length > 0 && also !== true)
		return refused(
			'in-use',
			`${id} of ${set.label} is used by ${listed(users)}. Change these first, or remove it anyway.`
		);
	let next = withMembers(workbook, set, without(set.members, place));
	if (next.relations)
		next = {
			...next,
			relations: mapped(next.relations, (relation) => {
				const holds = (pair: readonly string[]) =>
					pair.some((member, i) => relation.sets[i] === set.name && member === id);
				return relation.pairs.some(holds)
					? { ...relation, pairs: relation.pairs.filter((pair) => !holds(pair)) }
					: relation;
			})
		};
	next = mapQuantities(next, (quantity) => withoutCase(quantity, set.name, id));
	next = mapPictures(next, (picture) => withoutRole(workbook, picture, set.name, id));
	const { front } = next;
	if (front?.first_subject === id && front.subject === set.name) {
		const { first_subject: _first, ...rest } = front;
		next = { ...next, front: rest };
	}
	return edited(
		withoutMisfits(
			next,
			(quantity) =>
				axesOf(quantity).some((axis) => axis.set === set.name) ||
				(typeof quantity.type === 'object' && quantity.type.member_of === set.name)
		)
	);
}

/** Formulas that name the member, and choices that hold it. */
function memberUsers(workbook: Workbook, set: SetDefinition, id: string): string[] {
	const users: string[] = [];
	for (const { quantity } of quantityPlaces(workbook).values()) {
		if (formulasOf(quantity).some((text) => mentionsMember(text, set.name, id)))
			users.push(`the formula of ${quantity.label}`);
		if (typeof quantity.type !== 'object' || quantity.type.member_of !== set.name) continue;
		const holds = (values: Quantity['value']) => flatten(values).some(({ value }) => value === id);
		if (holds(quantity.value)) users.push(quantity.label);
		for (const { title, changes } of workbook.scenarios)
			if (changes.some((change) => change.quantity === quantity.name && holds(change.value)))
				users.push(`${quantity.label} in ${title}`);
	}
	return users;
}

function withoutCase(quantity: Quantity, set: string, id: string): Quantity {
	const { formula } = quantity;
	if (typeof formula !== 'object' || !Object.hasOwn(formula.cases, id)) return quantity;
	if (axesOf(quantity).find(({ name }) => name === formula.by)?.set !== set) return quantity;
	const cases = Object.fromEntries(Object.entries(formula.cases).filter(([key]) => key !== id));
	return { ...quantity, formula: { ...formula, cases } };
}

function withoutRole(workbook: Workbook, picture: Picture, set: string, id: string): Picture {
	if (!('roles' in picture) || !Object.hasOwn(picture.roles, id)) return picture;
	if (roleSetOf(workbook, picture) !== set) return picture;
	const roles = Object.fromEntries(Object.entries(picture.roles).filter(([key]) => key !== id));
	return { ...picture, roles } as Picture;
}

const withMembers = (
	workbook: Workbook,
	set: SetDefinition,
	members: SetDefinition['members']
): Workbook => ({
	...workbook,
	sets: workbook.sets.map((one) => (one === set ? { ...one, members } : one))
});

const noMember = (set: SetDefinition, id: string) =>
	refused('unknown-member', `${set.label} has no member "${id}". Choose one of its members.`);
