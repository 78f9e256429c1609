/** The distance of words against its definition, worked out in full. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editDistance } from '$lib/units/edit-distance';

/** Wrong, missing, added letters and swaps of neighbours, by the recursive definition (optimal string alignment). */
function byDefinition(from: string, to: string): number {
	const known = new Map<string, number>();
	const at = (i: number, k: number): number => {
		if (i === 0 || k === 0) return i + k;
		const key = `${i} ${k}`;
		const before = known.get(key);
		if (before !== undefined) return before;
		let least = Math.min(
			at(i - 1, k) + 1,
			at(i, k - 1) + 1,
			at(i - 1, k - 1) + (from[i - 1] === to[k - 1] ? 0 : 1)
		);
		if (i > 1 && k > 1 && from[i - 1] === to[k - 2] && from[i - 2] === to[k - 1])
			least = Math.min(least, at(i - 2, k - 2) + 1);
		known.set(key, least);
		return least;
	};
	return at(from.length, to.length);
}

describe('the distance of two words', () => {
	const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c', 'é'), maxLength: 90 });
	const near = fc.tuple(word, fc.array(fc.nat(), { maxLength: 5 })).map(([from, places]) => {
		let to = from;
		for (const place of places) {
			const at = place % (to.length + 1);
			to =
				place % 3 === 0 ? to.slice(0, at) + to.slice(at + 1) : `${to.slice(0, at)}a${to.slice(at)}`;
		}
		return [from, to] as const;
	});

	it('is that of its definition up to the limit, and above it anything larger than the limit', () => {
		fc.assert(
			fc.property(fc.oneof(near, fc.tuple(word, word)), fc.nat({ max: 4 }), ([from, to], limit) => {
				const distance = byDefinition(from, to);
				const found = editDistance(from, to, limit);
				if (distance <= limit) expect(found).toBe(distance);
				else expect(found).toBeGreaterThan(limit);
			}),
			{ numRuns: 400 }
		);
	});

	it('counts a swap of neighbours once', () => {
		expect(editDistance('reisn', 'resin', 3)).toBe(1);
		expect(editDistance('metre', 'meter', 3)).toBe(1);
		expect(editDistance('coil', 'coils', 0)).toBe(1);
	});
});
