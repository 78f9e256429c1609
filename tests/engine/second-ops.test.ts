/**
 * Each operation on plans written by hand: HyperFormula, from the cells, and the interpreter, from the plan, must
 * come to the same number or the same class of nothing. Expected values are the language's, not either engine's.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Op } from '$lib/engine/operations';
import type { Plan } from '$lib/engine/plan';
import {
	ABSENT,
	DIVIDES_BY_ZERO,
	HITS_NOTHING,
	NO_ANSWER,
	NOT_ENTERED,
	OFF_END,
	USES_EMPTY
} from '$lib/engine/state';
import { anyPlan, missing, type Entry, type HandPlan, type Term } from './interpreter-hand';
import { both, computed, expected, same } from './second-hand';

const empty = missing(NOT_ENTERED);
const absent = missing(ABSENT);
const end = missing(OFF_END);
const none = missing(NO_ANSWER);
const zero = missing(DIVIDES_BY_ZERO);
/** Classes as the second engine names them. */
const usesEmpty = missing(USES_EMPTY);
const fault = missing(HITS_NOTHING);

function agree(
	entries: readonly Entry[],
	write: (plan: HandPlan, operands: number[]) => number,
	value: Entry
): void {
	const { first, second, text } = both(entries, write);
	const shown = `${text.at(-1)} of ${JSON.stringify(entries)}`;
	expect(second, shown).toEqual(typeof value === 'number' ? expect.closeTo(value, 9) : value);
	expect(same(first, second), `${shown}: ${JSON.stringify([first, second])}`).toBe(true);
}

const binary =
	(op: number) =>
	(plan: HandPlan, [a, b]: number[]) =>
		plan.node(op, a!, b!);
const unary =
	(op: number) =>
	(plan: HandPlan, [a]: number[]) =>
		plan.node(op, a!);
const gathered =
	(op: number, parameters = 0) =>
	(plan: HandPlan, operands: number[]) => {
		const terms = operands.slice(0, operands.length - parameters).map((node): Term => [node]);
		return plan.aggregate(op, terms, ...operands.slice(operands.length - parameters));
	};
/** Pairs of value and filter. */
const filtered =
	(op: number, parameters = 0) =>
	(plan: HandPlan, operands: number[]) => {
		const count = (operands.length - parameters) / 2;
		const terms = Array.from({ length: count }, (_, i): Term => [
			operands[2 * i]!,
			operands[2 * i + 1]!
		]);
		return plan.aggregate(op, terms, ...operands.slice(2 * count));
	};

describe('arithmetic', () => {
	it.each([
		['sum', Op.Add, 2, 3, 5],
		['difference', Op.Subtract, 2, 3, -1],
		['product of negatives', Op.Multiply, -2, -3, 6],
		['quotient', Op.Divide, 1, 8, 0.125],
		['division by zero', Op.Divide, 1, 0, zero],
		['nought by nought', Op.Divide, 0, 0, zero],
		['power of a negative', Op.Power, -2, 2, 4],
		['0^0', Op.Power, 0, 0, 1],
		['0^-1', Op.Power, 0, -1, fault],
		['root of a negative', Op.Power, -8, 1 / 3, fault],
		['too large', Op.Multiply, 1e300, 1e300, fault],
		['equal', Op.Equal, 2, 2, 1],
		['not equal', Op.NotEqual, 2, 2, 0],
		['less, to the last bit', Op.Less, 0.3, 0.1 + 0.2, 1],
		['greater or equal', Op.GreaterOrEqual, 2, 3, 0]
	])('%s', (_, op, a, b, value) => agree([a, b], binary(op), value as Entry));

	it('seventeen digits come through', () => {
		const { second } = both([1], (plan, [a]) =>
			plan.node(Op.Multiply, a!, plan.constant(123456789012.34567))
		);
		expect(second).toBe(123456789012.34567);
	});

	it.each([
		['minus', Op.Negate, -3, 3],
		['not', Op.Not, 2, 0],
		['magnitude', Op.Abs, -3, 3],
		['root', Op.Sqrt, 9, 3],
		['root of a negative', Op.Sqrt, -1, fault],
		['e^x', Op.Exp, 0, 1],
		['logarithm', Op.Ln, 1, 0],
		['logarithm of nought', Op.Ln, 0, fault],
		['a deviation', Op.Spread, 3, 3],
		['a deviation of nought', Op.Spread, 0, fault],
		['a density', Op.NormalDensity, 0, 1 / Math.sqrt(2 * Math.PI)],
		['a density too far out to be a number', Op.NormalDensity, 1e300, 0],
		['a share below', Op.NormalShare, 0, 0.5],
		['a share of all', Op.NormalShare, 1e300, 1],
		['a share of none', Op.NormalShare, -1e300, 0],
		['the value of a half', Op.NormalQuantile, 0.5, 0],
		['the value of no share', Op.NormalQuantile, 0, fault],
		['the value of all', Op.NormalQuantile, 1, fault],
		['the value of less than no share', Op.NormalQuantile, -0.1, fault]
	])('%s', (_, op, a, value) => agree([a], unary(op), value as Entry));
});

