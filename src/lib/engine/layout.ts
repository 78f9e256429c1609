/**
 * Where each value stands: every pair of a quantity and its members is one cell, numbered from 0,
 * quantity after quantity in sheet order, members in set order (last axis fastest), pairs that no
 * relation allows left out. All scenarios share one layout. Pure structure: no formula is read, so the
 * page and the worker can both derive it from the same workbook.
 */
import { axesOf, relationAxes } from '$lib/workbook/axes';
import type { Quantity, Relation, SetDefinition, Workbook } from '$lib/workbook/schema';
import type { Place } from './results';

export interface Axis {
	/** The set's name, or the name before the colon in "from: product". */
	readonly name: string;
	readonly set: string;
}

export interface QuantityLayout {
	readonly quantity: Quantity;
	/** Its place among all quantities. */
	readonly index: number;
	readonly sheet: number;
	readonly axes: readonly Axis[];
	/** First cell. */
	readonly base: number;
	/** Number of cells. */
	readonly count: number;
	/** Number of members along each axis. */
	readonly sizes: readonly number[];
	/** For each cell from `base`, the member ordinals, axis by axis: count × axes. */
	readonly members: Int32Array;
	/** Cell by row-major place among all combinations, −1 where the pair does not exist; null when all exist. */
	readonly cellOfPlace: Int32Array | null;
}

export interface Layout {
	readonly workbook: Workbook;
	readonly quantities: readonly QuantityLayout[];
	readonly byName: ReadonlyMap<string, QuantityLayout>;
	readonly sets: ReadonlyMap<string, SetDefinition>;
	/** Ordinal by member id, by set name. */
	readonly ordinals: ReadonlyMap<string, ReadonlyMap<string, number>>;
	readonly cells: number;
	/** Quantity index of each cell. */
	readonly quantityOfCell: Int32Array;
	/** Quantities that could not be laid out; they have no cells. */
	readonly problems: readonly LayoutProblem[];
}

export interface LayoutProblem {
	readonly quantity: string;
	readonly code: 'too-many-cells' | 'unknown-set' | 'bad-relation';
	readonly message: string;
}

/** Beyond this many cells a workbook cannot be answered while somebody types. */
export const CELL_LIMIT = 2_000_000;
/** Combinations of members, existing or not: what the place table of one quantity may hold. */
const PLACE_LIMIT = 16_000_000;

export function layOut(workbook: Workbook): Layout {
	const sets = new Map(workbook.sets.map((set) => [set.name, set]));
	const ordinals = new Map<string, ReadonlyMap<string, number>>();
	for (const set of workbook.sets)
		ordinals.set(set.name, new Map(set.members.map((member, ordinal) => [member.id, ordinal])));
	const relations = new Map(
		(workbook.relations ?? []).map((relation) => [relation.name, relation])
	);

	const quantities: QuantityLayout[] = [];
	const problems: LayoutProblem[] = [];
	let cells = 0;
	workbook.sheets.forEach((sheet, sheetIndex) => {
		for (const quantity of sheet.quantities) {
			const grid = layOutQuantity(quantity, sets, ordinals, relations, CELL_LIMIT - cells);
			if (grid.problem) problems.push({ quantity: quantity.name, ...grid.problem });
			const index = quantities.length;
			quantities.push({ quantity, index, sheet: sheetIndex, base: cells, ...grid.shape });
			cells += grid.shape.count;
		}
	});

	const quantityOfCell = new Int32Array(cells);
	for (const quantity of quantities)
		quantityOfCell.fill(quantity.index, quantity.base, quantity.base + quantity.count);
	const byName = new Map<string, QuantityLayout>();
	for (const quantity of quantities)
		if (!byName.has(quantity.quantity.name)) byName.set(quantity.quantity.name, quantity);
	return { workbook, quantities, byName, sets, ordinals, cells, quantityOfCell, problems };
}

/** How one quantity would lie in a workbook that is laid out already, its cells numbered from `base`. */
export function layOutOne(layout: Layout, quantity: Quantity, index: number, base: number) {
	const relations = new Map(
		(layout.workbook.relations ?? []).map((relation) => [relation.name, relation])
	);
	const grid = layOutQuantity(quantity, layout.sets, layout.ordinals, relations, CELL_LIMIT);
	const sheet = layout.byName.get(quantity.name)?.sheet ?? 0;
	return { quantity: { quantity, index, sheet, base, ...grid.shape }, problem: grid.problem };
}

type Shape = Pick<QuantityLayout, 'axes' | 'count' | 'sizes' | 'members' | 'cellOfPlace'>;
type Grid = { shape: Shape; problem?: { code: LayoutProblem['code']; message: string } };

