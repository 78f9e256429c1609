/**
 * Moves, turns and stretches of the plane, as the six numbers that SVG and canvas both use:
 * x' = a x + c y + e, y' = b x + d y + f.
 */
import { short } from './xml';

export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const IDENTITY: Matrix = [1, 0, 0, 1, 0, 0];

/** What is drawn goes through `inner` first, then through `outer`. */
export function through(outer: Matrix, inner: Matrix): Matrix {
	const [a, b, c, d, e, f] = outer;
	const [p, q, r, s, t, u] = inner;
	return [
		a * p + c * q,
		b * p + d * q,
		a * r + c * s,
		b * r + d * s,
		a * t + c * u + e,
		b * t + d * u + f
	];
}

export const moved = (x: number, y: number): Matrix => [1, 0, 0, 1, x, y];

export function turned(angle: number): Matrix {
	const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
	return [cos, sin, -sin, cos, 0, 0];
}

export const placeOf = ([a, b, c, d, e, f]: Matrix, x: number, y: number): [number, number] => [
	a * x + c * y + e,
	b * x + d * y + f
];

/** By how much a length grows; where the plane is stretched one way more than the other, the mean. */
export const growth = ([a, b, c, d]: Matrix) => Math.sqrt(Math.abs(a * d - b * c));

const near = (one: number, other: number) => Math.abs(one - other) < 1e-6;

export const onlyMoves = ([a, b, c, d]: Matrix) =>
	near(a, 1) && near(b, 0) && near(c, 0) && near(d, 1);

/** As the attribute `transform`; nothing for the identity. */
export function written(matrix: Matrix): string | undefined {
	if (onlyMoves(matrix) && near(matrix[4], 0) && near(matrix[5], 0)) return undefined;
	return `matrix(${matrix.map((number) => short(number, 5)).join(' ')})`;
}
