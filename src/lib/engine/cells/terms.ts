/**
 * The terms of an aggregate as cells: ranges where they stand one below the other already, and else a column of
 * formulas, one a term, with "" where the term is left out.
 *
 * The first bad term must win, whatever a function looks at first: `MIN(range)*0` is zero or the first error.
 */
import { Op, parameterCount } from '$lib/engine/operations';
import { call, infix, numeral, plain, valued, type Piece } from './piece';
import type { Column, Writer } from './writer';

export const TOO_LONG = 'it gathers more terms than one column of the second engine holds';

export interface Terms {
	readonly list: number;
	readonly count: number;
	readonly values: readonly number[];
	readonly filters: readonly number[];
	readonly positions: readonly number[];
	/** Whether some terms may be left out, and whether all may. */
	readonly filtered: boolean;
	readonly mayBeEmpty: boolean;
	/** Whether some positions are computed, and so may be bad. */
	readonly placed: boolean;
	readonly parameters: readonly number[];
}

export function termsOf(w: Writer, node: number): Terms {
	const { op, a, b, lists } = w.nodes;
	const list = a[node]!;
	const count = b[node]!;
	const every = (offset: number) =>
		Array.from({ length: count }, (_, i) => lists[list + 3 * i + offset]!);
	const filters = every(1);
	const positions = every(2);
	const after = list + 3 * count;
	return {
		list,
		count,
		values: every(0),
		filters,
		positions,
		filtered: filters.some((filter) => filter >= 0),
		mayBeEmpty: filters.every((filter) => filter >= 0),
		placed: positions.some((node) => node >= 0 && op[node] !== Op.Constant),
		parameters: Array.from(lists.subarray(after, after + parameterCount(op[node]!)))
	};
}

/** The value of a term, or what is bad about it or its position. */
export function valueOf(w: Writer, terms: Terms, i: number): Piece {
	const value = valued(w.piece(terms.values[i]!));
	const position = terms.placed ? terms.positions[i]! : -1;
	if (position < 0) return value;
	return infix(value, '+', infix(valued(w.piece(position)), '*', numeral(0)));
}

/**
 * A column where the terms stand already; null where each needs a formula. A term that counts where it is
 * present needs none: an absent value is text, and what reads a range passes over text.
 */
export function standing(w: Writer, terms: Terms): Column | null {
	const { op, a } = w.nodes;
	const passesOver = (value: number, filter: number) =>
		filter >= 0 && op[filter] === Op.Present && a[filter] === value;
	const ready = terms.values.every((value, i) => {
		const filter = terms.filters[i]!;
		return filter < 0 ? !w.facts.mayBeAbsent(value) : passesOver(value, filter);
	});
	if (terms.placed || !ready) return null;
	const column = w.standing(terms.values);
	return column && { ...column, gaps: terms.filtered };
}

export const ranges = (w: Writer, column: Column): Piece[] =>
	w.ranges(column).map((range) => plain(range));

/** Zero, or the first error of the column. */
export const firstBad = (w: Writer, column: Column): Piece =>
	infix(call('MIN', ranges(w, column)), '*', numeral(0));

/** The values, "" where the filter leaves one out. An error in a filter or a position stands in its term. */
export function valueColumn(w: Writer, terms: Terms): Column {
	const there = standing(w, terms);
	if (there) return there;
	return w.column(`values ${terms.list} ${terms.count}`, () => ({
		gaps: terms.filtered,
		pieces: terms.values.map((_, i) => {
			const value = valueOf(w, terms, i);
			const filter = terms.filters[i]!;
			if (filter < 0) return value;
			const [test, kept] = w.fit([w.test(filter), value]) as [Piece, Piece];
			return call('IF', [test, kept, plain('""')]);
		})
	}));
}

/** `answer`, or NO_ANSWER where every term is left out; errors of the terms and parameters first. */
export function unlessEmpty(
	w: Writer,
	column: Column,
	terms: Terms,
	parameters: readonly Piece[],
	answer: Piece
): Piece {
	if (!terms.mayBeEmpty) return answer;
	const bad = parameters.reduce(
		(sum, parameter) => infix(sum, '+', infix(parameter, '*', numeral(0))),
		firstBad(w, column)
	);
	const left = infix(bad, '+', call('COUNT', ranges(w, column)));
	return call('IF', [infix(left, '=', numeral(0), true), plain(w.literals.noAnswer), answer]);
}
