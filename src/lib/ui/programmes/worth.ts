/** Figures of what one more is worth, and the curve of what many more would bring. */
import { decimalsFor } from '../format';
import type { PlanRow } from './plan-table';

/** Three digits for the largest of all: what is a thousandth of it is nothing to plan by. */
export function worthDecimals(rows: readonly PlanRow[]): number {
	const largest = rows.reduce(
		(most, { cells }) =>
			cells.reduce((own, cell) => Math.max(own, Math.abs(cell?.value || 0)), most),
		0
	);
	return decimalsFor(largest, 3);
}

/**
 * "236"; rounded to the decimals of its table, and no digits of its own. Nothing is a bare 0; what is too little for these
 * decimals is "< 0.1", not nothing.
 */
export function worthText(value: number, decimals: number, locale: string): string {
	const least = 10 ** -decimals;
	const isLittle = value !== 0 && Math.abs(value) < least / 2;
	const shown = isLittle ? Math.sign(value) * least : value;
	const text = shown
		.toLocaleString(locale, {
			minimumFractionDigits: value === 0 ? 0 : decimals,
			maximumFractionDigits: decimals
		})
		.replace('-', '−');
	return isLittle ? `${value > 0 ? '<' : '>'}\u00a0${text}` : text;
}

export interface CurvePoint {
	readonly amount: number;
	/** Null where there is no plan then. */
	readonly gain: number | null;
}

/** The curve's points in a drawing of this size, from nothing on; concave, as each more brings less. */
export function curvePoints(
	points: readonly CurvePoint[],
	width: number,
	height: number
): { readonly x: number; readonly y: number }[] {
	const known = points.filter((point) => point.gain !== null);
	const most = known.reduce((largest, { amount }) => Math.max(largest, amount), 0);
	const best = known.reduce((largest, { gain }) => Math.max(largest, gain ?? 0), 0);
	if (most === 0) return [];
	return [{ amount: 0, gain: 0 }, ...known].map(({ amount, gain }) => ({
		x: (amount / most) * width,
		y: best === 0 ? height : height - ((gain ?? 0) / best) * height
	}));
}
