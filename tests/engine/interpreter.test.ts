import { describe, expect, it } from 'vitest';
import { Op } from '$lib/engine/operations';
import {
	ABSENT,
	BAD_ARGUMENT,
	DIVIDES_BY_ZERO,
	HITS_NOTHING,
	NO_ANSWER,
	NOT_A_REAL,
	NOT_ENTERED,
	OFF_END,
	OUT_OF_RANGE,
	TOO_LARGE,
	USES_EMPTY
} from '$lib/engine/state';
import { evaluateCells } from '$lib/engine/interpreter/evaluate';
import {
	answer,
	columnOf,
	entryAt,
	HandPlan,
	missing,
	type Entry,
	type Term
} from './interpreter-hand';

const two = (op: number, x: Entry, y: Entry) =>
	answer([x, y], (plan, [a, b]) => plan.node(op, a, b));
const one = (op: number, x: Entry) => answer([x], (plan, [a]) => plan.node(op, a));
const gather = (op: number, terms: readonly Entry[], ...parameters: Entry[]) =>
	answer([...terms, ...parameters], (plan, operands) =>
		plan.aggregate(
			op,
			operands.slice(0, terms.length).map((value): Term => [value]),
			...operands.slice(terms.length)
		)
	);

describe('arithmetic', () => {
	it.each([
		['2 + 3', Op.Add, 2, 3, 5],
		['2 - 3', Op.Subtract, 2, 3, -1],
		['2 × 3', Op.Multiply, 2, 3, 6],
		['3 / 2', Op.Divide, 3, 2, 1.5],
		['0 / 2', Op.Divide, 0, 2, 0],
		['2 ^ 10', Op.Power, 2, 10, 1024],
		['0 ^ 0', Op.Power, 0, 0, 1],
		['(-2) ^ 3', Op.Power, -2, 3, -8]
	])('%s', (_text, op, x, y, expected) => {
		expect(two(op, x, y)).toBe(expected);
	});

	it.each([
		['3 / 0 divides by zero', Op.Divide, 3, 0, DIVIDES_BY_ZERO],
		['0 / 0 divides by zero', Op.Divide, 0, 0, DIVIDES_BY_ZERO],
		['0 ^ -1 is no real number', Op.Power, 0, -1, NOT_A_REAL],
		['(-2) ^ 0.5 is no real number', Op.Power, -2, 0.5, NOT_A_REAL],
		['10 ^ 400 is too large', Op.Power, 10, 400, TOO_LARGE],
		['1e308 + 1e308 is too large', Op.Add, 1e308, 1e308, TOO_LARGE],
		['1e308 × -10 is too large', Op.Multiply, 1e308, -10, TOO_LARGE],
		['1e308 / 1e-308 is too large', Op.Divide, 1e308, 1e-308, TOO_LARGE]
	])('%s', (_text, op, x, y, state) => {
		expect(two(op, x, y)).toEqual(missing(state));
	});

	it.each([
		['the root of 9 is 3', Op.Sqrt, 9, 3],
		['the root of -1 is no real number', Op.Sqrt, -1, missing(NOT_A_REAL)],
		['the logarithm of 0 is no real number', Op.Ln, 0, missing(NOT_A_REAL)],
		['the logarithm of 1 is 0', Op.Ln, 1, 0],
		['e to the 1000 is too large', Op.Exp, 1000, missing(TOO_LARGE)],
		['the magnitude of -2 is 2', Op.Abs, -2, 2],
		['not 0 is yes', Op.Not, 0, 1]
	])('%s', (_text, op, x, expected) => {
		expect(one(op, x)).toEqual(expected);
	});
});

