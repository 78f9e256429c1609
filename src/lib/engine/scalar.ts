/**
 * The operations on one or two numbers, element by element: `compute` gives the number, and where it
 * gives none that is finite, `failureOf` says why. Both the screen's single column and the blocks
 * of a study end here, so a zero divisor fails alike in both, and so does what the planner does at once. States
 * belong to `interpreter/machine.ts`.
 */
import { BAD_ARGUMENT, DIVIDES_BY_ZERO, NOT_A_REAL, TOO_LARGE, type State } from './state';
import { normalDensity, normalQuantile, normalShare } from './normal';
import { Op, type ScalarOp } from './operations';
import { down, nearest, remainder, toDigits, toMultiple, up } from './rounding';
import {
	dayFrom,
	dayOf,
	firstOfMonth,
	isoWeek,
	monthOf,
	weekday,
	yearOf
} from '$lib/workbook/dates';

/** The result for operands that both have a value; a unary operation ignores y. NaN or infinite: it has none. */
export function compute(op: ScalarOp, x: number, y: number): number {
	switch (op) {
		case Op.Add:
			return x + y;
		case Op.Subtract:
			return x - y;
		case Op.Multiply:
			return x * y;
		case Op.Divide:
			return x / y;
		case Op.Power:
			return Math.pow(x, y);
		case Op.Negate:
			return -x;
		case Op.Equal:
			return x === y ? 1 : 0;
		case Op.NotEqual:
			return x !== y ? 1 : 0;
		case Op.Less:
			return x < y ? 1 : 0;
		case Op.LessOrEqual:
			return x <= y ? 1 : 0;
		case Op.Greater:
			return x > y ? 1 : 0;
		case Op.GreaterOrEqual:
			return x >= y ? 1 : 0;
		case Op.Not:
			return x === 0 ? 1 : 0;
		case Op.Abs:
			return Math.abs(x);
		case Op.Sqrt:
			return Math.sqrt(x);
		case Op.Exp:
			return Math.exp(x);
		case Op.Ln:
			return Math.log(x);
		case Op.Round:
			return toDigits(x, y, nearest);
		case Op.RoundUp:
			return toDigits(x, y, up);
		case Op.RoundDown:
			return toDigits(x, y, down);
		case Op.Ceiling:
			return toMultiple(x, y, true);
		case Op.Floor:
			return toMultiple(x, y, false);
		case Op.Mod:
			return remainder(x, y);
		case Op.YearOf:
			return yearOf(x);
		case Op.MonthOf:
			return monthOf(x);
		case Op.DayOf:
			return dayOf(x);
		case Op.IsoWeek:
			return isoWeek(x);
		case Op.Weekday:
			return weekday(x, y);
		case Op.FirstOfMonth:
			return firstOfMonth(x, y);
		case Op.DayFrom:
			return dayFrom(x, y);
		case Op.MemberAt:
			return Number.isInteger(x) && x >= 1 && x <= y ? x - 1 : NaN;
		case Op.Spread:
			return x > 0 ? x : NaN;
		case Op.NormalDensity:
			return normalDensity(x);
		case Op.NormalShare:
			return normalShare(x);
		case Op.NormalQuantile:
			return x > 0 && x < 1 ? normalQuantile(x) : NaN;
	}
}

/** Why `compute` gave no finite number for these operands. */
export function failureOf(op: ScalarOp, x: number, y: number): State {
	switch (op) {
		case Op.Divide:
			return y === 0 ? DIVIDES_BY_ZERO : TOO_LARGE;
		case Op.Power:
			return (x < 0 && !Number.isInteger(y)) || (x === 0 && y < 0) ? NOT_A_REAL : TOO_LARGE;
		case Op.Sqrt:
			return NOT_A_REAL;
		case Op.Ln:
			return NOT_A_REAL;
		case Op.Round:
		case Op.RoundUp:
		case Op.RoundDown:
			return Number.isInteger(y) ? TOO_LARGE : BAD_ARGUMENT;
		case Op.Ceiling:
		case Op.Floor:
			return x > 0 && y < 0 ? BAD_ARGUMENT : TOO_LARGE;
		case Op.Mod:
		case Op.YearOf:
		case Op.MonthOf:
		case Op.DayOf:
		case Op.IsoWeek:
		case Op.Weekday:
		case Op.FirstOfMonth:
		case Op.DayFrom:
		case Op.MemberAt:
		case Op.Spread:
		case Op.NormalQuantile:
			return BAD_ARGUMENT;
		default:
			return TOO_LARGE;
	}
}
