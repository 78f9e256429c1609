/** The stair that a path draws: one tread for each month, on a scale that begins a little below the lowest. */
export interface Tread {
	readonly x: number;
	readonly y: number;
	readonly width: number;
	readonly begins: boolean;
}

export interface Stair {
	readonly treads: readonly (Tread | null)[];
	readonly line: string;
}

/** `values` by month, null where there is none; `begins` tells where a step is entered. */
export function stairOf(
	values: readonly (number | null)[],
	begins: readonly boolean[],
	width: number,
	height: number
): Stair {
	const known = values.filter((value) => value !== null);
	const [low, high] = [Math.min(...known), Math.max(...known)];
	const room = high - low || Math.abs(high) || 1;
	const [bottom, top] = [low - room * 0.25, high + room * 0.15];
	const each = width / Math.max(values.length, 1);
	const y = (value: number) => height - ((value - bottom) / (top - bottom)) * height;
	const treads = values.map((value, i) =>
		value === null ? null : { x: i * each, y: y(value), width: each, begins: begins[i] ?? false }
	);
	let line = '';
	let before: Tread | null = null;
	for (const tread of treads) {
		if (tread)
			line += `${before ? 'L' : 'M'}${round(tread.x)} ${round(tread.y)}L${round(tread.x + tread.width)} ${round(tread.y)}`;
		before = tread;
	}
	return { treads, line };
}

const round = (value: number) => Math.round(value * 10) / 10;
