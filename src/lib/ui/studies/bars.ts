/**
 * Bars on rows of one height beside a table: where each begins and ends, its hatch, its figure, what joins
 * one row to the next. In pixels of the plot; the table around it has the words.
 */
import { axisOf } from '../figure/axis';

export interface Bar {
	readonly from: number;
	readonly to: number;
	readonly hatched: boolean;
	readonly tone: 'ink' | 'copper' | 'blue';
	/** Stands beyond `to`; none where empty. */
	readonly figure: string;
	readonly strong?: boolean;
}

export interface BarRow {
	readonly key: string;
	readonly bars: readonly Bar[];
	/** The level that a hairline carries from this row to the next. */
	readonly carries?: number;
}

export interface PlotFrame {
	readonly width: number;
	readonly row: number;
	/** Where a row's bar begins, from the top of the row. */
	readonly top: number;
	readonly bar: number;
}

export interface DrawnBar {
	readonly x: number;
	readonly y: number;
	readonly width: number;
	readonly height: number;
	readonly hatch: string;
	readonly tone: Bar['tone'];
	readonly figure: {
		readonly x: number;
		readonly anchor: 'start' | 'end';
		readonly text: string;
	} | null;
	readonly strong: boolean;
}

export interface Plot {
	readonly height: number;
	readonly bars: readonly DrawnBar[];
	/** Vertical hairlines between rows. */
	readonly joins: readonly { readonly x: number; readonly from: number; readonly to: number }[];
	readonly ticks: readonly { readonly x: number; readonly value: number }[];
	readonly x: (value: number) => number;
}

/** Roughly what a figure takes; the type is tabular. */
const CHARACTER = 7.6;
const GAP = 6;
export const AXIS_HEIGHT = 30;

export function plotOf(
	rows: readonly BarRow[],
	frame: PlotFrame,
	also: readonly number[] = []
): Plot {
	const ends = rows.flatMap(({ bars }) => bars.flatMap(({ from, to }) => [from, to]));
	const all = [...ends, ...also].filter(Number.isFinite);
	const [low, high] = [Math.min(...all), Math.max(...all)];
	const longest = Math.max(
		0,
		...rows.flatMap(({ bars }) => bars.map(({ figure }) => figure.length))
	);
	const room = longest * CHARACTER + GAP + 4;
	const [left, right] = [Math.min(room, frame.width / 4), Math.min(room, frame.width / 4)];
	const span = high > low ? high - low : Math.abs(high) || 1;
	const scale = Math.max(1, frame.width - left - right) / span;
	const x = (value: number) => left + (value - low) * scale;
	const axis = axisOf(low, low + span, 5);
	return {
		height: rows.length * frame.row,
		bars: rows.flatMap(({ bars }, row) => bars.map((bar) => drawn(bar, row, x, frame))),
		joins: rows.flatMap(({ carries }, row) =>
			carries === undefined || row === rows.length - 1
				? []
				: [
						{
							x: x(carries),
							from: row * frame.row + frame.top + frame.bar,
							to: (row + 1) * frame.row + frame.top
						}
					]
		),
		ticks: axis.ticks.map((value) => ({ value, x: x(value) })),
		x
	};
}

function drawn(bar: Bar, row: number, x: (value: number) => number, frame: PlotFrame): DrawnBar {
	const [a, b] = [x(bar.from), x(bar.to)];
	const left = Math.min(a, b);
	const width = Math.max(1, Math.abs(b - a));
	const y = row * frame.row + frame.top;
	const outward = bar.to < bar.from ? -1 : 1;
	return {
		...{ x: left, y, width, height: frame.bar, tone: bar.tone, strong: bar.strong === true },
		hatch: bar.hatched ? hatchOf(left, y, width, frame.bar) : '',
		figure:
			bar.figure === ''
				? null
				: {
						x: b + outward * GAP,
						anchor: outward < 0 ? 'end' : 'start',
						text: bar.figure
					}
	};
}

/** Diagonal lines within a rectangle, as the path of a drawing: a pattern would not survive being taken along. */
export function hatchOf(x: number, y: number, width: number, height: number, step = 6): string {
	let path = '';
	for (let shift = -height + step / 2; shift < width; shift += step) {
		const from = Math.max(0, -shift);
		const to = Math.min(height, width - shift);
		if (to <= from) continue;
		const at = (along: number) => `${tidy(x + shift + along)} ${tidy(y + height - along)}`;
		path += `M${at(from)}L${at(to)}`;
	}
	return path;
}

const tidy = (value: number) => Math.round(value * 100) / 100;
