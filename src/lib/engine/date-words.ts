/** What is wrong with the operands of a date, or of a member's place: the second half of a sentence. */
import { Op } from './operations';

const SPAN = 'dates run from 1900-03-01 to 9999-12-31';

/** Null for every other operation. `first` and `second` are the operands in words. */
export function dateFault(
	op: number,
	first: string,
	second: string,
	set: { readonly name: string; readonly size: string }
): string | null {
	switch (op) {
		case Op.YearOf:
		case Op.MonthOf:
		case Op.DayOf:
		case Op.IsoWeek:
			return `takes ${first} as a date; ${SPAN}, as days since 1899-12-30`;
		case Op.Weekday:
			return `takes the weekday of ${first} by type ${second}; ${SPAN}, and a type is 1, 2 or 3, or 11 to 17`;
		case Op.FirstOfMonth:
			return `makes a date of year ${first} and month ${second}; ${SPAN}`;
		case Op.DayFrom:
			return `makes a date with day ${second} of a month, which comes to lie outside: ${SPAN}`;
		case Op.MemberAt:
			return `takes the member of ${set.name} at place ${first}; the places of ${set.name} are the whole numbers from 1 to ${set.size}`;
		default:
			return null;
	}
}
