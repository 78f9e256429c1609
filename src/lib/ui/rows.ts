/**
 * The rows of the grid: sheets, quantities, and their members where a row is unfolded, with the
 * messages that stand below the row they speak of. What a cell says belongs to `cells.ts`.
 */
import { membersOf, type Layout, type QuantityLayout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { ABSENT } from '$lib/engine/state';
import { pathsOf } from '$lib/workbook/paths';
import type { Workbook } from '$lib/workbook/schema';

/** Something to say below a row. */
export interface RowMessage {
	readonly tone: 'error' | 'caution' | 'check' | 'formula';
	readonly scenario: string;
	readonly quantity: string;
	/** The cell at fault; null where it concerns the quantity as a whole. */
	readonly cell: number | null;
	/** How many cells of the quantity say the same. */
	readonly count: number;
	readonly text: string;
}

export interface SheetRow {
	readonly kind: 'sheet';
	readonly key: string;
	readonly sheet: number;
	readonly title: string;
	readonly note: string;
}
export interface QuantityRow {
	readonly kind: 'quantity';
	readonly key: string;
	readonly quantity: QuantityLayout;
	/** Member ordinals so far, and their ids; empty for the quantity's own row. */
	readonly at: readonly number[];
	readonly ids: readonly string[];
	readonly label: string;
	/** The label of a member behind its id; what the quantity is per, behind the quantity's. */
	readonly aside: string;
	readonly depth: number;
	/** The cells under this row: `from` alone where it is one value. */
	readonly from: number;
	readonly to: number;
	/** Null where there is nothing to unfold. */
	readonly open: boolean | null;
}
export interface MessageRow {
	readonly kind: 'message';
	readonly key: string;
	readonly message: RowMessage;
	readonly quantity: QuantityLayout;
}
export type Row = SheetRow | QuantityRow | MessageRow;

export interface RowsInput {
	readonly layout: Layout;
	/** Keys of the rows that are unfolded. */
	readonly open: ReadonlySet<string>;
	/** The scenarios on screen: a member absent in all of them has no row. */
	readonly results: readonly Results[];
	readonly messages: readonly RowMessage[];
	/** Keep only these quantities (a comparison, a filter); null keeps all. */
	readonly only: ReadonlySet<string> | null;
}

/** "10 products": how many members a quantity has along its first axis that are on screen. */
function perText(layout: Layout, quantity: QuantityLayout, axis: number): string {
	const named = quantity.axes[axis];
	const set = layout.workbook.sets.find((one) => one.name === named?.set);
	const size = quantity.sizes[axis] ?? 0;
	const word = size === 1 ? (set?.label ?? '') : (set?.plural ?? set?.label ?? '');
	return `${size} ${word.toLowerCase()}`;
}

/** "10 products by 7 lines". */
export const perWords = (layout: Layout, quantity: QuantityLayout, from = 0): string =>
	quantity.axes
		.slice(from)
		.map((_, axis) => perText(layout, quantity, axis + from))
		.join(' by ');

/** The same of a whole quantity, kept for as long as the sets are the same: every answer asks it of all quantities. */
function asideOf(layout: Layout, quantity: QuantityLayout): string {
	const { sets } = layout.workbook;
	const kept = asides.get(sets) ?? new WeakMap<QuantityLayout, string>();
	asides.set(sets, kept);
	const known = kept.get(quantity);
	if (known !== undefined) return known;
	const aside = quantity.axes.length > 0 ? perWords(layout, quantity) : '';
	kept.set(quantity, aside);
	return aside;
}
const asides = new WeakMap<Workbook['sets'], WeakMap<QuantityLayout, string>>();

export function isSeen(results: readonly Results[], from: number, to: number): boolean {
	if (results.length === 0) return true;
	return results.some((result) => {
		for (let cell = from; cell < to; cell++) if (result.states[cell] !== ABSENT) return true;
		return false;
	});
}

/** Keys are texts of names and ids, which hold no control characters. */
export const rowKey = (name: string, ids: readonly string[]) => [name, ...ids].join('\u0001');

/** One past the last cell that shares the ordinal of `from` along the axis. */
export function endOfMember(
	quantity: QuantityLayout,
	axis: number,
	from: number,
	to: number
): number {
	const width = quantity.axes.length;
	const at = (cell: number) => quantity.members[(cell - quantity.base) * width + axis];
	const ordinal = at(from);
	let end = from + 1;
	while (end < to && at(end) === ordinal) end++;
	return end;
}

export function addMembers(
	rows: Row[],
	input: Pick<RowsInput, 'layout' | 'open' | 'results'>,
	parent: QuantityRow
): void {
	const { layout, open, results } = input;
	const { quantity } = parent;
	const axis = parent.at.length;
	const named = quantity.axes[axis];
	const set = layout.workbook.sets.find((one) => one.name === named?.set);
	if (!set) return;
	const last = axis === quantity.axes.length - 1;
	for (let from = parent.from; from < parent.to;) {
		const to = endOfMember(quantity, axis, from, parent.to);
		const ordinal = quantity.members[(from - quantity.base) * quantity.axes.length + axis] ?? 0;
		const member = set.members[ordinal];
		if (member && isSeen(results, from, to)) {
			const ids = [...parent.ids, member.id];
			const key = rowKey(quantity.quantity.name, ids);
			const row: QuantityRow = {
				kind: 'quantity',
				key,
				quantity,
				at: [...parent.at, ordinal],
				ids,
				label: member.id,
				aside: member.label && member.label !== member.id ? member.label : '',
				depth: parent.depth + 1,
				from,
				to,
				open: last ? null : open.has(key)
			};
			rows.push(row);
			if (row.open) addMembers(rows, input, row);
		}
		from = to;
	}
}

function addQuantity(rows: Row[], input: RowsInput, quantity: QuantityLayout): void {
	const { layout, open } = input;
	const { name, label } = quantity.quantity;
	const key = rowKey(name, []);
	const row: QuantityRow = {
		kind: 'quantity',
		key,
		quantity,
		at: [],
		ids: [],
		label: label || name,
		aside: asideOf(layout, quantity),
		depth: 0,
		from: quantity.base,
		to: quantity.base + quantity.count,
		open: quantity.axes.length > 0 ? open.has(key) : null
	};
	rows.push(row);
	if (row.open) addMembers(rows, input, row);
}

/** Below the row of the cell at fault where that is on screen, else below all rows of the quantity. */
export function addMessages(
	rows: Row[],
	quantity: QuantityLayout,
	start: number,
	messages: readonly RowMessage[]
): void {
	messages.forEach((message, i) => {
		const row: MessageRow = {
			kind: 'message',
			key: `${quantity.quantity.name}\u0002${i}`,
			message,
			quantity
		};
		const at = rows.findIndex(
			(row, place) =>
				place >= start &&
				row.kind === 'quantity' &&
				row.open === null &&
				message.count === 1 &&
				row.from === message.cell
		);
		if (at < 0) rows.push(row);
		else rows.splice(at + 1, 0, row);
	});
}

/** The cell that stands for one of an input of a path in time: that of the path, which is per the same; any other for itself. */
export function pathCell(layout: Layout, { quantity, base }: QuantityLayout, cell: number): number {
	const path = pathsOf(layout.workbook).byInput.get(quantity.name);
	const place = path && layout.byName.get(path.quantity.name);
	return place ? place.base + (cell - base) : cell;
}

/** Messages about the steps of a path stand below the path. */
export function onPaths(layout: Layout, messages: readonly RowMessage[]): readonly RowMessage[] {
	const { byInput } = pathsOf(layout.workbook);
	if (byInput.size === 0) return messages;
	return messages.map((message) => {
		const path = byInput.get(message.quantity);
		const input = layout.byName.get(message.quantity);
		if (!path || !input) return message;
		const cell = message.cell === null ? null : pathCell(layout, input, message.cell);
		return { ...message, quantity: path.quantity.name, cell };
	});
}

/** The names with those of the paths whose steps they hold in their place. */
export function withPaths(
	workbook: Pick<Workbook, 'sheets'>,
	names: ReadonlySet<string>
): ReadonlySet<string> {
	const { byInput } = pathsOf(workbook);
	if (byInput.size === 0) return names;
	return new Set([...names].map((name) => byInput.get(name)?.quantity.name ?? name));
}

/** All rows from top to bottom. */
export function buildRows(input: RowsInput): Row[] {
	const { layout } = input;
	const only = input.only && withPaths(layout.workbook, input.only);
	const { byInput } = pathsOf(layout.workbook);
	const messages = new Map<string, RowMessage[]>();
	for (const message of onPaths(layout, input.messages)) {
		const some = messages.get(message.quantity);
		if (some) some.push(message);
		else messages.set(message.quantity, [message]);
	}
	const rows: Row[] = [];
	let sheet = -1;
	const quantities = layout.quantities;
	const addSheets = (until: number) => {
		while (sheet < until) {
			sheet++;
			const { title = '', note = '' } = layout.workbook.sheets[sheet] ?? {};
			rows.push({ kind: 'sheet', key: `sheet ${sheet}`, sheet, title, note });
		}
	};
	for (const quantity of quantities) {
		if (only && !only.has(quantity.quantity.name)) continue;
		if (byInput.has(quantity.quantity.name)) continue;
		if (only && sheet !== quantity.sheet) sheet = quantity.sheet - 1;
		addSheets(quantity.sheet);
		const start = rows.length;
		addQuantity(rows, input, quantity);
		addMessages(rows, quantity, start, messages.get(quantity.quantity.name) ?? []);
	}
	if (!only) addSheets(layout.workbook.sheets.length - 1);
	return rows;
}

/** The keys to unfold so that a cell has a row of its own. */
export function keysDownTo(layout: Layout, cell: number): string[] {
	const quantity = layout.quantities[layout.quantityOfCell[cell] ?? -1];
	if (!quantity) return [];
	const ids = membersOf(layout, cell);
	return ids.map((_, depth) => rowKey(quantity.quantity.name, ids.slice(0, depth)));
}

/**
 * The rows after an edit or an answer, with every row that says the same as before the same object, and all of
 * them the same list where none has changed: so that a page draws only what is new.
 */
export function keepRows(before: readonly Row[], rows: readonly Row[]): readonly Row[] {
	const known = new Map(before.map((row) => [row.key, row]));
	const kept = rows.map((row) => {
		const old = known.get(row.key);
		return old && isSameRow(old, row) ? old : row;
	});
	const isSame = kept.length === before.length && kept.every((row, at) => row === before[at]);
	return isSame ? before : kept;
}

function isSameRow(a: Row, b: Row): boolean {
	if (a.kind === 'sheet')
		return b.kind === 'sheet' && a.title === b.title && a.note === b.note && a.sheet === b.sheet;
	if (a.kind === 'message')
		return b.kind === 'message' && a.quantity === b.quantity && agree(a.message, b.message);
	if (b.kind !== 'quantity' || a.quantity !== b.quantity) return false;
	const hasSameWords = a.label === b.label && a.aside === b.aside;
	return hasSameWords && a.open === b.open && a.from === b.from && a.to === b.to;
}

const agree = (a: RowMessage, b: RowMessage): boolean =>
	(Object.keys(a) as (keyof RowMessage)[]).every((field) => a[field] === b[field]);