describe('rounding', () => {
	const constant =
		(op: number, digits: number) =>
		(plan: HandPlan, [a]: number[]) =>
			plan.node(op, a!, plan.constant(digits));

	it.each([
		[Op.Round, 2.5, 0, 3],
		[Op.Round, -2.5, 0, -3],
		[Op.Round, 1.25, 1, 1.3],
		[Op.Round, 45, -1, 50],
		[Op.RoundUp, 70, -1, 70],
		[Op.RoundUp, -2.1, 0, -3],
		[Op.RoundUp, 5, -400, fault],
		[Op.RoundDown, -2.9, 0, -2],
		[Op.RoundDown, 5, -400, 0],
		[Op.Round, 1e300, 10, 1e300],
		[Op.Round, 2.345, 400, 2.345],
		[Op.Round, 2, 0.5, fault]
	])('operation %i of %d to %d digits is %j', (op, x, digits, value) => {
		agree([x], constant(op, digits), value as Entry);
		agree([x, digits], binary(op), value as Entry);
	});

	it.each([
		[Op.Ceiling, 2.5, 2, 4],
		[Op.Ceiling, -2.5, -2, -2],
		[Op.Floor, -2.5, -2, -4],
		[Op.Floor, 2.5, 2, 2],
		[Op.Ceiling, 0, -2, 0],
		[Op.Ceiling, 5, 0, 0],
		[Op.Floor, -2.5, 2, -4],
		[Op.Ceiling, -2.5, 2, -2],
		[Op.Ceiling, 2.5, -2, fault],
		[Op.Floor, 0.7, 0.1, 0.7],
		[Op.Mod, 0.3, 0.1, 0],
		[Op.Mod, -7, 3, 2],
		[Op.Mod, 7, -3, -2],
		[Op.Mod, 7, 0, fault]
	])('operation %i of %d by %d is %j', (op, x, step, value) =>
		agree([x, step], binary(op), value as Entry)
	);
});

