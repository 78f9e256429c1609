/** What the picture of a fit draws: its points, those far off, the line, in the units of x and y. */
import type { MemberFit } from '$lib/calibration/members';
import type { Calibration } from '$lib/workbook/calibration-schema';
import type { XY } from '../figure/chart-parts';

export interface FitDrawn {
	readonly near: readonly XY[];
	readonly far: readonly XY[];
	/** Two ends of the fit; empty where there is none. */
	readonly line: readonly XY[];
	/** Bounds of the axes. */
	readonly x: { readonly low: number; readonly high: number };
	readonly y: { readonly low: number; readonly high: number };
	/** Without an x of their own, points stand in their order. */
	readonly inOrder: boolean;
}

export function drawnOf(
	{ form }: Calibration,
	{ points, fit, shares }: MemberFit
): FitDrawn | null {
	if (points.length === 0 && !shares) return null;
	const inOrder = form === 'mean' || form === 'deviation' || form === 'shares';
	const all: XY[] = shares
		? shares.map(({ value }, at) => ({ x: at + 1, y: 100 * value }))
		: points.map(({ x = 0, y }, at) => ({ x: inOrder ? at + 1 : x, y }));
	const far = new Set(fit?.far ?? []);
	const xs = all.map(({ x }) => x);
	// A line through 0 and a value at 0 are seen where they are meant.
	const low = inOrder ? 0 : Math.min(0, ...xs);
	const high = inOrder ? all.length + 1 : Math.max(0, ...xs) * 1.04;
	const value = (name: string) =>
		fit?.figures.find(({ parameter }) => parameter === name)?.value ?? NaN;
	const at = (x: number): number =>
		form === 'line'
			? value('intercept') + value('slope') * x
			: form === 'proportion'
				? value('slope') * x
				: form === 'ratio'
					? value('ratio') * x
					: value('mean');
	const line = fit ? [low, high].map((x) => ({ x, y: at(x) })) : [];
	const ys = [...all, ...line].map(({ y }) => y);
	const spread = form === 'mean' || form === 'deviation';
	const bounds = spread
		? [Math.min(...ys), Math.max(...ys)]
		: [Math.min(0, ...ys), Math.max(0, ...ys)];
	const room = 0.06 * (bounds[1]! - bounds[0]! || Math.abs(bounds[1]!) || 1);
	return {
		near: all.filter((_, i) => !far.has(i)),
		far: all.filter((_, i) => far.has(i)),
		line,
		x: { low, high: high > low ? high : low + 1 },
		y: { low: spread || bounds[0]! < 0 ? bounds[0]! - room : 0, high: bounds[1]! + room },
		inOrder
	};
}
