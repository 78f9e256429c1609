/**
 * How operations on one or a few values are written in cells, where a cell program's own function means the
 * same, and as arithmetic where it does not. Rounding is in `rounding.ts`, dates in `dates.ts`,
 * the normal distribution in `normal.ts`.
 *
 * Whichever operand is bad first must win, so a test that looks at a later operand begins with the earlier
 * ones ("x*0+step=0").
 */
import { Op, type AggregateOp } from '$lib/engine/operations';
import { NO_ANSWER, OFF_END } from '$lib/engine/state';
import { datePiece } from './dates';
import { literalOf } from './literals';
import { normalPiece } from './normal';
import { call, infix, numeral, numeric, plain, valued, type Piece } from './piece';
import { digitsPiece, multiplePiece, remainderPiece } from './rounding';
import type { Writer } from './writer';

const OPERATORS = {
	[Op.Add]: '+',
	[Op.Subtract]: '-',
	[Op.Multiply]: '*',
	[Op.Divide]: '/',
	[Op.Power]: '^'
} as const;

const COMPARISONS = {
	[Op.Equal]: '=',
	[Op.NotEqual]: '<>',
	[Op.Less]: '<',
	[Op.LessOrEqual]: '<=',
	[Op.Greater]: '>',
	[Op.GreaterOrEqual]: '>='
} as const;

const FUNCTIONS = {
	[Op.Abs]: 'ABS',
	[Op.Sqrt]: 'SQRT',
	[Op.Exp]: 'EXP',
	[Op.Ln]: 'LN'
} as const;

/** Beyond so many, what is chosen from stands in a column. */
const INLINE = 16;

export function scalarPiece(w: Writer, node: number): Piece {
	const { op, a, b, lists, constants } = w.nodes;
	// `isAggregate` has not chosen this module.
	const code = op[node] as Exclude<Op, AggregateOp>;
	const first = a[node]!;
	const second = b[node]!;
	switch (code) {
		case Op.Constant:
			return numeral(constants[first]!);
		case Op.Cell:
			return w.reference(first, second);
		case Op.Nothing:
			return plain(literalOf(w.literals, first), w.facts.mayBeAbsent(node));
		case Op.Negate: {
			const [x] = w.fit([valued(w.piece(first))]) as [Piece];
			return { ...infix(plain(''), '-', x), absent: false };
		}
		case Op.And:
		case Op.Or:
			return junction(w, code === Op.And ? 'AND' : 'OR', first, second);
		case Op.Not:
			return call('NOT', w.fit([w.test(first)]), { truth: true });
		case Op.If:
			return choice(w, lists[first]!, lists[first + 1]!, lists[first + 2]!);
		case Op.IfError: {
			const [x, y] = w.fit([numeric(w.piece(first)), numeric(w.piece(second))]) as [Piece, Piece];
			if (!x.absent) return call('IFERROR', [x, y], { absent: y.absent });
			const held = w.hoist(x);
			return call('IF', [call('ISNUMBER', [held]), held, y], { absent: y.absent });
		}
		case Op.Guard: {
			const [test, value] = w.fit([w.test(first), numeric(w.piece(second))]) as [Piece, Piece];
			return call('IF', [test, value, plain(w.literals.absent)], { absent: true });
		}
		case Op.Present:
			if (!w.facts.mayBeAbsent(first)) return numeral(1);
			return call('NOT', [call('ISTEXT', [w.piece(first)])], { truth: true });
		case Op.InRange:
			return inRange(w, first, second);
		case Op.OrElse: {
			const [x, y] = w.fit([numeric(w.piece(first)), numeric(w.piece(second))]) as [Piece, Piece];
			// A neighbour that is off the end whatever happens needs no test.
			if (op[first] === Op.Nothing && (a[first] === OFF_END || a[first] === NO_ANSWER)) return y;
			return call('IFNA', [x, y], { absent: x.absent || y.absent });
		}
		case Op.Pick:
			return pick(w, first, second);
		case Op.Round:
		case Op.RoundUp:
		case Op.RoundDown:
			return digitsPiece(w, code, operands(w, first, second), constantOf(w, second));
		case Op.Ceiling:
		case Op.Floor:
			return multiplePiece(w, code === Op.Ceiling, operands(w, first, second));
		case Op.Mod:
			return remainderPiece(w, operands(w, first, second));
		case Op.YearOf:
		case Op.MonthOf:
		case Op.DayOf:
		case Op.IsoWeek:
			return datePiece(w, code, valued(w.piece(first)));
		case Op.Weekday:
		case Op.FirstOfMonth:
		case Op.DayFrom:
		case Op.MemberAt:
			return datePiece(w, code, ...operands(w, first, second));
		case Op.Spread:
		case Op.NormalDensity:
		case Op.NormalShare:
		case Op.NormalQuantile:
			return normalPiece(w, code, valued(w.piece(first)));
		case Op.Abs:
		case Op.Sqrt:
		case Op.Exp:
		case Op.Ln:
			return call(FUNCTIONS[code], w.fit([numeric(w.piece(first))]));
		case Op.Equal:
		case Op.NotEqual:
		case Op.Less:
		case Op.LessOrEqual:
		case Op.Greater:
		case Op.GreaterOrEqual:
			return compared(COMPARISONS[code], ...operands(w, first, second));
		case Op.Add:
		case Op.Subtract:
		case Op.Multiply:
		case Op.Divide:
		case Op.Power: {
			// Arithmetic on the text of an absent value is an error of itself, but one on its right would win.
			const [x, y] = w.fit([valued(w.piece(first)), numeric(w.piece(second))]) as [Piece, Piece];
			return infix(x, OPERATORS[code], y);
		}
	}
}

