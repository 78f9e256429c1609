/** Edits that are meant as they are: whatever speaks up against one of these is a false alarm. */
import { axesOf } from '$lib/workbook/axes';
import { findSet } from '$lib/workbook/lookup';
import { isPermitted } from '$lib/workbook/range';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { enteredQuantities, numberEntries } from './cells';
import type { Dice } from './dice';
import type { Fault, Seeder } from './fault';

/** A value a fifth more or less at most, a new scenario, a copied member, another choice. */
export const meantEdit: Seeder = ({ workbook }, dice) => {
	const kind = dice.next();
	if (kind < 0.7) return movedEntry(workbook, dice);
	if (kind < 0.8) return newScenario(workbook, dice);
	return kind < 0.9 ? copiedMember(workbook, dice) : otherChoice(workbook, dice);
};

const meant = (quantity: string, what: string, edit: Fault['edit']): Fault => ({
	...{ class: null, quantity, what, edit }
});

function moved(workbook: Workbook, dice: Dice) {
	const quantity = dice.pick(enteredQuantities(workbook));
	const one = quantity && dice.pick(numberEntries(quantity));
	if (!one || !quantity) return null;
	const factor = 0.8 + 0.4 * dice.next();
	const isCounted =
		quantity.whole === true ||
		numberEntries(quantity).every(({ value }) => Number.isInteger(value) && Math.abs(value) < 40);
	const value = isCounted
		? Math.round(one.value * factor)
		: Number((one.value * factor).toPrecision(3));
	if (value === one.value || !isPermitted(value, quantity.range ?? null)) return null;
	return { quantity: quantity.name, at: one.at, value };
}

function movedEntry(workbook: Workbook, dice: Dice): Fault | null {
	const entry = moved(workbook, dice);
	if (!entry) return null;
	const edit = {
		kind: 'set_inputs',
		scenario: workbook.scenarios[0]!.id,
		entries: [entry]
	} as const;
	return meant(entry.quantity, `${entry.at.join(', ')} to ${entry.value}`, edit);
}

function newScenario(workbook: Workbook, dice: Dice): Fault | null {
	const entry = moved(workbook, dice);
	if (!entry || enteredQuantities(workbook).find(({ name }) => name === entry.quantity)?.fixed)
		return null;
	const base = workbook.scenarios[0]!;
	const scenario = { id: 'meant_as_it_is', title: 'Meant as it is', parent: base.id, changes: [] };
	return meant(entry.quantity, `a scenario with ${entry.value}`, {
		kind: 'several',
		commands: [
			{ kind: 'add_scenario', scenario, index: workbook.scenarios.length },
			{ kind: 'set_inputs', scenario: scenario.id, entries: [entry] }
		]
	});
}

/** Of a set that a quantity with entries is per: a product, a line, a post. */
function copiedMember(workbook: Workbook, dice: Dice): Fault | null {
	const quantity = dice.pick(enteredQuantities(workbook));
	const set = findSet(workbook, dice.pick(quantity ? axesOf(quantity) : [])?.set ?? '');
	const like = set && dice.pick(set.members);
	// Months, hours and years of a calendar are given, and so is what numbers stand for.
	if (!set || !like || set.cyclic || set.spans !== undefined || like.number !== undefined)
		return null;
	const member = { id: `${like.id}_2`.slice(0, 64), label: `${like.label ?? like.id}, another` };
	return meant(set.name, `a member like ${like.id}`, {
		...{ kind: 'add_member', set: set.name, index: set.members.length, member, like: like.id }
	});
}

/** Another member where one is chosen: the shift pattern of a line. */
function otherChoice(workbook: Workbook, dice: Dice): Fault | null {
	const choices = workbook.sheets
		.flatMap(({ quantities }) => quantities)
		.filter(
			({ type, value, per }: Quantity) =>
				typeof type === 'object' && value !== undefined && per?.length === 1
		);
	const quantity = dice.pick(choices);
	const { type, value } = quantity ?? {};
	if (!quantity || typeof type !== 'object' || typeof value !== 'object' || value === null)
		return null;
	const at = dice.pick(Object.keys(value));
	// One that somebody uses already: what nobody has chosen anywhere may not fit there.
	const used = [...new Set(Object.values(value))].filter((one) => one !== value[at ?? '']);
	const other = dice.pick(used);
	if (at === undefined || typeof other !== 'string') return null;
	const entries = [{ quantity: quantity.name, at: [at], value: other }];
	const edit = { kind: 'set_inputs', scenario: workbook.scenarios[0]!.id, entries } as const;
	return meant(quantity.name, `${at} to ${other}`, edit);
}
