/** What the parts of a row are, by what its columns mean: names, values, the units beside them. */
import { MEMBER_MARK } from '../csv/sheet';
import type { Cell } from './grid';
import type { Column, Mapping, ValueMeaning } from './mapping';
import type { NamedMembers } from './members-of-row';

export interface ValueColumn {
	readonly index: number;
	readonly column: Column;
	readonly meaning: ValueMeaning;
	/** The column that holds the unit of each row. */
	readonly unitFrom: number | null;
}

/** A text that was kept from being run as a formula comes with an apostrophe. */
export const textOf = (cell: Cell): Cell =>
	typeof cell === 'string' ? cell.replace(/^'(?=[=+\-@])/, '') : cell;

/**
 * A column of units speaks of the columns of values directly before it, back to the last column of units; of all where
 * none stands before it.
 */
export function valueColumns({ columns }: Mapping): ValueColumn[] {
	const unitAfter = new Map<number, number>();
	let run: number[] = [];
	let ofAll: number | null = null;
	columns.forEach(({ meaning }, index) => {
		if (meaning.is === 'value') run.push(index);
		else {
			if (meaning.is === 'unit' && run.length > 0)
				for (const value of run) unitAfter.set(value, index);
			else if (meaning.is === 'unit') ofAll ??= index;
			run = [];
		}
	});
	return columns.flatMap((column, index): ValueColumn[] => {
		const { meaning } = column;
		if (meaning.is !== 'value') return [];
		return [{ index, column, meaning, unitFrom: unitAfter.get(index) ?? ofAll }];
	});
}

export interface RowNames extends NamedMembers {
	readonly quantity: string | null;
	/** What a row calls its members in words, by set. */
	readonly labels: ReadonlyMap<string, string>;
}

export function namesOf(cells: readonly Cell[], { columns, all = [] }: Mapping): RowNames {
	let quantity: string | null = null;
	let together: string[] | null = null;
	const bySet = new Map<string, string>(
		all.flatMap(({ of, id }) => (id === null ? [] : [[of, id]]))
	);
	const labels = new Map<string, string>();
	columns.forEach(({ meaning }, column) => {
		const text = String(textOf(cells[column] ?? ''));
		if (meaning.is === 'quantity') quantity = text || null;
		else if (meaning.is === 'members')
			together = text === '' ? [] : text.split(MEMBER_MARK.trim()).map((part) => part.trim());
		else if (meaning.is === 'member') bySet.set(meaning.of, text);
		else if (meaning.is === 'label') labels.set(meaning.of, text);
	});
	return { quantity, together, bySet, labels };
}
