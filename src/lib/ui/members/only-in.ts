/** Where a copy of a member stands: wherever the first does, or in one scenario alone, so that the others stay as they are. */
import { cellAt, type Layout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { OK } from '$lib/engine/state';
import { axesOf } from '$lib/workbook/axes';
import { takesEntry } from '$lib/workbook/cells';
import { applyCommand, type Command } from '$lib/workbook/commands';
import { baseOf, findQuantity } from '$lib/workbook/lookup';
import { scenarioChain } from '$lib/workbook/scenario';
import type { Scenario, SetDefinition, Workbook } from '$lib/workbook/schema';
import { flatten } from '$lib/workbook/values';
import { idFrom } from '../scenarios/words';

export type Stands =
	| { readonly in: 'all' }
	/** In a scenario, and so in those that start from it. */
	| { readonly in: 'one'; readonly scenario: string }
	| { readonly in: 'new'; readonly title: string };

type AddMember = Extract<Command, { kind: 'add_member' }>;

/** The input that says whether a member like this one is there; null where a formula does, or nothing. */
export function presenceInput(workbook: Workbook, set: SetDefinition, like: string): string | null {
	const quantity = set.present === undefined ? undefined : findQuantity(workbook, set.present);
	if (!quantity || axesOf(quantity).length !== 1) return null;
	return takesEntry(quantity, like) ? quantity.name : null;
}

/** Whether a member is there in the scenario of these results; so it is thought to be until there are any. */
export function isThere(
	layout: Layout,
	results: Results | undefined,
	set: SetDefinition,
	member: string
): boolean {
	const present = set.present === undefined ? undefined : layout.byName.get(set.present);
	const ordinal = layout.ordinals.get(set.name)?.get(member) ?? -1;
	if (!present || !results || present.axes.length !== 1) return true;
	const cell = cellAt(present, [ordinal]);
	return results.states[cell] === OK && results.values[cell] === 1;
}

/** The scenarios that there are now in which the copy will stand; `hasFirst`: whether the first is there. */
export function standsIn(
	{ scenarios, ...rest }: Workbook,
	stands: Stands,
	hasFirst: (scenario: string) => boolean = () => true
): readonly Scenario[] {
	if (stands.in === 'all') return scenarios.filter(({ id }) => hasFirst(id));
	if (stands.in === 'new') return [];
	return scenarios.filter(({ id }) =>
		scenarioChain({ scenarios, ...rest }, id).some((one) => one.id === stands.scenario)
	);
}

/** The copy, and what takes it out of all scenarios but where it stands; `scenario` is the one to show. */
export function copyIn(
	workbook: Workbook,
	copy: AddMember,
	presence: string,
	stands: Exclude<Stands, { in: 'all' }>
): { readonly scenario: string; readonly commands: readonly Command[] } {
	const ids = new Set(workbook.scenarios.map(({ id }) => id));
	const scenario = stands.in === 'new' ? idFrom(stands.title, ids, 'scenario') : stands.scenario;
	const base = baseOf(workbook).id;
	const is = (where: string, value: boolean): Command => ({
		...{ kind: 'set_inputs', scenario: where },
		entries: [{ quantity: presence, at: [copy.member.id], value }]
	});
	const made: Command[] =
		stands.in === 'one'
			? []
			: [
					{
						...{ kind: 'add_scenario', index: workbook.scenarios.length },
						scenario: { id: scenario, title: stands.title, parent: base, changes: [] }
					}
				];
	const commands = [copy, is(base, false), ...emptied(workbook, copy, stands), ...made];
	return { scenario, commands: [...commands, is(scenario, true)] };
}

/** Takes back what the copy brought into scenarios in which it does not stand. */
function emptied(workbook: Workbook, copy: AddMember, stands: Stands): Command[] {
	const done = applyCommand(workbook, copy);
	if (!done.ok) return [];
	const kept = new Set(standsIn(workbook, stands).map(({ id }) => id));
	return done.workbook.scenarios.flatMap(({ id, parent, changes }): Command[] => {
		if (parent === null || kept.has(id)) return [];
		const entries = changes.flatMap(({ quantity: name, value }) => {
			const quantity = findQuantity(workbook, name);
			const axes = quantity ? axesOf(quantity) : [];
			return flatten(value).flatMap(({ at }) =>
				at.some((member, i) => member === copy.member.id && axes[i]?.set === copy.set)
					? [{ quantity: name, at, value: undefined }]
					: []
			);
		});
		return entries.length === 0 ? [] : [{ kind: 'set_inputs', scenario: id, entries }];
	});
}
