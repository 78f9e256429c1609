/**
 * How a table names the pairs of a relation: two columns with a member each, or one column with the members of one
 * set and a column for each member of the other, with marks. A first reading, which a person corrects.
 */
import { findSet } from '$lib/workbook/lookup';
import type { Relation, SetDefinition, Workbook } from '$lib/workbook/schema';
import { sampleOf, type Grid } from './grid';
import { wordsOf } from './heading';
import { readMark } from './marks';
import { memberNamed } from './member-named';

/** The column that names a member; 'heads': the headings of the others do; null: nobody has said. */
export type PairColumn = number | 'heads' | null;

export interface PairMapping {
	readonly relation: string;
	/** For each of the two sets. */
	readonly of: readonly [PairColumn, PairColumn];
	/** A column of marks beside two that name members; null: every row is a pair. */
	readonly mark: number | null;
}

/** Those that a table can be brought into: pairs of two. */
export const pairRelations = ({ relations = [] }: Workbook): Relation[] =>
	relations.filter(({ sets }) => sets.length === 2);

export const isWhole = ({ of: [first, second] }: PairMapping): boolean =>
	first !== null && second !== null && first !== second;

const SAMPLE = 200;
const ENOUGH = 0.6;

export function proposePairs(grid: Grid, relation: Relation, workbook: Workbook): PairMapping {
	const [first, second] = relation.sets.map((name) => findSet(workbook, name));
	const one = columnOf(grid, first, null);
	const other = columnOf(grid, second, one);
	const heads = (set: SetDefinition | undefined) =>
		set && grid.head.some((name) => memberNamed(set, name) !== null) ? 'heads' : null;
	const of: [PairColumn, PairColumn] = [
		one ?? (other === null ? null : heads(first)),
		other ?? (one === null ? null : heads(second))
	];
	const isByTwo = typeof of[0] === 'number' && typeof of[1] === 'number';
	return { relation: relation.name, of, mark: isByTwo ? markColumn(grid, of) : null };
}

/** By its heading, else by what stands in it. */
function columnOf(grid: Grid, set: SetDefinition | undefined, taken: number | null): number | null {
	if (!set) return null;
	const names = [set.name, set.label, set.plural ?? set.name].map(wordsOf);
	const called = grid.head.findIndex(
		(name, column) => column !== taken && names.includes(wordsOf(name))
	);
	if (called >= 0) return called;
	const shares = grid.head.map((_, column) => {
		const cells = column === taken ? [] : sampleOf(grid, column, SAMPLE);
		const held = cells.filter((cell) => memberNamed(set, String(cell)) !== null);
		return cells.length === 0 ? 0 : held.length / cells.length;
	});
	const most = Math.max(0, ...shares);
	return most > ENOUGH ? shares.indexOf(most) : null;
}

/** The only other column that holds nothing but marks. */
function markColumn(grid: Grid, of: readonly PairColumn[]): number | null {
	const marks = grid.head.flatMap((_, column) =>
		!of.includes(column) && holdsMarks(grid, column) ? [column] : []
	);
	return marks.length === 1 ? marks[0]! : null;
}

export function holdsMarks(grid: Grid, column: number): boolean {
	const cells = sampleOf(grid, column, SAMPLE);
	return cells.length > 0 && cells.every((cell) => readMark(String(cell)) !== null);
}
