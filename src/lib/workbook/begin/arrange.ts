/**
 * A list of the plant's own that comes in as a file: each new member takes typical values from the shipped one that is
 * nearest, what is asked of it and was not given begins at nothing, and the member that stood for all goes.
 */
import { applyCommand, type Command, type InputEntry } from '../commands';
import { axesOf } from '../axes';
import { baseOf, choicesOf, findQuantity, findSet } from '../lookup';
import type { SetDefinition, Workbook } from '../schema';
import { flatten, valueAt } from '../values';
import { settled } from './settle';

type Adding = Extract<Command, { kind: 'add_member' }>;

/** The edits that bring a list in, and those that follow from it. */
export function arranged(
	workbook: Workbook,
	template: Workbook,
	commands: readonly Command[]
): readonly Command[] {
	const isOwn = (set: string) => findSet(workbook, set)?.own !== undefined;
	const like = (set: string) => findSet(workbook, set)?.members.find((one) => one.like)?.id;
	const brought = commands.map((command): Command => {
		if (command.kind !== 'add_member' || command.like !== undefined || !isOwn(command.set))
			return command;
		const model = like(command.set);
		return model === undefined ? command : { ...command, like: model };
	});
	const added = brought.filter(
		(command): command is Adding => command.kind === 'add_member' && isOwn(command.set)
	);
	if (added.length === 0) return commands;
	let now = workbook;
	const all: Command[] = [];
	const put = (more: readonly Command[]) => {
		const applied = applyCommand(now, { kind: 'several', commands: more });
		if (!applied.ok) return;
		now = applied.workbook;
		all.push(...more);
	};
	put(brought);
	// What cannot be brought in is refused in the words of the edit itself.
	if (all.length === 0) return brought;
	for (const { set, member } of added) {
		const given = givenFor(now, brought, set, member.id);
		put(withoutDemands(now, set, member.id, given));
		put(settled(now, template, { set, id: member.id, given }));
	}
	for (const set of new Set(added.map((one) => one.set))) {
		const [first] = added.filter((one) => one.set === set);
		put(withoutPlaceholder(workbook, now, set, first!.member.id, brought));
	}
	return all;
}

/** Edits by which one more begins, by its code alone. */
export function oneMore(
	workbook: Workbook,
	template: Workbook,
	set: string,
	id: string
): Command[] {
	const { members = [] } = findSet(workbook, set) ?? {};
	const model = members.findLast(({ like }) => like !== undefined);
	const add: Adding = {
		...{ kind: 'add_member', set, index: members.length, member: { id } },
		...(model && { like: model.id })
	};
	const applied = applyCommand(workbook, add);
	if (!applied.ok) return [add];
	const given: ReadonlySet<string> = new Set();
	const zeros = withoutDemands(applied.workbook, set, id, given);
	return [add, ...zeros, ...settled(applied.workbook, template, { set, id, given })];
}

function givenFor(
	workbook: Workbook,
	commands: readonly Command[],
	set: string,
	id: string
): ReadonlySet<string> {
	const given = new Set<string>();
	for (const command of commands)
		if (command.kind === 'set_inputs')
			for (const { quantity, at } of command.entries) {
				const axes = axesOf(
					findQuantity(workbook, quantity) ?? { name: quantity, label: quantity }
				);
				if (at.some((one, i) => one === id && axes[i]?.set === set)) given.add(quantity);
			}
	return given;
}

/** What is asked of a thing, and not what it is, begins at nothing. */
function withoutDemands(
	workbook: Workbook,
	set: string,
	id: string,
	given: ReadonlySet<string>
): Command[] {
	const entries = (findSet(workbook, set)?.not_copied ?? []).flatMap((name): InputEntry[] => {
		const quantity = findQuantity(workbook, name);
		if (!quantity || given.has(name)) return [];
		const place = axesOf(quantity).findIndex((axis) => axis.set === set);
		return flatten(quantity.value)
			.filter(({ at }) => at[place] === id)
			.map(({ at }) => ({ quantity: name, at, value: 0 }));
	});
	return entries.length > 0 ? [{ kind: 'set_inputs', scenario: baseOf(workbook).id, entries }] : [];
}

/** The one that stood for all goes where the list does not name it, and its choices fall on the first of the list. */
function withoutPlaceholder(
	before: Workbook,
	now: Workbook,
	set: string,
	first: string,
	brought: readonly Command[]
): Command[] {
	const definition = findSet(before, set) as SetDefinition;
	const id = definition.own!.first;
	const stands = definition.members.some(
		(one) => one.id === id && one.like === definition.own!.like
	);
	if (!stands || givenFor(now, brought, set, id).size > 0) return [];
	const others = placeholdersOf(now, set, id);
	const going = new Set(others.map((other) => other.id));
	const entries = choicesOf(now, set).flatMap((quantity) =>
		flatten(quantity.value)
			.filter(({ at, value }) => value === id && !at.some((one) => going.has(one)))
			.map(({ at }): InputEntry => ({ quantity: quantity.name, at, value: first }))
	);
	return [
		...others.map((other) => ({
			...{ kind: 'remove_member' as const, ...other, also: true }
		})),
		...(entries.length > 0
			? [{ kind: 'set_inputs' as const, scenario: baseOf(now).id, entries }]
			: []),
		{ kind: 'remove_member', set, id, also: true }
	];
}

/** Those that stand for all of another set and are of this one: the demand of an item would count for another pipe. */
function placeholdersOf(
	workbook: Workbook,
	set: string,
	id: string
): { set: string; id: string }[] {
	const choices = choicesOf(workbook, set);
	return workbook.sets.flatMap(({ name, own, not_copied: asked, members }) => {
		const first = members.find((one) => one.id === own?.first && one.like === own.like);
		if (!first || !asked || name === set) return [];
		const isOf = choices.some(
			({ per, value }) => per?.length === 1 && per[0] === name && valueAt(value, [first.id]) === id
		);
		return isOf ? [{ set: name, id: first.id }] : [];
	});
}
