/**
 * What runs where: each scarce resource with how much of it is used, member by member of the set that stands across,
 * and under it the decisions that run on it. Decisions that belong to no resource have tables of their own.
 */
import { membersOf, type Layout, type QuantityLayout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { ABSENT } from '$lib/engine/state';
import type { Look, Room } from '$lib/programmes/inquiry/questions';
import type { Programme } from '$lib/workbook/programme-schema';
import { memberLabel } from './labels';
import {
	columnsOf,
	planTable,
	rowLabel,
	type Asked,
	type Column,
	type PlanRow,
	type PlanTable
} from './plan-table';

export interface Board {
	readonly columns: readonly Column[];
	readonly resources: readonly Resource[];
	/** Decisions that run on no resource. */
	readonly tables: readonly PlanTable[];
	/** Rows left out because nothing is planned in them. */
	readonly empty: number;
}

export interface Resource {
	readonly key: string;
	readonly label: string;
	/** The members that it stands for, by the name of the axis. */
	readonly at: Readonly<Record<string, string>>;
	/** The requirement that makes it scarce. */
	readonly requirement: QuantityLayout;
	/** By column; null where there is none. */
	readonly loads: readonly (Load | null)[];
	/** What runs on it. */
	readonly rows: readonly RunRow[];
}

export interface RunRow extends PlanRow {
	readonly quantity: QuantityLayout;
	readonly decimals: number;
}

export interface Load {
	/** Of the requirement. */
	readonly cell: number;
	/** Null until it is known. */
	readonly room: Room | null;
	/** Used, as a share of what is there; 0 where nothing is. */
	readonly share: number;
	readonly isFull: boolean;
	/** The lengths that the bar is cut into, as shares: which row it is of (−1 for others), from where to where. */
	readonly lengths: readonly { readonly row: number; readonly from: number; readonly to: number }[];
}

/** From here on a resource counts as full. */
const FULL = 0.9995;

export function boardOf(
	asked: Omit<Asked, 'quantity'>,
	programme: Programme,
	look: Look | null
): Board {
	const { layout, each, across } = asked;
	const columns = columnsOf(layout, across);
	const scarce = [...new Set(Object.values(programme.shadow_prices ?? {}))].flatMap(
		(name) => layout.byName.get(name) ?? []
	);
	const rooms = new Map<number, Room>();
	for (const room of look?.rooms ?? []) if (!rooms.has(room.cell)) rooms.set(room.cell, room);
	const runsOn = runners(programme, scarce, layout, each, across);
	const tableOf = (quantity: string) => planTable({ ...asked, quantity });
	const running = programme.decisions.flatMap((name) =>
		runsOn.has(name) ? (tableOf(name) ?? []) : []
	);
	const tables = programme.decisions.flatMap((name) =>
		runsOn.has(name) ? [] : (tableOf(name) ?? [])
	);
	const resources = scarce.flatMap((requirement) => {
		const mine = running.filter(
			({ quantity }) => runsOn.get(quantity.quantity.name) === requirement
		);
		return resourcesOf({ ...asked, requirement, columns, rooms, tables: mine });
	});
	const empty = running.reduce((sum, table) => sum + table.empty, 0);
	return { columns, resources, tables, empty };
}

/** By decision: the requirement whose resource it runs on. */
function runners(
	programme: Programme,
	scarce: readonly QuantityLayout[],
	layout: Layout,
	each: Asked['each'],
	across: string
): Map<string, QuantityLayout> {
	const found = new Map<string, QuantityLayout>();
	programme.decisions.forEach((name, place) => {
		const sets = layout.byName.get(name)?.axes.map(({ set }) => set) ?? [];
		const fits = scarce.filter((requirement) =>
			ownAxes(requirement, each, across).every(({ set }) => sets.includes(set))
		);
		const named = fits.find((requirement) => ownAxes(requirement, each, across).length > 0);
		// A resource of one value is everybody's: it is the first decision that is thought to run on it.
		const runsOn = named ?? (place === 0 ? fits[0] : undefined);
		if (runsOn) found.set(name, runsOn);
	});
	return found;
}

const ownAxes = ({ axes }: QuantityLayout, each: Asked['each'], across: string) =>
	axes.filter(({ set }) => set !== across && !(set in each));

interface Making extends Omit<Asked, 'quantity'> {
	readonly requirement: QuantityLayout;
	readonly columns: readonly Column[];
	readonly rooms: ReadonlyMap<number, Room>;
	readonly tables: readonly PlanTable[];
}

function resourcesOf(making: Making): Resource[] {
	const { layout, results, each, across, requirement, columns, rooms, tables } = making;
	const own = ownAxes(requirement, each, across);
	const place = requirement.axes.findIndex(({ set }) => set === across);
	const cells = new Map<string, { at: readonly string[]; cells: (number | null)[] }>();
	for (let cell = requirement.base; cell < requirement.base + requirement.count; cell++) {
		const at = membersOf(layout, cell);
		if (requirement.axes.some(({ set }, i) => set in each && each[set] !== at[i])) continue;
		if (!isThere(results, cell)) continue;
		const down = own.map(
			({ name }) => at[requirement.axes.findIndex((axis) => axis.name === name)]!
		);
		const key = down.join('\u0001');
		const known = cells.get(key) ?? { at: down, cells: columns.map(() => null) };
		cells.set(key, known);
		const column = place < 0 ? 0 : columns.findIndex(({ id }) => id === at[place]);
		known.cells[Math.max(column, 0)] = cell;
	}
	return [...cells].map(([key, { at, cells: line }]) => {
		const rows = tables.flatMap((table) =>
			table.rows
				.filter(({ down }) => own.every(({ name }, i) => down[name] === at[i]))
				.map((row) => ({
					...row,
					key: `${table.quantity.index} ${row.key}`,
					quantity: table.quantity,
					decimals: table.decimals,
					label: rowLabel(
						layout,
						table.quantity,
						row.down,
						own.map(({ name }) => name)
					)
				}))
		);
		const label = own.map(({ set }, i) => memberLabel(layout, set, at[i]!)).join(', ');
		return {
			key: `${requirement.index} ${key}`,
			label: label || requirement.quantity.label,
			at: Object.fromEntries(own.map(({ name }, i) => [name, at[i]!])),
			requirement,
			loads: line.map((cell) =>
				cell === null ? null : loadOf(cell, rooms.get(cell) ?? null, rows)
			),
			rows
		};
	});
}

const isThere = ({ states }: Results, cell: number) => (states[cell] ?? ABSENT) !== ABSENT;

function loadOf(cell: number, room: Room | null, rows: readonly RunRow[]): Load {
	if (!room) return { cell, room, share: 0, isFull: false, lengths: [] };
	const share = room.there > 0 ? room.used / room.there : 0;
	const rowOf = (of: number) =>
		rows.findIndex(({ cells }) => cells.some((one) => one?.cell === of));
	const byRow = new Map<number, number>();
	for (const { cell: of, amount } of room.shares)
		byRow.set(rowOf(of), (byRow.get(rowOf(of)) ?? 0) + amount);
	let from = 0;
	const lengths = [...byRow]
		.sort(([a], [b]) => (a < 0 ? 1 : b < 0 ? -1 : a - b))
		.map(([row, amount]) => {
			const to = from + (room.there > 0 ? amount / room.there : 0);
			const length = { row, from, to };
			from = to;
			return length;
		});
	return { cell, room, share, isFull: share >= FULL, lengths };
}
