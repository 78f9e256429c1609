/**
 * Present value, rates of return and payback in cells.
 *
 * A rate of return counts only where it is the one rate above −100 %. Cells cannot list all roots; what they can
 * prove is that there is exactly one (one change of sign in the flows; or one in the running totals from
 * the front and from the back together, which bounds the rates above and below zero by Descartes' rule), or
 * that their number is even (an even number of changes). Between those they say that they cannot judge.
 */

import { call, infix, numeral, plain, valued, type Piece } from './piece';
import { firstBad, ranges, TOO_LONG, unlessEmpty, valueColumn, type Terms } from './terms';
import type { Column, Writer } from './writer';

const zero = numeral(0);
const minusOne = numeral(-1);
const timesZero = (piece: Piece) => infix(piece, '*', zero);

/** Errors of the terms, then of the parameters, in that order; else zero. */
function bad(w: Writer, column: Column, parameters: readonly Piece[]): Piece {
	return parameters.reduce(
		(sum, parameter) => infix(sum, '+', timesZero(parameter)),
		firstBad(w, column)
	);
}

export function npvPiece(w: Writer, terms: Terms): Piece {
	const rate = w.hoist(valued(w.piece(terms.parameters[0]!)));
	const nothing = plain(w.literals.noAnswer);
	if (terms.count === 0)
		return call('IF', [infix(timesZero(rate), '=', zero, true), nothing, zero]);
	const column = valueColumn(w, terms);
	const known = infix(firstBad(w, column), '+', rate);
	const answer = call('IF', [
		infix(known, '=', minusOne, true),
		plain(w.literals.dividesByZero),
		call('IF', [
			infix(rate, '<', minusOne, true),
			plain(w.literals.fault),
			call('NPV', [rate, ...ranges(w, column)])
		])
	]);
	return unlessEmpty(w, column, terms, [rate], answer);
}

/** True where the flows never change sign, or there are none. */
function oneSided(w: Writer, column: Column, parameters: readonly Piece[]): Piece {
	const all = ranges(w, column);
	const most = infix(bad(w, column, parameters), '+', call('MAX', all));
	return call('OR', [infix(most, '<=', zero, true), infix(call('MIN', all), '>=', zero, true)], {
		truth: true
	});
}

export function mirrPiece(w: Writer, terms: Terms): Piece {
	const [finance, reinvest] = terms.parameters.map((node) => w.hoist(valued(w.piece(node)))) as [
		Piece,
		Piece
	];
	const nothing = plain(w.literals.noAnswer);
	if (terms.count === 0) {
		const good = infix(infix(timesZero(finance), '+', timesZero(reinvest)), '=', zero, true);
		return call('IF', [good, nothing, zero]);
	}
	const column = valueColumn(w, terms);
	const range = onlyRange(w, column);
	if (!range) return w.notComparable(TOO_LONG);
	const isRefused = call(
		'OR',
		[infix(finance, '<', minusOne, true), infix(reinvest, '<=', minusOne, true)],
		{ truth: true }
	);
	const answer = call('IF', [
		isRefused,
		plain(w.literals.fault),
		call('MIRR', [range, finance, reinvest])
	]);
	return call('IF', [
		oneSided(w, column, [finance, reinvest]),
		nothing,
		call('IF', [infix(finance, '=', minusOne, true), plain(w.literals.dividesByZero), answer])
	]);
}

function onlyRange(w: Writer, column: Column): Piece | null {
	const all = ranges(w, column);
	return all.length === 1 ? all[0]! : null;
}

/** First guesses: Newton's method from the one before did not settle. */
const GUESSES = [0.1, -0.5, -0.9, 1, 10, 100];

