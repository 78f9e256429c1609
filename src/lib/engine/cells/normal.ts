/**
 * The normal distribution in cells, written out: cell programs' own functions lose the tails. Other ways than those of
 * `engine/normal.ts`: Hart's fraction of polynomials (Computer Approximations, 1968, no. 5666) for shares, and for
 * quantiles a first guess (Abramowitz and Stegun 26.2.23) that Halley's method mends twice.
 */
import { Op } from '$lib/engine/operations';
import { plain, type Piece } from './piece';
import type { Writer } from './writer';

/** Beyond so many standard deviations no number is left, and squares need not overflow. */
const FARTHEST = 40;
/** Up to here Hart's polynomials, whose last digits are lost further out; from here on the fraction of the tail. */
const TAIL_START = 4;
const TAIL_STEPS = 20;
/** Within so much of the mean the quantile is a series, as no digit of a small value may be lost. */
const CLOSE = 0.1;
const ROOT_2PI = Math.sqrt(2 * Math.PI);

const ABOVE = [
	3.52624965998911e-2, 0.700383064443688, 6.37396220353165, 33.912866078383, 112.079291497871,
	221.213596169931, 220.206867912376
];
const BELOW = [
	8.83883476483184e-2, 1.75566716318264, 16.064177579207, 86.7807322029461, 296.564248779674,
	637.333633378831, 793.826512519948, 440.413735824752
];
/** The series of the quantile in odd powers of (share - 1/2)√(2π). */
const SERIES = [
	20036983 / 6227020800,
	243649 / 39916800,
	4369 / 362880,
	127 / 5040,
	7 / 120,
	1 / 6,
	1
];

const text = (formula: string): Piece => ({ ...plain(formula), plain: false, depth: 6 });

/** By Horner's rule, the highest power first. */
const polynomial = (coefficients: readonly number[], x: string): string =>
	coefficients.map(String).reduce((sum, coefficient) => `(${sum})*${x}+${coefficient}`);

export function normalPiece(w: Writer, code: number, operand: Piece): Piece {
	const x = w.hoist(operand);
	switch (code) {
		case Op.NormalDensity:
			return text(density(size(w, x)));
		case Op.NormalShare: {
			const beyond = w.hoist(text(beyondPiece(size(w, x)))).text;
			return text(`IF(${x.text}>0,1-${beyond},${beyond})`);
		}
		case Op.NormalQuantile:
			return quantile(w, x);
		default:
			return text(`IF(${x.text}>0,${x.text},${w.literals.fault})`);
	}
}

const size = (w: Writer, x: Piece) => w.hoist(text(`MIN(ABS(${x.text}),${FARTHEST})`)).text;

const density = (z: string) => `EXP(0-${z}*${z}/2)/${ROOT_2PI}`;

/** The share beyond z, which is 0 or more. */
function beyondPiece(z: string): string {
	let fraction = `${z}+0.65`;
	for (let step = TAIL_STEPS; step > 0; step--) fraction = `${z}+${step}/(${fraction})`;
	const hart = `EXP(0-${z}*${z}/2)*(${polynomial(ABOVE, z)})/(${polynomial(BELOW, z)})`;
	return `IF(${z}<${TAIL_START},${hart},${density(z)}/(${fraction}))`;
}

function quantile(w: Writer, share: Piece): Piece {
	const p = share.text;
	const isShare = w.hoist({ ...text(`AND(${p}>0,${p}<1)`), truth: true }).text;
	const tail = w.hoist(text(`IF(${isShare}=1,MIN(${p},1-${p}),0.5)`)).text;
	const root = w.hoist(text(`SQRT(0-2*LN(${tail}))`)).text;
	const first = `${root}-(${polynomial([0.010328, 0.802853, 2.515517], root)})/(${polynomial([0.001308, 0.189269, 1.432788, 1], root)})`;
	const mended = (guess: string) => {
		const z = w.hoist(text(`MAX(0,${guess})`)).text;
		const away = w.hoist(text(`(${beyondPiece(z)}-${tail})/(${density(z)})`)).text;
		return `${z}+${away}/(1-${z}*${away}/2)`;
	};
	const far = w.hoist(text(mended(mended(first)))).text;
	const step = w.hoist(text(`IF(${isShare}=1,(${p}-0.5)*${ROOT_2PI},0)`)).text;
	const close = `${step}*(${polynomial(SERIES, `(${step}*${step})`)})`;
	const found = `IF(ABS(${step})<${CLOSE},${close},IF(${p}<0.5,0-${far},${far}))`;
	return text(`IF(${isShare}=1,${found},${w.literals.fault})`);
}
