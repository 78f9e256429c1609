/**
 * Percentiles and the straight line of least squares in cells. Deviations from the means stand in columns of
 * their own: what functions for the line do inside is not said, and figures far from zero would show it.
 */
import { call, infix, numeral, numeric, plain, valued, type Piece } from './piece';
import { firstBad, ranges, TOO_LONG, unlessEmpty, valueColumn, type Terms } from './terms';
import type { Column, Writer } from './writer';

export function percentilePiece(w: Writer, terms: Terms): Piece {
	const share = w.hoist(valued(w.piece(terms.parameters[0]!)));
	const nothing = plain(w.literals.noAnswer);
	const zero = numeral(0);
	if (terms.count === 0) return call('IF', [infix(share, '=', share, true), nothing, zero]);
	const column = valueColumn(w, terms);
	const [range, more] = ranges(w, column);
	if (more) return w.notComparable(TOO_LONG);
	const good = infix(firstBad(w, column), '+', share);
	const inside = call('AND', [infix(good, '>=', zero, true), infix(share, '<=', numeral(1), true)]);
	const last = w.hoist(infix(call('COUNT', [range!]), '-', numeral(1)));
	const place = w.hoist(infix(share, '*', last));
	const below = w.hoist(plainly(`FLOOR(${place.text},1)`));
	const low = w.hoist(plainly(`SMALL(${range!.text},${below.text}+1)`));
	const high = `SMALL(${range!.text},MIN(${below.text}+1,${last.text})+1)`;
	const value = plainly(`${low.text}+(${place.text}-${below.text})*(${high}-${low.text})`);
	const answer = call('IF', [inside, value, plain(w.literals.fault)]);
	return unlessEmpty(w, column, terms, [share], answer);
}

/** The values are y, the positions x. */
export function linePiece(w: Writer, terms: Terms, isSlope: boolean): Piece {
	const nothing = plain(w.literals.noAnswer);
	if (terms.count === 0) return nothing;
	const ys = valueColumn(w, terms);
	const key = `${terms.list} ${terms.count}`;
	const xs = w.column(`paired ${key}`, () => ({
		gaps: terms.filtered,
		pieces: terms.positions.map((position, i) => {
			const x = numeric(w.piece(position));
			const filter = terms.filters[i]!;
			return filter < 0 ? x : call('IF', [w.test(filter), x, plain('""')]);
		})
	}));
	const [yRange, moreY] = ranges(w, ys);
	const [xRange, moreX] = ranges(w, xs);
	if (moreY || moreX) return w.notComparable(TOO_LONG);
	const mean = (range: Piece) => w.hoist(call('AVERAGE', [range]));
	const [y, x] = [mean(yRange!), mean(xRange!)];
	const dy = deviations(w, `dy ${key}`, ys, y);
	const dx = deviations(w, `dx ${key}`, xs, x);
	const slope = plainly(`SUMPRODUCT(${dx.text},${dy.text})/SUMSQ(${dx.text})`);
	const answer = isSlope ? slope : infix(y, '-', infix(slope, '*', x));
	const pairs = infix(firstBad(w, ys), '+', call('COUNT', [yRange!]));
	const same = infix(call('MAX', [xRange!]), '=', call('MIN', [xRange!]), true);
	const line = call('IF', [same, plain(w.literals.dividesByZero), answer]);
	return call('IF', [infix(pairs, '<', numeral(2), true), nothing, line]);
}

/** A column of differences from a mean, 0 for a term left out. */
function deviations(w: Writer, key: string, of: Column, mean: Piece): Piece {
	const column = w.column(key, () => ({
		gaps: false,
		pieces: of.places.map((place) => {
			const at = w.address(of.sheet, place);
			return plain(of.gaps ? `IF(ISNUMBER(${at}),${at}-${mean.text},0)` : `${at}-${mean.text}`);
		})
	}));
	return ranges(w, column)[0]!;
}

/** Text that is worth a cell of its own. */
const plainly = (text: string): Piece => ({ ...plain(text), plain: false, atom: false, depth: 4 });
