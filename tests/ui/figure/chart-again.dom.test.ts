import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { ChartConfiguration, ChartType } from 'chart.js';
import { drawAgain } from '$lib/ui/figure/chart-again';
import type { XY } from '$lib/ui/figure/chart-parts';
import { SvgContext } from '$lib/ui/figure/svg/context';
import { newSheet } from './svg/sheets';

type Made = ChartConfiguration<ChartType, XY[]>;

const scales = {
	x: { type: 'linear', min: 0, max: 2, ticks: { stepSize: 1, callback: (at) => `${at} years` } },
	y: { type: 'linear', min: 0, max: 4, ticks: { stepSize: 2, callback: (at) => `${at} <kEUR>` } }
} satisfies NonNullable<Made['options']>['scales'];

const dashedLine: Made = {
	type: 'line',
	data: {
		datasets: [
			{
				data: [0, 1, 2].map((x) => ({ x, y: 2 * x })),
				...{ borderColor: 'rgb(1, 2, 3)', borderWidth: 2, borderDash: [5, 3] },
				pointRadius: 0
			}
		]
	},
	options: { scales }
};

const bars: Made = {
	type: 'bar',
	data: {
		datasets: [
			{
				data: [1, 2].map((x) => ({ x, y: 2 * x })),
				...{ backgroundColor: 'rgb(4, 5, 6)', barThickness: 10 }
			}
		]
	},
	options: { scales }
};

function again(made: Made) {
	const { brush, svg } = newSheet();
	brush.translate(30, 20);
	drawAgain(made, { width: 400, height: 300 }, brush);
	return svg();
}

const numbers = (path: Element | null) =>
	[...(path?.getAttribute('d') ?? '').matchAll(/-?[\d.]+/g)].map(Number);

describe('a chart drawn again as SVG', () => {
	it('holds the words of its axes', () => {
		const words = [...again(dashedLine).querySelectorAll('text')].map((text) => text.textContent);
		expect(words).toEqual(expect.arrayContaining(['0 years', '1 years', '2 years']));
		expect(words).toEqual(expect.arrayContaining(['0 <kEUR>', '2 <kEUR>', '4 <kEUR>']));
	});

	it('draws a line through its points, with its dash, within the area of the chart', () => {
		const line = again(dashedLine).querySelector('path[stroke="rgb(1, 2, 3)"]');
		expect(line?.getAttribute('stroke-dasharray')).toBe('5 3');
		const [x0 = 0, y0 = 0, x1 = 0, y1 = 0, x2 = 0, y2 = 0, ...rest] = numbers(line);
		expect(rest).toEqual([]);
		expect(x1 - x0).toBeCloseTo(x2 - x1, 1);
		expect(y1 - y0).toBeCloseTo(y2 - y1, 1);
		expect(y2).toBeLessThan(y0);
		for (const x of [x0, x2]) expect(x).toBeGreaterThanOrEqual(30);
		expect(x2).toBeLessThanOrEqual(30 + 400);
		expect(line?.closest('[clip-path]')).not.toBeNull();
	});

	it('draws bars as long as their values', () => {
		const found = [...again(bars).querySelectorAll('path[fill="rgb(4, 5, 6)"]')].map(numbers);
		const heights = found.map((path) => {
			const heightsOf = path.filter((_, i) => i % 2 === 1);
			return Math.max(...heightsOf) - Math.min(...heightsOf);
		});
		expect(heights).toHaveLength(2);
		expect(heights[1]! / heights[0]!).toBeCloseTo(2, 1);
	});

	it('leaves its own configuration as it was', () => {
		const before = JSON.stringify(dashedLine);
		again(dashedLine);
		expect(JSON.stringify(dashedLine)).toBe(before);
	});
});

describe('the context of an SVG', () => {
	/** Pictures in place of points; no chart here has any. */
	const NOT_CALLED = ['drawImage'];
	/** What the library keeps there for itself. */
	const ITS_OWN = ['prevTextDirection'];
	/** Of what a chart tells its callbacks, which bears the same name there. */
	const TOLD = ['chart', 'datasetIndex'];

	it('has all that the library reads and calls on a canvas', () => {
		const folder = 'node_modules/chart.js/dist/';
		const files = [folder, `${folder}chunks/`].flatMap((path) =>
			readdirSync(path)
				.filter((name) => name.endsWith('.js') && !name.endsWith('.umd.js'))
				.map((name) => readFileSync(path + name, 'utf8'))
		);
		const called = new Set(
			files.flatMap((source) => [...source.matchAll(/\bctx\.(\w+)/g)].map((found) => found[1]!))
		);
		expect(called.size).toBeGreaterThan(25);
		const brush = new SvgContext(newSheet().sheet);
		const missing = [...called].filter((name) => !(name in brush));
		expect(missing.filter((name) => ![...NOT_CALLED, ...ITS_OWN, ...TOLD].includes(name))).toEqual(
			[]
		);
	});
});
