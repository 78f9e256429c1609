/** Random programmes of small whole numbers: many corners shared by several rows, many without a plan or without an end. */
import type { LinearProgramme } from '$lib/programmes/linear';

export type Random = () => number;

/** A linear congruential generator (Numerical Recipes' constants, from memory): the same programmes on every run. */
export function randomFrom(seed: number): Random {
	let state = seed >>> 0;
	return () => (state = (Math.imul(state, 1664525) + 1013904223) >>> 0) / 2 ** 32;
}

export interface Shape {
	readonly whole: boolean;
	/** Small numbers of few values make corners that many rows share, and several best plans. */
	readonly degenerate: boolean;
	readonly boxed: boolean;
}

export function randomProgramme(
	random: Random,
	{ whole, degenerate, boxed }: Shape
): LinearProgramme {
	const pick = (count: number) => Math.floor(random() * count);
	const number = () => (degenerate ? pick(4) : Math.round((random() * 12 - 2) * 8) / 8);
	const columns = 2 + pick(7);
	const rows = 1 + pick(7);
	const starts = [0];
	const indices: number[] = [];
	const values: number[] = [];
	const rowLower: number[] = [];
	const rowUpper: number[] = [];
	for (let row = 0; row < rows; row++) {
		for (let column = 0; column < columns; column++) {
			const value = random() < 0.6 ? number() : 0;
			if (value === 0) continue;
			indices.push(column);
			values.push(value);
		}
		starts.push(indices.length);
		const bound = degenerate ? pick(4) * 2 : Math.round(random() * 60) / 2;
		const kind = pick(8);
		rowLower.push(kind < 5 ? -Infinity : kind === 7 ? bound : bound / 2);
		rowUpper.push(kind === 5 || kind === 6 ? Infinity : bound);
	}
	const upper = Array.from({ length: columns }, () =>
		boxed || whole || random() < 0.3 ? 1 + pick(9) : Infinity
	);
	return {
		maximise: random() < 0.6,
		offset: pick(3),
		cost: Float64Array.from({ length: columns }, () => number() - (degenerate ? 0 : 2)),
		lower: new Float64Array(columns),
		upper: Float64Array.from(upper),
		whole: Uint8Array.from({ length: columns }, () => (whole && random() < 0.6 ? 1 : 0)),
		starts: Int32Array.from(starts),
		columns: Int32Array.from(indices),
		values: Float64Array.from(values),
		rowLower: Float64Array.from(rowLower),
		rowUpper: Float64Array.from(rowUpper)
	};
}
