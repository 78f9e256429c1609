import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { axisOf } from '$lib/ui/figure/axis';
import { along, placeNames, type Box } from '$lib/ui/figure/leaders';
import { factorBetween, roundLength, scaleFor } from '$lib/ui/figure/scale';
import { spread } from '$lib/ui/figure/spread';
import { UnitSystem } from '$lib/units/system';

const units = UnitSystem.create([]).system;

describe('labels on one line', () => {
	it('stand at their places where there is room', () => {
		expect(
			spread(
				[
					{ at: 20, width: 10 },
					{ at: 60, width: 10 }
				],
				0,
				100,
				5
			)
		).toEqual([20, 60]);
	});
	it('part to both sides where they would touch', () => {
		// Each 20 wide, 4 apart: 44 in all, around their common middle 50, so from 28: 38 and 62.
		expect(
			spread(
				[
					{ at: 50, width: 20 },
					{ at: 50, width: 20 }
				],
				0,
				100,
				4
			)
		).toEqual([38, 62]);
	});
	it('stay within the line', () => {
		expect(
			spread(
				[
					{ at: 2, width: 20 },
					{ at: 99, width: 20 }
				],
				0,
				100,
				4
			)
		).toEqual([10, 90]);
	});
	it('never overlap and keep their order while they fit', () => {
		const label = fc.record({
			at: fc.integer({ min: 0, max: 1000 }),
			width: fc.integer({ min: 1, max: 90 })
		});
		fc.assert(
			fc.property(fc.array(label, { minLength: 1, maxLength: 9 }), (labels) => {
				const wanted = [...labels].sort((a, b) => a.at - b.at);
				const middles = spread(wanted, 0, 1000, 4);
				wanted.forEach((one, i) => {
					const start = middles[i]! - one.width / 2;
					expect(start).toBeGreaterThanOrEqual(-1e-6);
					expect(start + one.width).toBeLessThanOrEqual(1000 + 1e-6);
					if (i > 0)
						expect(start - (middles[i - 1]! + wanted[i - 1]!.width / 2)).toBeGreaterThanOrEqual(
							4 - 1e-6
						);
				});
			})
		);
	});
});

describe('names at the ends of lines', () => {
	const area: Box = { x: 0, y: 0, width: 400, height: 200 };
	it('stand beside the end where there is room', () => {
		const [placed] = placeNames([{ x: 100, y: 100, width: 80 }], [], area);
		expect(placed).toEqual({ x: 110, y: 90, width: 80, height: 20, leader: null });
	});
	it('give way to each other, with a leader', () => {
		const ends = [
			{ x: 100, y: 100, width: 80 },
			{ x: 100, y: 108, width: 80 }
		];
		const placed = placeNames(ends, [], area);
		const leaders = placed.map((one) => one?.leader ?? null);
		expect(leaders.filter((leader) => leader === null)).toHaveLength(1);
		const [a, b] = [placed[0]!, placed[1]!];
		const apart =
			a.y + a.height <= b.y ||
			b.y + b.height <= a.y ||
			a.x + a.width <= b.x ||
			b.x + b.width <= a.x;
		expect(apart).toBe(true);
	});
	it('stay off the lines', () => {
		const line = along([
			{ x: 100, y: 100 },
			{ x: 400, y: 100 }
		]);
		const [placed] = placeNames([{ x: 100, y: 100, width: 80 }], line, area);
		expect(placed?.leader).not.toBeNull();
		expect(
			line.some(
				(spot) =>
					spot.x > placed!.x &&
					spot.x < placed!.x + 80 &&
					spot.y > placed!.y &&
					spot.y < placed!.y + 20
			)
		).toBe(false);
	});
	it('are left out where there is no free ground, rather than drawn over something', () => {
		expect(placeNames([{ x: 10, y: 10, width: 80 }], [], { ...area, width: 60 })).toEqual([null]);
	});
	it('finds every spot of a line, however steep', () => {
		const spots = along([
			{ x: 0, y: 0 },
			{ x: 0, y: 60 }
		]);
		expect(spots).toHaveLength(11); // the start, then 60 ÷ 6 steps
	});
});

describe('grid lines', () => {
	it('are round, and zero is one of them', () => {
		// 5900 over at most 7 steps is 843 a step, so 1000.
		expect(axisOf(-2270, 3630, 8).ticks).toEqual([-2000, -1000, 0, 1000, 2000, 3000]);
	});
	it('end where the data end', () => {
		expect(axisOf(0, 1.09, 7)).toEqual({ min: 0, max: 1.09, ticks: [0, 0.2, 0.4, 0.6, 0.8, 1] });
	});
	it('stand for a range of nothing as well', () => {
		expect(axisOf(0, 0, 7).ticks).toEqual([0]);
	});
});

describe('scales', () => {
	it('chooses a round length for a scale bar', () => {
		expect(roundLength(5.9)).toBe(5);
		expect(roundLength(0.31)).toBe(0.2);
		expect(roundLength(1)).toBe(1);
		expect(roundLength(0)).toBe(0);
	});
	it('gives long money in thousands, and says so', () => {
		expect(scaleFor(units, 'EUR', 1_750_000)).toEqual({ factor: 0.001, unit: 'kEUR' });
		expect(scaleFor(units, 'EUR', 99_999)).toEqual({ factor: 1, unit: 'EUR' });
	});
	it('makes no thousands of a unit that has none', () => {
		expect(scaleFor(units, 'coil', 5_000_000)).toEqual({ factor: 1, unit: 'coil' });
	});
	it('brings a diameter to the unit of the wall', () => {
		expect(factorBetween(units, 'cm', 'mm')).toBe(10);
		expect(factorBetween(units, 'kg', 'mm')).toBeNull();
	});
});
