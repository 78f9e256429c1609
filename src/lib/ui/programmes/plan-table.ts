/**
 * A quantity that a programme fills, as a table: the members of one set across, all other combinations that exist down,
 * at one member of each set that the programme is solved apart for.
 */
import { membersOf, type Layout, type QuantityLayout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { ABSENT, OK } from '$lib/engine/state';
import type { Programme } from '$lib/workbook/programme-schema';
import { inputAt } from '$lib/workbook/scenario';
import type { SetDefinition, Workbook } from '$lib/workbook/schema';
import { quantityDecimals } from '../cells';
import { memberLabel } from './labels';
import { fewestDecimals } from './numbers';

export interface PlanCell {
	readonly cell: number;
	readonly at: readonly string[];
	/** NaN where there is no value. */
	readonly value: number;
	readonly state: number;
	/** Somebody entered it: the programme leaves it. */
	readonly isPinned: boolean;
}

export interface PlanRow {
	readonly key: string;
	readonly label: string;
	/** Its members, by the name of the axis. */
	readonly down: Readonly<Record<string, string>>;
	/** By column; null where the combination does not exist or is absent in the scenario. */
	readonly cells: readonly (PlanCell | null)[];
}

export interface Column {
	readonly id: string;
	/** At the head, and in full. */
	readonly short: string;
	readonly label: string;
}

export interface PlanTable {
	readonly quantity: QuantityLayout;
	readonly columns: readonly Column[];
	readonly rows: readonly PlanRow[];
	/** Rows left out because nothing is planned in them. */
	readonly empty: number;
	/** Of its figures. */
	readonly decimals: number;
}

export interface Asked {
	readonly workbook: Workbook;
	readonly layout: Layout;
	readonly results: Results;
	readonly scenario: string;
	readonly quantity: string;
	/** The member of each set that the programme is solved apart for. */
	readonly each: Readonly<Record<string, string>>;
	/** The set whose members stand across; empty for none. */
	readonly across: string;
	/** Rows in which nothing is planned as well. */
	readonly all: boolean;
}

/** Null where there is no such quantity. */
export function planTable(asked: Asked): PlanTable | null {
	const { workbook, layout, results, scenario, each } = asked;
	const quantity = layout.byName.get(asked.quantity);
	if (!quantity) return null;
	const { axes } = quantity;
	const across = axes.findIndex(({ set }) => set === asked.across);
	const columns = columnsOf(layout, across < 0 ? '' : asked.across);
	const placeOf = new Map(columns.map(({ id }, at) => [id, at]));
	const rows = new Map<string, { down: Record<string, string>; cells: (PlanCell | null)[] }>();
	for (let cell = quantity.base; cell < quantity.base + quantity.count; cell++) {
		const at = membersOf(layout, cell);
		if (axes.some(({ set }, i) => set in each && each[set] !== at[i])) continue;
		const down = Object.fromEntries(
			axes.flatMap(({ name, set }, i) => (i === across || set in each ? [] : [[name, at[i]!]]))
		);
		const key = Object.values(down).join('\u0001');
		let row = rows.get(key);
		if (!row) rows.set(key, (row = { down, cells: columns.map(() => null) }));
		const state = results.states[cell] ?? ABSENT;
		if (state === ABSENT) continue;
		const entered = inputAt(workbook, scenario, quantity.quantity.name, at).value;
		row.cells[placeOf.get(across < 0 ? '' : at[across]!) ?? 0] = {
			...{ cell, at, state },
			value: state === OK ? (results.values[cell] ?? NaN) : NaN,
			isPinned: entered !== null && entered !== undefined
		};
	}
	const known = [...rows].map(([key, row]) => ({
		key,
		...row,
		label: rowLabel(layout, quantity, row.down)
	}));
	const planned = known.filter(({ cells }) => cells.some((cell) => cell && isPlanned(cell)));
	const shown = asked.all ? known.filter(({ cells }) => cells.some(Boolean)) : planned;
	const figures = shown.flatMap(({ cells }) => cells.map((cell) => cell?.value ?? NaN));
	const decimals = fewestDecimals(figures, quantityDecimals(quantity, results));
	return { quantity, columns, rows: shown, empty: known.length - planned.length, decimals };
}

const isPlanned = ({ value, isPinned }: PlanCell) =>
	isPinned || (value !== 0 && !Number.isNaN(value));

/** The members that a row stands for; its quantity where there is none. `without`: axes that go without saying. */
export function rowLabel(
	layout: Layout,
	{ axes, quantity }: QuantityLayout,
	down: Readonly<Record<string, string>>,
	without: readonly string[] = []
): string {
	const parts = Object.entries(down).flatMap(([name, id]) =>
		without.includes(name)
			? []
			: [memberLabel(layout, axes.find((axis) => axis.name === name)?.set ?? '', id)]
	);
	return parts.join(', ') || quantity.label;
}

/** Ids that all are short stand at the heads of columns; the labels are read aloud. */
const SHORT = 6;

export function columnsOf(layout: Layout, set: string): readonly Column[] {
	const members = layout.sets.get(set)?.members;
	if (!members) return [{ id: '', short: '', label: '' }];
	const isShort = members.every(({ id }) => id.length <= SHORT);
	return members.map(({ id, label = id }) => ({ id, short: isShort ? id : label, label }));
}

/**
 * The set that stands across, in all tables of a programme: one whose members follow each other in a circle, as months
 * do, else the last that everything decided is per, and something scarce too. Empty where there is none.
 */
export function acrossSet(layout: Layout, programme: Programme): string {
	const setsOf = (name: string) => layout.byName.get(name)?.axes.map(({ set }) => set) ?? [];
	const free = setsOf(programme.decisions[0] ?? '').filter(
		(set) => !(programme.each ?? []).includes(set)
	);
	const cyclic = free.find((set) => layout.sets.get(set)?.cyclic);
	if (cyclic) return cyclic;
	const scarce = Object.values(programme.shadow_prices ?? {});
	const common = free.filter(
		(set) =>
			programme.decisions.every((name) => setsOf(name).includes(set)) &&
			(scarce.length === 0 || scarce.some((name) => setsOf(name).includes(set)))
	);
	return common.at(-1) ?? '';
}

/** The first member of each set, for a page that has just opened. */
export const firstOfEach = (
	sets: readonly SetDefinition[],
	each: readonly string[]
): Record<string, string> =>
	Object.fromEntries(
		each.map((name) => [name, sets.find((set) => set.name === name)?.members[0]?.id ?? ''])
	);

/** How many cells of a requirement hold, and how many there are. */
export function requirementHolds(
	layout: Layout,
	results: Results,
	name: string
): { readonly holds: number; readonly of: number } {
	const quantity = layout.byName.get(name);
	let holds = 0;
	let of = 0;
	for (let i = 0; quantity && i < quantity.count; i++) {
		const state = results.states[quantity.base + i];
		if (state === ABSENT) continue;
		of++;
		if (state === OK && results.values[quantity.base + i] === 1) holds++;
	}
	return { holds, of };
}
