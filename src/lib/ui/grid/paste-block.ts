/**
 * A pasted block of tab-separated text, read cell by cell: what cannot be taken is counted and the first are named, the
 * rest is taken, in one edit.
 */
import type { Layout, QuantityLayout } from '$lib/engine/layout';
import { membersOf } from '$lib/engine/layout';
import type { Command, InputEntry } from '$lib/workbook/commands';
import type { BlockCell } from '../block';
import { isTypedCell } from '$lib/engine/input-cell';
import { monthsOf, pathsOf, stepEntries, type PathInTime } from '$lib/workbook/paths';
import { readEntry, type Entry, type FieldSpec } from '../entry';
import { findFrozen } from '$lib/workbook/frozen';
import { texts } from './texts';

/** Lines and columns of a pasted text; a last line break ends the last line. */
export function readBlock(text: string): string[][] {
	const lines = text.replace(/\r\n?/g, '\n').split('\n');
	if (lines.at(-1) === '') lines.pop();
	return lines.map((line) => line.split('\t'));
}

export interface BadCell {
	readonly line: number;
	readonly column: number;
	readonly text: string;
	readonly message: string;
}

export interface PasteResult {
	readonly commands: readonly Command[];
	readonly taken: number;
	readonly all: number;
	readonly bad: readonly BadCell[];
	readonly badCount: number;
}

export interface PasteInput {
	readonly layout: Layout;
	readonly block: readonly (readonly string[])[];
	readonly cells: readonly BlockCell[];
	/** Ids of the scenarios of the columns from the first that is pasted into. */
	readonly scenarios: readonly string[];
	readonly base: string;
	readonly specOf: (quantity: QuantityLayout) => FieldSpec;
}

/** How many bad cells are named. */
const NAMED = 5;

/** Reads the block in slices, so that a large one can be read with pauses. */
export class Paste {
	readonly #input: PasteInput;
	readonly #entries: InputEntry[][];
	readonly #bad: BadCell[] = [];
	readonly #specs = new Map<QuantityLayout, FieldSpec>();
	/** By column and path, the level that was pasted last, and the month that it holds in. */
	readonly #levels = new Map<string, { readonly month: number; readonly value: unknown }>();
	#line = 0;
	#taken = 0;
	#badCount = 0;
	#all = 0;

	constructor(input: PasteInput) {
		this.#input = input;
		this.#entries = input.scenarios.map(() => []);
	}

	/** Reads some more lines. True when all are read. */
	read(lines: number): boolean {
		const { block } = this.#input;
		const until = Math.min(this.#line + lines, block.length);
		for (; this.#line < until; this.#line++)
			(block[this.#line] ?? []).forEach((text, column) => this.#readCell(text, column));
		return this.#line >= block.length;
	}

	get result(): PasteResult {
		const commands = this.#entries.flatMap((entries, i): Command[] =>
			entries.length === 0
				? []
				: [{ kind: 'set_inputs', scenario: this.#input.scenarios[i] ?? '', entries }]
		);
		return {
			commands,
			taken: this.#taken,
			all: this.#all,
			bad: this.#bad,
			badCount: this.#badCount
		};
	}

	#readCell(text: string, column: number): void {
		this.#all++;
		const { layout, cells, scenarios, base } = this.#input;
		const place = cells[this.#line];
		const scenario = scenarios[column];
		if (!place) return this.#refuse(text, column, 'There is no further row to take it.');
		if (scenario === undefined)
			return this.#refuse(text, column, 'There is no further scenario column to take it.');
		const copy = findFrozen(layout.workbook, scenario);
		if (copy) return this.#refuse(text, column, texts.isFrozen(copy.title));
		const { quantity, cell } = place;
		const label = quantity.quantity.label || quantity.quantity.name;
		if (!isTypedCell(layout.workbook, quantity, cell))
			return this.#refuse(text, column, `${label} is a result here: it follows its formula.`);
		if (quantity.quantity.fixed && scenario !== base)
			return this.#refuse(text, column, `${label} is fixed: only the base can change it.`);
		let spec = this.#specs.get(quantity);
		if (!spec) this.#specs.set(quantity, (spec = this.#input.specOf(quantity)));
		const entry = readEntry(text, spec);
		if (!entry.ok) return this.#refuse(text, column, entry.message);
		this.#taken++;
		const path = pathsOf(layout.workbook).byPath.get(quantity.quantity.name);
		if (path) return this.#readStep(path, membersOf(layout, cell), entry, column, scenario);
		this.#entries[column]?.push({
			quantity: quantity.quantity.name,
			at: membersOf(layout, cell),
			value: entry.value
		});
	}

	/** A level that holds already is no step: a list of months becomes the fewest steps that say the same. */
	#readStep(
		path: PathInTime,
		at: readonly string[],
		{ value, isMove }: Extract<Entry, { ok: true }>,
		column: number,
		scenario: string
	): void {
		const { workbook } = this.#input.layout;
		const key = JSON.stringify([column, path.quantity.name, ...at.slice(0, -1)]);
		const month =
			monthsOf(workbook, path.quantity)?.members.findIndex(({ id }) => id === at.at(-1)) ?? -1;
		const last = this.#levels.get(key);
		const follows = last?.month === month - 1;
		const holds = follows && !isMove && (value === null || value === last.value);
		if (isMove || (value === null && !follows)) this.#levels.delete(key);
		else this.#levels.set(key, { month, value: holds ? last.value : value });
		const step = isMove ? { set: null, moved: value } : { set: holds ? null : value, moved: null };
		this.#entries[column]?.push(...stepEntries(workbook, scenario, path, at, step));
	}

	#refuse(text: string, column: number, message: string): void {
		this.#badCount++;
		if (this.#bad.length < NAMED)
			this.#bad.push({
				line: this.#line + 1,
				column: column + 1,
				text: text.slice(0, 24),
				message
			});
	}
}
