/** Edits that are meant as they are: whatever speaks up against one of these is a false alarm. */
import { axesOf } from '$lib/workbook/axes';
import { visit } from '$lib/formula/walk';
import { findQuantity, findSet } from '$lib/workbook/lookup';
import { isPermitted } from '$lib/workbook/range';
import type { Quantity, Scalar, SetDefinition, Workbook } from '$lib/workbook/schema';
import { enteredQuantities, formulaParts, numberEntries, type NumberEntry } from './cells';
import { valueAt } from '$lib/workbook/values';
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

/** The most that an entry moves by, up or down; small moves are more common than large ones. */
const MOST = 0.2;

/** An entry that moves, and where it is a share of a whole, another one that gives or takes the difference. */
function moved(workbook: Workbook, dice: Dice): MovedEntry[] | null {
	const quantity = dice.pick(enteredQuantities(workbook));
	const all = quantity ? numberEntries(quantity) : [];
	const one = dice.pick(all);
	if (!one || !quantity) return null;
	const factor = 1 + MOST * (dice.next() + dice.next() - 1);
	const near = Number((one.value * factor).toPrecision(3));
	// Where all that stands is whole, days, coils or people are counted, and nobody enters a part of one.
	const isCounted = quantity.whole === true || all.every(({ value }) => Number.isInteger(value));
	const value = isCounted ? Math.round(near) : near;
	const entries = [{ quantity: quantity.name, at: one.at, value }];
	const other = dice.pick(sharers(quantity, one));
	if (other) {
		const rest = Number((other.value - (value - one.value)).toPrecision(12));
		entries.push({ quantity: quantity.name, at: other.at, value: rest });
	}
	const isTaken = entries.every((entry) => isPermitted(entry.value, quantity.range ?? null));
	return value === one.value || !isTaken ? null : entries;
}

type MovedEntry = Omit<NumberEntry, 'quantity'> & { readonly quantity: string };

/** The others of the row in which all add up to a whole. */
function sharers(quantity: Quantity, one: NumberEntry): NumberEntry[] {
	const whole = quantity.unit === '%' ? 100 : 1;
	for (let axis = 0; axis < one.at.length; axis++) {
		const row = numberEntries(quantity).filter(({ at }) =>
			at.every((id, i) => i === axis || id === one.at[i])
		);
		const sum = row.reduce((total, { value }) => total + value, 0);
		if (row.length > 1 && Math.abs(sum - whole) < 1e-6 * whole)
			return row.filter(({ at }) => at[axis] !== one.at[axis]);
	}
	return [];
}

const toWords = ([first]: readonly MovedEntry[]) => `${first!.at.join(', ')} to ${first!.value}`;

function movedEntry(workbook: Workbook, dice: Dice): Fault | null {
	const entries = moved(workbook, dice);
	if (!entries) return null;
	const edit = { kind: 'set_inputs', scenario: workbook.scenarios[0]!.id, entries } as const;
	return meant(entries[0]!.quantity, toWords(entries), edit);
}

function newScenario(workbook: Workbook, dice: Dice): Fault | null {
	const entries = moved(workbook, dice);
	const name = entries?.[0]?.quantity ?? '';
	if (!entries || findQuantity(workbook, name)?.fixed) return null;
	const base = workbook.scenarios[0]!;
	const scenario = { id: 'meant_as_it_is', title: 'Meant as it is', parent: base.id, changes: [] };
	return meant(name, `a scenario with ${toWords(entries)}`, {
		kind: 'several',
		commands: [
			{ kind: 'add_scenario', scenario, index: workbook.scenarios.length },
			{ kind: 'set_inputs', scenario: scenario.id, entries }
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
	const named = namedIn(workbook, set);
	if (isModelled(workbook, set) || named.has(like.id)) return null;
	const member = { id: `${like.id}_2`.slice(0, 64), label: `${like.label ?? like.id}, another` };
	return meant(set.name, `a member like ${like.id}`, {
		...{ kind: 'add_member', set: set.name, index: set.members.length, member, like: like.id }
	});
}

/** Whether formulas know most of its members by name: stages, kinds of scrap. Another one is a change of the model. */
const isModelled = (workbook: Workbook, set: SetDefinition): boolean =>
	namedIn(workbook, set).size * 2 >= set.members.length;

/** The members that formulas know by name. */
function namedIn(workbook: Workbook, set: SetDefinition): Set<string> {
	const named = new Set<string>();
	for (const { quantity, tree } of formulaParts(workbook)) {
		const { formula } = quantity;
		if (typeof formula === 'object' && setOfCases(quantity) === set.name)
			Object.keys(formula.cases).forEach((id) => named.add(id));
		visit(tree, (node) => {
			if (node.kind === 'reference' && node.qualifier === set.name) named.add(node.name);
		});
	}
	return new Set(set.members.flatMap(({ id }) => (named.has(id) ? [id] : [])));
}

const setOfCases = (quantity: Quantity): string | undefined =>
	typeof quantity.formula === 'object'
		? axesOf(quantity).find(({ name }) => name === (quantity.formula as { by: string }).by)?.set
		: undefined;

/** Another member where one is chosen: the shift pattern of a line. */
function otherChoice(workbook: Workbook, dice: Dice): Fault | null {
	const choices = workbook.sheets
		.flatMap(({ quantities }) => quantities)
		.filter(
			// What no scenario may change is a part of the model: which materials are resins.
			({ type, value, per, fixed }: Quantity) =>
				typeof type === 'object' && value !== undefined && per?.length === 1 && !fixed
		);
	const quantity = dice.pick(choices);
	const { type, value } = quantity ?? {};
	if (!quantity || typeof type !== 'object' || typeof value !== 'object' || value === null)
		return null;
	const set = findSet(workbook, axesOf(quantity)[0]!.set);
	if (!set || isModelled(workbook, set)) return null;
	const at = dice.pick(Object.keys(value));
	// One that somebody uses already: what nobody has chosen anywhere may not fit there.
	const used = [...new Set(Object.values(value))].filter((one) => one !== value[at ?? '']);
	const other = dice.pick(used);
	if (at === undefined || typeof other !== 'string') return null;
	const like = Object.keys(value).find((id) => value[id] === other)!;
	const entries = [
		{ quantity: quantity.name, at: [at], value: other as Scalar },
		...askedFor(workbook, set.name, at, like)
	];
	const edit = { kind: 'set_inputs', scenario: workbook.scenarios[0]!.id, entries } as const;
	return meant(quantity.name, `${at} to ${other}`, edit);
}

/** What is entered for the member that has this choice already, and not yet for this one: the choice asks for it. */
const askedFor = (workbook: Workbook, set: string, id: string, like: string) =>
	workbook.sheets
		.flatMap(({ quantities }) => quantities)
		.filter((quantity) => axesOf(quantity).length === 1 && axesOf(quantity)[0]!.set === set)
		.flatMap(({ name, value }) => {
			const [its, own] = [like, id].map((at) => valueAt(value, [at]));
			const isAsked = its !== undefined && its !== null && (own === undefined || own === null);
			return isAsked ? [{ quantity: name, at: [id], value: its }] : [];
		});
