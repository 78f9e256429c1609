/**
 * Dates in cells. Cell programs have the functions, but accept years, types and days that have no place here,
 * and do not all number the last days of a year as ISO 8601 does; so each is asked only within its bounds, and
 * the week is counted by its Thursday.
 */
import { FIRST_DATE, LAST_DATE } from '$lib/workbook/dates';
import { Op } from '$lib/engine/operations';
import { bracketed, call, infix, numeral, plain, type Piece } from './piece';
import type { Writer } from './writer';

const OF_ONE: Readonly<Record<number, string>> = {
	[Op.YearOf]: 'YEAR',
	[Op.MonthOf]: 'MONTH',
	[Op.DayOf]: 'DAY'
};

/** The second operand is left out of what takes one. */
export function datePiece(w: Writer, code: number, first: Piece, second?: Piece): Piece {
	const x = w.hoist(first);
	const name = OF_ONE[code];
	if (name) return ifDate(w, x, call(name, [x]));
	if (code === Op.IsoWeek) return ifDate(w, x, week(w, x));
	const y = w.hoist(second ?? numeral(0));
	// The first operand's error must win over the second's.
	const both = infix(x, '+', infix(y, '*', numeral(0)));
	const fault = plain(w.literals.fault);
	switch (code) {
		case Op.Weekday: {
			const known = plain(`OR(${y.text}=1,${y.text}=2,${y.text}=3,${sevenMore(y.text)})`);
			const type = call('IF', [known, call('WEEKDAY', [x, y]), fault]);
			return call('IF', [within(both), type, fault]);
		}
		case Op.FirstOfMonth: {
			const year = call('AND', [
				infix(both, '>=', numeral(1900), true),
				infix(x, '<', numeral(10000), true)
			]);
			return call('IF', [year, call('DATE', [x, y, numeral(1)]), fault]);
		}
		case Op.DayFrom: {
			const whole = call('ROUNDDOWN', [y, numeral(0)]);
			const date = w.hoist(infix(infix(x, '+', whole), '-', numeral(1)));
			return ifDate(w, date, date);
		}
		default: {
			const place = plain(`AND(${both.text}>=1,${x.text}<=${y.text},${x.text}=FLOOR(${x.text},1))`);
			const member = infix(x, '-', numeral(1));
			return call('IF', [
				infix(both, '>=', numeral(1), true),
				call('IF', [place, member, fault]),
				fault
			]);
		}
	}
}

const sevenMore = (type: string) =>
	[11, 12, 13, 14, 15, 16, 17].map((one) => `${type}=${one}`).join();

const within = (date: Piece): Piece =>
	plain(`AND(${date.text}>=${FIRST_DATE},${date.text}<${LAST_DATE + 1})`);

const ifDate = (w: Writer, date: Piece, then: Piece): Piece =>
	call('IF', [within(date), then, plain(w.literals.fault)]);

function week(w: Writer, date: Piece): Piece {
	const whole = call('FLOOR', [date, numeral(1)]);
	const toThursday = `4-WEEKDAY(${date.text},2)`;
	const thursday = w.hoist(plainly(`${whole.text}+${toThursday}`));
	const start = `DATE(YEAR(${thursday.text}),1,1)`;
	return plainly(`ROUNDDOWN((${bracketed(thursday)}-${start})/7,0)+1`);
}

/** Text that is worth a cell of its own. */
const plainly = (text: string): Piece => ({ ...plain(text), plain: false, atom: false, depth: 3 });
