/** Reads the rows of a log once and sums them by cell. What a row does not give is told with its line, and counted. */
import type { Layout, QuantityLayout } from '$lib/engine/layout';
import { UnitSystem } from '$lib/units/system';
import { firstOfMonth, monthOf, yearOf } from '$lib/workbook/dates';
import type { LogSum } from '$lib/workbook/schema';
import { readUnit } from '../table/column-unit';
import { columnName, type Cell, type Grid, type Row } from '../table/grid';
import { isEntered, membersOfRow, type MembersRead } from '../table/members-of-row';
import { durationUnit, readDuration } from '../table/duration';
import { readNumber } from '../table/number-text';
import { textOf } from '../table/row-parts';
import { keyOf } from '../table/settle';
import type { Period } from './covered';
import { dateColumn, type Log } from './log';
import { isMonth, readMoment } from './moment';
import { Tally } from './tally';
import { membersBy, partOf } from './ways';

const OF_A_MONTH =
	'The row is of a whole month, and which member it counts for follows from the day. Write the day, or let another column name the member.';
const daysInMonth = (first: number): number =>
	firstOfMonth(yearOf(first), monthOf(first) + 1) - first;

/** Why rows are left out, and how many. */
export interface LeftOut {
	readonly message: string;
	/** The heading of its column; null where the whole row is meant. */
	readonly column: string | null;
	readonly rows: number;
	/** The first of them. */
	readonly lines: readonly number[];
}

export interface SumRead {
	readonly sum: LogSum;
	readonly layout: QuantityLayout;
	readonly cells: ReadonlyMap<string, { readonly at: readonly string[]; readonly tally: Tally }>;
	/** Rows whose cell follows a formula. */
	readonly results: number;
}

export interface LogRead {
	readonly sums: readonly SumRead[];
	/** Rows that went into at least one sum. */
	readonly used: number;
	/** Rows that another value of the filter's column keeps out. */
	readonly filtered: number;
	/** Rows outside of the period that a person named. */
	readonly outside: number;
	readonly left: readonly LeftOut[];
	/** First and last day of all rows that have one; null where none has. */
	readonly period: Period | null;
	readonly dates: ReadonlySet<number>;
}

const AT_ONCE = 5000;
const LINES = 5;
/** Kinds of reasons that are told apart; what else there is counts as one. */
const MOST_REASONS = 200;
const MOST_KNOWN = 20_000;

/** `told` hears how much of the rows is read, from 0 to 1. Nothing is open of the log any more: `askedOf` said so. */
export function readLog(
	grid: Grid,
	log: Log,
	layout: Layout,
	told?: (share: number) => void
): LogRead {
	const reading = new Reading(grid, log, layout);
	grid.rows.forEach((row, at) => {
		reading.take(row);
		if (at % AT_ONCE === AT_ONCE - 1) told?.(at / grid.rows.length);
	});
	return reading.result();
}

interface Summing {
	readonly sum: LogSum;
	readonly layout: QuantityLayout;
	readonly cells: Map<string, { at: readonly string[]; tally: Tally }>;
	results: number;
	/** Members by what rows call them. */
	readonly known: Map<string, MembersRead>;
}

class Reading {
	readonly #sums: Summing[];
	readonly #left = new Map<
		string,
		{ message: string; column: string | null; rows: number; lines: number[] }
	>();
	readonly #dates = new Set<number>();
	readonly #only: ReadonlySet<string> | null;
	readonly #date: number;
	readonly #always: readonly (readonly [string, string])[];
	readonly #numbers = new Map<number, { at: Row; read: ReturnType<Reading['readCell']> }>();
	#used = 0;
	#filtered = 0;
	#outside = 0;

