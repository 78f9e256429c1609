/**
 * The shipped plant with a switch for each formula that is to be spoiled: planned anew once, and then each is spoiled by an
 * entry, alone or with others. With every switch off it computes what it computes as shipped.
 */
import { Model } from '$lib/engine/model';
import type { Plan } from '$lib/engine/plan';
import { findQuantity } from '$lib/workbook/lookup';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { enter, openShipped } from './shipped';

/** What is spoiled, and what is done to its formula; an entered case of it stays as it is. */
export type Spoiling = readonly [name: string, how: (formula: string) => string];

const switchOf = (name: string) => `spoiled_${name}`;

export class Spoilable {
	readonly #workbook: Workbook;
	readonly #plan: Plan;

	constructor(spoilings: readonly Spoiling[]) {
		const { workbook } = openShipped('marram');
		const ways = new Map(spoilings);
		for (const name of ways.keys())
			if (findQuantity(workbook, name)?.formula === undefined)
				throw new Error(`no formula ${name}`);
		const sheets = workbook.sheets.map((sheet) => ({
			...sheet,
			quantities: sheet.quantities.map((one) => switched(one, ways.get(one.name)))
		}));
		const switches = [...ways.keys()].map((name): Quantity => ({
			name: switchOf(name),
			label: switchOf(name),
			type: 'yes_no',
			value: false
		}));
		this.#workbook = {
			...workbook,
			sheets: [...sheets, { title: 'Switches', quantities: switches }]
		};
		const model = Model.open(this.#workbook);
		if (model.problems.length > 0) throw new Error(model.problems[0]!.message);
		this.#plan = model.plan;
	}

	/** As shipped, whatever others have spoiled. */
	open(): Model {
		return Model.open(this.#workbook, this.#plan);
	}
}

export function spoil(model: Model, ...names: readonly string[]): void {
	enter(model, ...names.map((name) => [switchOf(name), [], true] as const));
}

function switched(quantity: Quantity, how: Spoiling[1] | undefined): Quantity {
	const { name, formula } = quantity;
	if (how === undefined || formula === undefined) return quantity;
	const either = (text: string) =>
		text.trim() === 'input' ? text : `IF(${switchOf(name)}; ${how(text)}; ${text})`;
	if (typeof formula === 'string') return { ...quantity, formula: either(formula) };
	const cases = Object.fromEntries(
		Object.entries(formula.cases).map(([member, text]) => [member, either(text)])
	);
	return { ...quantity, formula: { ...formula, cases } };
}
