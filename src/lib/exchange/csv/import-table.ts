/**
 * Rows of a file as changes of inputs, each beside the value that it would replace. Nothing is changed here:
 * what comes out is looked over by a person, and then made one edit.
 */
import type { Layout, QuantityLayout } from '$lib/engine/layout';
import { nearest } from '$lib/formula/names';
import type { Command, InputEntry } from '$lib/workbook/commands';
import { takesEntry } from '$lib/workbook/cells';
import { baseOf, findScenario, memberPlaces } from '$lib/workbook/lookup';
import { plannedValues } from '$lib/workbook/plans';
import { inputAt } from '$lib/workbook/scenario';
import type { Quantity, Scalar, Workbook } from '$lib/workbook/schema';
import type { Mapping } from './mapping';
import type { CsvGrid } from './rows';
import { MEMBER_MARK, NO_VALUE_WORDS } from './sheet';

/** Reads the text of one value, with its unit if one stands beside it. */
export type ReadValue = (
	text: string,
	quantity: QuantityLayout
) =>
	{ readonly ok: true; readonly value: Scalar } | { readonly ok: false; readonly message: string };

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

export interface ImportTable {
	readonly changes: readonly Brought[];
	/** Values that are what they were, or what the scenario takes from what it is built on afterwards. */
	readonly same: number;
	/** Rows of results, which follow their formulas and are passed over. */
	readonly results: number;
	readonly problems: readonly { readonly line: number; readonly message: string }[];
}

export function importTable(
	grid: CsvGrid,
	mapping: Mapping,
	layout: Layout,
	readValue: ReadValue
): ImportTable {
	const reading = new Reading(mapping, layout, readValue);
	for (const { line, cells } of grid.rows) reading.readRow(line, rowOf(cells, mapping));
	reading.settle();
	return reading;
}

class Reading implements ImportTable {
	readonly changes: Brought[] = [];
	readonly problems: { line: number; message: string }[] = [];
	same = 0;
	results = 0;
	/** Every value that was given, with its line. */
	readonly #given = new Map<string, Given>();
	readonly #byLabel: ReadonlyMap<string, QuantityLayout>;
	readonly #planned: ReturnType<typeof plannedValues>;

	constructor(
		readonly mapping: Mapping,
		readonly layout: Layout,
		readonly readValue: ReadValue
	) {
		this.#planned = plannedValues(layout.workbook);
		this.#byLabel = new Map(
			layout.quantities.map(
				(quantity) => [quantity.quantity.label.toLowerCase(), quantity] as const
			)
		);
	}

	readRow(line: number, row: Row): void {
		const named = row.quantity ?? this.mapping.quantity;
		if (!named)
			return this.#bad(
				line,
				'No quantity is named. Say which column names it, or choose one for the whole file.'
			);
		const quantity = this.layout.byName.get(named) ?? this.#byLabel.get(named.toLowerCase());
		if (!quantity) {
			const near = nearest(named, [...this.layout.byName.keys()]);
			return this.#bad(
				line,
				`There is no quantity "${named}". ${near ? `Did you mean ${near}?` : 'Write its name or label as it stands in the workbook.'}`
			);
		}
		if (typeof quantity.quantity.formula === 'string') this.results++;
		else for (const value of row.values) this.#readValue(line, row, value, quantity);
	}

	#readValue(line: number, row: Row, value: RowValue, layout: QuantityLayout): void {
		const { workbook } = this.layout;
		const { quantity } = layout;
		const { scenario, text } = value;
		if (text === '' || NO_VALUE_WORDS.has(text)) return;
		const at = membersFor(layout, row, value.member, workbook);
		if (typeof at === 'string') return this.#bad(line, at);
		if (!isEntered(layout, at)) {
			this.results++;
			return;
		}
		const read = this.readValue(withUnit(text, row.unit, quantity), layout);
		if (!read.ok) return this.#bad(line, `${quantity.label}: ${read.message}`);

		const key = keyOf(scenario, quantity.name, at);
		const before = this.#given.get(key);
		if (before !== undefined)
			return this.#bad(
				line,
				`${quantity.label}${at.length ? ` of ${at.join(', ')}` : ''} is given on line ${before.line} already. Keep one of the two.`
			);
		this.#given.set(key, { line, scenario, quantity, at, after: read.value });
	}

	/**
	 * Which of the given values must be entered, so that afterwards every scenario has what the file gives it. One that
	 * takes the value from what it is built on, or from its plan, gets no entry of its own.
	 */
	settle(): void {
		const { workbook } = this.layout;
		const base = baseOf(workbook);
		for (const given of this.#given.values()) {
			const { line, scenario, quantity, at, after } = given;
			const before =
				inputAt(workbook, scenario, quantity.name, at).value ??
				this.#planned(scenario, quantity.name, at);
			if (this.#otherwise(scenario, quantity, at).shown === after) this.same++;
			else if (quantity.fixed && scenario !== base.id)
				this.#bad(
					line,
					`${quantity.label} is fixed with the structure, and no scenario changes it. Bring it into ${base.title}.`
				);
			else this.changes.push({ ...given, before, stays: before === after });
		}
		this.problems.sort((a, b) => a.line - b.line);
	}

	/** What a scenario has once the file has come in, without an entry of its own from it; a plan fills what is left open. */
	#otherwise(
		scenario: string,
		quantity: Quantity,
		at: readonly string[]
	): { readonly entered: Scalar; readonly shown: Scalar } {
		const { workbook } = this.layout;
		const { value, from } = inputAt(workbook, scenario, quantity.name, at);
		const parent = findScenario(workbook, scenario)?.parent ?? null;
		const entered =
			from === scenario || parent === null ? value : this.#entered(parent, quantity, at);
		return { entered, shown: entered ?? this.#planned(scenario, quantity.name, at) };
	}

	/** What stands as entered in a scenario once the file has come in, for those that are built on it. */
	#entered(scenario: string, quantity: Quantity, at: readonly string[]): Scalar {
		const given = this.#given.get(keyOf(scenario, quantity.name, at));
		const { entered, shown } = this.#otherwise(scenario, quantity, at);
		return given && given.after !== shown ? given.after : entered;
	}

	#bad(line: number, message: string): void {
		this.problems.push({ line, message });
	}
}

