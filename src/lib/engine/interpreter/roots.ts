/**
 * All rates above −100 % at which a row of cash flows is worth nothing today.
 *
 * With x = 1 / (1 + rate) the present value is a polynomial in x, and the rates are its roots above
 * zero. They are isolated by halving an interval in Bernstein form, where the number of sign changes
 * bounds the number of roots and 0 and 1 are exact (Descartes' rule; Collins and Akritas). Halving only
 * averages, so it stays accurate for hundreds of periods. Roots above x = 1 are those of the reversed
 * polynomial below 1.
 */

/** Roots nearer than this are one: a touching root shows as a narrow pair. */
const SAME = 1e-7;
/** A coefficient below this share of the largest is rounding. */
const ZERO = 1e-15;
const DEEPEST = 60;

export function presentValueRates(flows: ArrayLike<number>, count: number): number[] {
	let first = 0;
	let end = count;
	while (first < end && flows[first] === 0) first++;
	while (end > first && flows[end - 1] === 0) end--;
	if (end - first < 2) return [];
	let largest = 0;
	for (let i = first; i < end; i++) largest = Math.max(largest, Math.abs(flows[i]!));
	if (!Number.isFinite(largest)) return [];
	const forward: number[] = [];
	for (let i = first; i < end; i++) forward.push(flows[i]! / largest);
	if (!forward.some((c) => c > 0) || !forward.some((c) => c < 0)) return [];
	const backward = forward.slice().reverse();
	const rates: number[] = [];
	// x from 0 to 1: rates of zero and above.
	for (const x of allBelowOne(forward)) rates.push((1 - x) / x);
	if (Math.abs(sum(forward)) <= forward.length * ZERO) rates.push(0);
	// 1 / x from 0 to 1: rates from −100 % to zero.
	for (const y of allBelowOne(backward)) rates.push(y - 1);
	rates.sort((a, b) => a - b);
	return rates.filter((rate, i) => i === 0 || rate - rates[i - 1]! > SAME * (1 + Math.abs(rate)));
}

/** Between halves of a touching root rounding leaves this much of the terms. */
const TOUCHES = 4e-15;
/** So near to a root that is known, the least value belongs to it. */
const BESIDE = 1e-6;

/**
 * With the roots that only touch zero, which halving loses: there the slope is zero too, and a root of the slope is
 * found as any other.
 */
function allBelowOne(coefficients: readonly number[]): number[] {
	const roots = rootsBelowOne(coefficients);
	if (signChanges(Float64Array.from(coefficients)) < 2) return roots;
	const slope = coefficients.slice(1).map((c, i) => c * (i + 1));
	for (const x of rootsBelowOne(slope)) {
		const touches = Math.abs(valueAt(coefficients, x)) <= magnitudeAt(coefficients, x) * TOUCHES;
		if (touches && roots.every((root) => Math.abs(root - x) > BESIDE)) roots.push(x);
	}
	return roots;
}

/** The roots of c0 + c1 x + c2 x² … with 0 < x < 1. */
function rootsBelowOne(coefficients: readonly number[]): number[] {
	const roots: number[] = [];
	const work = [{ bernstein: toBernstein(coefficients), from: 0, width: 1, depth: 0 }];
	for (let part = work.pop(); part !== undefined; part = work.pop()) {
		const { bernstein, from, width, depth } = part;
		const changes = signChanges(bernstein);
		if (changes === 0) continue;
		if (changes === 1) {
			roots.push(bisect(coefficients, bernstein, from, from + width));
			continue;
		}
		const middle = from + width / 2;
		if (depth === DEEPEST || middle === from || middle === from + width) {
			// Two sign changes that halving cannot part: a root that only touches, if it is one at all.
			if (Math.abs(valueAt(coefficients, middle)) <= magnitudeAt(coefficients, middle) * 1e-12)
				roots.push(middle);
			continue;
		}
		const { left, right } = halve(bernstein);
		if (Math.abs(right[0]!) <= largestOf(bernstein) * ZERO) roots.push(middle);
		work.push({ bernstein: right, from: middle, width: width / 2, depth: depth + 1 });
		work.push({ bernstein: left, from, width: width / 2, depth: depth + 1 });
	}
	return roots;
}

/** Coefficients on the interval from 0 to 1: b_j = Σ C(j,i) / C(n,i) · c_i. */
function toBernstein(coefficients: readonly number[]): Float64Array {
	const n = coefficients.length - 1;
	const bernstein = new Float64Array(n + 1);
	for (let j = 0; j <= n; j++) {
		let weight = 1;
		for (let i = 0; i <= j; i++) {
			bernstein[j]! += weight * coefficients[i]!;
			weight *= (j - i) / (n - i);
		}
	}
	return bernstein;
}

function halve(bernstein: Float64Array) {
	const n = bernstein.length - 1;
	const right = bernstein.slice();
	const left = new Float64Array(n + 1);
	for (let j = 0; j <= n; j++) {
		left[j] = right[0]!;
		for (let i = 0; i < n - j; i++) right[i] = (right[i]! + right[i + 1]!) / 2;
	}
	return { left, right };
}

function signChanges(values: Float64Array): number {
	const rounding = largestOf(values) * ZERO;
	let last = 0;
	let changes = 0;
	for (const value of values) {
		if (Math.abs(value) <= rounding) continue;
		const sign = value > 0 ? 1 : -1;
		if (last !== 0 && sign !== last) changes++;
		last = sign;
	}
	return changes;
}

/** The one root between two ends whose signs differ, to the last bit that halving can reach. */
function bisect(
	coefficients: readonly number[],
	bernstein: Float64Array,
	from: number,
	to: number
): number {
	// The sign just right of the left end, also where the polynomial is zero there.
	const rounding = largestOf(bernstein) * ZERO;
	const leftSign = Math.sign(bernstein.find((b) => Math.abs(b) > rounding) ?? 0);
	let low = from;
	let high = to;
	for (;;) {
		const middle = low + (high - low) / 2;
		if (middle <= low || middle >= high) return high;
		const value = valueAt(coefficients, middle);
		if (value === 0) return middle;
		if (Math.sign(value) === leftSign) low = middle;
		else high = middle;
	}
}

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

function largestOf(values: Float64Array): number {
	let largest = 0;
	for (const value of values) largest = Math.max(largest, Math.abs(value));
	return largest;
}

function valueAt(coefficients: readonly number[], x: number): number {
	let value = 0;
	for (let i = coefficients.length - 1; i >= 0; i--) value = value * x + coefficients[i]!;
	return value;
}

function magnitudeAt(coefficients: readonly number[], x: number): number {
	let value = 0;
	for (let i = coefficients.length - 1; i >= 0; i--) value = value * x + Math.abs(coefficients[i]!);
	return value;
}
