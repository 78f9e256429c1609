/**
 * Figures from points: a line, a proportion, a ratio of sums, a mean, a standard deviation; each with its standard error
 * and the interval that holds the true one with 95 %, if the points scatter by chance. In the units of the points.
 */
import type { FitForm, Fitted } from '$lib/workbook/calibration-schema';
import { chiSquaredBelow, studentAbove } from './quantiles';

export interface XYPoint {
	/** NaN where the form has no x. */
	readonly x: number;
	readonly y: number;
}

export interface FittedFigure {
	readonly parameter: Fitted['parameter'];
	readonly value: number;
	/** Null where the points do not tell it. */
	readonly error: number | null;
	readonly low: number | null;
	readonly high: number | null;
}

export interface Fit {
	readonly figures: readonly FittedFigure[];
	readonly points: number;
	/** Of the points about the line, the ratio or the mean; null of too few. */
	readonly spread: number | null;
	/** Of a line alone: the share of the scatter of y that it explains. */
	readonly explained: number | null;
	/** Places of points that lie further off than chance puts one in a hundred such fits. */
	readonly far: readonly number[];
}

export type FitRead =
	{ readonly ok: true; readonly fit: Fit } | { readonly ok: false; readonly message: string };

const no = (message: string): FitRead => ({ ok: false, message });
const sumOf = (list: readonly number[]) => list.reduce((all, one) => all + one, 0);
const meanOf = (list: readonly number[]) => {
	const mean = sumOf(list) / list.length;
	// A second pass takes back what rounding lost.
	return mean + sumOf(list.map((one) => one - mean)) / list.length;
};

export function fitted(form: Exclude<FitForm, 'shares'>, points: readonly XYPoint[]): FitRead {
	if (points.length === 0) return no('There are no points yet.');
	switch (form) {
		case 'line':
			return line(points);
		case 'proportion':
			return proportion(points);
		case 'ratio':
			return ratio(points);
		case 'mean':
		case 'deviation':
			return mean(points, form);
	}
}

function line(points: readonly XYPoint[]): FitRead {
	const count = points.length;
	const [middleX, middleY] = [meanOf(points.map(({ x }) => x)), meanOf(points.map(({ y }) => y))];
	const wide = sumOf(points.map(({ x }) => (x - middleX) ** 2));
	if (count < 2 || !(wide > 0))
		return no('A line needs points at two places of x at least. Add some where more or less ran.');
	const slope = sumOf(points.map(({ x, y }) => (x - middleX) * (y - middleY))) / wide;
	const intercept = middleY - slope * middleX;
	const residuals = points.map(({ x, y }) => y - middleY - slope * (x - middleX));
	const freedom = count - 2;
	const spread = spreadOf(residuals, freedom);
	const all = sumOf(points.map(({ y }) => (y - middleY) ** 2));
	const rest = sumOf(residuals.map((one) => one * one));
	return {
		ok: true,
		fit: {
			figures: [
				figure(
					'intercept',
					intercept,
					spread && spread * Math.sqrt(1 / count + middleX ** 2 / wide),
					freedom
				),
				figure('slope', slope, spread && spread / Math.sqrt(wide), freedom)
			],
			points: count,
			spread,
			explained: all > 0 ? 1 - rest / all : null,
			far: farOff(
				residuals,
				points.map(({ x }) => 1 / count + (x - middleX) ** 2 / wide),
				freedom
			)
		}
	};
}

function proportion(points: readonly XYPoint[]): FitRead {
	const wide = sumOf(points.map(({ x }) => x * x));
	if (!(wide > 0)) return no('A proportion needs a point where x is not 0.');
	const slope = sumOf(points.map(({ x, y }) => x * y)) / wide;
	const residuals = points.map(({ x, y }) => y - slope * x);
	const freedom = points.length - 1;
	const spread = spreadOf(residuals, freedom);
	return {
		ok: true,
		fit: {
			figures: [figure('slope', slope, spread && spread / Math.sqrt(wide), freedom)],
			points: points.length,
			spread,
			explained: null,
			far: farOff(
				residuals,
				points.map(({ x }) => (x * x) / wide),
				freedom
			)
		}
	};
}

/** Sum of y over sum of x; its error as that of a ratio of a sample (Cochran, Sampling Techniques, chapter 6). */
function ratio(points: readonly XYPoint[]): FitRead {
	const [x, y] = [sumOf(points.map((one) => one.x)), sumOf(points.map((one) => one.y))];
	if (x === 0) return no('What it is divided by comes to 0. Look at the points.');
	const value = y / x;
	const residuals = points.map((one) => one.y - value * one.x);
	const freedom = points.length - 1;
	const spread = spreadOf(residuals, freedom);
	return {
		ok: true,
		fit: {
			figures: [
				figure('ratio', value, spread && (spread * Math.sqrt(points.length)) / Math.abs(x), freedom)
			],
			points: points.length,
			spread,
			explained: null,
			far: farOff(
				residuals,
				points.map((one) => one.x / x),
				freedom
			)
		}
	};
}

function mean(points: readonly XYPoint[], form: 'mean' | 'deviation'): FitRead {
	const ys = points.map(({ y }) => y);
	const count = ys.length;
	const value = meanOf(ys);
	const residuals = ys.map((y) => y - value);
	const freedom = count - 1;
	const spread = spreadOf(residuals, freedom);
	if (form === 'deviation' && spread === null)
		return no('A standard deviation needs two points at least.');
	const middle = figure('mean', value, spread && spread / Math.sqrt(count), freedom);
	return {
		ok: true,
		fit: {
			figures: form === 'mean' ? [middle] : [deviation(spread!, freedom), middle],
			points: count,
			spread,
			explained: null,
			far: farOff(
				residuals,
				ys.map(() => 1 / count),
				freedom
			)
		}
	};
}

/** The interval is that of a normal sample. */
const deviation = (spread: number, freedom: number): FittedFigure => ({
	parameter: 'deviation',
	value: spread,
	error: spread / Math.sqrt(2 * freedom),
	low: spread * Math.sqrt(freedom / chiSquaredBelow(0.975, freedom)),
	high: spread * Math.sqrt(freedom / chiSquaredBelow(0.025, freedom))
});

const spreadOf = (residuals: readonly number[], freedom: number): number | null =>
	freedom < 1 ? null : Math.sqrt(sumOf(residuals.map((one) => one * one)) / freedom);

function figure(
	parameter: Fitted['parameter'],
	value: number,
	error: number | null,
	freedom: number
): FittedFigure {
	if (error === null || freedom < 1)
		return { parameter, value, error: null, low: null, high: null };
	const reach = studentAbove(0.025, freedom) * error;
	return { parameter, value, error, low: value - reach, high: value + reach };
}

/** By residuals that are measured against a fit without their own point; all points together err once in a hundred times. */
function farOff(
	residuals: readonly number[],
	leverages: readonly number[],
	freedom: number
): number[] {
	if (freedom < 2) return [];
	const squares = sumOf(residuals.map((one) => one * one));
	const limit = studentAbove(0.005 / residuals.length, freedom - 1);
	return residuals.flatMap((residual, at) => {
		const room = 1 - leverages[at]!;
		if (!(room > 1e-9)) return [];
		const without = (squares - residual ** 2 / room) / (freedom - 1);
		if (!(without > 1e-24 * squares)) return Math.abs(residual) > 0 && squares > 0 ? [at] : [];
		return Math.abs(residual) / Math.sqrt(without * room) > limit ? [at] : [];
	});
}
