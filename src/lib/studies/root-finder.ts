/**
 * Where a function of one number is zero: Brent's method between two ends whose signs differ (Brent, Algorithms
 * for Minimization without Derivatives, 1973), and a scan that finds such ends.
 */

export type Function1 = (x: number) => number;

export interface Root {
	readonly x: number;
	/** What is left of the function there; far from zero where the function jumps over it. */
	readonly rest: number;
}

/**
 * Null where the function has no value on the way. The signs at the ends must differ, or one of them be zero. `within`:
 * how near is near enough; as near as numbers go where it is less than that.
 */
export function rootBetween(
	f: Function1,
	from: number,
	to: number,
	atFrom = f(from),
	atTo = f(to),
	within = 0
): Root | null {
	let [a, b, fa, fb] = [from, to, atFrom, atTo];
	let [c, fc] = [a, fa];
	let step = b - a;
	let last = step;
	for (let i = 0; i < 200; i++) {
		if (!Number.isFinite(fb)) return null;
		if (Math.sign(fb) === Math.sign(fc)) {
			[c, fc] = [a, fa];
			step = last = b - a;
		}
		if (Math.abs(fc) < Math.abs(fb)) [a, b, c, fa, fb, fc] = [b, c, b, fb, fc, fb];
		const least = Math.max(2 * Number.EPSILON * Math.abs(b), within / 2);
		const middle = (c - b) / 2;
		if (Math.abs(middle) <= least || fb === 0) return { x: b, rest: fb };
		if (Math.abs(last) < least || Math.abs(fa) <= Math.abs(fb)) step = last = middle;
		else {
			const [p, q] = interpolated(a, b, c, fa, fb, fc);
			if (2 * p < Math.min(3 * middle * q - Math.abs(least * q), Math.abs(last * q))) {
				last = step;
				step = p / q;
			} else step = last = middle;
		}
		[a, fa] = [b, fb];
		b += Math.abs(step) > least ? step : middle > 0 ? least : -least;
		fb = f(b);
	}
	return { x: b, rest: fb };
}

/** Numerator (not below zero) and denominator of the step that a parabola or a straight line suggests. */
function interpolated(
	a: number,
	b: number,
	c: number,
	fa: number,
	fb: number,
	fc: number
): [p: number, q: number] {
	const s = fb / fa;
	let p: number;
	let q: number;
	if (a === c) {
		p = (c - b) * s;
		q = 1 - s;
	} else {
		const r = fb / fc;
		const t = fa / fc;
		p = s * ((c - b) * t * (t - r) - (b - a) * (r - 1));
		q = (t - 1) * (r - 1) * (s - 1);
	}
	return p > 0 ? [p, -q] : [-p, q];
}

/** After so many sections the ends are 300 times nearer; what then has a tenth of its height at the ends meets nothing. */
const SECTIONS_TO_JUDGE = 12;
const HEIGHT_TO_GIVE_UP = 0.1;

/**
 * The least value of |f| between two ends, by golden sections: where a curve only touches zero. Null as soon as it is
 * seen not to come near: a curve that touches zero has sunk with its distance from there. `ends`: |f| at the lower end.
 */
export function nearestToZero(f: Function1, from: number, to: number, ends: number): Root | null {
	const golden = (Math.sqrt(5) - 1) / 2;
	let [low, high] = [from, to];
	let [left, right] = [high - golden * (high - low), low + golden * (high - low)];
	let [fl, fr] = [Math.abs(f(left)), Math.abs(f(right))];
	for (let i = 0; i < 90; i++) {
		if (i === SECTIONS_TO_JUDGE && !(Math.min(fl, fr) <= HEIGHT_TO_GIVE_UP * ends)) return null;
		if (fl <= fr) {
			[high, right, fr] = [right, left, fl];
			left = high - golden * (high - low);
			fl = Math.abs(f(left));
		} else {
			[low, left, fl] = [left, right, fr];
			right = low + golden * (high - low);
			fr = Math.abs(f(right));
		}
	}
	return fl <= fr ? { x: left, rest: fl } : { x: right, rest: fr };
}