type Given = Omit<Brought, 'before' | 'stays'>;

const keyOf = (scenario: string, quantity: string, at: readonly string[]) =>
	JSON.stringify([scenario, quantity, at]);

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

interface Row {
	readonly quantity: string | null;
	readonly together: readonly string[] | null;
	readonly bySet: ReadonlyMap<string, string>;
	readonly unit: string;
	readonly values: readonly RowValue[];
}

interface RowValue {
	readonly text: string;
	readonly scenario: string;
	readonly member: { readonly of: string; readonly id: string } | null;
}

function rowOf(cells: readonly string[], { columns }: Mapping): Row {
	let quantity: string | null = null;
	let together: string[] | null = null;
	let unit = '';
	const bySet = new Map<string, string>();
	const values: RowValue[] = [];
	columns.forEach((meaning, column) => {
		// A text that was kept from being run as a formula comes with an apostrophe.
		const text = (cells[column] ?? '').replace(/^'(?=[=+\-@])/, '');
		if (meaning.is === 'quantity') quantity = text || null;
		else if (meaning.is === 'members')
			together = text === '' ? [] : text.split(MEMBER_MARK.trim()).map((part) => part.trim());
		else if (meaning.is === 'member') bySet.set(meaning.of, text);
		else if (meaning.is === 'unit') unit = text;
		else if (meaning.is === 'value')
			values.push({ text, scenario: meaning.scenario, member: meaning.member });
	});
	return { quantity, together, bySet, unit, values };
}

/** Where a quantity has a formula by member, some of its cells may be entered. */
function isEntered({ quantity, axes }: QuantityLayout, at: readonly string[]): boolean {
	const { formula } = quantity;
	if (typeof formula !== 'object') return true;
	return takesEntry(quantity, at[axes.findIndex(({ name }) => name === formula.by)] ?? '');
}

/** The members, or a sentence that says what is wrong with them. */
function membersFor(
	{ quantity, axes }: QuantityLayout,
	row: Row,
	ofColumn: RowValue['member'],
	workbook: Workbook
): string[] | string {
	const at: string[] = [];
	let place = 0;
	for (const axis of axes) {
		const set = workbook.sets.find(({ name }) => name === axis.set);
		const text =
			ofColumn && (ofColumn.of === axis.set || ofColumn.of === axis.name)
				? ofColumn.id
				: (row.bySet.get(axis.name) ?? row.bySet.get(axis.set) ?? row.together?.[place++]);
		if (text === undefined || text === '')
			return `${quantity.label} is per ${axes.map(({ name }) => name).join(' and ')}: no column gives the ${axis.name}.`;
		const member =
			set &&
			(memberPlaces(set).has(text)
				? text
				: set.members.find(({ label }) => label?.toLowerCase() === text.toLowerCase())?.id);
		if (member === undefined) {
			const near = nearest(text, set?.members.map(({ id }) => id) ?? []);
			return `There is no ${set?.label.toLowerCase() ?? axis.set} "${text}". ${near ? `Did you mean ${near}?` : 'Write it as it stands in the workbook.'}`;
		}
		at.push(member);
	}
	return at;
}

/** A value that names its own unit keeps it. */
const withUnit = (text: string, unit: string, quantity: Quantity) =>
	unit !== '' && unit !== (quantity.unit ?? '1') && PLAIN.test(text) ? `${text} ${unit}` : text;

const PLAIN = /^[+\-−]?[\d.,' \u00a0\u202f]+(e[+-]?\d+)?$/i;