describe('rounding', () => {
	it.each([
		[Op.Round, -2.5, 0, -3], // a half goes away from zero on both sides
		[Op.Round, 2.5, 0, 3],
		[Op.Round, 0.49999999999999994, 0, 1], // a half but for the last place
		[Op.Round, 1.005, 2, 1.01], // as it is written
		[Op.Round, 1250, -2, 1300],
		[Op.Round, 1e300, 2, 1e300],
		[Op.Round, 1.5, 400, 1.5],
		[Op.RoundUp, 2.1, 0, 3],
		[Op.RoundUp, -2.1, 0, -3],
		[Op.RoundDown, -2.9, 0, -2],
		[Op.Ceiling, 2.1, 1, 3],
		[Op.Ceiling, -2.5, -2, -2], // up is towards +∞: OpenFormula 6.17.1
		[Op.Floor, -2.5, -2, -4],
		[Op.Floor, 7, 2.5, 5],
		[Op.Ceiling, -2.5, 1, -2],
		[Op.Floor, -2.5, 1, -3],
		[Op.Floor, 0.7, 0.1, 0.7],
		[Op.Mod, 0.3, 0.1, 0],
		[Op.Ceiling, 0, 3, 0],
		[Op.Ceiling, 3, 0, 0],
		[Op.Mod, 7, 3, 1],
		[Op.Mod, -7, 3, 2], // the sign of the divisor
		[Op.Mod, 7, -3, -2]
	])('operation %i of %d and %d is %d', (op, x, y, expected) => {
		expect(two(op, x, y)).toBe(expected);
	});

	it.each([
		['a fraction of a digit', Op.Round, 2.5, 0.5, BAD_ARGUMENT],
		['MOD by zero', Op.Mod, 2, 0, BAD_ARGUMENT],
		['up to a multiple of the other sign', Op.Ceiling, 2, -1, BAD_ARGUMENT],
		['up to a step beyond all numbers', Op.RoundUp, 2, -400, TOO_LARGE]
	])('%s is refused', (_text, op, x, y, state) => {
		expect(two(op, x, y)).toEqual(missing(state));
	});
});

describe('states travel', () => {
	it.each([
		['an empty input', NOT_ENTERED, USES_EMPTY],
		['an absent value', ABSENT, HITS_NOTHING],
		['a neighbour off the end', OFF_END, OFF_END],
		['a question without an answer', NO_ANSWER, NO_ANSWER],
		['an error', DIVIDES_BY_ZERO, DIVIDES_BY_ZERO]
	])('%s, through arithmetic, comparison, logic, power and aggregates', (_text, from, to) => {
		const bad = missing(from);
		for (const op of [Op.Add, Op.Multiply, Op.Power, Op.Less, Op.Equal, Op.Round, Op.Mod]) {
			expect(two(op, bad, 0)).toEqual(missing(to));
			expect(two(op, 0, bad)).toEqual(missing(to));
		}
		for (const op of [Op.Not, Op.Negate, Op.Sqrt, Op.Abs])
			expect(one(op, bad)).toEqual(missing(to));
		for (const op of [Op.And, Op.Or]) {
			expect(answer([0, 1, bad], (p, all) => p.every(op, ...all))).toEqual(missing(to));
		}
		for (const op of [Op.Sum, Op.Count, Op.Any, Op.All, Op.ArgMin, Op.First, Op.Median])
			expect(gather(op, [1, bad, 1])).toEqual(missing(to));
		expect(gather(Op.Rank, [1, 2], bad)).toEqual(missing(to));
		expect(gather(Op.Npv, [1, 2], bad)).toEqual(missing(to));
	});

	it('the leftmost of several wins', () => {
		expect(two(Op.Add, missing(NOT_ENTERED), missing(DIVIDES_BY_ZERO))).toEqual(
			missing(USES_EMPTY)
		);
		expect(two(Op.Power, missing(DIVIDES_BY_ZERO), missing(ABSENT))).toEqual(
			missing(DIVIDES_BY_ZERO)
		);
		expect(gather(Op.Max, [1, missing(OFF_END), missing(DIVIDES_BY_ZERO)])).toEqual(
			missing(OFF_END)
		);
	});

	it('a bare reference shows the kind of nothing itself', () => {
		for (const state of [ABSENT, NOT_ENTERED, OFF_END, NO_ANSWER])
			expect(answer([missing(state)], (_, [a]) => a!)).toEqual(missing(state));
	});

	it('a comparison with an error is an error, not no', () => {
		// IF(1/z > 0; 1; 2) with z = 0
		const result = answer([0], (plan, [z]) => {
			const one = plan.constant(1);
			const positive = plan.node(Op.Greater, plan.node(Op.Divide, one, z), plan.constant(0));
			return plan.if(positive, one, plan.constant(2));
		});
		expect(result).toEqual(missing(DIVIDES_BY_ZERO));
	});

	it('(1/0) ^ 0 is an error, not 1', () => {
		const result = answer([0], (plan, [z]) =>
			plan.node(Op.Power, plan.node(Op.Divide, plan.constant(1), z), plan.constant(0))
		);
		expect(result).toEqual(missing(DIVIDES_BY_ZERO));
	});
});

