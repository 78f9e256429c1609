/**
 * Which of a file's values must be entered, so that afterwards every scenario has what the file gives it. One that
 * takes the value from what it is built on, or from its plan, gets no entry of its own.
 */
import type { Command, InputEntry } from '$lib/workbook/commands';
import { baseOf, findScenario } from '$lib/workbook/lookup';
import { plannedValues } from '$lib/workbook/plans';
import { inputAt } from '$lib/workbook/scenario';
import type { Quantity, Scalar, Workbook } from '$lib/workbook/schema';

export interface Brought {
	readonly line: number;
	readonly scenario: string;
	readonly quantity: Quantity;
	readonly at: readonly string[];
	/** Null: nobody entered one. */
	readonly before: Scalar;
	readonly after: Scalar;
	/** It stands as it comes, but what it is built on changes: it is entered to stay as it is. */
	readonly stays: boolean;
}

export type Given = Omit<Brought, 'before' | 'stays'>;

export const keyOf = (scenario: string, quantity: string, at: readonly string[]) =>
	[scenario, quantity, ...at].join('\u0001');

export interface Settled {
	readonly changes: readonly Brought[];
	readonly same: number;
	readonly refused: readonly { line: number; column: null; message: string }[];
}

export function settled(all: ReadonlyMap<string, Given>, workbook: Workbook): Settled {
	const planned = plannedValues(workbook);
	const base = baseOf(workbook);

	/** What a scenario has once the file has come in, without an entry of its own from it; a plan fills what is left open. */
	function otherwise(scenario: string, name: string, at: readonly string[]) {
		const { value, from } = inputAt(workbook, scenario, name, at);
		const parent = findScenario(workbook, scenario)?.parent ?? null;
		const entered: Scalar =
			from === scenario || parent === null ? value : enteredIn(parent, name, at);
		return { entered, shown: entered ?? planned(scenario, name, at) };
	}

	/** What stands as entered in a scenario once the file has come in, for those that are built on it. */
	function enteredIn(scenario: string, name: string, at: readonly string[]): Scalar {
		const given = all.get(keyOf(scenario, name, at));
		const { entered, shown } = otherwise(scenario, name, at);
		return given && given.after !== shown ? given.after : entered;
	}

	const changes: Brought[] = [];
	const refused: { line: number; column: null; message: string }[] = [];
	let same = 0;
	for (const given of all.values()) {
		const { line, scenario, quantity, at, after } = given;
		if (otherwise(scenario, quantity.name, at).shown === after) same++;
		else if (quantity.fixed && scenario !== base.id)
			refused.push({
				line,
				column: null,
				message: `${quantity.label} is fixed with the structure, and no scenario changes it. Bring it into ${base.title}.`
			});
		else {
			const stood = inputAt(workbook, scenario, quantity.name, at).value;
			const before = stood ?? planned(scenario, quantity.name, at);
			changes.push({ ...given, before, stays: before === after });
		}
	}
	return { changes, same, refused };
}

/** One command a scenario, as one edit. */
export function commandsOf(changes: readonly Brought[]): Command[] {
	const byScenario = new Map<string, InputEntry[]>();
	for (const { scenario, quantity, at, after } of changes) {
		const entries = byScenario.get(scenario) ?? [];
		entries.push({ quantity: quantity.name, at: [...at], value: after });
		byScenario.set(scenario, entries);
	}
	return [...byScenario].map(([scenario, entries]) => ({ kind: 'set_inputs', scenario, entries }));
}
