/**
 * Rows of a file as changes of inputs, each beside the value that it would replace. Nothing is changed here:
 * what comes out is looked over by a person, and then made one edit.
 */
import type { Layout, QuantityLayout } from '$lib/engine/layout';
import { nearest } from '$lib/formula/names';
import type { Quantity } from '$lib/workbook/schema';
import { NO_VALUE_WORDS } from '../csv/sheet';
import { columnName, type Cell, type Grid, type Row } from './grid';
import type { Mapping } from './mapping';
import { isEntered, membersOfRow } from './members-of-row';
import { CellReader } from './read-cell';
import { namesOf, textOf, valueColumns, type RowNames, type ValueColumn } from './row-parts';
import { keyOf, settled, type Brought, type Given } from './settle';

export type { Brought } from './settle';

export interface Refusal {
	readonly line: number;
	/** The heading of its column; null where the whole row is meant. */
	readonly column: string | null;
	readonly message: string;
}

export interface UnknownMember {
	readonly set: string;
	readonly text: string;
	/** The first line that names it, and how many do. */
	readonly line: number;
	readonly rows: number;
	/** What the file calls it in words; empty where it does not. */
	readonly label: string;
}

export interface ImportTable {
	readonly changes: readonly Brought[];
	/** Values that are what they were, or what the scenario takes from what it is built on afterwards. */
	readonly same: number;
	/** Values of results, which follow their formulas and are passed over. */
	readonly results: number;
	readonly problems: readonly Refusal[];
	/** Names in the file that no member has. */
	readonly unknown: readonly UnknownMember[];
	/** Members that the file names, by set. */
	readonly named: ReadonlyMap<string, ReadonlySet<string>>;
}

/** Rows that are read between two words on how far it is. */
const AT_ONCE = 5000;

/** `told` hears how much of the rows is read, from 0 to 1. */
export function importTable(
	grid: Grid,
	mapping: Mapping,
	layout: Layout,
	told?: (share: number) => void
): ImportTable {
	const reading = new Reading(grid, mapping, layout);
	grid.rows.forEach((row, at) => {
		reading.readRow(row);
		if (at % AT_ONCE === AT_ONCE - 1) told?.(at / grid.rows.length);
	});
	return reading.result();
}

class Reading {
	readonly #problems: Refusal[] = [];
	readonly #unknown = new Map<string, UnknownMember & { rows: number; last: number }>();
	readonly #named = new Map<string, Set<string>>();
	/** Every value that was given, with its line. */
	readonly #given = new Map<string, Given>();
	readonly #byLabel: ReadonlyMap<string, QuantityLayout>;
	readonly #reader: CellReader;
	readonly #values: readonly ValueColumn[];
	#results = 0;

