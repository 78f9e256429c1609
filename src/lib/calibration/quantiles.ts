/** Quantiles of Student's t and of chi-squared, by bisection of their distributions. */

const TURNS = 200;

/** The t that is exceeded with the probability given, 0 to 0.5, at so many degrees of freedom. */
export function studentAbove(probability: number, freedom: number): number {
	return bisected(0, 1, (t) => studentTail(t, freedom) < probability);
}

export function chiSquaredBelow(probability: number, freedom: number): number {
	return bisected(0, freedom + 1, (x) => gammaBelow(freedom / 2, x / 2) > probability);
}

/** The place where `isBeyond` turns true; `high` is doubled until it is. */
function bisected(low: number, high: number, isBeyond: (at: number) => boolean): number {
	while (!isBeyond(high) && high < 1e12) [low, high] = [high, 2 * high];
	for (let turn = 0; turn < TURNS && high - low > 1e-14 * high; turn++) {
		const middle = (low + high) / 2;
		if (isBeyond(middle)) high = middle;
		else low = middle;
	}
	return (low + high) / 2;
}

const studentTail = (t: number, freedom: number) =>
	betaBelow(freedom / 2, 0.5, freedom / (freedom + t * t)) / 2;

/** Lanczos, g = 7, n = 9. */
const LANCZOS = [
	0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313,
	-176.61502916214059, 12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6,
	1.5056327351493116e-7
];
function logGamma(x: number): number {
	if (x < 0.5) return Math.log(Math.PI / Math.abs(Math.sin(Math.PI * x))) - logGamma(1 - x);
	const [first = 0, ...rest] = LANCZOS;
	const sum = rest.reduce((all, one, i) => all + one / (x + i), first);
	const t = x + 6.5;
	return 0.5 * Math.log(2 * Math.PI) + (x - 0.5) * Math.log(t) - t + Math.log(sum);
}

/** The regularised incomplete beta function, by its continued fraction (Lentz). */
function betaBelow(a: number, b: number, x: number): number {
	if (x <= 0) return 0;
	if (x >= 1) return 1;
	if (x > (a + 1) / (a + b + 2)) return 1 - betaBelow(b, a, 1 - x);
	const front = Math.exp(
		logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x)
	);
	const term = (i: number) => {
		const m = i >> 1;
		if (i === 0) return 1;
		return i % 2 === 0
			? (m * (b - m) * x) / ((a + i - 1) * (a + i))
			: (-(a + m) * (a + b + m) * x) / ((a + i - 1) * (a + i));
	};
	return (front / a) * fraction(term);
}

/** 1/(1+ t1/(1+ t2/(1+ …))) by Lentz; `term(0)` is 1. */
function fraction(term: (i: number) => number): number {
	const TINY = 1e-300;
	let value = 1;
	let above = 1;
	let below = 0;
	for (let i = 1; i < 500; i++) {
		const t = term(i);
		below = 1 / nonZero(1 + t * below, TINY);
		above = nonZero(1 + t / above, TINY);
		const change = above * below;
		value *= change;
		if (Math.abs(change - 1) < 1e-16) break;
	}
	return 1 / value;
}
const nonZero = (value: number, tiny: number) => (Math.abs(value) < tiny ? tiny : value);

/** The regularised lower incomplete gamma function: a series below, a continued fraction above. */
function gammaBelow(a: number, x: number): number {
	if (x <= 0) return 0;
	const front = Math.exp(a * Math.log(x) - x - logGamma(a));
	if (x < a + 1) {
		let term = 1 / a;
		let sum = term;
		for (let i = 1; i < 2000 && Math.abs(term) > 1e-17 * Math.abs(sum); i++)
			sum += term *= x / (a + i);
		return front * sum;
	}
	let b = x + 1 - a;
	let c = 1e300;
	let d = 1 / b;
	let value = d;
	for (let i = 1; i < 2000; i++) {
		const an = -i * (i - a);
		b += 2;
		d = 1 / nonZero(an * d + b, 1e-300);
		c = nonZero(b + an / c, 1e-300);
		const change = d * c;
		value *= change;
		if (Math.abs(change - 1) < 1e-16) break;
	}
	return 1 - front * value;
}
