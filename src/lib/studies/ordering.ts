/**
 * Putting many numbers in order: places from least to greatest, ranks, percentiles. By radix, so that a million
 * take a moment; equal numbers keep the order in which they stand.
 */

/** The places of the numbers from the least to the greatest. None of them may be NaN. */
export function orderOf(values: Float64Array): Uint32Array {
	const count = values.length;
	const words = new Uint32Array(new Float64Array(values).buffer);
	const keys = [
		new Uint16Array(count),
		new Uint16Array(count),
		new Uint16Array(count),
		new Uint16Array(count)
	];
	for (let i = 0; i < count; i++) {
		let low = words[2 * i]!;
		let high = words[2 * i + 1]!;
		// As unsigned words, negative numbers run backwards and come after the positive ones.
		if (high >>> 31) {
			low = ~low;
			high = ~high;
		} else high ^= 0x80000000;
		keys[0]![i] = low & 0xffff;
		keys[1]![i] = low >>> 16;
		keys[2]![i] = high & 0xffff;
		keys[3]![i] = high >>> 16;
	}
	let order = Uint32Array.from({ length: count }, (_, i) => i);
	let next = new Uint32Array(count);
	const starts = new Uint32Array(65537);
	for (const key of keys) {
		starts.fill(0);
		for (let i = 0; i < count; i++) starts[key[i]! + 1]!++;
		for (let digit = 0; digit < 65536; digit++) starts[digit + 1]! += starts[digit]!;
		for (let i = 0; i < count; i++) next[starts[key[order[i]!]!]!++] = order[i]!;
		[order, next] = [next, order];
	}
	return order;
}

/** Ranks from 1, equal numbers sharing the middle of theirs. */
export function ranksOf(values: Float64Array, order = orderOf(values)): Float64Array {
	const ranks = new Float64Array(values.length);
	let from = 0;
	while (from < order.length) {
		let to = from + 1;
		while (to < order.length && values[order[to]!] === values[order[from]!]) to++;
		for (let i = from; i < to; i++) ranks[order[i]!] = (from + 1 + to) / 2;
		from = to;
	}
	return ranks;
}

/** The number below which a share of the sorted ones lies, between two of them in proportion. NaN of none. */
export function percentileOf(sorted: ArrayLike<number>, share: number): number {
	if (sorted.length === 0) return NaN;
	const place = share * (sorted.length - 1);
	const below = Math.floor(place);
	const part = place - below;
	const low = sorted[below]!;
	return part === 0 ? low : low * (1 - part) + sorted[below + 1]! * part;
}
