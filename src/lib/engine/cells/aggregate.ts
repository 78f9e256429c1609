/**
 * How aggregates are written in cells: up to sixteen terms inline, more as the ranges that `terms.ts` lays out.
 */
import { Op, type AggregateOp } from '$lib/engine/operations';
import { linePiece, percentilePiece } from './lines';
import { irrPiece, mirrPiece, npvPiece, paybackPiece } from './finance';
import { call, infix, numeral, numeric, plain, valued, type Piece } from './piece';
import {
	firstBad,
	ranges,
	standing,
	termsOf,
	TOO_LONG,
	unlessEmpty,
	valueColumn,
	valueOf,
	type Terms
} from './terms';
import type { Writer } from './writer';

/** Most terms that are written into one formula. */
export const INLINE = 16;

export function aggregatePiece(w: Writer, node: number): Piece {
	const terms = termsOf(w, node);
	// `isAggregate` has chosen this module.
	const op = w.nodes.op[node] as AggregateOp;
	switch (op) {
		case Op.Sum:
			return folded(w, terms, 'SUM', 0);
		case Op.Product:
			return folded(w, terms, 'PRODUCT', 1);
		case Op.Any:
			return folded(w, terms, 'OR', 0);
		case Op.All:
			return folded(w, terms, 'AND', 1);
		case Op.Count:
			return folded(w, terms, 'SUM', 0, 'count');
		case Op.Min:
			return taken(w, terms, 'MIN', 1);
		case Op.Max:
			return taken(w, terms, 'MAX', 1);
		case Op.Average:
			return taken(w, terms, 'AVERAGE', 1);
		case Op.Median:
			return taken(w, terms, 'MEDIAN', 1);
		case Op.Stdev:
			return taken(w, terms, 'STDEV', 2);
		case Op.ArgMin:
			return place(w, terms, 'MIN');
		case Op.ArgMax:
			return place(w, terms, 'MAX');
		case Op.First:
			return end(w, terms, 'MIN');
		case Op.Last:
			return end(w, terms, 'MAX');
		case Op.Rank:
			return rank(w, terms);
		case Op.Npv:
			return npvPiece(w, terms);
		case Op.Irr:
			return irrPiece(w, terms);
		case Op.Mirr:
			return mirrPiece(w, terms);
		case Op.Percentile:
			return percentilePiece(w, terms);
		case Op.Slope:
		case Op.Intercept:
			return linePiece(w, terms, op === Op.Slope);
		case Op.Payback:
			return paybackPiece(w, terms);
	}
}

/** Aggregates for which a term left out is as good as a neutral one. */
function folded(w: Writer, terms: Terms, name: string, neutral: number, of = 'value'): Piece {
	const truth = name === 'OR' || name === 'AND';
	if (terms.count === 0) return numeral(neutral);
	const value = (i: number): Piece => {
		const piece = valueOf(w, terms, i);
		if (of === 'value') return piece;
		if (w.nodes.op[terms.values[i]!] === Op.Constant) return numeral(1);
		return infix(infix(piece, '*', numeral(0)), '+', numeral(1));
	};
	const pieces = () =>
		terms.values.map((_, i) => {
			const filter = terms.filters[i]!;
			if (filter < 0) return value(i);
			const [test, kept] = w.fit([w.test(filter), value(i)]) as [Piece, Piece];
			return call('IF', [test, kept, numeral(neutral)]);
		});
	const there = of !== 'value' || truth || terms.count < 3 ? null : standing(w, terms);
	if (!there && terms.count <= INLINE) {
		if (truth && !terms.filtered && !terms.placed)
			return call(name, w.fit(terms.values.map((node) => w.test(node))), { truth });
		const fitting = w.fit(pieces());
		if (fitting.length === 1 && !truth) return fitting[0]!;
		return call(name, fitting, { truth });
	}
	const column =
		there ??
		w.column(`${of} ${neutral} ${terms.list} ${terms.count}`, () => ({
			pieces: pieces(),
			gaps: false
		}));
	return call(name, ranges(w, column), { truth });
}

