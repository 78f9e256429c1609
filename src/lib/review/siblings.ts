/** Entries that lie far from those of the other members: by the median, and how far the others lie from it. */
import { axesOf } from '$lib/workbook/axes';
import type { Quantity, Values } from '$lib/workbook/schema';
import { flatten } from '$lib/workbook/values';

/** As many siblings make a row that can be judged, itself included. */
const FEWEST = 4;
/** Deviations from the median beyond which one is far, as robust statistics count them. */
const FAR = 5;
/** Below this factor nothing is far, however close the others lie. */
const LEAST_FACTOR = 2;

export interface FarEntry {
	readonly at: readonly string[];
	readonly value: number;
	readonly median: number;
}

/** Far along every axis with members enough to judge by: a layer that is thick in each product is no slip. */
export function farEntries(quantity: Quantity, values: Values | undefined): FarEntry[] {
	const axes = axesOf(quantity).length;
	// Where somebody holds both signs for usual, numbers are places on a scale, and no factor lies between them.
	if (axes === 0 || isOfBothSigns(quantity)) return [];
	const cells = flatten(values).flatMap(({ at, value }) =>
		typeof value === 'number' && value !== 0 && at.length === axes ? [{ at, value }] : []
	);
	const byAxis: FarEntry[][] = [];
	for (let axis = 0; axis < axes; axis++) {
		const rows = new Map<string, { at: string[]; value: number }[]>();
		for (const cell of cells) {
			const key = cell.at.filter((_, at) => at !== axis).join('\u0001');
			rows.set(key, [...(rows.get(key) ?? []), cell]);
		}
		const judged = [...rows.values()].filter((row) => row.length >= FEWEST);
		if (judged.length > 0) byAxis.push(judged.flatMap(farInRow));
	}
	const [first = [], ...others] = byAxis;
	return first.filter(({ at }) => others.every((far) => far.some((one) => one.at === at)));
}

const isOfBothSigns = ({ usual }: Quantity) =>
	usual?.min !== undefined && usual.max !== undefined && usual.min < 0 && usual.max > 0;

function farInRow(row: readonly { at: string[]; value: number }[]): FarEntry[] {
	const different = new Set(row.map(({ value }) => value)).size;
	// Three others are enough only where each says something of its own: a copy of one of them does not.
	if (row.length === FEWEST && different < FEWEST) return [];
	const sizes = row.map(({ value }) => Math.log(Math.abs(value)));
	const middle = median(sizes);
	const deviation = 1.4826 * median(sizes.map((size) => Math.abs(size - middle)));
	const signs = row.filter(({ value }) => value < 0).length;
	const most = signs * 2 > row.length ? -1 : 1;
	// One of another sign is far where all others agree.
	const isOdd = (value: number) =>
		Math.sign(value) !== most && (signs === 1 || row.length - signs === 1);
	// A slip seldom comes out the same twice: what another member has too, as a copy of a member does, is no lone one.
	const isShared = (value: number) => row.filter((one) => one.value === value).length > 1;
	return row.flatMap(({ at, value }, i) => {
		const away = Math.abs(sizes[i]! - middle);
		const limit = Math.max(FAR * deviation, Math.log(LEAST_FACTOR));
		const isFar = away > limit && !isShared(value);
		return isFar || isOdd(value) ? [{ at, value, median: most * Math.exp(middle) }] : [];
	});
}

export function median(numbers: readonly number[]): number {
	const sorted = [...numbers].sort((a, b) => a - b);
	const half = sorted.length / 2;
	return sorted.length % 2 === 1
		? sorted[Math.floor(half)]!
		: (sorted[half - 1]! + sorted[half]!) / 2;
}
