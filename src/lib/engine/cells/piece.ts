/**
 * Pieces of formula text, and how they are put together: brackets where they are needed, and a count
 * of how deep they nest, so that `Writer` can move a piece into a cell of its own before it is too deep.
 */

export interface Piece {
	readonly text: string;
	/** Needs no brackets as an operand: a reference, a number, a function call. */
	readonly atom: boolean;
	/** A cell or a constant: nothing is gained by giving it a cell of its own. */
	readonly plain: boolean;
	/** Brackets within brackets. */
	readonly depth: number;
	/** A comparison or the like, which is TRUE or FALSE until `numeric` makes it 1 or 0. */
	readonly truth: boolean;
	/** May be the text that stands for an absent value. */
	readonly absent: boolean;
}

export const plain = (text: string, absent = false): Piece => ({
	text,
	atom: true,
	plain: true,
	depth: 0,
	truth: false,
	absent
});

/** Shortest text that reads back as the same number; "e" in lower case. */
export const numeral = (value: number): Piece =>
	value < 0
		? { ...plain(String(value)), atom: false }
		: plain(Object.is(value, -0) ? '0' : String(value));

const deepest = (pieces: readonly Piece[]) =>
	pieces.reduce((most, piece) => Math.max(most, piece.depth), 0);

/** NAME(a,b,…) */
export const call = (
	name: string,
	pieces: readonly Piece[],
	is: { truth?: boolean; absent?: boolean } = {}
): Piece => ({
	text: `${name}(${pieces.map((piece) => piece.text).join(',')})`,
	atom: true,
	plain: false,
	depth: deepest(pieces) + 1,
	truth: is.truth ?? false,
	absent: is.absent ?? false
});

/** a + b, each in brackets unless it is an atom. */
export const infix = (left: Piece, operator: string, right: Piece, truth = false): Piece => ({
	text: bracketed(left) + operator + bracketed(right),
	atom: false,
	plain: false,
	depth: deepest([left, right]) + 1,
	truth,
	absent: false
});

export const bracketed = (piece: Piece) => (piece.atom ? piece.text : `(${piece.text})`);

/** As a number: 1 or 0 for a truth. */
export const numeric = (piece: Piece): Piece =>
	piece.truth
		? {
				text: `IF(${piece.text},1,0)`,
				atom: true,
				plain: false,
				depth: piece.depth + 1,
				truth: false,
				absent: false
			}
		: piece;

/** As a number or an error: an absent value, which is text, becomes an error. */
export const valued = (piece: Piece): Piece =>
	piece.absent ? infix(piece, '+', plain('0')) : numeric(piece);