describe('kinds of nothing', () => {
	it.each([
		['an empty input', empty, usesEmpty],
		['an absent value', absent, fault],
		['a neighbour off the end', end, end],
		['a question without an answer', none, none],
		['an error', zero, zero]
	])('%s is carried by arithmetic, comparison, logic and functions', (_, nothing, carried) => {
		for (const op of [Op.Add, Op.Multiply, Op.Equal, Op.Less, Op.Round, Op.Ceiling, Op.Mod]) {
			agree([nothing, 1], binary(op), carried);
			agree([1, nothing], binary(op), carried);
		}
		for (const op of [Op.Negate, Op.Not, Op.Abs, Op.Spread, Op.NormalShare, Op.NormalQuantile])
			agree([nothing], unary(op), carried);
		agree([1, nothing], (plan, [a, b]) => plan.every(Op.Or, a!, b!), carried);
		agree([0, nothing], (plan, [a, b]) => plan.every(Op.And, a!, b!), carried);
	});

	it('a formula that is only a reference shows the kind itself', () => {
		for (const kind of [absent, end, none, zero]) agree([kind], (_, [a]) => a!, kind);
	});

	it('the leftmost of two wins, whatever is looked at first', () => {
		for (const op of [Op.Add, Op.Power, Op.Less, Op.Round, Op.Ceiling, Op.Mod]) {
			agree([end, zero], binary(op), end);
			agree([absent, empty], binary(op), fault);
			agree([empty, absent], binary(op), usesEmpty);
		}
	});

	it('IF looks at its condition and the chosen branch alone', () => {
		const choice = (plan: HandPlan, [c, a, b]: number[]) => plan.if(c!, a!, b!);
		agree([1, 5, zero], choice, 5);
		agree([0, zero, 7], choice, 7);
		agree([1, absent, 7], choice, absent);
		agree([absent, 5, 7], choice, fault);
		agree([zero, end, 7], choice, zero);
	});

	it('IFERROR covers every kind, else only the end and no answer', () => {
		for (const kind of [empty, absent, end, none, zero]) agree([kind, 5], binary(Op.IfError), 5);
		agree([3, zero], binary(Op.IfError), 3);
		agree([end, 5], binary(Op.OrElse), 5);
		agree([none, 5], binary(Op.OrElse), 5);
		agree([empty, 5], binary(Op.OrElse), usesEmpty);
		agree([absent, 5], binary(Op.OrElse), absent);
		agree([zero, 5], binary(Op.OrElse), zero);
	});

	it('a guard makes absent, and only an absent value is not present', () => {
		agree([1, 5], binary(Op.Guard), 5);
		agree([0, zero], binary(Op.Guard), absent);
		agree([end, 5], binary(Op.Guard), end);
		agree([absent], unary(Op.Present), 0);
		for (const there of [empty, end, zero, 0]) agree([there], unary(Op.Present), 1);
	});

	it('what is computed with an absent value is present: it failed', () => {
		agree([absent, 1], (plan, [a, b]) => plan.node(Op.Present, plan.node(Op.Add, a!, b!)), 1);
	});

	it('a value outside its range is a fault, an absent one stays absent', () => {
		const limited = (plan: HandPlan, [a]: number[]) => plan.inRange(a!, { min: 0, below: 10 });
		agree([0], limited, 0);
		agree([10], limited, fault);
		agree([-1], limited, fault);
		agree([end], limited, end);
		agree([absent], limited, absent);
	});

	it('a choice picks what stands there, and hits nothing beyond', () => {
		const pick = (plan: HandPlan, [s, a, b]: number[]) => plan.pick(s!, a!, -1, b!);
		agree([0, 5, 7], pick, 5);
		agree([2, zero, 7], pick, 7);
		agree([1, 5, 7], pick, fault);
		agree([3, 5, 7], pick, fault);
		agree([-1, 5, 7], pick, fault);
		agree([empty, 5, 7], pick, usesEmpty);
		agree([0, absent, 7], pick, absent);
	});

	it('a choice among many stands in a column, where they stand already or not', () => {
		const entries = [17, ...Array.from({ length: 20 }, (_, i) => 100 + i)];
		agree(entries, (plan, [s, ...options]) => plan.pick(s!, ...options), 117);
		agree(entries, (plan, [s, ...options]) => plan.pick(s!, -1, ...options.slice(1)), 117);
		agree([0, ...entries.slice(1)], (plan, [s, ...o]) => plan.pick(s!, -1, ...o.slice(1)), fault);
	});
});

