/** Entered values that differ between two versions, cell by cell, in the base and in each scenario. */
import { entriesChange } from '../describe';
import type { Change } from './change';
import { changesOf, findQuantity, findScenario, quantityPlaces } from '../lookup';
import { pairKey } from '../axes';
import { same, type Node } from '../merge/same';
import type { Scalar, Values, Workbook } from '../schema';
import { flatten } from '../values';

/** One entered value before and after; undefined where nothing stands. */
export interface ValueDifference {
	readonly quantity: string;
	readonly scenario: string;
	readonly at: readonly string[];
	readonly was: Scalar | undefined;
	readonly now: Scalar | undefined;
}

export interface ValuesCompared {
	readonly all: readonly ValueDifference[];
	/** Those of quantities and scenarios that both versions have. */
	lines(mostCells: number): Change[];
}

export function compareValues(before: Workbook, after: Workbook): ValuesCompared {
	const all = after.scenarios.flatMap(({ id }, place) =>
		place === 0 ? inBase(before, after, id) : inScenario(before, after, id)
	);
	return { all, lines: (mostCells) => asLines(before, after, all, mostCells) };
}

function inBase(before: Workbook, after: Workbook, scenario: string): ValueDifference[] {
	return [...quantityPlaces(after)].flatMap(([name, { quantity }]) =>
		cells(findQuantity(before, name)?.value, quantity.value).map((cell) => ({
			quantity: name,
			scenario,
			...cell
		}))
	);
}

function inScenario(before: Workbook, after: Workbook, id: string): ValueDifference[] {
	const old = findScenario(before, id);
	const now = findScenario(after, id);
	const was = old ? changesOf(old) : new Map<string, never>();
	const changes = now ? changesOf(now) : new Map<string, never>();
	// A quantity that is gone took its changes with it; that it is gone is said elsewhere.
	const names = new Set([...changes.keys(), ...was.keys()]);
	return [...names]
		.filter((name) => findQuantity(after, name))
		.flatMap((name) =>
			cells(was.get(name)?.value, changes.get(name)?.value).map((cell) => ({
				quantity: name,
				scenario: id,
				...cell
			}))
		);
}

type Cell = Pick<ValueDifference, 'at' | 'was' | 'now'>;

function cells(before: Values | undefined, after: Values | undefined): Cell[] {
	if (same(before as Node, after as Node)) return [];
	const old = new Map(flatten(before).map(({ at, value }) => [pairKey(at), { at, value }]));
	const differing: Cell[] = [];
	for (const { at, value } of flatten(after)) {
		const key = pairKey(at);
		const was: Scalar | undefined = old.get(key)?.value;
		if (!old.delete(key) || was !== value) differing.push({ at, was, now: value });
	}
	for (const { at, value } of old.values()) differing.push({ at, was: value, now: undefined });
	return differing;
}

function asLines(
	before: Workbook,
	after: Workbook,
	all: readonly ValueDifference[],
	mostCells: number
): Change[] {
	const groups = new Map<string, ValueDifference[]>();
	for (const valueDifference of all) {
		if (
			!findQuantity(before, valueDifference.quantity) ||
			!findScenario(before, valueDifference.scenario)
		)
			continue;
		const key = pairKey([valueDifference.scenario, valueDifference.quantity]);
		const group = groups.get(key);
		if (group) group.push(valueDifference);
		else groups.set(key, [valueDifference]);
	}
	// A renamed scenario is told under its new title.
	const known = { ...before, scenarios: retitled(before, after) };
	return [...groups.values()].flatMap((group) => {
		const told =
			group.length > mostCells ? [group] : group.map((valueDifference) => [valueDifference]);
		return told.map((entries) =>
			entriesChange(
				known,
				entries[0]!.scenario,
				entries.map(({ quantity, at, now }) => ({ quantity, at, value: now }))
			)
		);
	});
}

const retitled = (before: Workbook, after: Workbook) =>
	before.scenarios.map((scenario) => {
		const title = findScenario(after, scenario.id)?.title;
		return title === undefined ? scenario : { ...scenario, title };
	});
