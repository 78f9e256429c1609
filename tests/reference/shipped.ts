/** The shipped workbooks with inputs put in: their own formulas are held against the outside. */
import { readFileSync } from 'node:fs';
import { cellAt } from '$lib/engine/layout';
import { Model } from '$lib/engine/model';
import type { Plan } from '$lib/engine/plan';
import { OK } from '$lib/engine/state';
import type { Command } from '$lib/workbook/commands';
import type { Workbook } from '$lib/workbook/schema';
import { loadWorkbook } from '$lib/workbook/load';
import { findQuantity } from '$lib/workbook/lookup';

const FILES = {
	marram: 'scenarios/marram-coil-works.json',
	shop: 'scenarios/one-line-shop.json'
};

/** Loading, proving and folding a shipped workbook takes seconds: once for all tests of a process. */
const opened = new Map<string, { readonly workbook: Workbook; readonly plan: Plan }>();

/** Not a path of any file. */
const AGAINST_BASE = 'against the base';

export const openShipped = (name: keyof typeof FILES): Model => openFile(FILES[name]);

/** Each time a model of its own: what one test enters, no other sees. */
export function openFile(path: string): Model {
	const before = opened.get(path);
	if (before) return Model.open(before.workbook, before.plan);
	const loaded = loadWorkbook(readFileSync(path, 'utf8'), path);
	if (!loaded.ok) throw new Error(loaded.problem.line);
	const model = Model.open(loaded.workbook);
	opened.set(path, { workbook: loaded.workbook, plan: model.plan });
	return model;
}

/** The plant with some of its scenarios alone: what holds of each holds of nine, which take three times as long. */
export function openScenarios(...ids: readonly string[]): Model {
	const { workbook } = openShipped('marram');
	const scenarios = workbook.scenarios.filter(({ id }) => ids.includes(id));
	if (scenarios.length !== ids.length) throw new Error(`no such scenarios: ${ids.join(', ')}`);
	return Model.open({ ...workbook, scenarios });
}

/** The plant whose frozen standard holds nothing: it closes against its base, into which textbook figures are entered. */
export function openAgainstBase(): Model {
	const known = opened.get(AGAINST_BASE);
	if (known) return Model.open(known.workbook, known.plan);
	const { workbook } = openShipped('marram');
	const nothing = { name: 'nothing_frozen', label: 'Nothing', value: 0 };
	const frozen = workbook.frozen!.map((copy) =>
		copy.id === 'standard_2027' ? { ...copy, quantities: [nothing] } : copy
	);
	const model = Model.open({ ...workbook, frozen });
	opened.set(AGAINST_BASE, { workbook: model.workbook, plan: model.plan });
	return model;
}

export function apply(model: Model, command: Command) {
	const applied = model.apply(command);
	if (!applied.ok) throw new Error(applied.problem.message);
}

export type Entry = readonly [
	quantity: string,
	at: readonly string[],
	value: number | boolean | string
];

export function enter(model: Model, ...entries: Entry[]) {
	apply(model, {
		kind: 'set_inputs',
		scenario: 'base',
		entries: entries.map(([quantity, at, value]) => ({ quantity, at: [...at], value }))
	});
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** Entries by which the plant makes so many metres on a line today, a twelfth in each month, whatever was planned. */
export const makeInYear = (product: string, line: string, metres: number): Entry[] =>
	MONTHS.map((month) => ['made', [product, line, month, 'today'], metres / 12]);

/** Entries by which customers take so many metres of a pipe of the shipped plant, of its items as today. */
export function wanted(model: Model, pipe: string, metres: number): Entry[] {
	const pipes = findQuantity(model.workbook, 'pipe_of_item')?.value as Record<string, string>;
	const items = Object.keys(pipes).filter((item) => pipes[item] === pipe);
	const today = read(model, 'demand', pipe);
	return items.map((item) => [
		'item_demand',
		[item],
		(metres * read(model, 'item_demand', item)) / today
	]);
}

/** The number of a quantity in its own unit; in the base, unless the last word names another scenario. */
export function read(
	model: Model,
	quantity: string,
	...words: readonly (string | { scenario: string })[]
): number {
	const place = model.layout.byName.get(quantity);
	if (!place) throw new Error(`no quantity ${quantity}`);
	const at = words.filter((word) => typeof word === 'string');
	const scenario = words.find((word) => typeof word === 'object')?.scenario ?? 'base';
	const ordinals = place.axes.map(
		(axis, i) => model.layout.ordinals.get(axis.set)?.get(at[i] ?? '') ?? -1
	);
	const cell = cellAt(place, ordinals);
	const results = model.results(scenario);
	if (results.states[cell] !== OK) throw new Error(`${quantity} has state ${results.states[cell]}`);
	return results.values[cell]!;
}