function layOutQuantity(
	quantity: Quantity,
	sets: Layout['sets'],
	ordinals: Layout['ordinals'],
	relations: ReadonlyMap<string, Relation>,
	room: number
): Grid {
	const axes = axesOf(quantity);
	const refused = (code: LayoutProblem['code'], message: string): Grid => ({
		shape: {
			axes,
			count: 0,
			sizes: axes.map(() => 0),
			members: new Int32Array(0),
			cellOfPlace: null
		},
		problem: { code, message }
	});
	const unknown = axes.find((axis) => !sets.has(axis.set));
	if (unknown)
		return refused(
			'unknown-set',
			`${quantity.name} is per ${unknown.set}, but there is no set of that name: add the set, or choose another.`
		);
	const sizes = axes.map((axis) => sets.get(axis.set)?.members.length ?? 0);
	const places = sizes.reduce((product, size) => product * size, 1);
	const named = axes.map((axis, at) => `${sizes[at]} of ${axis.name}`).join(' × ');
	if (places > PLACE_LIMIT || (!quantity.in?.length && places > room))
		return refused(
			'too-many-cells',
			`${quantity.name} would have ${places.toLocaleString('en')} values (${named}); a workbook holds ${CELL_LIMIT.toLocaleString('en')}. Take a set off it, or let a relation say which pairs exist.`
		);

	const allowed: Allowed[] = [];
	for (const name of quantity.in ?? []) {
		const relation = relations.get(name);
		const one = relation && allowedBy(relation, axes, sizes, ordinals);
		if (!one)
			return refused(
				'bad-relation',
				relation
					? `${quantity.name} is in ${name}, which relates ${relation.sets.join(' and ')}; ${quantity.name} is not per all of these: add the set, or take the relation off.`
					: `${quantity.name} is in ${name}, but there is no relation of that name: add it, or take it off.`
			);
		allowed.push(one);
	}
	if (allowed.length === 0)
		return {
			shape: { axes, count: places, sizes, members: everyMember(sizes, places), cellOfPlace: null }
		};

	const cellOfPlace = new Int32Array(places).fill(-1);
	const everywhere = everyMember(sizes, places);
	const members: number[] = [];
	let count = 0;
	for (let place = 0; place < places; place++) {
		const start = place * axes.length;
		if (!allowed.every((allowed) => isAllowed(allowed, everywhere, start))) continue;
		cellOfPlace[place] = count++;
		for (let axis = 0; axis < axes.length; axis++) members.push(everywhere[start + axis] ?? 0);
	}
	if (count > room)
		return refused(
			'too-many-cells',
			`${quantity.name} would have ${count.toLocaleString('en')} values; a workbook holds ${CELL_LIMIT.toLocaleString('en')}. Take a set off it, or relate fewer pairs.`
		);
	return { shape: { axes, count, sizes, members: Int32Array.from(members), cellOfPlace } };
}

/** Member ordinals of every combination, last axis fastest. */
function everyMember(sizes: readonly number[], places: number): Int32Array {
	const width = sizes.length;
	const members = new Int32Array(places * width);
	let repeat = places;
	sizes.forEach((size, axis) => {
		repeat = size === 0 ? 0 : repeat / size;
		for (let place = 0; place < places; place++)
			members[place * width + axis] = Math.floor(place / repeat) % size;
	});
	return members;
}

/** The pairs of one relation, by row-major place among the axes that it binds. */
interface Allowed {
	readonly axes: readonly number[];
	readonly sizes: readonly number[];
	readonly pairs: Uint8Array;
}

function allowedBy(
	relation: Relation,
	axes: readonly Axis[],
	sizes: readonly number[],
	ordinals: Layout['ordinals']
): Allowed | null {
	const bound = relationAxes(axes, relation);
	if (!bound) return null;
	const widths = bound.map((axis) => sizes[axis] ?? 0);
	const pairs = new Uint8Array(widths.reduce((product, size) => product * size, 1));
	for (const pair of relation.pairs) {
		let place = 0;
		for (let column = 0; column < bound.length; column++) {
			const ordinal = ordinals.get(relation.sets[column] ?? '')?.get(pair[column] ?? '') ?? -1;
			place = ordinal < 0 || place < 0 ? -1 : place * (widths[column] ?? 0) + ordinal;
		}
		if (place >= 0) pairs[place] = 1;
	}
	return { axes: bound, sizes: widths, pairs };
}

function isAllowed(allowed: Allowed, members: Int32Array, start: number): boolean {
	let place = 0;
	for (let column = 0; column < allowed.axes.length; column++)
		place =
			place * (allowed.sizes[column] ?? 0) + (members[start + (allowed.axes[column] ?? 0)] ?? 0);
	return allowed.pairs[place] === 1;
}

/** The cell of one quantity for these members, −1 where the pair does not exist. */
export function cellAt(quantity: QuantityLayout, ordinals: ArrayLike<number>): number {
	let place = 0;
	for (let axis = 0; axis < quantity.sizes.length; axis++) {
		const size = quantity.sizes[axis] ?? 0;
		const ordinal = ordinals[axis] ?? -1;
		if (!(ordinal >= 0 && ordinal < size)) return -1;
		place = place * size + ordinal;
	}
	if (quantity.count === 0) return -1;
	if (!quantity.cellOfPlace) return quantity.base + place;
	const within = quantity.cellOfPlace[place] ?? -1;
	return within < 0 ? -1 : quantity.base + within;
}

/** The quantity whose value a cell is; undefined beyond the layout. */
export function quantityOf(layout: Layout, cell: number): QuantityLayout | undefined {
	return layout.quantities[layout.quantityOfCell[cell] ?? -1];
}

/** The members' ids of a cell, axis by axis. */
export function membersOf(layout: Layout, cell: number): string[] {
	const quantity = quantityOf(layout, cell);
	return quantity ? membersWithin(layout, quantity, cell - quantity.base) : [];
}

/** The same for the cell so many after the first of a quantity, be it one that is only drafted. */
export function membersWithin(
	{ sets }: Pick<Layout, 'sets'>,
	{ axes, members }: QuantityLayout,
	index: number
): string[] {
	const start = index * axes.length;
	return axes.map((axis, at) => sets.get(axis.set)?.members[members[start + at] ?? -1]?.id ?? '');
}

/** A cell as a person names it. */
export function placeOf(layout: Layout, cell: number): Place {
	const quantity = quantityOf(layout, cell);
	return { quantity: quantity?.quantity.name ?? '', members: membersOf(layout, cell), cell };
}