describe('choices', () => {
	const broken = missing(DIVIDES_BY_ZERO);

	it('IF takes the chosen branch as it stands, and the other does not count', () => {
		const choose = (c: Entry, a: Entry, b: Entry) =>
			answer([c, a, b], (plan, [x, y, z]) => plan.if(x!, y!, z!));
		expect(choose(1, 5, broken)).toBe(5);
		expect(choose(0, broken, 6)).toBe(6);
		expect(choose(1, missing(NOT_ENTERED), 6)).toEqual(missing(NOT_ENTERED));
		expect(choose(missing(NOT_ENTERED), 5, 6)).toEqual(missing(USES_EMPTY));
	});

	it('IFERROR covers every kind of missing value', () => {
		for (const state of [ABSENT, NOT_ENTERED, OFF_END, NO_ANSWER, DIVIDES_BY_ZERO])
			expect(two(Op.IfError, missing(state), 7)).toBe(7);
		expect(two(Op.IfError, 3, broken)).toBe(3);
	});

	it('else covers the end and a question without an answer, nothing more', () => {
		expect(two(Op.OrElse, missing(OFF_END), 7)).toBe(7);
		expect(two(Op.OrElse, missing(NO_ANSWER), 7)).toBe(7);
		expect(two(Op.OrElse, missing(NOT_ENTERED), 7)).toEqual(missing(NOT_ENTERED));
		expect(two(Op.OrElse, broken, 7)).toEqual(broken);
		expect(two(Op.OrElse, 3, broken)).toBe(3);
	});

	it('a choice picks its member, and hits nothing where the pair or the member does not exist', () => {
		const pick = (selector: Entry) =>
			answer([selector, 10, broken], (plan, [s, a, b]) => plan.pick(s!, a!, -1, b!));
		expect(pick(0)).toBe(10);
		expect(pick(1)).toEqual(missing(HITS_NOTHING));
		expect(pick(2)).toEqual(broken);
		expect(pick(3)).toEqual(missing(HITS_NOTHING));
		expect(pick(-1)).toEqual(missing(HITS_NOTHING));
		expect(pick(missing(NOT_ENTERED))).toEqual(missing(USES_EMPTY));
	});

	it('a guard that says no makes the value absent, whatever it would have been', () => {
		expect(two(Op.Guard, 0, broken)).toEqual(missing(ABSENT));
		expect(two(Op.Guard, 1, 4)).toBe(4);
		expect(two(Op.Guard, 1, missing(NOT_ENTERED))).toEqual(missing(NOT_ENTERED));
		expect(two(Op.Guard, broken, 4)).toEqual(broken);
	});

	it('only an absent value is not present', () => {
		expect(one(Op.Present, missing(ABSENT))).toBe(0);
		for (const entry of [0, missing(NOT_ENTERED), broken]) expect(one(Op.Present, entry)).toBe(1);
	});

	it('a value outside its range is an error, at the limits by the kind of limit', () => {
		const within = (x: Entry, limits: Parameters<HandPlan['inRange']>[1]) =>
			answer([x], (plan, [a]) => plan.inRange(a!, limits));
		const out = missing(OUT_OF_RANGE);
		expect(within(0, { min: 0, max: 1 })).toBe(0);
		expect(within(1, { min: 0, max: 1 })).toBe(1);
		expect(within(1.1, { min: 0, max: 1 })).toEqual(out);
		expect(within(0, { above: 0 })).toEqual(out);
		expect(within(1, { below: 1 })).toEqual(out);
		expect(within(0.5, { above: 0, below: 1 })).toBe(0.5);
		expect(within(missing(NOT_ENTERED), { min: 0 })).toEqual(missing(NOT_ENTERED));
	});
});

