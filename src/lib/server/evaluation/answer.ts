/**
 * Computes what was asked of a workbook, as JSON. It runs in a thread of its own, because a workbook may be made to
 * take for ever; it answers in plain data and keeps the last workbook open.
 */
import { Model } from '$lib/engine/model';
import { quantityAsJson, type JsonQuantity, type JsonValues } from '$lib/engine/json-values';
import { axesOf } from '$lib/workbook/axes';
import type { PlanState } from '$lib/protocol/results';
import { loadWorkbook } from '$lib/workbook/load';
import { baseOf, findSet } from '$lib/workbook/lookup';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { paperAnswer, type PaperAnswered, type PaperAsk } from './paper';
import { plansFor } from './plans';

export interface Ask {
	/** Workbook and revision: what is open already is not opened again. */
	readonly key: string;
	readonly text: string;
	/** All of them when left out. */
	readonly scenarios?: readonly string[] | undefined;
	readonly quantities?: readonly string[] | undefined;
	/** Only what is open, of the base, and nothing that tells what feeds it. */
	readonly openOnly?: boolean | undefined;
	/** A paper as PDF, in place of values. */
	readonly paper?: PaperAsk | undefined;
	readonly megabytes: number;
	/** Of these, half may go into planning. */
	readonly seconds: number;
}

export type Answered =
	| { readonly kind: 'done'; readonly json: string }
	| PaperAnswered
	| { readonly kind: 'unknown'; readonly what: 'scenario' | 'quantity'; readonly name: string }
	| { readonly kind: 'too_large'; readonly cells: number }
	| { readonly kind: 'broken' };

let last: { readonly key: string; readonly model: Model } | undefined;

export async function answerOf(ask: Ask): Promise<Answered> {
	const model = opened(ask);
	if (!(model instanceof Model)) return model;
	if (ask.paper) return paperAnswer(model, ask.paper, ask.seconds / 2);
	const base = baseOf(model.workbook).id;
	const scenarios = ask.openOnly
		? [base]
		: (ask.scenarios ?? model.workbook.scenarios.map(({ id }) => id));
	const plans = await plansFor(model, scenarios, ask.seconds / 2);
	return ask.openOnly ? openResults(model, plans.get(base) ?? []) : results(model, ask, plans);
}

function opened(ask: Ask): Model | Answered {
	if (last?.key === ask.key) return last.model;
	const loaded = loadWorkbook(ask.text, 'the workbook');
	if (!loaded.ok) return { kind: 'broken' };
	const cells = cellsOf(loaded.workbook);
	if (cells * BYTES_PER_CELL > ask.megabytes * 1024 * 1024) return { kind: 'too_large', cells };
	last = undefined;
	const model = Model.open(loaded.workbook);
	last = { key: ask.key, model };
	return model;
}

/** A number, a state and their copies; the thread's own limit does not count these. */
const BYTES_PER_CELL = 40;

function cellsOf(workbook: Workbook): number {
	const quantities = workbook.sheets.flatMap((sheet) => sheet.quantities);
	const size = (quantity: Quantity) =>
		axesOf(quantity).reduce(
			(product, { set }) => product * (findSet(workbook, set)?.members.length ?? 1),
			1
		);
	return quantities.reduce((sum, quantity) => sum + size(quantity), 0) * workbook.scenarios.length;
}

type ByName = Record<string, JsonQuantity>;
/** Without a prototype, so that a quantity called "constructor" is only a quantity. */
const byName = () => Object.create(null) as ByName;

function results(
	model: Model,
	{ scenarios, quantities }: Ask,
	plans: ReadonlyMap<string, readonly PlanState[]>
): Answered {
	const known = model.workbook.scenarios.map(({ id }) => id);
	const asked = scenarios ?? known;
	const names = quantities ?? [...model.layout.byName.keys()];
	const strangeScenario = asked.find((id) => !known.includes(id));
	if (strangeScenario !== undefined)
		return { kind: 'unknown', what: 'scenario', name: strangeScenario };
	const strangeName = names.find((name) => !model.layout.byName.has(name));
	if (strangeName !== undefined) return { kind: 'unknown', what: 'quantity', name: strangeName };
	const answers = asked.map((id) => {
		const values = model.results(id);
		const found = byName();
		for (const name of names)
			found[name] = quantityAsJson(model.layout, model.layout.byName.get(name)!, values, (cell) =>
				model.origin(id, cell)
			);
		const own = plans.get(id) ?? [];
		return { id, quantities: found, ...(own.length > 0 && { plans: own }) };
	});
	return { kind: 'done', json: JSON.stringify({ scenarios: answers }) };
}

/**
 * What an outsider to the costs may see: label, unit and values of the open quantities, and the names of the members
 * that they stand for. No note, formula, range, reason or scenario.
 */
function openResults(model: Model, plans: readonly PlanState[]): Answered {
	const { workbook } = model;
	const values = model.results(baseOf(workbook).id);
	const sets = new Set<string>();
	const quantities = [...model.layout.byName.values()].flatMap((place) => {
		const { quantity } = place;
		if (quantity.open !== true) return [];
		for (const { set } of place.axes) sets.add(set);
		if (typeof quantity.type === 'object') sets.add(quantity.type.member_of);
		const { unit, per, ...found } = quantityAsJson(model.layout, place, values, () => null);
		const bare =
			found.value !== undefined
				? { value: withoutReasons(found.value) }
				: { values: withoutReasons(found.values ?? {}) };
		return [{ name: quantity.name, label: quantity.label, unit, per, ...bare }];
	});
	const named = workbook.sets
		.filter(({ name }) => sets.has(name))
		.map(({ name, label, members }) => ({
			name,
			label,
			members: members.map(({ id, label: words }) => ({ id, ...(words && { label: words }) }))
		}));
	const { title, invented } = workbook;
	return {
		kind: 'done',
		json: JSON.stringify({
			title,
			...(invented && { invented }),
			// Which plan it is would tell what feeds the values.
			...(plans.some(({ plan }) => plan === 'stale' || plan === 'none') && { stale: true }),
			quantities,
			sets: named
		})
	};
}

type Bare = number | boolean | { [member: string]: Bare | string };

/** "nothing" and "error" keep their kind alone: a reason names what feeds the value. */
function withoutReasons(values: JsonValues): Bare {
	if (typeof values !== 'object') return values;
	const kept = Object.create(null) as { [member: string]: Bare | string };
	for (const [key, inner] of Object.entries(values)) {
		if (typeof inner === 'string') {
			if (key !== 'reason') kept[key] = inner;
		} else if (!(key === 'from' && typeof (values as { error?: unknown }).error === 'string'))
			kept[key] = withoutReasons(inner as JsonValues);
	}
	return kept;
}