	constructor(
		readonly grid: Grid,
		readonly log: Log,
		readonly layout: Layout
	) {
		this.#sums = log.sums.flatMap((sum) => {
			const found = layout.byName.get(sum.quantity ?? '');
			return found && sum.quantity !== null
				? [
						{
							sum: { ...sum, quantity: sum.quantity },
							layout: found,
							cells: new Map(),
							results: 0,
							known: new Map()
						}
					]
				: [];
		});
		this.#only = log.only && new Set(log.only.values.map((value) => value.toLowerCase()));
		this.#date = dateColumn(log);
		this.#always = log.always.map(({ of, id }) => [of, id] as const);
	}

	take(row: Row): void {
		const { log } = this;
		const column = this.#date < 0 ? null : log.columns[this.#date]!;
		const bySet = new Map<string, string>(this.#always);
		if (column?.is === 'date') {
			const cell = textOf(row.cells[this.#date] ?? '');
			const read =
				cell === ''
					? ({
							ok: false,
							message: 'The row has no date. Write it, or leave the row out.'
						} as const)
					: readMoment(cell, column.dayFirst);
			if (!read.ok) return this.#leave(row, this.#date, read.message);
			const { date } = read;
			const isWhole = isMonth(cell);
			// A row of a month stands for each of its days.
			for (let day = 0; day < (isWhole ? daysInMonth(date) : 1); day++) this.#dates.add(date + day);
			const { covers } = log;
			if (
				covers !== null &&
				typeof covers === 'object' &&
				(date < covers.from || date > covers.to)
			) {
				this.#outside++;
				return;
			}
			if (
				isWhole &&
				log.dates.some(({ by }) => by !== 'year' && by !== 'month' && by !== 'year_month')
			)
				return this.#leave(row, this.#date, OF_A_MONTH);
			const missing = this.#byDate(bySet, date, read.hour);
			if (missing) return this.#leave(row, this.#date, missing);
		}
		if (this.#only && !this.#only.has(String(row.cells[log.only!.column] ?? '').toLowerCase())) {
			this.#filtered++;
			return;
		}
		log.columns.forEach((each, at) => {
			if (each.is === 'member') bySet.set(each.of, String(textOf(row.cells[at] ?? '')));
		});
		let isUsed = false;
		for (const summing of this.#sums) if (this.#add(row, summing, bySet)) isUsed = true;
		if (isUsed) this.#used++;
	}

	/** Why the date chooses no member; null where each set has one. */
	#byDate(bySet: Map<string, string>, date: number, hour: number | null): string | null {
		for (const { of, by } of this.log.dates) {
			const axis = this.#sums
				.flatMap(({ layout }) => layout.axes)
				.find(({ name, set }) => name === of || set === of);
			const set = axis && this.layout.sets.get(axis.set);
			// What no sum is per is not asked for.
			if (!set) continue;
			const members = membersBy(set, by);
			if (hour === null && (by === 'hour_of_day' || by === 'hour_of_week'))
				return `The row has no time, and the ${set.label.toLowerCase()} follows from it.`;
			const member = members?.get(partOf(by, date, hour ?? 0));
			if (member === undefined)
				return `The date is of no ${set.label.toLowerCase()} that the workbook has.`;
			bySet.set(of, member);
		}
		return null;
	}

	#add(row: Row, summing: Summing, bySet: ReadonlyMap<string, string>): boolean {
		const { sum, layout, cells } = summing;
		const members = this.#membersOf(summing, bySet);
		if (!members.ok) {
			this.#leave(row, null, members.message);
			return false;
		}
		const { at } = members;
		if (!isEntered(layout, at)) {
			summing.results++;
			return false;
		}
		const value = sum.column === undefined ? 1 : this.#number(row, sum.column);
		const by = sum.by_column === undefined ? 1 : this.#number(row, sum.by_column);
		if (value === null || by === null) return false;
		const key = keyOf(this.log.scenario, layout.quantity.name, at);
		let cell = cells.get(key);
		if (!cell) cells.set(key, (cell = { at, tally: new Tally(row.line) }));
		cell.tally.add(value, by);
		return true;
	}

	/** A log of a hundred thousand rows speaks of a few hundred cells. */
	#membersOf({ layout, known }: Summing, bySet: ReadonlyMap<string, string>): MembersRead {
		const key = layout.axes
			.map(({ name, set }) => bySet.get(name) ?? bySet.get(set) ?? '')
			.join('\u0001');
		let members = known.get(key);
		if (!members) {
			members = membersOfRow(layout, { together: null, bySet }, null, this.layout);
			if (known.size < MOST_KNOWN) known.set(key, members);
		}
		return members;
	}

	#number(row: Row, column: number): number | null {
		const before = this.#numbers.get(column);
		const read = before?.at === row ? before.read : this.readCell(row, column);
		if (before?.at !== row) {
			this.#numbers.set(column, { at: row, read });
			if (!read.ok) this.#leave(row, column, read.message);
		}
		return read.ok ? read.value : null;
	}

	readCell(row: Row, at: number) {
		const refused = (message: string) => ({ ok: false as const, message });
		const column = this.log.columns[at];
		const cell: Cell = textOf(row.cells[at] ?? '');
		if (column?.is !== 'number') throw new RangeError('A column that holds no numbers is summed.');
		if (cell === '') return refused('The row gives no number. Write it, or leave the row out.');
		if (typeof cell === 'number') return { ok: true as const, value: cell };
		const number = readDuration(cell, column.unit) ?? readNumber(cell, column.decimal);
		if (!number.ok) return number;
		if (number.unit === '' || column.unit === '') return number;
		const { system } = UnitSystem.create(this.layout.workbook.units ?? []);
		const unit = readUnit(number.unit, durationUnit(column.unit) ?? column.unit, system);
		return unit.ok ? { ok: true as const, value: unit.toOwn(number.value) } : refused(unit.message);
	}

	/** What is wrong with a row is said once, and not again for each sum. */
	#leave({ line }: Row, at: number | null, message: string): void {
		const column = at === null ? null : columnName(this.grid, at);
		const isNew = !this.#left.has(`${column}\n${message}`);
		const kept = isNew && this.#left.size >= MOST_REASONS ? MORE_REASONS : message;
		const key = `${column}\n${kept}`;
		const known = this.#left.get(key);
		if (!known) this.#left.set(key, { message: kept, column, rows: 1, lines: [line] });
		else if (known.lines.at(-1) !== line && this.#lastLeft !== `${key}\n${line}`) {
			known.rows++;
			if (known.lines.length < LINES) known.lines.push(line);
		}
		this.#lastLeft = `${key}\n${line}`;
	}
	#lastLeft = '';

	result(): LogRead {
		let [from, to] = [Infinity, -Infinity];
		for (const date of this.#dates) [from, to] = [Math.min(from, date), Math.max(to, date)];
		return {
			sums: this.#sums,
			used: this.#used,
			filtered: this.#filtered,
			outside: this.#outside,
			left: [...this.#left.values()].sort((a, b) => b.rows - a.rows),
			period: from <= to ? { from, to } : null,
			dates: this.#dates
		};
	}
}

const MORE_REASONS = 'For other reasons.';
