/** Slips in what people enter: units, digits, signs, a sibling's value, nothing at all, a scenario's wrong member. */
import { INPUT } from '$lib/workbook/cells';
import { axesOf } from '$lib/workbook/axes';
import { findQuantity, findSet } from '$lib/workbook/lookup';
import type { Command, InputEntry } from '$lib/workbook/commands';
import type { Workbook } from '$lib/workbook/schema';
import { flatten } from '$lib/workbook/values';
import { membersOf } from '$lib/engine/layout';
import { OK } from '$lib/engine/state';
import { enteredQuantities, formulaParts, numberEntries, type NumberEntry } from './cells';
import type { Dice } from './dice';
import type { Fault, FaultClass, Seeder } from './fault';

const where = (at: readonly string[]) => (at.length > 0 ? ` (${at.join(', ')})` : '');
const entered = (
	workbook: Workbook,
	entries: readonly InputEntry[],
	scenario?: string
): Command => ({
	kind: 'set_inputs',
	scenario: scenario ?? workbook.scenarios[0]!.id,
	entries
});

/** Without the last bits that a product leaves. */
const exact = (value: number) => Number(value.toPrecision(12));

function randomEntry(workbook: Workbook, dice: Dice): NumberEntry | undefined {
	const quantity = dice.pick(enteredQuantities(workbook));
	return quantity && dice.pick(numberEntries(quantity));
}

/** What units are mistaken for each other, by a word in the unit. */
function unitFactors(unit: string | undefined): number[] {
	const text = unit ?? '';
	const factors = [
		...(/\b(h|min|s)\b/.test(text) ? [60, 1 / 60] : []),
		...(/\b(kg|g|t|kWh|MWh|mm|m|km|Mm|kEUR|l)\b/.test(text) ? [1000, 1 / 1000] : []),
		...(/EUR|USD|GBP/.test(text) ? [100, 1 / 1000] : []),
		...(/%/.test(text) ? [1 / 100, 100] : []),
		...(/day|year|week|month/.test(text) ? [24, 12, 1 / 12] : [])
	];
	return factors.length > 0 ? factors : [100, 1 / 100, 1000, 1 / 1000];
}

/** "one value times 60" or "all divided by 1000". */
const times = (factor: number) =>
	factor >= 1 ? `times ${exact(factor)}` : `divided by ${exact(1 / factor)}`;

export const unitSlip: Seeder = ({ workbook }, dice) => {
	const one = randomEntry(workbook, dice);
	if (!one) return null;
	const factor = dice.pick(unitFactors(one.quantity.unit))!;
	const all = numberEntries(one.quantity);
	const changed = all.length > 1 && dice.chance(0.4) ? all : [one];
	const entries = changed.map(({ quantity, at, value }) => ({
		quantity: quantity.name,
		at,
		value: exact(value * factor)
	}));
	const which = changed.length > 1 ? 'all values' : `one value${where(one.at)}`;
	return {
		class: 'unit',
		quantity: one.quantity.name,
		what: `${which} ${times(factor)}`,
		edit: entered(workbook, entries)
	};
};

const single = (
	kind: FaultClass,
	workbook: Workbook,
	{ quantity, at }: NumberEntry,
	value: number | null,
	what: string
): Fault => ({
	class: kind,
	quantity: quantity.name,
	what: `${what}${where(at)}`,
	edit: entered(workbook, [{ quantity: quantity.name, at, value }])
});

export const magnitudeSlip: Seeder = ({ workbook }, dice) => {
	const one = randomEntry(workbook, dice);
	if (!one) return null;
	const { value } = one;
	const kind = dice.below(5);
	const next =
		kind === 0
			? value * 10
			: kind === 1
				? value / 10
				: kind === 2
					? -value
					: kind === 3
						? swappedDigits(value, dice)
						: Number(String(value).replace('.', ''));
	const words = [
		'times 10',
		'divided by 10',
		'sign turned',
		'two digits swapped',
		'decimal mark lost'
	];
	if (!Number.isFinite(next) || next === value) return null;
	return single('magnitude', workbook, one, exact(next), words[kind]!);
};

function swappedDigits(value: number, dice: Dice): number {
	const text = String(value);
	const places = [...text].flatMap((digit, i) =>
		/\d/.test(digit) && /\d/.test(text[i + 1] ?? '') && digit !== text[i + 1] ? [i] : []
	);
	const at = dice.pick(places);
	if (at === undefined) return value;
	return Number(text.slice(0, at) + text[at + 1] + text[at] + text.slice(at + 2));
}

