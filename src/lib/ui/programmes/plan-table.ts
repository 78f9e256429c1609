/**
 * A quantity that a programme fills, as a table: the members of one set across, all other combinations that exist down,
 * at one member of each set that the programme is solved apart for.
 */
import { membersOf, type Layout, type QuantityLayout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { ABSENT, OK } from '$lib/engine/state';
import { inputAt } from '$lib/workbook/scenario';
import type { SetDefinition, Workbook } from '$lib/workbook/schema';

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
	/** By column; null where the combination does not exist or is absent in the scenario. */
	readonly cells: readonly (PlanCell | null)[];
}

export interface PlanTable {
	readonly quantity: QuantityLayout;
	readonly columns: readonly { readonly id: string; readonly label: string }[];
	readonly rows: readonly PlanRow[];
	/** Rows left out because nothing is planned in them. */
	readonly empty: number;
}

interface Asked {
	readonly workbook: Workbook;
	readonly layout: Layout;
	readonly results: Results;
	readonly scenario: string;
	readonly quantity: string;
	/** The member of each set that the programme is solved apart for. */
	readonly each: Readonly<Record<string, string>>;
	/** Rows in which nothing is planned as well. */
	readonly all: boolean;
}

/** Null where there is no such quantity. */
export function planTable(asked: Asked): PlanTable | null {
	const { workbook, layout, results, scenario, each } = asked;
	const quantity = layout.byName.get(asked.quantity);
	if (!quantity) return null;
	const across = acrossAxis(layout, quantity, Object.keys(each));
	const set = across < 0 ? undefined : layout.sets.get(quantity.axes[across]!.set);
	const columns = set
		? set.members.map(({ id, label }) => ({ id, label: label ?? id }))
		: [{ id: '', label: quantity.quantity.label }];
	const placeOf = new Map(columns.map(({ id }, at) => [id, at]));
	const rows = new Map<string, { label: string; cells: (PlanCell | null)[] }>();
	for (let cell = quantity.base; cell < quantity.base + quantity.count; cell++) {
		const at = membersOf(layout, cell);
		if (quantity.axes.some((axis, i) => axis.set in each && each[axis.set] !== at[i])) continue;
		const down = at.filter((_, i) => i !== across && !(quantity.axes[i]!.set in each));
		const key = down.join('\u0001');
		let row = rows.get(key);
		if (!row) {
			row = { label: down.join(', ') || quantity.quantity.label, cells: columns.map(() => null) };
			rows.set(key, row);
		}
		const state = results.states[cell] ?? ABSENT;
		if (state === ABSENT) continue;
		const entered = inputAt(workbook, scenario, quantity.quantity.name, at).value;
		row.cells[placeOf.get(across < 0 ? '' : at[across]!) ?? 0] = {
			...{ cell, at, state },
			value: state === OK ? (results.values[cell] ?? NaN) : NaN,
			isPinned: entered !== null && entered !== undefined
		};
	}
	const known = [...rows].map(([key, row]) => ({ key, ...row }));
	const planned = known.filter(({ cells }) => cells.some((cell) => cell && isPlanned(cell)));
	const shown = asked.all ? known.filter(({ cells }) => cells.some(Boolean)) : planned;
	return { quantity, columns, rows: shown, empty: known.length - planned.length };
}

const isPlanned = ({ value, isPinned }: PlanCell) =>
	isPinned || (value !== 0 && !Number.isNaN(value));

/** The set whose members follow each other in a circle, as months do; else the last that is not solved apart for. */
function acrossAxis(layout: Layout, quantity: QuantityLayout, each: readonly string[]): number {
	const free = quantity.axes.flatMap(({ set }, at) => (each.includes(set) ? [] : [at]));
	const cyclic = free.find((at) => layout.sets.get(quantity.axes[at]!.set)?.cyclic);
	return cyclic ?? free.at(-1) ?? -1;
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
