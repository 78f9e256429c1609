/**
 * The root node of every cell of a quantity: its formula, the permitted range around it, then `where`, then the
 * presence of its members.
 */
import type { QuantityLayout } from '../layout';
import { Op } from '../operations';
import { BAD_FORMULA } from '../state';
import type { ProvenPart, ProvenQuantity } from './absence';
import { guard } from './fold';
import type { Lowering } from './lower';
import type { NodeStore } from './node-store';
import { presenceOf, setMembers } from './cells-as-read';
import { INPUT, partOfCell } from './rules';

/** Writes the roots from place `cell - firstCell` on, and where the range of entered values stands. */
export function lowerQuantity(
	low: Lowering,
	{ known, parts, where }: ProvenQuantity,
	roots: Int32Array,
	inputRange: Int32Array,
	firstCell = 0
): void {
	const { layout, rules } = known;
	const limits = known.type.kind === 'number' ? limitsOf(low.store, layout) : -1;
	low.startQuantity(layout.index);
	for (let cell = layout.base; cell < layout.base + layout.count; cell++) {
		const at = cell - firstCell;
		const partIndex = partOfCell(rules, layout, cell);
		if (partIndex === INPUT) {
			inputRange[at] = limits;
			continue;
		}
		const part = parts[partIndex];
		roots[at] = low.store.nothing(BAD_FORMULA);
		if (!part || isBad(part) || (where && isBad(where)) || low.isTooLarge()) continue;
		setMembers(low, known, cell);
		let root = low.root(part);
		if (limits >= 0) root = inRange(low.store, root, limits);
		if (where) root = guard(low.store, low.root(where), root);
		for (const present of presenceOf(low, known, cell, 0).reverse())
			root = guard(low.store, present, root);
		roots[at] = root;
	}
	spoil(low.store, { known, parts, where }, roots, firstCell);
}

const isBad = ({ proof, typed }: ProvenPart) =>
	typed.kind === 'broken' || proof.problems.length > 0;

/** A formula that failed for one of its cells is an error in all of them. */
function spoil(
	store: NodeStore,
	{ known, parts, where }: ProvenQuantity,
	roots: Int32Array,
	firstCell: number
): void {
	const { layout, rules } = known;
	if (![...parts, ...(where ? [where] : [])].some(isBad)) return;
	for (let cell = layout.base; cell < layout.base + layout.count; cell++) {
		const part = parts[partOfCell(rules, layout, cell)];
		if (part && (isBad(part) || (where && isBad(where))))
			roots[cell - firstCell] = store.nothing(BAD_FORMULA);
	}
}

/** Where the permitted range stands among the lists, or −1. */
function limitsOf(store: NodeStore, { quantity: { range } }: QuantityLayout): number {
	if (!range) return -1;
	const places = [range.min, range.max, range.above, range.below].map((limit) =>
		limit === undefined ? -1 : store.constantPlace(limit)
	);
	return places.every((place) => place < 0) ? -1 : store.list(places);
}

function inRange(store: NodeStore, root: number, limits: number): number {
	return store.opOf(root) === Op.Nothing ? root : store.emit(Op.InRange, root, limits);
}
