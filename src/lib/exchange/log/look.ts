/**
 * The look before a log is entered: what each cell would become beside what stands, which rows are left out and why,
 * the period, its gaps, and what the quantities would say of their source.
 */
import { membersOf, type Layout } from '$lib/engine/layout';
import { UnitSystem } from '$lib/units/system';
import { isPermitted } from '$lib/workbook/range';
import type { Scalar } from '$lib/workbook/schema';
import { isEntered } from '../table/members-of-row';
import { outsidePermitted } from '../table/read-cell';
import { doubts, type TypicalEntries } from '../table/implausible';
import type { Grid } from '../table/grid';
import { keyOf, settled, type Brought, type Given } from '../table/settle';
import { coverage, coveredBy, gapsIn, lengthsOf, type Gaps, type Period } from './covered';
import type { Log } from './log';
import { readLog, type LeftOut, type SumRead } from './read-log';
import { sumUnit } from './sum-unit';
import type { Tally } from './tally';
import { membersBy, needsHour, partOf } from './ways';

export interface LogLook {
	readonly rows: number;
	readonly used: number;
	readonly filtered: number;
	readonly outside: number;
	readonly left: readonly LeftOut[];
	/** Cells that are summed and cannot be entered, and why. */
	readonly refused: readonly { readonly label: string; readonly message: string }[];
	/** First and last day of the rows. */
	readonly period: Period | null;
	readonly covered: Period | null;
	readonly gaps: Gaps | null;
	readonly changes: readonly Brought[];
	readonly doubted: ReadonlyMap<Brought, string>;
	readonly same: number;
	/** Rows whose cell follows a formula. */
	readonly results: number;
	/** Cells that no row speaks of: they stay, or are nought where that was said. */
	readonly silent: number;
	/** How many rows each cell stands on, by its key. */
	readonly rowsOf: ReadonlyMap<string, number>;
	/** By quantity: how many of its values are as the log says, unless they are among the changes. */
	readonly sameOf: ReadonlyMap<string, number>;
}

/** `log` waits for nothing any more: `askedOf` said so. */
export function lookOverLog(
	grid: Grid,
	log: Log,
	layout: Layout,
	told?: (share: number) => void,
	typical?: TypicalEntries
): LogLook {
	const read = readLog(grid, log, layout, told);
	const covered = read.period && coveredBy(read.period, log.covers);
	const given = new Map<string, Given>();
	const rowsOf = new Map<string, number>();
	const refused: { label: string; message: string }[] = [];
	let silent = 0;
	for (const each of read.sums) {
		const summed = new Summed(each, log, layout, covered);
		for (const [key, { at, tally }] of each.cells) {
			rowsOf.set(key, tally.rows);
			const value = summed.value(at, tally);
			const { quantity } = each.layout;
			if (value.ok)
				given.set(key, {
					line: tally.line,
					scenario: log.scenario,
					quantity,
					at,
					after: value.value
				});
			else refused.push({ label: [quantity.label, ...at].join(', '), message: value.message });
		}
		silent += addSilent(each, log, layout, covered, given);
	}
	const settling = settled(given, layout.workbook);
	const { changes, same } = settling;
	for (const { message } of settling.refused) refused.push({ label: '', message });
	return {
		rows: grid.rows.length,
		used: read.used,
		filtered: read.filtered,
		outside: read.outside,
		left: read.left,
		refused,
		period: read.period,
		covered,
		gaps: covered && gapsIn(covered, read.dates),
		changes,
		doubted: doubts(changes, layout.workbook, typical),
		same,
		results: read.sums.reduce((sum, { results }) => sum + results, 0),
		silent,
		rowsOf,
		sameOf: sameByQuantity(given, changes)
	};
}

function sameByQuantity(given: ReadonlyMap<string, Given>, changes: readonly Brought[]) {
	const counts = new Map<string, number>();
	const add = (name: string, by: number) => counts.set(name, (counts.get(name) ?? 0) + by);
	for (const { quantity } of given.values()) add(quantity.name, 1);
	for (const { quantity } of changes) add(quantity.name, -1);
	return counts;
}

type Value =
	{ readonly ok: true; readonly value: number } | { readonly ok: false; readonly message: string };

/** What the rows of a cell come to in the quantity's unit. */
class Summed {
	readonly #wholes = new Map<string, number>();
	readonly #lengths: ReadonlyMap<string, number> | null;
	readonly #dated: readonly number[];
	readonly #toOwn: (value: number) => number;

