/**
 * Load against the hours on offer, for each resource and month: how full, above the hours or not, and
 * which resource is fullest in which month. Read from results; sentences are in `capacity-words.ts`.
 */
import { cellAt, type Layout, type QuantityLayout } from '$lib/engine/layout';
import type { Picture } from '$lib/workbook/schema';
import { read, sumOf, type At, type Reading, type Source } from '../../figure/read';

export type CapacityPicture = Extract<Picture, { kind: 'capacity' }>;

/** A load is in percent of the hours on offer. */
export const FULL = 100;

export interface MonthLoad {
	readonly load: Reading;
	/** The same in the scenario that it is compared with; undefined where there is none. */
	readonly before: Reading | undefined;
	/** Of all resources, none is fuller in this month. */
	readonly fullest: boolean;
	/** Where the load stands; null where there is no such cell. */
	readonly cell: number | null;
}

export interface LoadRow {
	/** The member's id. */
	readonly id: string;
	/** What it is called: by its label where that is short enough for a row's head. */
	readonly name: string;
	/** A label too long for that. */
	readonly aside: string;
	/** Of the resource, "Stage" or "Line": names are told apart by it. */
	readonly group: number;
	readonly months: readonly MonthLoad[];
	readonly year: Reading | undefined;
	readonly short: Reading | undefined;
}

export interface Month {
	readonly id: string;
	readonly label: string;
	/** For the head of a narrow column. */
	readonly short: string;
}

export interface Group {
	readonly title: string;
	/** The quantity that is drawn. */
	readonly quantity: string;
	/** The set whose members are loaded. */
	readonly resource: string;
}

export interface Capacity {
	readonly months: readonly Month[];
	readonly groups: readonly Group[];
	readonly rows: readonly LoadRow[];
	/** Title of the scenario that is drawn. */
	readonly scenario: string;
	/** Of the hours short, as printed after a number. */
	readonly shortUnit: string;
}

export interface CapacityInput {
	readonly picture: CapacityPicture;
	readonly source: Source;
	/** What the loads are compared with; null where nothing is. */
	readonly before: Source | null;
	readonly scenario: string;
}

export function capacityOf({ picture, source, before, scenario }: CapacityInput): Capacity {
	const { layout } = source;
	const months = layout.sets.get(picture.month)?.members ?? [];
	const drafts = picture.loads.flatMap((load, group) => rowsOf(load, group));
	const fullest = months.map((_, month) => fullestOf(drafts.map((row) => row.loads[month])));
	const shown = drafts.filter(({ loads }) => loads.some((load) => load.kind !== 'absent'));

	function rowsOf(one: CapacityPicture['loads'][number], group: number) {
		const set = resourceOf(layout, picture, one.load);
		return (set ? (layout.sets.get(set)?.members ?? []) : []).map(({ id, label }, ordinal) => {
			const at: At = { [set as string]: ordinal };
			const inMonth = (month: number): At => ({ ...at, [picture.month]: month });
			return {
				...{ id, ...namesOf(id, label), group, at: inMonth, quantity: layout.byName.get(one.load) },
				loads: months.map((_, month) => read(source, one.load, inMonth(month))),
				befores: months.map((_, month) => before && read(before, one.load, inMonth(month))),
				year: one.load_of_year === undefined ? undefined : read(source, one.load_of_year, at),
				short:
					one.hours_short === undefined
						? undefined
						: overMonths(source, one.hours_short, picture.month, at)
			};
		});
	}
	return {
		months: months.map(({ id, label }) => ({ id, label: label ?? id, short: shortOf(id, label) })),
		groups: picture.loads.map(({ load }, _, loads) => {
			const name = resourceOf(layout, picture, load) ?? '';
			const set = layout.sets.get(name);
			// Loads of two kinds on the same resources are told apart by what each is.
			const isOne =
				loads.filter((one) => resourceOf(layout, picture, one.load) === name).length < 2;
			const title = isOne ? (set?.plural ?? set?.label) : layout.byName.get(load)?.quantity.label;
			return { title: title ?? '', quantity: load, resource: name };
		}),
		rows: shown.map((row) => ({
			...{ id: row.id, name: row.name, aside: row.aside, group: row.group },
			...{ year: row.year, short: row.short },
			months: row.loads.map((load, month) => ({
				load,
				before: row.befores[month] ?? undefined,
				fullest: fullest[month] === drafts.indexOf(row),
				cell: row.quantity ? placeOf(row.quantity, row.at(month)) : null
			}))
		})),
		scenario,
		shortUnit: shown.find((row) => row.short)?.short?.quantity?.quantity.unit ?? ''
	};
}

const LONGEST_NAME = 16;
const LONGEST_MONTH = 3;

const namesOf = (id: string, label: string | undefined) =>
	label === undefined || label === id || label.length <= LONGEST_NAME
		? { name: label ?? id, aside: '' }
		: { name: id, aside: label };

const shortOf = (id: string, label: string | undefined) =>
	(label ?? id).length <= LONGEST_MONTH ? (label ?? id) : id.slice(0, LONGEST_MONTH);

/** The set whose members are loaded: the one beside the months. */
export function resourceOf(layout: Layout, picture: CapacityPicture, load: string) {
	return layout.byName.get(load)?.axes.find(({ set }) => set !== picture.month)?.set;
}

/** A figure of the year, or the sum of those of its months. */
function overMonths(source: Source, name: string, month: string, at: At): Reading | undefined {
	const axes = source.layout.byName.get(name)?.axes ?? [];
	if (!axes.some(({ set }) => set === month)) return read(source, name, at);
	const members = source.layout.sets.get(month)?.members ?? [];
	return sumOf(members.map((_, ordinal) => read(source, name, { ...at, [month]: ordinal })));
}

/** The place of the highest load, the first of several; -1 where none has a value. */
function fullestOf(loads: readonly (Reading | undefined)[]): number {
	let best = -1;
	loads.forEach((load, i) => {
		if (load?.kind !== 'value') return;
		if (best < 0 || load.value > (loads[best]?.value ?? -Infinity)) best = i;
	});
	return best;
}

function placeOf(quantity: QuantityLayout, at: At): number | null {
	const cell = cellAt(
		quantity,
		quantity.axes.map(({ set }) => at[set] ?? -1)
	);
	return cell < 0 ? null : cell;
}

/** Whether a resource is asked for more hours than it has. */
export const isAbove = (load: Reading) => load.kind === 'value' && load.value > FULL + 1e-9;

/** The first load without a value, other than of what is not there; null where all can be drawn. */
export function missingLoad({ rows }: Capacity): Reading | null {
	for (const { months } of rows)
		for (const { load } of months) if (load.kind !== 'value' && load.kind !== 'absent') return load;
	return null;
}

/** How high the bars may grow: the largest load among the rows, at least a little above full. */
export function tallest({ rows }: Capacity): number {
	const loads = rows.flatMap(({ months }) => months.flatMap(({ load, before }) => [load, before]));
	const values = loads.flatMap((load) => (load?.kind === 'value' ? [load.value] : []));
	return Math.min(Math.max(FULL * 1.25, ...values), FULL * 2.5);
}
