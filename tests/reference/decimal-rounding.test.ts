/**
 * Rounding held to exact decimal arithmetic (the package decimal.js): numbers as people write them, with a few
 * digits behind the point, and products of a number and a percentage. What is right is what the decimals say.
 */
import { Decimal } from 'decimal.js';
import { describe, expect, it } from 'vitest';
import { Op } from '$lib/engine/operations';
import { compute } from '$lib/engine/scalar';
import { both, same } from '../engine/second-hand';

const STEPS = ['1', '0.1', '0.05', '0.01', '0.2', '0.25', '0.3', '0.7', '2.5', '12', '0.001'];
const { ROUND_CEIL, ROUND_FLOOR, ROUND_HALF_UP, ROUND_UP, ROUND_DOWN } = Decimal;

describe('multiples of decimal steps', () => {
	it.each(STEPS)('of %s: every hundredth of a step is where decimals put it', (written) => {
		const step = new Decimal(written);
		for (let at = 1; at <= 2000; at++) {
			const x = step.times(at).div(at % 3 === 0 ? 1 : 100);
			if (x.sd() > 15) continue;
			for (const sign of [1, -1]) {
				const signed = x.times(sign);
				const [number, size] = [signed.toNumber(), step.toNumber()];
				const multiple = (rounding: Decimal.Rounding) =>
					signed.toNearest(step, rounding).toNumber();
				expect(compute(Op.Floor, number, size), `FLOOR(${signed}; ${step})`).toBe(
					multiple(ROUND_FLOOR) || 0
				);
				expect(compute(Op.Ceiling, number, size), `CEILING(${signed}; ${step})`).toBe(
					multiple(ROUND_CEIL) || 0
				);
				const rest = signed.minus(signed.toNearest(step, ROUND_FLOOR)).toNumber();
				expect(compute(Op.Mod, number, size), `MOD(${signed}; ${step})`).toBeCloseTo(rest, 12);
			}
		}
	});

	it('of a remainder that decimals have none of there is none', () => {
		for (let at = 1; at <= 500; at++) {
			const x = new Decimal(at).times('0.1').toNumber();
			expect(compute(Op.Mod, x, 0.1), `MOD(${x}; 0.1)`).toBe(0);
		}
	});

	// ISO 11922-1 has tolerances of a wall by the rule 0.1 e + 0.2 mm, up to the next tenth (the rule from memory).
	it('a tenth of a wall and 0.2 mm, up to a tenth, is exact for every wall from 1.0 to 50.0 mm', () => {
		for (let tenths = 10; tenths <= 500; tenths++) {
			const wall = tenths / 10;
			const exact = new Decimal(tenths)
				.div(10)
				.times('0.1')
				.plus('0.2')
				.toNearest('0.1', ROUND_CEIL);
			expect(compute(Op.Ceiling, 0.1 * wall + 0.2, 0.1), String(wall)).toBe(exact.toNumber());
		}
	});

	it('a percentage of people is a whole head where decimals say so', () => {
		for (let people = 1; people <= 200; people++)
			for (const percent of [1, 2.5, 5, 7, 8, 12.5, 14, 19, 28, 56]) {
				const exact = new Decimal(people).times(percent).div(100);
				const heads = compute(Op.Ceiling, people * (percent / 100), 1);
				expect(heads, `${people} at ${percent} %`).toBe(exact.toNearest(1, ROUND_CEIL).toNumber());
			}
	});
});

describe('digits', () => {
	it.each([
		[Op.Round, 'ROUND', ROUND_HALF_UP],
		[Op.RoundUp, 'ROUNDUP', ROUND_UP],
		[Op.RoundDown, 'ROUNDDOWN', ROUND_DOWN]
	] as const)('%s is %s of the decimals as they are written', (op, name, rounding) => {
		for (let at = 1; at <= 4000; at++)
			for (const digits of [0, 1, 2, 3]) {
				const x = new Decimal(at * 5).div(1000).times(at % 2 === 0 ? 1 : -1);
				const expected = x.toDecimalPlaces(digits, rounding).toNumber();
				expect(compute(op, x.toNumber(), digits), `${name}(${x}; ${digits})`).toBe(expected);
			}
	});
});

describe('whole numbers are never taken for others', () => {
	it('up to 10^14', () => {
		for (const x of [7 * 1e13 + 1, 1e14 - 1, 123456789012347])
			for (const step of [2, 3, 7, 1000]) {
				const exact = new Decimal(x);
				expect(compute(Op.Floor, x, step)).toBe(exact.toNearest(step, ROUND_FLOOR).toNumber());
				expect(compute(Op.Ceiling, x, step)).toBe(exact.toNearest(step, ROUND_CEIL).toNumber());
				expect(compute(Op.Mod, x, step)).toBe(exact.mod(step).toNumber());
			}
	});
});

describe('the second engine', () => {
	const OPS = [Op.Round, Op.RoundUp, Op.RoundDown, Op.Floor, Op.Ceiling, Op.Mod] as const;
	it.each([
		[0.7, 0.1],
		[0.3, 0.1],
		[1.005, 2],
		[-2.5, 1],
		[100 * 0.07, 1],
		[0.1 * 4 + 0.2, 0.1],
		[0.29 * 100, 0],
		[1234.5, -2],
		[-0.15, 1],
		[7, -3],
		[1e15, 7]
	])('comes to the same of %d and %d', (x, y) => {
		for (const op of OPS) {
			const isDigits = op === Op.Round || op === Op.RoundUp || op === Op.RoundDown;
			if (isDigits && !Number.isInteger(y)) continue;
			const { first, second } = both([x, y], (plan, [a, b]) => plan.node(op, a!, b!));
			expect(same(first, second), `${op}: ${JSON.stringify([first, second])}`).toBe(true);
		}
	});
});