describe('aggregates', () => {
	const counts = [3, 20];
	const stretched = (entries: readonly Entry[], count: number): Entry[] =>
		Array.from({ length: count }, (_, i) => entries[i % entries.length]!);

	it.each(counts)('of %i terms', (count) => {
		const numbers = stretched([4, -2, 7], count) as number[];
		const total = numbers.reduce((sum, x) => sum + x, 0);
		agree(numbers, gathered(Op.Sum), total);
		agree(numbers, gathered(Op.Min), -2);
		agree(numbers, gathered(Op.Max), 7);
		agree(numbers, gathered(Op.Average), total / count);
		agree(numbers, gathered(Op.Count), count);
		agree(numbers, gathered(Op.Median), 4);
		agree(numbers, gathered(Op.First), 4);
		agree(numbers, gathered(Op.Last), numbers[count - 1]!);
		agree(numbers, gathered(Op.ArgMin), 1);
		agree(numbers, gathered(Op.ArgMax), 2);
		agree(stretched([1, 0, 1], count), gathered(Op.Any), 1);
		agree(stretched([1, 0, 1], count), gathered(Op.All), 0);
		agree(stretched([2, 1, 1], count), gathered(Op.Product), count === 3 ? 2 : 128);
	});

	it('a sample deviation, and none of one value', () => {
		agree([2, 4, 4, 4, 5, 5, 7, 9], gathered(Op.Stdev), Math.sqrt(32 / 7));
		agree([2], gathered(Op.Stdev), none);
		agree([empty], gathered(Op.Stdev), usesEmpty);
	});

	it.each(counts)('leave out what the filter leaves out, errors too (%i terms)', (count) => {
		const pairs = (kept: Entry, left: Entry) =>
			Array.from({ length: count }, (_, i) => (i % 2 === 0 ? [kept, 1] : [left, 0])).flat();
		const left = Math.ceil(count / 2);
		for (const nothing of [zero, absent, empty]) {
			agree(pairs(3, nothing), filtered(Op.Sum), 3 * left);
			agree(pairs(3, nothing), filtered(Op.Max), 3);
			agree(pairs(3, nothing), filtered(Op.Count), left);
			agree(pairs(3, nothing), filtered(Op.Average), 3);
			agree(pairs(1, nothing), filtered(Op.All), 1);
			agree(pairs(3, nothing), filtered(Op.First), 3);
			agree(pairs(3, nothing), filtered(Op.ArgMax), 0);
		}
	});

	it('of nothing', () => {
		const nothing = [5, 0, 7, 0] as const;
		for (const op of [Op.Sum, Op.Count, Op.Any]) agree(nothing, filtered(op), 0);
		for (const op of [Op.Product, Op.All]) agree(nothing, filtered(op), 1);
		for (const op of [
			...[Op.Min, Op.Max, Op.Average, Op.Median, Op.Stdev, Op.First, Op.Last],
			...[Op.ArgMin, Op.ArgMax, Op.Irr]
		]) {
			agree(nothing, filtered(op), none);
			agree([1], (plan) => plan.aggregate(op, []), none);
		}
		agree([...nothing, 0.1], filtered(Op.Npv, 1), none);
		agree([...nothing, 0.1], filtered(Op.Rank, 1), none);
	});

	it('the first bad term wins, its filter before its value, the parameter last', () => {
		for (const op of [Op.Sum, Op.Min, Op.Count, Op.Stdev, Op.Median, Op.First, Op.ArgMax, Op.Irr]) {
			agree([end, 1, zero, 1], filtered(op), end);
			agree([end, empty, zero, 1], filtered(op), usesEmpty);
			agree([1, 1, zero, absent], filtered(op), fault);
		}
		agree([1, zero, end], gathered(Op.Rank, 1), zero);
		agree([1, 2, end], gathered(Op.Rank, 1), end);
		agree([1, zero, end], gathered(Op.Npv, 1), zero);
		agree([-1, zero, end, empty], gathered(Op.Mirr, 2), zero);
		agree([-1, 2, end, empty], gathered(Op.Mirr, 2), end);
	});

	it('places share the lower number', () => {
		agree([7, 9, 7, 1, 7], gathered(Op.Rank, 1), 2);
		agree([7, 9, 7, 1, 0], gathered(Op.Rank, 1), 5);
		agree([7, 0, 9, 1, 7, 1, 7], filtered(Op.Rank, 1), 2);
	});

	it('positions answer ARGMIN where given, in steps or not', () => {
		const placed = (positions: number[]) => (plan: HandPlan, operands: number[]) =>
			plan.aggregate(
				Op.ArgMin,
				operands.map((node, i): Term => [node, -1, plan.constant(positions[i]!)])
			);
		agree([4, 2, 2], placed([5, 6, 7]), 6);
		agree([4, 2, 2], placed([9, 1, 5]), 1);
	});
});

