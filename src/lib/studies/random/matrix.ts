/**
 * Symmetric matrices of correlations: whether one is possible, the nearest that is, and its triangular root.
 * Rows one after the other in one array; n rows, n columns.
 */

export type Square = { readonly n: number; readonly at: Float64Array };

export const identity = (n: number): Square => {
	const at = new Float64Array(n * n);
	for (let i = 0; i < n; i++) at[i * n + i] = 1;
	return { n, at };
};

/** Eigenvalues and, column by column, their vectors: Jacobi's rotations. */
export function eigen({ n, at }: Square): { values: Float64Array; vectors: Float64Array } {
	const a = at.slice();
	const v = identity(n).at;
	for (let sweep = 0; sweep < 60; sweep++) {
		let off = 0;
		for (let i = 0; i < n; i++) for (let j = 0; j < i; j++) off += a[i * n + j]! ** 2;
		if (off < 1e-24) break;
		for (let p = 0; p < n; p++) for (let q = p + 1; q < n; q++) rotate(a, v, n, p, q);
	}
	return { values: Float64Array.from({ length: n }, (_, i) => a[i * n + i]!), vectors: v };
}

function rotate(a: Float64Array, v: Float64Array, n: number, p: number, q: number): void {
	const apq = a[p * n + q]!;
	if (Math.abs(apq) < 1e-300) return;
	const theta = (a[q * n + q]! - a[p * n + p]!) / (2 * apq);
	const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
	const c = 1 / Math.sqrt(t * t + 1);
	const s = t * c;
	for (let k = 0; k < n; k++) {
		const [x, y] = [a[k * n + p]!, a[k * n + q]!];
		a[k * n + p] = c * x - s * y;
		a[k * n + q] = s * x + c * y;
	}
	for (let k = 0; k < n; k++) {
		const [x, y] = [a[p * n + k]!, a[q * n + k]!];
		a[p * n + k] = c * x - s * y;
		a[q * n + k] = s * x + c * y;
		const [z, w] = [v[k * n + p]!, v[k * n + q]!];
		v[k * n + p] = c * z - s * w;
		v[k * n + q] = s * z + c * w;
	}
}

/** Least eigenvalue that a matrix is given back with, so that it has a triangular root. */
const LEAST = 1e-8;
/** Below zero by more than this, a matrix is no correlation matrix at all. */
const ROUNDING = 1e-9;

/** Whether random numbers can have these correlations: no eigenvalue below zero. */
export const isPossible = (matrix: Square) =>
	Math.min(...eigen(matrix).values, Infinity) >= -ROUNDING;

/**
 * The correlation matrix nearest to a symmetric one with a unit diagonal, by the sum of squared differences
 * (Higham, IMA Journal of Numerical Analysis 22, 2002, 329: alternating projections with Dykstra's correction).
 */
export function nearestPossible(matrix: Square): Square {
	const { n } = matrix;
	let y = matrix.at.slice();
	let correction = new Float64Array(n * n);
	for (let step = 0; step < 1000; step++) {
		const r = y.map((value, i) => value - correction[i]!);
		const x = withoutNegative({ n, at: r }, 0);
		correction = x.map((value, i) => value - r[i]!);
		const next = x.slice();
		for (let i = 0; i < n; i++) next[i * n + i] = 1;
		let moved = 0;
		for (let i = 0; i < n * n; i++) moved = Math.max(moved, Math.abs(next[i]! - y[i]!));
		y = next;
		if (moved < 1e-12) break;
	}
	return rooted({ n, at: y });
}

/** Moved off the edge of what is possible as little as a triangular root needs. */
export function rooted(matrix: Square): Square {
	const { n } = matrix;
	const at = withoutNegative(matrix, LEAST);
	const scale = Float64Array.from({ length: n }, (_, i) => 1 / Math.sqrt(at[i * n + i]!));
	for (let i = 0; i < n; i++)
		for (let j = 0; j < n; j++)
			at[i * n + j] = i === j ? 1 : at[i * n + j]! * scale[i]! * scale[j]!;
	return { n, at };
}

function withoutNegative(matrix: Square, least: number): Float64Array {
	const { n } = matrix;
	const { values, vectors } = eigen(matrix);
	if (values.every((value) => value >= least)) return matrix.at.slice();
	const at = new Float64Array(n * n);
	for (let i = 0; i < n; i++)
		for (let j = 0; j <= i; j++) {
			let sum = 0;
			for (let k = 0; k < n; k++)
				sum += vectors[i * n + k]! * Math.max(least, values[k]!) * vectors[j * n + k]!;
			at[i * n + j] = at[j * n + i] = sum;
		}
	return at;
}

/** The lower triangular L with L times its transpose the matrix; its eigenvalues must be above zero. */
export function choleskyOf({ n, at }: Square): Square {
	const root = new Float64Array(n * n);
	for (let i = 0; i < n; i++)
		for (let j = 0; j <= i; j++) {
			let sum = at[i * n + j]!;
			for (let k = 0; k < j; k++) sum -= root[i * n + k]! * root[j * n + k]!;
			root[i * n + j] = i === j ? Math.sqrt(Math.max(sum, 1e-300)) : sum / root[j * n + j]!;
		}
	return { n, at: root };
}

/** S with S times `inner` the matrix `outer`, all three lower triangular. */
export function dividedBy(outer: Square, inner: Square): Square {
	const { n } = outer;
	const at = new Float64Array(n * n);
	for (let i = 0; i < n; i++)
		for (let j = i; j >= 0; j--) {
			let sum = outer.at[i * n + j]!;
			for (let k = j + 1; k <= i; k++) sum -= at[i * n + k]! * inner.at[k * n + j]!;
			at[i * n + j] = sum / inner.at[j * n + j]!;
		}
	return { n, at };
}
