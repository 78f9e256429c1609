/** Reads computed figures of a shipped workbook by scenario, quantity and member ids. */
import { cellAt, type QuantityLayout } from '$lib/engine/layout';
import type { Model } from '$lib/engine/model';
import type { Results } from '$lib/engine/results';
import { NO_ANSWER, OK } from '$lib/engine/state';
import type { InputEntry } from '$lib/workbook/commands';
import { apply, openFile } from '../reference/shipped';

export class WorkbookFigures {
	readonly #model: Model;
	readonly #results = new Map<string, Results>();

	/** The workbook of that file, with some inputs entered anew. */
	constructor(path: string, entries: readonly InputEntry[] = []) {
		this.#model = openFile(path);
		if (entries.length > 0) apply(this.#model, { kind: 'set_inputs', scenario: 'base', entries });
	}

	/** Formulas that could not be proven. */
	get problems(): readonly string[] {
		return this.#model.problems.map((problem) => `${problem.quantity}: ${problem.message}`);
	}

	/** The number in the quantity's own unit; throws where there is none. */
	number(scenario: string, quantity: string, ...members: readonly string[]): number {
		const { value, state } = this.#at(scenario, quantity, members);
		if (state !== OK)
			throw new Error(`${quantity}[${members.join('; ')}] in ${scenario} is in state ${state}`);
		return value;
	}

	/** The number, or null for a question that has no answer. */
	answer(scenario: string, quantity: string): number | null {
		const { state } = this.#at(scenario, quantity, []);
		return state === NO_ANSWER ? null : this.number(scenario, quantity);
	}

	/** The id of the member that the value is. */
	member(scenario: string, quantity: string, ...members: readonly string[]): string {
		const { type } = this.#quantity(quantity).quantity;
		const set = typeof type === 'object' ? this.#model.layout.sets.get(type.member_of) : undefined;
		const id = set?.members[this.number(scenario, quantity, ...members)]?.id;
		if (id === undefined) throw new Error(`${quantity} is no member`);
		return id;
	}

	/** The numbers along the only axis, as far as there are values. */
	row(scenario: string, quantity: string): number[] {
		const layout = this.#quantity(quantity);
		const { values, states } = this.#column(scenario);
		const cells = Array.from({ length: layout.count }, (_, at) => layout.base + at);
		return cells.filter((cell) => states[cell] === OK).map((cell) => values[cell] ?? NaN);
	}

	#at(scenario: string, name: string, members: readonly string[]) {
		const quantity = this.#quantity(name);
		const ordinals = quantity.axes.map(
			(axis, at) => this.#model.layout.ordinals.get(axis.set)?.get(members[at] ?? '') ?? -1
		);
		const cell = cellAt(quantity, ordinals);
		if (cell < 0) throw new Error(`the workbook has no ${name}[${members.join('; ')}]`);
		const { values, states } = this.#column(scenario);
		return { value: values[cell] ?? NaN, state: states[cell] ?? NaN };
	}

	#quantity(name: string): QuantityLayout {
		const found = this.#model.layout.byName.get(name);
		if (!found) throw new Error(`the workbook has no quantity ${name}`);
		return found;
	}

	#column(scenario: string): Results {
		const results = this.#results.get(scenario) ?? this.#model.results(scenario);
		this.#results.set(scenario, results);
		return results;
	}
}
