import { describe, expect, it } from 'vitest';
import { hatchOf, plotOf, type BarRow } from '$lib/ui/studies/bars';

const bar = (from: number, to: number, figure = '') => ({
	...{ from, to, figure, hatched: to < from, tone: 'ink' as const }
});
const frame = { width: 400, row: 30, top: 7, bar: 16 };

describe('bars beside a table', () => {
	const rows: BarRow[] = [
		{ key: 'a', bars: [bar(0, 100, '100')], carries: 100 },
		{ key: 'b', bars: [bar(100, 60, '−40')], carries: 60 }
	];
	const plot = plotOf(rows, frame);

	it('are as long as their values differ, all on one scale', () => {
		const [first, second] = plot.bars;
		expect(second!.width / first!.width).toBeCloseTo(0.4, 9);
		expect(second!.x + second!.width).toBeCloseTo(first!.x + first!.width, 9);
		expect(plot.x(100) - plot.x(0)).toBeCloseTo(first!.width, 9);
	});

	it('carry their figure outward, and leave room for it', () => {
		const [first, second] = plot.bars;
		expect(first!.figure).toMatchObject({ anchor: 'start', text: '100' });
		expect(second!.figure).toMatchObject({ anchor: 'end', text: '−40' });
		expect(first!.figure!.x + 3 * 7.6).toBeLessThanOrEqual(frame.width);
	});

	it('are joined from the end of one row to the beginning of the next', () => {
		expect(plot.joins).toEqual([{ x: plot.x(100), from: 23, to: 37 }]);
	});

	it('are hatched where they go down, and only within themselves', () => {
		expect(plot.bars[0]!.hatch).toBe('');
		const points = plot.bars[1]!.hatch.match(/[\d.]+ [\d.]+/g)!.map((name) =>
			name.split(' ').map(Number)
		);
		const { x, y, width, height } = plot.bars[1]!;
		for (const [left, top] of points) {
			expect(left).toBeGreaterThanOrEqual(x - 0.01);
			expect(left).toBeLessThanOrEqual(x + width + 0.01);
			expect(top).toBeGreaterThanOrEqual(y - 0.01);
			expect(top).toBeLessThanOrEqual(y + height + 0.01);
		}
	});

	it('stand on a scale of their own where all of them are the same', () => {
		const flat = plotOf([{ key: 'a', bars: [bar(5, 5)] }], frame);
		expect(Number.isFinite(flat.bars[0]!.x)).toBe(true);
		expect(hatchOf(0, 0, 0, 10)).toBe('');
	});
});
