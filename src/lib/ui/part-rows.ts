/**
 * The rows of a part of the workbook: some quantities, at some members alone, as all that is entered for one product. A
 * row stands for cells of these members and for no other, so that what is typed on it reaches no further.
 */
import type { Layout, QuantityLayout } from '$lib/engine/layout';
import {
	addMembers,
	addMessages,
	endOfMember,
	isSeen,
	onPaths,
	perWords,
	rowKey,
	withPaths
} from './rows';
import type { QuantityRow, Row, RowMessage, RowsInput } from './rows';

export interface Part {
	/** The set of which it holds one member, which no row repeats. */
	readonly of: string;
	readonly quantities: ReadonlySet<string>;
	/** By set: the places of those members that belong to it; of any other set, all do. */
	readonly members: ReadonlyMap<string, ReadonlySet<number>>;
}

export function partRows(input: Omit<RowsInput, 'only'>, part: Part): Row[] {
	const { layout } = input;
	const messages = onPaths(layout, input.messages);
	const quantities = withPaths(layout.workbook, part.quantities);
	const rows: Row[] = [];
	let sheet = -1;
	for (const quantity of layout.quantities) {
		if (!quantities.has(quantity.quantity.name)) continue;
		const own = rowsOfPart(input, part, quantity);
		if (own.length === 0) continue;
		if (quantity.sheet !== sheet) {
			({ sheet } = quantity);
			const { title = '' } = layout.workbook.sheets[sheet] ?? {};
			rows.push({ kind: 'sheet', key: `sheet ${sheet}`, sheet, title, note: '' });
		}
		const start = rows.length;
		for (const row of own) {
			rows.push(row);
			if (row.open) addMembers(rows, input, row);
		}
		addMessages(rows, quantity, start, about(messages, quantity, own));
	}
	return rows;
}

const about = (
	messages: readonly RowMessage[],
	quantity: QuantityLayout,
	rows: readonly QuantityRow[]
): RowMessage[] =>
	messages.filter(
		({ quantity: name, cell }) =>
			name === quantity.quantity.name &&
			cell !== null &&
			rows.some(({ from, to }) => from <= cell && cell < to)
	);

/** One row for each run of cells that the part holds; what else it is per unfolds below it. */
function rowsOfPart(
	{ layout, open, results }: Omit<RowsInput, 'only'>,
	{ of, members }: Part,
	quantity: QuantityLayout
): QuantityRow[] {
	const { name, label } = quantity.quantity;
	// Of a set that it is per twice, the first: changeovers from a product to all others.
	const bound = quantity.axes.map(({ set }, axis) =>
		quantity.axes.findIndex((one) => one.set === set) === axis ? members.get(set) : undefined
	);
	const last = bound.findLastIndex((allowed) => allowed !== undefined);
	const rows: QuantityRow[] = [];
	const walk = (from: number, to: number, at: readonly number[], told: readonly string[]) => {
		const axis = at.length;
		if (axis > last) {
			if (isSeen(results, from, to))
				rows.push(row(from, to, at, told, axis < quantity.axes.length));
			return;
		}
		for (let here = from; here < to;) {
			const end = endOfMember(quantity, axis, here, to);
			const ordinal = ordinalAt(quantity, axis, here);
			const allowed = bound[axis];
			const id = memberAt(layout, quantity, axis, ordinal);
			if (id !== undefined && (allowed === undefined || allowed.has(ordinal)))
				walk(here, end, [...at, ordinal], quantity.axes[axis]?.set === of ? told : [...told, id]);
			here = end;
		}
	};
	const row = (
		from: number,
		to: number,
		at: readonly number[],
		told: readonly string[],
		goesOn: boolean
	): QuantityRow => {
		const ids = at.map((ordinal, axis) => memberAt(layout, quantity, axis, ordinal) ?? '');
		const key = rowKey(name, ids);
		return {
			...{ kind: 'quantity', key, quantity, at, ids, from, to, depth: 0 },
			// Whose it is comes first: it is never cut.
			label: [told.join(', '), label || name].filter(Boolean).join(': '),
			aside: goesOn ? perWords(layout, quantity, at.length) : '',
			open: goesOn ? open.has(key) : null
		};
	};
	walk(quantity.base, quantity.base + quantity.count, [], []);
	return rows;
}

const ordinalAt = (quantity: QuantityLayout, axis: number, cell: number): number =>
	quantity.members[(cell - quantity.base) * quantity.axes.length + axis] ?? 0;

const memberAt = (
	layout: Layout,
	quantity: QuantityLayout,
	axis: number,
	ordinal: number
): string | undefined => layout.sets.get(quantity.axes[axis]?.set ?? '')?.members[ordinal]?.id;