export function irrPiece(w: Writer, terms: Terms): Piece {
	const nothing = plain(w.literals.noAnswer);
	if (terms.count === 0) return nothing;
	const flows = valueColumn(w, terms);
	const range = onlyRange(w, flows);
	if (!range) return w.notComparable(TOO_LONG);
	const notCompared = w.notComparable(
		'its flows change sign more than once, and the second engine cannot tell whether its rate of return is the only one'
	);
	const key = `${terms.list} ${terms.count}`;
	const flow = (i: number) => w.address(flows.sheet, flows.places[i]!);
	const n = terms.count;
	const column = (name: string, text: (i: number) => string) =>
		w.column(`${name} ${key}`, () => ({
			pieces: Array.from({ length: n }, (_, i) => plain(text(i))),
			gaps: false
		}));
	/** Each cell may read its neighbour, so the places must be known before the texts. */
	const chain = (name: string, text: (at: (i: number) => string, i: number) => string) => {
		const places = w.grid.allot(n);
		const at = (i: number) => w.address(w.sheet, places[i]!);
		places.forEach((place, i) => w.grid.put(place, `=${text(at, i)}`));
		return { at, places, sheet: w.sheet, gaps: false, name };
	};

	// The flows as thousandths of the largest: the function stops at a fixed distance from zero.
	const largest = w.hoist(
		call('MAX', [call('MAX', [range]), infix(zero, '-', call('MIN', [range]))])
	);
	const scaled = column(
		'scaled',
		(i) => `IF(ISNUMBER(${flow(i)}),${flow(i)}/${largest.text}*1000,"")`
	);
	const forward = chain('forward', (at, i) =>
		i ? `SUM(${at(i - 1)},${flow(i)})` : `SUM(${flow(i)})`
	);
	const backward = chain('backward', (at, i) =>
		i < n - 1 ? `SUM(${at(i + 1)},${flow(i)})` : `SUM(${flow(i)})`
	);
	const changes = (name: string, value: (i: number) => string): Piece => {
		const signs = chain(name, (at, i) => {
			const sign = `SIGN(SUM(${value(i)}))`;
			return i ? `IF(${sign}=0,${at(i - 1)},${sign})` : sign;
		});
		if (n < 2) return zero;
		const [before] = w.ranges(signs, 0, n - 2);
		const [after] = w.ranges(signs, 1, n - 1);
		return w.hoist(plainCall(`SUMPRODUCT((${before}*${after}<0)*1)`));
	};
	const inFlows = changes('signs', flow);
	const inTotals = infix(changes('front', forward.at), '+', changes('back', backward.at));

	const scaledRange = w.ranges(scaled)[0]!;
	const rate = w.hoist(
		plainCall(
			GUESSES.reduceRight(
				(otherwise, guess) => `IFERROR(IRR(${scaledRange},${guess}),${otherwise})`,
				w.literals.notCompared
			)
		)
	);
	const unequal = `ABS(${forward.at(n - 1)})>1e-9*${largest.text}`;
	const unique = plainCall(`OR(${inFlows.text}=1,AND(${unequal},${inTotals.text}=1))`);
	// An even number of roots is no unique one, unless two fall together: then the value does not change sign.
	const beside = (sign: string) => `NPV(${rate.text}${sign}(1+${rate.text})*1e-4,${scaledRange})`;
	const touching = `IFERROR(${beside('+')}*${beside('-')}>=0,FALSE())`;
	const even = plainCall(
		`IF(MOD(${inFlows.text},2)=1,${notCompared.text},IF(${touching},${notCompared.text},${nothing.text}))`
	);
	return call('IF', [oneSided(w, flows, []), nothing, call('IF', [unique, rate, w.hoist(even)])]);
}

/** Text that calls a function. */
const plainCall = (text: string): Piece => ({ ...plain(text), plain: false, depth: 8 });

export function paybackPiece(w: Writer, terms: Terms): Piece {
	const nothing = plain(w.literals.noAnswer);
	if (terms.count === 0) return nothing;
	if (terms.filtered) return w.notComparable('it leaves flows out by a filter that can change');
	const flows = valueColumn(w, terms);
	const n = terms.count;
	const good = infix(firstBad(w, flows), '=', zero, true);
	if (n < 2) return call('IF', [good, nothing, zero]);
	const flow = (i: number) => w.address(flows.sheet, flows.places[i]!);
	const totals = w.grid.allot(n);
	const total = (i: number) => w.address(w.sheet, totals[i]!);
	totals.forEach((place, i) =>
		w.grid.put(place, i ? `=${total(i - 1)}+${flow(i)}` : `=${flow(i)}+0`)
	);
	const position = (i: number) => {
		const node = terms.positions[i]!;
		return node < 0 ? String(i) : w.hoist(valued(w.piece(node))).text;
	};
	const crossing = (i: number) => `AND(${total(i)}<0,${total(i + 1)}>=0)`;
	const build = (name: string, text: (i: number) => string) =>
		w.column(`${name} ${terms.list} ${n}`, () => ({
			pieces: Array.from({ length: n - 1 }, (_, i) => plain(text(i))),
			gaps: true
		}));
	const answers = build('payback', (i) => {
		const from = position(i);
		const within = `(0-${total(i)})/${flow(i + 1)}*(${position(i + 1)}-${from})`;
		return `IF(${crossing(i)},${from}+${within},"")`;
	});
	const flags = build('crossing', (i) => `IF(${crossing(i)},1,0)`);
	const [answerRange, more] = ranges(w, answers);
	if (more) return w.notComparable(TOO_LONG);
	const found = infix(
		infix(firstBad(w, flows), '+', timesZero(call('MIN', ranges(w, flags)))),
		'+',
		call('COUNT', [answerRange!])
	);
	const first = call('MATCH', [numeral(1), ranges(w, flags)[0]!, zero]);
	return call('IF', [infix(found, '=', zero, true), nothing, call('INDEX', [answerRange!, first])]);
}
