/**
 * The normal distribution in both engines, against sums in forty-digit arithmetic (the package decimal.js), the package
 * jstat and tables. The sums are Abramowitz and Stegun 26.2.10 and 26.2.14, Handbook of Mathematical Functions.
 */
import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import { normalDensity, normalQuantile, normalShare } from '$lib/engine/normal';
import { Op } from '$lib/engine/operations';
import { HandPlan } from '../engine/interpreter-hand';
import { computed, expected } from '../engine/second-hand';

const Exact = Decimal.clone({ precision: 50 });
const ROOT_2PI = Exact.acos(-1).times(2).sqrt();

/** The density and the share below z, exact to forty digits and more. */
function exactly(z: number): { density: Decimal; share: Decimal } {
	const x = new Exact(z);
	const density = x.times(x).div(-2).exp().div(ROOT_2PI);
	let fraction = x.abs();
	if (fraction.gt(8)) {
		for (let step = 150; step > 0; step--) fraction = x.abs().plus(new Exact(step).div(fraction));
		const beyond = density.div(fraction);
		return { density, share: z < 0 ? beyond : new Exact(1).minus(beyond) };
	}
	let [sum, term] = [x, x];
	for (let odd = 3; !term.isZero() && term.abs().gt('1e-50'); odd += 2) {
		term = term.times(x).times(x).div(odd);
		sum = sum.plus(term);
	}
	return { density, share: density.times(sum).plus(0.5) };
}

const near = (found: unknown, exact: Decimal | number, relative: number) => {
	const wanted = new Exact(exact);
	expect(
		new Exact(found as number).minus(wanted).abs().toNumber(),
		`${String(found)} for ${wanted.toString()}`
	).toBeLessThanOrEqual(relative * wanted.abs().toNumber());
};

const ONE_BY_ONE = Array.from({ length: 61 }, (_, i) => (i - 30) / 4 + 0.03);
const FAR = [-37, -30.3, -22.7, -17.1, -9.99, 8.1, 12.5];
/** What each engine makes of an operation on each of the numbers. */
function engines(op: number, numbers: readonly number[]) {
	const count = numbers.length;
	const plan = new HandPlan(2 * count);
	numbers.forEach((_, i) => plan.root(count + i, plan.node(op, plan.cell(i))));
	const built = plan.build();
	const second = computed(built, numbers).found.slice(count) as number[];
	return { first: expected(built, numbers).slice(count) as number[], second };
}

describe('against forty-digit arithmetic', () => {
	it('density and share to thirteen figures, in the tails too', () => {
		for (const z of [...ONE_BY_ONE, ...FAR]) {
			const { density, share } = exactly(z);
			near(normalDensity(z), density, 1e-13);
			near(normalShare(z), share, 1e-13);
		}
	});

	it('the value below which the share of z lies is z', () => {
		for (const z of ONE_BY_ONE.filter((z) => z < 3)) {
			const p = exactly(z).share.toNumber();
			near(normalQuantile(p), z, 1e-13);
		}
		expect(normalQuantile(0.5)).toBe(0);
	});

	it('the second engine finds the same by its own ways', () => {
		const numbers = [...ONE_BY_ONE.filter((_, i) => i % 2 === 0), ...FAR];
		const exact = numbers.map(exactly);
		engines(Op.NormalDensity, numbers).second.forEach((density, i) =>
			near(density, exact[i]!.density, 1e-12)
		);
		engines(Op.NormalShare, numbers).second.forEach((share, i) =>
			near(share, exact[i]!.share, 1e-11)
		);
		const shares = [
			...exact.map(({ share }) => share.toNumber()).filter((share) => share < 1 - 1e-9),
			...[0.5 + 1e-12, 0.5 - 1e-5, 0.46, 0.5398, 1e-300, 4e-17]
		];
		const { first, second } = engines(Op.NormalQuantile, shares);
		second.forEach((z, i) => near(z, first[i]!, 1e-11));
	});
});

it('is that of jstat, at any mean and deviation', () => {
	const near1 = (a: number, b: number) => expect(Math.abs(a - b)).toBeLessThan(1e-11);
	fc.assert(
		fc.property(fc.double({ min: -5, max: 5, noNaN: true }), (z) => {
			near1(normalShare(z), jStat.normal.cdf(z, 0, 1));
			near1(normalDensity(z), jStat.normal.pdf(z, 0, 1));
			near1(normalShare(z), jStat.normal.cdf(20 + 3 * z, 20, 3));
		})
	);
});

/** The table of the standard normal distribution that every textbook prints, four to five places; from memory. */
it.each([
	[0, 0.5],
	[0.5, 0.69146],
	[1, 0.84134],
	[1.28, 0.89973],
	[1.645, 0.95002],
	[1.96, 0.975],
	[2.33, 0.9901],
	[3, 0.99865],
	[-2, 0.02275]
])('the table gives for z = %d the share %d', (z, share) => {
	expect(normalShare(z)).toBeCloseTo(share, 5);
});

/** Upper critical values as the NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1, gives them; from memory. */
it.each([
	[0.9, 1.282],
	[0.95, 1.645],
	[0.975, 1.96],
	[0.99, 2.326],
	[0.995, 2.576],
	[0.999, 3.09]
])('a share of %d lies below %d', (share, z) => {
	expect(Math.abs(normalQuantile(share) - z)).toBeLessThan(5e-4);
});
