/** Blocks of cells as tab-separated text; what is brought in is `grid/paste-block.ts`'s. */
import type { Layout, QuantityLayout } from '$lib/engine/layout';
import { OK } from '$lib/engine/state';
import type { Results } from '$lib/engine/results';
import { choiceSet } from './cells';
import { asTyped } from './format';
import type { Row } from './rows';

/** A cell of the block: its number, or null where a row has several or none. */
export interface BlockCell {
	readonly quantity: QuantityLayout;
	readonly cell: number;
}

/** The cells below a row, one to a line, folded members in their order; at most `most`. */
export function cellsDown(rows: readonly Row[], start: number, most: number): BlockCell[] {
	const cells: BlockCell[] = [];
	for (let i = start; i < rows.length && cells.length < most; i++) {
		const row = rows[i];
		if (row?.kind !== 'quantity' || row.open === true) continue;
		for (let cell = row.from; cell < row.to && cells.length < most; cell++)
			cells.push({ quantity: row.quantity, cell });
	}
	return cells;
}

/** A value as text with all its digits, as a paste reads it back. */
function plainText(
	layout: Layout,
	{ quantity, cell }: BlockCell,
	results: Results,
	locale: string
) {
	if (results.states[cell] !== OK) return '';
	const value = results.values[cell] ?? 0;
	if (quantity.quantity.type === 'yes_no') return value === 0 ? 'no' : 'yes';
	const set = choiceSet(layout, quantity);
	if (set) return set.members[value]?.id ?? '';
	return asTyped(value, locale);
}

export function blockText(
	layout: Layout,
	cells: readonly BlockCell[],
	columns: readonly Results[],
	locale: string
): string {
	return cells
		.map((cell) => columns.map((column) => plainText(layout, cell, column, locale)).join('\t'))
		.join('\n');
}

/**
 * A line, a column or a single value that is pasted where more is marked fills what is marked; any other block stays as
 * it is. Of no lines or columns marked it says nothing.
 */
export function filledBlock(
	block: readonly (readonly string[])[],
	lines: number,
	columns: number
): readonly (readonly string[])[] {
	const [first] = block;
	if (!first) return block;
	const isNarrow = block.every((line) => line.length === 1);
	const wide = isNarrow
		? block.map(([text = '']) => Array.from({ length: Math.max(columns, 1) }, () => text))
		: block;
	return block.length === 1 && lines > 1
		? Array.from({ length: lines }, () => wide[0] ?? first)
		: wide;
}
