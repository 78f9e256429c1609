/** Adding, describing and removing sets. A set keeps its name, by which formulas know it. */
import { axesOf } from '../axes';
import { formulasOf } from '../formula-names';
import { findSet, quantityPlaces } from '../lookup';
import { pictureSets } from '../picture-names';
import { setSchema, type Quantity, type SetDefinition, type Workbook } from '../schema';
import { edited, refused, type Edit, type SetCommand } from './command';
import { inserted, listed, withEntry, without } from './lists';
import { shapeRefusal } from './refusal';

export function editSet(workbook: Workbook, command: SetCommand): Edit {
	if (command.kind === 'add_set') {
		const { set, index } = command;
		const bad = shapeRefusal(setSchema, set, 'The new list');
		if (bad) return bad;
		if (findSet(workbook, set.name))
			return refused(
				'duplicate-set',
				`There is already a set named ${set.name}. Choose another name.`
			);
		return edited({ ...workbook, sets: inserted(workbook.sets, index, set) });
	}
	const place = workbook.sets.findIndex(({ name }) => name === command.set);
	const set = workbook.sets[place];
	if (!set)
		return refused(
			'unknown-set',
			`There is no set named ${command.set}. Choose one of the workbook's.`
		);
	if (command.kind === 'describe_set') {
		const next = described(set, command);
		const bad = shapeRefusal(setSchema, next, set.label);
		return bad ?? edited({ ...workbook, sets: withEntry(workbook.sets, place, next) });
	}
	const users = usersOf(workbook, set.name);
	if (users.length > 0)
		return refused(
			'set-in-use',
			`${set.plural ?? set.label} cannot be removed while ${listed(users)} ${users.length === 1 ? 'needs' : 'need'} it. Change or remove these first.`
		);
	return edited({ ...workbook, sets: without(workbook.sets, place) });
}

function described(
	{ plural: _plural, note: _note, number_unit: _unit, time: was, ...set }: SetDefinition,
	{ label, plural, note, number_unit, time }: Extract<SetCommand, { kind: 'describe_set' }>
): SetDefinition {
	return {
		...set,
		label,
		...(plural !== undefined && { plural }),
		...(note !== undefined && { note }),
		...(number_unit !== undefined && { number_unit }),
		...((time === undefined ? was : time) && { time: 'month' as const })
	};
}

/** What else in the workbook needs a set, in words. */
function usersOf(workbook: Workbook, name: string): string[] {
	const users: string[] = [];
	for (const { name: own, label, sets } of workbook.relations ?? [])
		if (sets.includes(name)) users.push(`the relation ${label ?? own}`);
	for (const { quantity } of quantityPlaces(workbook).values())
		if (needs(quantity, name)) users.push(quantity.label);
	for (const picture of workbook.pictures ?? [])
		if (pictureSets(picture).some(([, set]) => set === name))
			users.push(`the picture ${picture.title}`);
	for (const { title, set } of workbook.steps ?? [])
		if (set === name) users.push(`the step ${title}`);
	for (const { title, each, over, gives } of workbook.calibrations ?? [])
		if (each === name || over === name || gives.some(({ at }) => at?.some(({ of }) => of === name)))
			users.push(`what is measured as ${title}`);
	if (workbook.front?.subject === name) users.push('the first screen');
	return users;
}

/** A formula that only has the word in it counts as well. */
function needs(quantity: Quantity, name: string): boolean {
	const { type } = quantity;
	const word = new RegExp(`(?<![\\p{L}\\p{N}_])${name}(?![\\p{L}\\p{N}_])`, 'u');
	return (
		(typeof type === 'object' && type.member_of === name) ||
		axesOf(quantity).some((axis) => axis.set === name) ||
		formulasOf(quantity).some((text) => word.test(text))
	);
}