describe('investment', () => {
	it('NPV discounts the first term by one period', () => {
		agree([110, 121, 0.1], gathered(Op.Npv, 1), 200);
		agree([110, 121, -1], gathered(Op.Npv, 1), zero);
		agree([110, 121, -2], gathered(Op.Npv, 1), fault);
	});

	// The examples of numpy-financial's documentation, from memory: irr to four digits, mirr by hand.
	it('a rate of return is given where it is the only one', () => {
		agree([-100, 39, 59, 55, 20], gathered(Op.Irr), 0.2809484211599609);
		agree([-1e-6, 3.9e-7, 5.9e-7, 5.5e-7, 2e-7], gathered(Op.Irr), 0.2809484211599609);
		agree([-100, 0, 0, 74], gathered(Op.Irr), 0.74 ** (1 / 3) - 1);
		agree([100, 39, 59], gathered(Op.Irr), none);
		agree([0, 0], gathered(Op.Irr), none);
		// Two rates, 10 % and 20 %: 100 × (1.1 − x)(1.2 − x) with the sign turned.
		agree([-100, 230, -132], gathered(Op.Irr), none);
		// No rate at all.
		agree([-10, 10, -10], gathered(Op.Irr), none);
		// Three changes of sign, but the running totals show that there is one rate.
		const { first, second } = both([-100, 300, -1, 50], gathered(Op.Irr));
		expect(second).toEqual(expect.closeTo(first as number, 9));
	});

	it('says so where cells cannot tell whether a rate is the only one', () => {
		// (x − 1.1)(x − 1.2)(x − 1.3), and a cube that touches: 1, −3.6, 4.31, −1.716.
		const { first, second } = both([1, -3.6, 4.31, -1.716], gathered(Op.Irr));
		expect(first).toEqual(none);
		expect(second).toEqual(missing(255));
	});

	it('MIRR needs both signs', () => {
		const rate = (60 * 1.12 ** 2 + 50 * 1.12 + 40) / 100;
		agree([-100, 60, 50, 40, 0.1, 0.12], gathered(Op.Mirr, 2), rate ** (1 / 3) - 1);
		agree([100, 60, 0.1, 0.12], gathered(Op.Mirr, 2), none);
		agree([-100, 60, -1, 0.12], gathered(Op.Mirr, 2), zero);
		agree([-100, 60, -1.5, 0.12], gathered(Op.Mirr, 2), fault);
		agree([-100, 60, 0.1, -1], gathered(Op.Mirr, 2), fault);
	});

	it('payback is on the straight line within the period', () => {
		agree([-200, 80, 80, 80], gathered(Op.Payback), 2.5);
		agree([200, 80], gathered(Op.Payback), none);
		agree([-200, 80], gathered(Op.Payback), none);
		agree([-200, 300, zero], gathered(Op.Payback), zero);
		agree([-5], gathered(Op.Payback), none);
		const years = (plan: HandPlan, operands: number[]) =>
			plan.aggregate(
				Op.Payback,
				operands.map((node, i): Term => [node, -1, plan.constant([2026, 2028, 2029][i]!)])
			);
		agree([-100, 200, 5], years, 2027);
		// Back, under again, and back once more: the first counts.
		agree([-100, 100, -50, 100], gathered(Op.Payback), 1);
	});
});

describe('any plan', () => {
	const entry: fc.Arbitrary<Entry> = fc.oneof(
		{ weight: 4, arbitrary: fc.integer({ min: -4, max: 4 }) },
		{ weight: 3, arbitrary: fc.integer({ min: -1000, max: 1000 }).map((n) => n / 8) },
		{ weight: 1, arbitrary: fc.constantFrom(empty, absent, end, zero) }
	);

	it('comes out the same from both engines, nothing and errors included', () => {
		fc.assert(
			fc.property(
				anyPlan(5, 6),
				fc.integer({ min: -1, max: 3 }),
				fc.array(entry, { minLength: 4, maxLength: 4 }),
				(any, member, rest) => {
					const plan = choosingByInput(any);
					const entries = [member, ...rest];
					const { found, text } = computed(plan, entries);
					expected(plan, entries).forEach((first, cell) => {
						const second = found[cell]!;
						if (typeof second !== 'number' && second.state === 255) return;
						if (same(first, second)) return;
						const shown = JSON.stringify({ cell, first, second, entries });
						throw new Error(`${shown}\n${text.join('\n')}`);
					});
				}
			),
			{ numRuns: 150, seed: 20260611 }
		);
	});

	/** The language lets only members choose, so the choices of a plan made at random are moved to input 0. */
	function choosingByInput(plan: Plan): Plan {
		const a = plan.nodes.a.slice();
		const b = plan.nodes.b.slice();
		const op = plan.nodes.op.slice();
		let reading = -1;
		for (let node = 0; node < plan.nodes.count; node++) {
			if (op[node] === Op.Cell && a[node] === 0 && b[node] === 0) reading = node;
			if (op[node] !== Op.Pick) continue;
			if (reading >= 0) a[node] = reading;
			else {
				op[node] = Op.Cell;
				a[node] = b[node] = 0;
			}
		}
		return { ...plan, nodes: { ...plan.nodes, op, a, b } };
	}
});
