/**
 * A block of marks brought into a table of pairs, from the pair in hand to the right and down: which pairs it makes and
 * which it takes away. One cell that is no mark, or a block that is larger than the table, and nothing is entered.
 */
import { readMark } from '$lib/exchange/table/marks';
import { pairKey } from '$lib/workbook/axes';
import { texts } from './mark-block-texts';

export interface PairMark {
	readonly pair: readonly [string, string];
	readonly exists: boolean;
}

export type MarksRead =
	| { readonly ok: true; readonly marks: readonly PairMark[] }
	| { readonly ok: false; readonly message: string };

export interface Corner {
	/** Ids of the rows and columns that the block can cover, from the pair in hand on. */
	readonly rows: readonly string[];
	readonly columns: readonly string[];
	/** Keys of the pairs that there are. */
	readonly pairs: ReadonlySet<string>;
}

/** Marks that change nothing are left out. */
export function readMarks(
	block: readonly (readonly string[])[],
	{ rows, columns, pairs }: Corner
): MarksRead {
	const width = Math.max(0, ...block.map((line) => line.length));
	if (block.length > rows.length || width > columns.length)
		return {
			ok: false,
			message: texts.tooLarge(block.length, width, rows.length, columns.length)
		};
	const marks: PairMark[] = [];
	for (const [down, line] of block.entries())
		for (const [across, text] of line.entries()) {
			const pair = [rows[down]!, columns[across]!] as const;
			const exists = readMark(text);
			if (exists === null) return { ok: false, message: texts.noMark(text.trim(), ...pair) };
			if (pairs.has(pairKey(pair)) !== exists) marks.push({ pair, exists });
		}
	return { ok: true, marks };
}

/** The shown part of the table as such a block, heads left out, to take along. */
export const marksText = (
	rows: readonly string[],
	columns: readonly string[],
	pairs: ReadonlySet<string>
): string =>
	rows
		.map((row) =>
			columns.map((column) => (pairs.has(pairKey([row, column])) ? 'x' : '')).join('\t')
		)
		.join('\n');
