/**
 * Net present value, rate of return, modified rate of return and payback of a row of cash flows, one
 * period apart. They answer with a number or a state (see `state.ts`) in `fault`.
 *
 * The rate of return is given only where it is the one rate above −100 % at which the present value is
 * zero: all of them are counted, see `roots.ts`.
 */
import {
	BAD_ARGUMENT,
	DIVIDES_BY_ZERO,
	NO_ANSWER,
	NOT_A_REAL,
	OK,
	TOO_LARGE,
	type State
} from '$lib/engine/state';
import { presentValueRates } from './roots';

export interface FinanceValue {
	value: number;
	/** OK, or why there is no value. */
	fault: State;
}

const answer = (value: number): FinanceValue => ({ value, fault: OK });
const none = (fault: State): FinanceValue => ({ value: NaN, fault });
const finite = (value: number): FinanceValue =>
	Number.isFinite(value) ? answer(value) : none(Number.isNaN(value) ? NOT_A_REAL : TOO_LARGE);

/**
 * The value today of flows at the end of period 1, 2, 3 …: OpenFormula's meaning. A flow today is added
 * outside: npv(0.1, [110], 1) is 100.
 */
export function npv(rate: number, flows: ArrayLike<number>, count: number): FinanceValue {
	if (count === 0) return none(NO_ANSWER);
	if (rate === -1) return none(DIVIDES_BY_ZERO);
	if (rate < -1) return none(BAD_ARGUMENT);
	let total = 0;
	for (let i = 0; i < count; i++) total += flows[i]! / Math.pow(1 + rate, i + 1);
	return finite(total);
}

/** The internal rate of return, where exactly one exists; the first flow is today's. */
export function irr(flows: ArrayLike<number>, count: number): FinanceValue {
	const rates = presentValueRates(flows, count);
	return rates.length === 1 ? finite(rates[0]!) : none(NO_ANSWER);
}

/**
 * The rate at which what is paid in (financed at one rate) grows to what is paid out (reinvested at
 * another). Needs both, or there is nothing to compare.
 */
export function mirr(
	flows: ArrayLike<number>,
	count: number,
	financeRate: number,
	reinvestRate: number
): FinanceValue {
	let paid = 0;
	let received = 0;
	let anyPaid = false;
	let anyReceived = false;
	for (let i = 0; i < count; i++) {
		const flow = flows[i]!;
		if (flow < 0) {
			anyPaid = true;
			paid -= flow / Math.pow(1 + financeRate, i);
		} else if (flow > 0) {
			anyReceived = true;
			received += flow * Math.pow(1 + reinvestRate, count - 1 - i);
		}
	}
	if (!anyPaid || !anyReceived) return none(NO_ANSWER);
	if (financeRate === -1) return none(DIVIDES_BY_ZERO);
	if (financeRate < -1 || reinvestRate <= -1) return none(BAD_ARGUMENT);
	if (!Number.isFinite(paid) || !Number.isFinite(received)) return none(TOO_LARGE);
	if (paid === 0) return none(DIVIDES_BY_ZERO);
	return finite(Math.pow(received / paid, 1 / (count - 1)) - 1);
}

/**
 * When the running total first comes from below zero to zero or more, on a straight line within the
 * period: flows −200, 80, 80, 80 at 0, 1, 2, 3 are back at 2.5. No answer where the total never was
 * below zero, or never comes back.
 */
export function payback(
	flows: ArrayLike<number>,
	positions: ArrayLike<number>,
	count: number
): FinanceValue {
	let total = 0;
	for (let i = 0; i < count; i++) {
		const before = total;
		total += flows[i]!;
		if (i > 0 && before < 0 && total >= 0) {
			const from = positions[i - 1]!;
			return finite(from + (-before / flows[i]!) * (positions[i]! - from));
		}
	}
	return Number.isFinite(total) ? none(NO_ANSWER) : none(TOO_LARGE);
}
