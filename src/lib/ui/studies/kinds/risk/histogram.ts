/** A histogram with the chance of at least (or at most) each value, in pixels of its drawing. */
import type { RiskSummary } from '$lib/studies/risk-result';
import type { Target } from '$lib/workbook/study-shapes';
import { axisOf } from '../../../figure/axis';
import { hatchOf } from '../../bars';

export interface HistogramFrame {
	readonly width: number;
	readonly height: number;
	readonly right: number;
}

export interface Histogram {
	readonly bars: readonly {
		readonly x: number;
		readonly y: number;
		readonly width: number;
		readonly height: number;
		/** Empty where the bar meets the target, or there is none. */
		readonly hatch: string;
	}[];
	/** The chance of reaching each value, as a path. */
	readonly line: string;
	readonly other: string;
	readonly ticks: readonly { readonly x: number; readonly value: number }[];
	readonly target: { readonly x: number; readonly y: number; readonly share: number } | null;
	readonly left: number;
	readonly floor: number;
	readonly y: (share: number) => number;
}

const TOP = 26;
const FLOOR = 30;
const LEFT = 8;

export function histogramOf(
	summary: RiskSummary,
	other: RiskSummary | null,
	target: Target | undefined,
	factor: number,
	frame: HistogramFrame
): Histogram | null {
	const { from, width, counts } = summary.histogram;
	if (counts.length === 0) return null;
	const level = target && Object.values<number>(target)[0]!;
	const wide = width > 0 ? width : Math.abs(from) || 1;
	const values = [from, from + wide * counts.length, ...(level === undefined ? [] : [level])];
	if (other && other.histogram.counts.length > 0)
		values.push(
			other.histogram.from,
			other.histogram.from + other.histogram.width * other.histogram.counts.length
		);
	const [low, high] = [Math.min(...values), Math.max(...values)];
	const floor = frame.height - FLOOR;
	const scale = (frame.width - LEFT - frame.right) / (high - low || 1);
	const x = (value: number) => LEFT + (value - low) * scale;
	const y = (share: number) => floor - share * (floor - TOP);
	const most = Math.max(...counts);
	const atLeast = target === undefined || 'at_least' in target;
	const bars = counts.map((count, i) => {
		const left = x(from + i * wide);
		const breadth = Math.max(1, wide * scale - 1);
		const top = y(most > 0 ? count / most : 0);
		const middle = from + (i + 0.5) * wide;
		const meets = level === undefined || (atLeast ? middle >= level : middle <= level);
		return {
			...{ x: left, y: top, width: breadth, height: floor - top },
			hatch: meets ? '' : hatchOf(left, top, breadth, floor - top)
		};
	});
	const axis = axisOf(low * factor, high * factor, 7);
	const share = summary.target?.chance;
	return {
		bars,
		line: chances(summary, atLeast, x, y, [low, high]),
		other: other ? chances(other, atLeast, x, y, [low, high]) : '',
		ticks: axis.ticks.map((value) => ({ value, x: x(value / factor) })),
		target: level === undefined || share === undefined ? null : { x: x(level), y: y(share), share },
		...{ left: LEFT, floor, y }
	};
}

/** Of all draws: those without a value reach nothing, so the line begins below 100 % where there are any. */
function chances(
	{ cumulative, draws, errors }: RiskSummary,
	atLeast: boolean,
	x: (value: number) => number,
	y: (share: number) => number,
	[low, high]: readonly [number, number]
): string {
	const kept = draws === 0 ? 0 : (draws - errors) / draws;
	return cumulative
		.flatMap((value, percent) => {
			// The outermost thousandths lie beyond the columns.
			if (!Number.isFinite(value) || value < low || value > high) return [];
			const share = (atLeast ? 1 - percent / 100 : percent / 100) * kept;
			return [`${Math.round(x(value) * 10) / 10} ${Math.round(y(share) * 10) / 10}`];
		})
		.map((point, i) => `${i === 0 ? 'M' : 'L'}${point}`)
		.join('');
}
