/**
 * References to cells: the pair that is meant, or the option that a choice picks. Neighbours belong to
 * `neighbours.ts`, what a cell is to its readers to `cells-as-read.ts`.
 */
import { cellAt } from '../layout';
import { Op } from '../operations';
import { ABSENT, carried, HITS_NOTHING } from '../state';
import { readCell } from './cells-as-read';
import type { Lowering } from './lower';
import { neighbour } from './neighbours';
import type { Read } from './types';

/** Stands where a reference takes more than the members in hand. */
const NOT_DIRECT = -2;

/** The cell of a reference at the members in hand, −1 where the pair does not exist. */
export function directCell(low: Lowering, { quantity, indices }: Read): number {
	let place = 0;
	for (let at = 0; at < indices.length; at++) {
		const index = indices[at];
		let ordinal: number;
		if (index?.kind === 'variable') ordinal = low.members[index.slot] ?? 0;
		else if (index?.kind === 'member') ordinal = index.ordinal;
		else return NOT_DIRECT;
		place = place * (quantity.sizes[at] ?? 0) + ordinal;
	}
	if (!quantity.cellOfPlace) return quantity.base + place;
	const within = quantity.cellOfPlace[place] ?? -1;
	return within < 0 ? -1 : quantity.base + within;
}

/** A reference at the members in hand. */
export function readCells(low: Lowering, read: Read): number {
	const direct = low.tracing ? NOT_DIRECT : directCell(low, read);
	if (direct >= 0) return readCell(low, read.quantity.index, direct, read.scenario);
	const ordinals: number[] = [];
	const selectors: number[] = [];
	let isChosen = false;
	for (const index of read.indices) {
		let ordinal = -1;
		let selector = -1;
		if (index.kind === 'member') ordinal = index.ordinal;
		else if (index.kind !== 'choice') ordinal = low.members[index.slot] ?? 0;
		else {
			const node = low.lower(index.of);
			isChosen = true;
			const known = settledChoice(low, node);
			if (known >= 0) ordinal = low.store.valueOf(known);
			else if (low.store.opOf(node) === Op.Nothing)
				return low.store.nothing(carried(low.store.aOf(node)));
			else selector = node;
		}
		ordinals.push(ordinal);
		selectors.push(selector);
	}
	const moving = selectors.findIndex((selector) => selector >= 0);
	if (moving >= 0) return pick(low, read, ordinals, selectors, moving);
	return readPair(low, read, ordinals, isChosen);
}

/**
 * The constant that a choice is: itself, or the root of the computed cell that it reads, as the month of a dated month. Else
 * a cell would read all members of the set in place of the one that it ever means.
 */
function settledChoice(low: Lowering, node: number): number {
	const { store, roots } = low;
	if (store.isConstant(node)) return node;
	if (!roots || store.opOf(node) !== Op.Cell || store.bOf(node) !== 0) return -1;
	const root = roots[store.aOf(node)] ?? -1;
	return root >= 0 && store.isConstant(root) ? root : -1;
}

/** One of all options, by the choice on axis `moving`; further choices inside. */
function pick(
	low: Lowering,
	read: Read,
	ordinals: number[],
	selectors: readonly number[],
	moving: number
): number {
	const isPlain =
		!low.tracing &&
		selectors.every((selector, at) => selector < 0 || at === moving) &&
		read.indices.every((index) => index.kind !== 'neighbour') &&
		read.otherwise === null;
	const key = isPlain ? optionsKey(read, ordinals, moving) : -1;
	let lists = low.optionLists.get(read);
	let list = key < 0 ? undefined : lists?.get(key);
	if (list === undefined) {
		const next = selectors.findIndex((selector, at) => at > moving && selector >= 0);
		const nodes: number[] = [];
		for (let ordinal = 0; ordinal < (read.quantity.sizes[moving] ?? 0); ordinal++) {
			if (low.isTooLarge()) break;
			ordinals[moving] = ordinal;
			nodes.push(
				next >= 0 ? pick(low, read, ordinals, selectors, next) : optionAt(low, read, ordinals)
			);
		}
		ordinals[moving] = -1;
		list = low.store.list([nodes.length, ...nodes]);
		if (key >= 0) {
			lists ??= new Map();
			lists.set(key, list);
			low.optionLists.set(read, lists);
		}
	}
	low.budget.options += read.quantity.sizes[moving] ?? 0;
	return low.store.emit(Op.Pick, selectors[moving] ?? 0, list);
}

/** The options are the same for all cells that agree on the other axes. */
function optionsKey(read: Read, ordinals: readonly number[], moving: number): number {
	let key = moving;
	ordinals.forEach((ordinal, at) => {
		key = key * (read.quantity.sizes[at] ?? 0) + (at === moving ? 0 : ordinal);
	});
	return key;
}

/** −1 where the pair does not exist. */
function optionAt(low: Lowering, read: Read, ordinals: readonly number[]): number {
	if (read.indices.some((index) => index.kind === 'neighbour'))
		return readPair(low, read, ordinals, true);
	const cell = cellAt(read.quantity, ordinals);
	return cell < 0 ? -1 : readCell(low, read.quantity.index, cell, read.scenario);
}

function readPair(
	low: Lowering,
	read: Read,
	ordinals: readonly number[],
	isChosen: boolean
): number {
	const steps = read.indices.findIndex((index) => index.kind === 'neighbour');
	if (steps >= 0) return neighbour(low, read, [...ordinals], steps);
	const cell = cellAt(read.quantity, ordinals);
	if (cell < 0) return low.store.nothing(isChosen ? HITS_NOTHING : ABSENT);
	if (low.tracing && read.source && low.depth === 0) low.tracing.cellOf.set(read.source, cell);
	return readCell(low, read.quantity.index, cell, read.scenario);
}
