/**
 * Rounding in cells, by the rule of `engine/rounding.ts` and not by a cell program's own: those differ on what counts
 * as whole. Every cell works on the count of steps, zero or more, which stands in a cell of its own. Only FLOOR and
 * CEILING to 1 of such counts are used, on which all cell programs agree.
 */
import { Op } from '$lib/engine/operations';
import { NEAR, NEAREST } from '$lib/engine/rounding';
import { bracketed, infix, numeral, plain, type Piece } from './piece';
import type { Writer } from './writer';

type Rounding = 'down' | 'up' | 'nearest';
const ROUNDINGS: Readonly<Record<number, Rounding>> = {
	[Op.Round]: 'nearest',
	[Op.RoundUp]: 'up',
	[Op.RoundDown]: 'down'
};

const slack = (steps: string) => `MIN(${steps}*${NEAR},${NEAREST})`;

/** A whole number from a count of steps that stands in a cell. */
function whole(steps: string, rounding: Rounding): string {
	switch (rounding) {
		case 'down':
			return `FLOOR(${steps}+${slack(steps)},1)`;
		case 'up':
			// Nothing but the last of all numbers: what is more than none is at least one step.
			return `IF(${steps}>0,MAX(1,CEILING(MAX(0,${steps}-${slack(steps)}),1)),0)`;
		case 'nearest':
			return `FLOOR(${steps},1)+IF(${steps}-FLOOR(${steps},1)>=0.5-${slack(steps)},1,0)`;
	}
}

const text = (formula: string): Piece => ({ ...plain(formula), plain: false, depth: 6 });
const signed = (x: Piece, magnitude: string) => `IF(${x.text}<0,0-(${magnitude}),${magnitude})`;

/** ROUND, ROUNDUP, ROUNDDOWN: digits after the point, or before it by dividing, as 0.01 is no exact number. */
export function digitsPiece(
	w: Writer,
	code: number,
	[value, digits]: readonly [Piece, Piece],
	constant: number | null
): Piece {
	const rounding = ROUNDINGS[code]!;
	const x = w.hoist(value);
	const size = `ABS(${x.text})`;
	/** `tens` multiplies or divides; beyond 2^53 no fraction is left, and the product would overflow on the way. */
	const after = (tens: string, room: string) => {
		const steps = w.hoist(text(`MIN(${size},${room})*${tens}`)).text;
		return `IF(${size}<${room},${signed(x, `(${whole(steps, rounding)})/${tens}`)},${x.text}+0)`;
	};
	const before = (tens: string) => {
		const steps = w.hoist(text(`${size}/${tens}`)).text;
		// Divided down to nothing, it is still more than none.
		const none = rounding === 'up' ? `IF(${size}>0,${tens},0)` : '0';
		return signed(x, `IF(${steps}=0,${none},(${whole(steps, rounding)})*${tens})`);
	};
	if (constant !== null && Number.isInteger(constant)) {
		const tens = 10 ** Math.abs(constant);
		if (constant >= 0)
			return Number.isFinite(tens)
				? text(after(String(tens), String(2 ** 53 / tens)))
				: infix(x, '+', numeral(0));
		return text(Number.isFinite(tens) ? before(String(tens)) : beyondAll(w, rounding, x));
	}
	const n = w.hoist(digits);
	const isWhole = `${x.text}*0+${n.text}=FLOOR(ABS(${n.text}),1)*IF(${n.text}<0,0-1,1)`;
	const tens = w.hoist(text(`10^MIN(ABS(${n.text}),308)`)).text;
	const room = w.hoist(text(`9007199254740992/${tens}`)).text;
	const many = `IF(${n.text}<0-308,${beyondAll(w, rounding, x)},${before(tens)})`;
	const few = `IF(${n.text}>308,${x.text}+0,${after(tens, room)})`;
	return text(`IF(${isWhole},IF(${n.text}<0,${many},${few}),${w.literals.fault})`);
}

/** A multiple of more than any number: zero, or rounded up, unless there is nothing to round, too large. */
const beyondAll = (w: Writer, rounding: Rounding, x: Piece) =>
	rounding === 'up' ? `IF(${x.text}=0,0,${w.literals.fault})` : `${bracketed(x)}*0`;

/** CEILING and FLOOR. */
export function multiplePiece(w: Writer, ceiling: boolean, pieces: readonly [Piece, Piece]): Piece {
	const [x, step] = pieces.map((piece) => w.hoist(piece)) as [Piece, Piece];
	const steps = w.hoist(text(`ABS(${x.text}/${bracketed(step)})`)).text;
	const size = `ABS(${step.text})`;
	const above = `(${whole(steps, ceiling ? 'up' : 'down')})*${size}`;
	const below = `0-(${whole(steps, ceiling ? 'down' : 'up')})*${size}`;
	const refused = `AND(${x.text}>0,${bracketed(step)}<0)`;
	const none = `OR(${x.text}=0,${bracketed(step)}=0)`;
	return text(`IF(${none},0,IF(${refused},${w.literals.fault},IF(${x.text}>0,${above},${below})))`);
}

/** MOD: nothing where the quotient counts as whole, unless both are whole numbers and the remainder is exact. */
export function remainderPiece(w: Writer, pieces: readonly [Piece, Piece]): Piece {
	const [x, divisor] = pieces.map((piece) => w.hoist(piece)) as [Piece, Piece];
	const steps = w.hoist(text(`ABS(${x.text}/${bracketed(divisor)})`)).text;
	const nearest = `FLOOR(${steps}+0.5,1)`;
	const exact = [x, divisor]
		.map((piece) => `ABS(${piece.text})=FLOOR(ABS(${piece.text}),1)`)
		.join(',');
	const isWhole = `AND(ABS(${steps}-${nearest})<=${slack(steps)},NOT(AND(${exact})))`;
	const none = `${x.text}*0+${bracketed(divisor)}=0`;
	return text(`IF(${none},${w.literals.fault},IF(${isWhole},0,MOD(${x.text},${divisor.text})))`);
}