/** Aggregates that have no answer when fewer than `least` terms are left. */
function taken(w: Writer, terms: Terms, name: string, least: number): Piece {
	const nothing = plain(w.literals.noAnswer);
	if (terms.count === 0) return nothing;
	if (terms.count < least && !terms.filtered) return ifGood(valueOf(w, terms, 0), nothing);
	const there = terms.count < 3 ? null : standing(w, terms);
	if (!there && !terms.filtered && terms.count <= INLINE)
		return call(name, w.fit(terms.values.map((_, i) => valueOf(w, terms, i))));
	const column = there ?? valueColumn(w, terms);
	const answer = call(name, ranges(w, column));
	if (!terms.filtered || (least === 1 && !terms.mayBeEmpty)) return answer;
	const left = infix(firstBad(w, column), '+', call('COUNT', ranges(w, column)));
	return call('IF', [infix(left, '<', numeral(least), true), nothing, answer]);
}

/** `then`, or what is bad about a value that is not wanted itself. */
function ifGood(value: Piece, then: Piece): Piece {
	return call('IF', [
		infix(infix(value, '*', numeral(0)), '=', numeral(0), true),
		then,
		numeral(0)
	]);
}

/** The position of the first best term. */
function place(w: Writer, terms: Terms, best: string): Piece {
	if (terms.count === 0) return plain(w.literals.noAnswer);
	const column = valueColumn(w, terms);
	const [range, more] = ranges(w, column);
	if (more) return w.notComparable(TOO_LONG);
	const at = call('MATCH', [call(best, [range!]), range!, numeral(0)]);
	// Bad terms first: MATCH would call an error that it meets "not found".
	const checked = infix(firstBad(w, column), '+', at);
	const known = terms.positions.map((position, i) => {
		if (position < 0) return i;
		return w.nodes.op[position] === Op.Constant ? w.nodes.constants[w.nodes.a[position]!]! : NaN;
	});
	const start = known[0]!;
	const stepping = known.every((position, i) => position === start + i);
	if (stepping) {
		return unlessEmpty(w, column, terms, [], infix(checked, '+', numeral(start - 1)));
	}
	const positions = w.column(`positions ${terms.list} ${terms.count}`, () => ({
		pieces: terms.positions.map((position, i) =>
			position < 0 ? numeral(i) : numeric(w.piece(position))
		),
		gaps: false
	}));
	const answer = call('INDEX', [plain(w.ranges(positions)[0]!), checked]);
	return unlessEmpty(w, column, terms, [], answer);
}

/** The value of the first or the last term that is kept. */
function end(w: Writer, terms: Terms, which: 'MIN' | 'MAX'): Piece {
	if (terms.count === 0) return plain(w.literals.noAnswer);
	const column = valueColumn(w, terms);
	const constants = terms.values.map((node) =>
		w.nodes.op[node] === Op.Constant ? w.nodes.constants[w.nodes.a[node]!]! : NaN
	);
	// Members in set order: the least is the first.
	if (constants.every((value, i) => (i === 0 ? value === value : value > constants[i - 1]!)))
		return unlessEmpty(w, column, terms, [], call(which, ranges(w, column)));
	const [range, more] = ranges(w, column);
	if (more) return w.notComparable(TOO_LONG);
	if (!terms.filtered) {
		const at = which === 'MIN' ? column.places[0]! : column.places.at(-1)!;
		return infix(firstBad(w, column), '+', plain(w.address(column.sheet, at)));
	}
	const numbered = w.column(`numbered ${terms.list} ${terms.count}`, () => ({
		gaps: true,
		pieces: column.places.map((at, i) => {
			const known = call('ISNUMBER', [plain(w.address(column.sheet, at))]);
			return call('IF', [known, numeral(i + 1), plain('""')]);
		})
	}));
	const at = infix(firstBad(w, column), '+', call(which, ranges(w, numbered)));
	return unlessEmpty(w, column, terms, [], call('INDEX', [range!, at]));
}

/** One more than how many are larger. */
function rank(w: Writer, terms: Terms): Piece {
	const x = w.hoist(valued(w.piece(terms.parameters[0]!)));
	if (terms.count === 0) return ifGood(x, plain(w.literals.noAnswer));
	const column = valueColumn(w, terms);
	const larger = ranges(w, column).map((range) =>
		plain(`SUMPRODUCT(ISNUMBER(${range.text})*(${range.text}>${x.text}))`)
	);
	const answer = [...larger, numeral(1)].reduce(
		(sum, piece) => infix(sum, '+', piece),
		firstBad(w, column)
	);
	return unlessEmpty(w, column, terms, [x], answer);
}