	constructor(
		readonly grid: Grid,
		readonly mapping: Mapping,
		readonly layout: Layout
	) {
		this.#reader = new CellReader(layout);
		this.#byLabel = new Map(
			layout.quantities.map((each) => [each.quantity.label.toLowerCase(), each] as const)
		);
		this.#values = valueColumns(mapping).filter((value) => this.#hasGoodUnit(value));
	}

	/** A column whose unit cannot be read is said once, and none of its values is taken. */
	#hasGoodUnit({ index, column, meaning }: ValueColumn): boolean {
		const layout = this.layout.byName.get(meaning.quantity ?? this.mapping.quantity ?? '');
		if (!layout) return true;
		const unit = this.#reader.unit(column.unit, layout.quantity);
		if (unit.ok) return true;
		this.#problems.push({
			line: this.grid.headLine,
			column: columnName(this.grid, index),
			message: `The column is not taken: ${unit.message}`
		});
		return false;
	}

	readRow(row: Row): void {
		const misshapen = shapeProblem(row, this.grid);
		if (misshapen) return this.#bad(row.line, null, misshapen);
		const names = namesOf(row.cells, this.mapping);
		let isResult = false;
		for (const value of this.#values) {
			const named = value.meaning.quantity ?? names.quantity ?? this.mapping.quantity;
			const layout = this.#quantity(row.line, named);
			if (!layout) continue;
			if (typeof layout.quantity.formula === 'string') isResult = true;
			else this.#readValue(row, names, value, textOf(row.cells[value.index] ?? ''), layout);
		}
		if (isResult) this.#results++;
	}

	#quantity(line: number, named: string | null): QuantityLayout | null {
		if (named === null) {
			this.#bad(
				line,
				null,
				'No quantity is named. Say which column names it, or choose one for the whole file.'
			);
			return null;
		}
		const quantity = this.layout.byName.get(named) ?? this.#byLabel.get(named.toLowerCase());
		if (quantity) return quantity;
		const near = nearest(named, [...this.layout.byName.keys()]);
		this.#bad(
			line,
			null,
			`There is no quantity "${named}". ${near ? `Did you mean ${near}?` : 'Write its name or label as it stands in the workbook.'}`
		);
		return null;
	}

	#readValue(
		{ line, cells }: Row,
		names: RowNames,
		{ index, column, meaning, unitFrom }: ValueColumn,
		cell: Cell,
		layout: QuantityLayout
	): void {
		if (cell === '' || (typeof cell === 'string' && NO_VALUE_WORDS.has(cell))) return;
		const { quantity } = layout;
		const { scenario } = meaning;
		const members = membersOfRow(layout, names, meaning.member, this.layout);
		if (!members.ok) {
			if (members.unknown)
				this.#count(line, members.unknown, names.labels.get(members.unknown.set) ?? '');
			return this.#bad(line, null, members.message);
		}
		const { at } = members;
		layout.axes.forEach(({ set }, axis) => this.#note(set, at[axis] ?? ''));
		if (!isEntered(layout, at)) {
			this.#results++;
			return;
		}
		const rowUnit = unitFrom === null ? '' : String(cells[unitFrom] ?? '');
		const read = this.#reader.read(cell, layout, column, rowUnit);
		const heading = meaning.quantity === null ? null : columnName(this.grid, index);
		if (!read.ok) return this.#bad(line, heading, `${quantity.label}: ${read.message}`);
		const key = keyOf(scenario, quantity.name, at);
		const before = this.#given.get(key);
		if (before)
			this.#bad(
				line,
				heading,
				`${ofMembers(quantity, at)} is given on line ${before.line} already. Keep one of the two.`
			);
		else this.#given.set(key, { line, scenario, quantity, at, after: read.value });
	}

	#note(set: string, member: string): void {
		const known = this.#named.get(set);
		if (known) known.add(member);
		else this.#named.set(set, new Set([member]));
	}

	#count(line: number, { set, text }: { set: string; text: string }, label: string): void {
		const key = `${set}\n${text}`;
		const known = this.#unknown.get(key);
		if (!known) this.#unknown.set(key, { set, text, line, rows: 1, label, last: line });
		else if (known.last !== line) {
			known.rows++;
			known.last = line;
		}
	}

	/** What is wrong with a row is said once, and not again for each of its columns. */
	#bad(line: number, column: string | null, message: string): void {
		for (let at = this.#problems.length - 1; this.#problems[at]?.line === line; at--)
			if (this.#problems[at]?.message === message) return;
		this.#problems.push({ line, column, message });
	}

	result(): ImportTable {
		const { changes, same, refused } = settled(this.#given, this.layout.workbook);
		return {
			changes,
			same,
			results: this.#results,
			problems: [...this.#problems, ...refused].sort((a, b) => a.line - b.line),
			unknown: [...this.#unknown.values()].map(({ last: _last, ...each }) => each),
			named: this.#named
		};
	}
}

/** Of a text: a mark too many shifts the cells behind it, and a row that ends early at the end is half a file. */
function shapeProblem(row: Row, { head, rows, parter }: Grid): string | null {
	if (parter === null) return null;
	const { cells } = row;
	if (cells.slice(head.length).some((cell) => cell !== ''))
		return `The row has ${cells.length} columns, the head ${head.length}. Put a text that holds ${MARKS[parter] ?? parter} into quotation marks, or part all rows alike.`;
	const isLast = row === rows.at(-1) && rows.length > 1;
	return isLast && cells.length < head.length && rows[0]!.cells.length >= head.length
		? `The file ends within this row, after ${cells.length} of ${head.length} columns. Take the file anew, or write the row to its end.`
		: null;
}

const MARKS: Readonly<Record<string, string>> = {
	',': 'a comma',
	';': 'a semicolon',
	'\t': 'a tab',
	'|': 'a stroke'
};

const ofMembers = ({ label }: Quantity, at: readonly string[]) =>
	at.length > 0 ? `${label} of ${at.join(', ')}` : label;