	constructor(
		readonly read: SumRead,
		log: Log,
		layout: Layout,
		covered: Period | null
	) {
		const { sum } = read;
		const { quantity, axes } = read.layout;
		const { system } = UnitSystem.create(layout.workbook.units ?? []);
		const unit = sumUnit(log, sum, quantity, system);
		if (!unit.ok) throw new RangeError(unit.message);
		this.#toOwn = unit.toOwn;
		if (sum.take === 'share')
			for (const { at, tally } of read.cells.values()) {
				const key = this.#withoutShared(at);
				this.#wholes.set(key, (this.#wholes.get(key) ?? 0) + tally.sum);
			}
		const dated = datedAxes(read, log);
		this.#dated = dated.map(({ axis }) => axis);
		const per = sum.per;
		if (per === undefined || !covered) this.#lengths = null;
		else {
			this.#lengths = new Map(
				[...daysOfMembers(dated, axes, layout, covered)].map(([key, days]) => [
					key,
					lengthsOf(days)[per]
				])
			);
		}
	}

	value(at: readonly string[], tally: Tally): Value {
		const { sum } = this.read;
		let value = tally.taken(sum.take);
		if (value === null) return no('One row alone has no standard deviation.');
		if (sum.take === 'share') {
			const whole = this.#wholes.get(this.#withoutShared(at)) ?? 0;
			if (whole === 0) return no('All of them together come to 0, so there are no shares.');
			value /= whole;
		}
		if (sum.by_column !== undefined) {
			if (tally.by === 0) return no('What it is divided by comes to 0.');
			value /= tally.by;
		}
		if (this.#lengths) {
			const length = this.#lengths.get(this.#dated.map((axis) => at[axis]).join('\u0001')) ?? 0;
			if (!(length > 0)) return no('The period that the log covers has no day of it.');
			value /= length;
		}
		return permitted(Number(this.#toOwn(value).toPrecision(15)), this.read.layout.quantity);
	}

	#withoutShared(at: readonly string[]): string {
		const { axes } = this.read.layout;
		const of = this.read.sum.share_of;
		const shared = Math.max(
			axes.findIndex(({ name }) => name === of),
			axes.findIndex(({ set }) => set === of)
		);
		return at.filter((_, axis) => axis !== shared).join('\u0001');
	}
}

const no = (message: string): Value => ({ ok: false, message });

function permitted(value: number, quantity: SumRead['layout']['quantity']): Value {
	if (!Number.isFinite(value)) return no('The numbers are too large to be summed.');
	const outside = outsidePermitted(value, quantity, 'Look at the unit of the column.');
	return outside === null ? { ok: true, value } : no(outside);
}

/** Axes whose member the date chooses, no column does. */
function datedAxes({ layout }: SumRead, log: Log) {
	const byColumn = (is: (of: string) => boolean) =>
		log.columns.some((column) => column.is === 'member' && is(column.of));
	return layout.axes.flatMap(({ name, set }, axis) => {
		const is = (of: string) => of === name || of === set;
		const way = log.dates.find(({ of }) => is(of));
		return way && !byColumn(is) ? [{ axis, by: way.by }] : [];
	});
}

/** Cells without rows: counted, and given as nought where that was said, unless the log covers no day of them. */
function addSilent(
	read: SumRead,
	log: Log,
	layout: Layout,
	covered: Period | null,
	given: Map<string, Given>
): number {
	const { quantity, base, count, axes } = read.layout;
	const counts =
		['sum', 'count', 'share'].includes(read.sum.take) && read.sum.by_column === undefined;
	const dated = datedAxes(read, log);
	const within =
		covered && log.zeroWithoutRows ? daysOfMembers(dated, axes, layout, covered) : null;
	let silent = 0;
	for (let cell = base; cell < base + count; cell++) {
		const at = membersOf(layout, cell);
		if (!isEntered(read.layout, at) || isElsewhere(at, axes, log)) continue;
		const key = keyOf(log.scenario, quantity.name, at);
		if (read.cells.has(key)) continue;
		silent++;
		const isCovered = !within || within.has(dated.map(({ axis }) => at[axis]).join('\u0001'));
		const zero: Scalar = 0;
		if (log.zeroWithoutRows && counts && isCovered && isPermitted(0, quantity.range ?? null))
			given.set(key, { line: 0, scenario: log.scenario, quantity, at, after: zero });
	}
	return silent;
}

/** Days of the period by the members that a date chooses; a day of none is nobody's. */
function daysOfMembers(
	dated: ReturnType<typeof datedAxes>,
	axes: SumRead['layout']['axes'],
	layout: Layout,
	covered: Period
): ReturnType<typeof coverage> {
	const byHour = dated.some(({ by }) => needsHour(by));
	const sets = dated.map(({ axis, by }) => membersBy(layout.sets.get(axes[axis]!.set)!, by)!);
	const membersAt = (date: number, hour: number) => {
		const ids = dated.map(({ by }, i) => sets[i]!.get(partOf(by, date, hour)));
		return ids.some((id) => id === undefined) ? null : (ids as string[]);
	};
	return coverage(covered, membersAt, byHour);
}

/** Of a member that holds for every row, the others are not spoken of. */
const isElsewhere = (at: readonly string[], axes: SumRead['layout']['axes'], { always }: Log) =>
	axes.some(({ name, set }, axis) => {
		const one = always.find(({ of }) => of === name || of === set);
		return one !== undefined && one.id !== at[axis];
	});