describe('aggregates', () => {
	it.each([
		['SUM', Op.Sum, [1, 2, 3.5], 6.5],
		['MIN', Op.Min, [2, -1, 3], -1],
		['MAX', Op.Max, [2, -1, 3], 3],
		['AVERAGE', Op.Average, [1, 2, 6], 3],
		['COUNT', Op.Count, [0, 5, 0], 3],
		['PRODUCT', Op.Product, [2, 3, 4], 24],
		['ANY', Op.Any, [0, 1, 0], 1],
		['ALL', Op.All, [1, 0, 1], 0],
		['MEDIAN of an odd number', Op.Median, [9, 1, 5], 5],
		['MEDIAN of an even number', Op.Median, [9, 1, 5, 7], 6],
		['STDEV', Op.Stdev, [2, 4, 4, 4, 5, 5, 7, 9], Math.sqrt(32 / 7)],
		['ARGMIN, the first of equals', Op.ArgMin, [3, 1, 1], 1],
		['ARGMAX, the first of equals', Op.ArgMax, [3, 1, 3], 0],
		['FIRST', Op.First, [3, 1, 2], 3],
		['LAST', Op.Last, [3, 1, 2], 2]
	])('%s', (_name, op, terms, expected) => {
		expect(gather(op, terms)).toBeCloseTo(expected, 12);
	});

	it.each([
		['SUM', Op.Sum, 0],
		['COUNT', Op.Count, 0],
		['PRODUCT', Op.Product, 1],
		['ANY', Op.Any, 0],
		['ALL', Op.All, 1],
		['MIN', Op.Min, missing(NO_ANSWER)],
		['MAX', Op.Max, missing(NO_ANSWER)],
		['AVERAGE', Op.Average, missing(NO_ANSWER)],
		['STDEV', Op.Stdev, missing(NO_ANSWER)],
		['MEDIAN', Op.Median, missing(NO_ANSWER)],
		['IRR', Op.Irr, missing(NO_ANSWER)],
		['ARGMAX', Op.ArgMax, missing(NO_ANSWER)],
		['FIRST', Op.First, missing(NO_ANSWER)],
		['LAST', Op.Last, missing(NO_ANSWER)],
		['PAYBACK', Op.Payback, missing(NO_ANSWER)]
	])('%s of nothing, and of terms that are all left out', (_name, op, expected) => {
		expect(gather(op, [])).toEqual(expected);
		expect(answer([0, 5], (p, [no, x]) => p.aggregate(op, [[x!, no!]]))).toEqual(expected);
	});

	it('the error of a term that is left out does not count, that of its filter does', () => {
		const sum = (filter: Entry, value: Entry) =>
			answer([filter, value, 1], (p, [f, x, y]) => p.aggregate(Op.Sum, [[x!, f!], [y!]]));
		expect(sum(0, missing(DIVIDES_BY_ZERO))).toBe(1);
		expect(sum(1, missing(DIVIDES_BY_ZERO))).toEqual(missing(DIVIDES_BY_ZERO));
		expect(sum(missing(NOT_ENTERED), missing(DIVIDES_BY_ZERO))).toEqual(missing(USES_EMPTY));
	});

	it('positions answer ARGMIN and ARGMAX where given', () => {
		const best = answer([5, 9, 20, 30], (p, [x, y, at0, at1]) =>
			p.aggregate(Op.ArgMax, [
				[x!, -1, at0!],
				[y!, -1, at1!]
			])
		);
		expect(best).toBe(30);
	});

	it('RANK counts from the largest, and equal ones share the lower number', () => {
		expect(gather(Op.Rank, [10, 30, 20, 30], 30)).toBe(1);
		expect(gather(Op.Rank, [10, 30, 20, 30], 20)).toBe(3);
		expect(gather(Op.Rank, [], 20)).toEqual(missing(NO_ANSWER));
	});

	it('a deviation needs two values', () => {
		expect(gather(Op.Stdev, [4])).toEqual(missing(NO_ANSWER));
	});

	it('a sum beyond all numbers is too large', () => {
		expect(gather(Op.Sum, [1e308, 1e308])).toEqual(missing(TOO_LARGE));
	});

	it('NPV discounts its first term by one period', () => {
		// 110 / 1.1 + 121 / 1.21
		expect(gather(Op.Npv, [110, 121], 0.1)).toBeCloseTo(200, 10);
		expect(gather(Op.Npv, [110], -1)).toEqual(missing(DIVIDES_BY_ZERO));
	});
});

describe('a program', () => {
	it('computes a formula 100,000 deep', () => {
		const deep = answer([1], (plan, [x]) => {
			let node = x!;
			for (let i = 0; i < 100_000; i++) node = plan.node(Op.Add, node, plan.constant(1));
			return node;
		});
		expect(deep).toBe(100_001);
	});

	it('computes a shared part once and still gives it to all that use it', () => {
		const result = answer([3], (plan, [x]) => {
			const square = plan.node(Op.Multiply, x, x);
			const left = plan.node(Op.Add, square, plan.node(Op.Negate, square));
			return plan.node(Op.Add, left, square); // 9 - 9 + 9
		});
		expect(result).toBe(9);
	});

	it('reads the scenario it is measured against, and the base', () => {
		const plan = new HandPlan(2);
		const change = plan.node(Op.Subtract, plan.cell(0), plan.cell(0, 1));
		plan.root(1, plan.node(Op.Add, change, plan.cell(0, 2)));
		const columns = columnOf(2, [7]);
		evaluateCells(plan.build(), [1], columns, 1, {
			against: columnOf(2, [5]),
			base: columnOf(2, [100])
		});
		expect(entryAt(columns, 1)).toBe(102); // 7 - 5 + 100
		evaluateCells(plan.build(), [1], columns, 1);
		expect(entryAt(columns, 1)).toBe(7); // its own reference and base
	});
});