export const missingEntry: Seeder = ({ workbook }, dice) => {
	const one = randomEntry(workbook, dice);
	return one ? single('missing', workbook, one, null, 'entry taken out') : null;
};

/** A value that stands at another member, or a formula's results entered in its place. */
export const staleCopy: Seeder = (sound, dice) =>
	dice.chance(0.6) ? siblingCopied(sound.workbook, dice) : resultsEntered(sound, dice);

function siblingCopied(workbook: Workbook, dice: Dice): Fault | null {
	const one = randomEntry(workbook, dice);
	const other =
		one && dice.pick(numberEntries(one.quantity).filter(({ value }) => value !== one.value));
	return other
		? single('stale', workbook, one, other.value, `as that of ${other.at.join(', ')}`)
		: null;
}

const resultsEntered: Seeder = ({ workbook, plan, base }, dice) => {
	const part = dice.pick(formulaParts(workbook));
	if (!part || part.part !== null || (part.quantity.type ?? 'number') !== 'number') return null;
	const { quantity } = part;
	const laid = plan.layout.byName.get(quantity.name);
	if (!laid || laid.count === 0 || laid.count > 400 || quantity.where !== undefined) return null;
	const { formula: _formula, ...rest } = quantity;
	const entries: InputEntry[] = [];
	for (let cell = laid.base; cell < laid.base + laid.count; cell++)
		if (base.states[cell] === OK)
			entries.push({
				quantity: quantity.name,
				at: membersOf(plan.layout, cell),
				// As somebody copies what the screen shows, four digits.
				value: Number(base.values[cell]!.toPrecision(4))
			});
	return {
		class: 'stale',
		quantity: quantity.name,
		what: 'its results entered in place of its formula',
		edit: {
			kind: 'several',
			commands: [
				{ kind: 'replace_quantity', name: quantity.name, quantity: rest, also: true },
				entered(workbook, entries)
			]
		}
	};
};

/** In a scenario: a change forgotten for one member, or entered for another one. */
export const scenarioOmission: Seeder = ({ workbook }, dice) => {
	const scenario = dice.pick(workbook.scenarios.slice(1));
	const change = scenario && dice.pick(scenario.changes);
	const quantity = change && findQuantity(workbook, change.quantity);
	const cell = change && dice.pick(flatten(change.value));
	if (!scenario || !quantity || !cell) return null;
	const drop = { quantity: quantity.name, at: cell.at };
	const axis = dice.below(Math.max(1, cell.at.length));
	const set = findSet(workbook, axesOf(quantity)[axis]?.set ?? '');
	const other = set && dice.pick(set.members.filter(({ id }) => id !== cell.at[axis]));
	if (!other || dice.chance(0.5))
		return {
			class: 'omission',
			quantity: quantity.name,
			what: `forgotten in ${scenario.id}${where(cell.at)}`,
			edit: entered(workbook, [drop], scenario.id)
		};
	const at = cell.at.map((id, i) => (i === axis ? other.id : id));
	const moved = { quantity: quantity.name, at, value: cell.value };
	return {
		class: 'omission',
		quantity: quantity.name,
		what: `entered for ${at.join(', ')} in place of ${cell.at.join(', ')} in ${scenario.id}`,
		edit: entered(workbook, [drop, moved], scenario.id)
	};
};

/** A pair that a relation lacks, or a member's case that takes the entered value. */
export const structureOmission: Seeder = ({ workbook }, dice) => {
	const relation = dice.pick(workbook.relations ?? []);
	const pair = relation && dice.pick(relation.pairs);
	if (!relation || !pair || dice.chance(0.4)) return caseEntered(workbook, dice);
	return {
		class: 'omission',
		quantity: relation.name,
		what: `the pair ${pair.join(', ')} left out`,
		edit: { kind: 'set_relation_pair', relation: relation.name, pair, exists: false }
	};
};

function caseEntered(workbook: Workbook, dice: Dice): Fault | null {
	const part = dice.pick(formulaParts(workbook).filter(({ part }) => part !== null));
	if (!part || part.part === null || typeof part.quantity.formula !== 'object') return null;
	const { quantity } = part;
	const { formula } = part.quantity;
	const next = { ...formula, cases: { ...formula.cases, [part.part]: INPUT } };
	return {
		class: 'omission',
		quantity: quantity.name,
		what: `the formula of ${part.part} left out`,
		edit: {
			kind: 'replace_quantity',
			name: quantity.name,
			quantity: { ...quantity, formula: next }
		}
	};
}