const compared = (operator: string, x: Piece, y: Piece) => infix(x, operator, y, true);

function constantOf(w: Writer, node: number): number | null {
	return w.nodes.op[node] === Op.Constant ? w.nodes.constants[w.nodes.a[node]!]! : null;
}

function operands(w: Writer, first: number, second: number): [Piece, Piece] {
	return w.fit([valued(w.piece(first)), valued(w.piece(second))]) as [Piece, Piece];
}

function junction(w: Writer, name: string, list: number, count: number): Piece {
	if (count === 0) return numeral(name === 'AND' ? 1 : 0);
	if (count <= INLINE) return call(name, w.fit(w.tests(list, count)), { truth: true });
	const column = w.column(`junction ${list} ${count}`, () => ({
		pieces: w.pieces(list, count).map(valued),
		gaps: false
	}));
	return call(
		name,
		w.ranges(column).map((range) => plain(range)),
		{ truth: true }
	);
}

function choice(w: Writer, test: number, yes: number, no: number): Piece {
	const pieces = [w.test(test), numeric(w.piece(yes)), numeric(w.piece(no))];
	const [asked, then, otherwise] = w.fit(pieces) as [Piece, Piece, Piece];
	return call('IF', [asked, then, otherwise], { absent: then.absent || otherwise.absent });
}

function inRange(w: Writer, value: number, limits: number): Piece {
	const x = w.hoist(numeric(w.piece(value)));
	const tests: Piece[] = [];
	['>=', '<=', '>', '<'].forEach((operator, i) => {
		const limit = w.nodes.lists[limits + i]!;
		if (limit < 0) return;
		tests.push(infix(x, operator, numeral(w.nodes.constants[limit]!), true));
	});
	if (tests.length === 0) return x;
	const test = tests.length === 1 ? tests[0]! : call('AND', tests, { truth: true });
	const inside = call('IF', [test, x, plain(w.literals.fault)]);
	return x.absent ? call('IF', [call('ISTEXT', [x]), x, inside], { absent: true }) : inside;
}

function pick(w: Writer, selector: number, list: number): Piece {
	const { lists } = w.nodes;
	const count = lists[list]!;
	const options = Array.from(lists.subarray(list + 1, list + 1 + count));
	const place = infix(valued(w.piece(selector)), '+', numeral(1));
	if (count === 0) return call('IF', [place, plain(w.literals.fault), plain(w.literals.fault)]);
	const absent = options.some((option) => option >= 0 && w.facts.mayBeAbsent(option));
	const standing = count > 2 ? w.standing(options.filter((node) => node >= 0)) : null;
	const option = (node: number) => (node < 0 ? plain(w.literals.fault) : numeric(w.piece(node)));
	if (!(standing && standing.places.length === count) && count <= INLINE)
		return call('CHOOSE', w.fit([place, ...options.map(option)]), { absent });
	const column =
		standing?.places.length === count
			? standing
			: w.column(`pick ${list}`, () => ({ pieces: options.map(option), gaps: false }));
	const ranges = w.ranges(column);
	if (ranges.length > 1)
		return w.notComparable(
			'it chooses among more members than one column of the second engine holds'
		);
	return call('INDEX', [plain(ranges[0]!), ...w.fit([place])], { absent });
}
