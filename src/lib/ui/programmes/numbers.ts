/** Figures of a plan as people read them, and the lot by which one unit more is told. */
import { decimalsFor, formatNumber, formatUnit } from '../format';

/** With its unit: four digits, and none below the whole from a thousand on. */
export function amountText(value: number, unit: string, locale: string, digits = 4): string {
	const figure = formatNumber(
		value,
		Math.abs(value) >= 1000 ? 0 : decimalsOf(value, digits),
		locale
	);
	const shown = formatUnit(unit);
	return shown ? `${figure} ${shown}` : figure;
}

/** No zeros behind what is written in fewer decimals: 300, not 300.0. */
const decimalsOf = (value: number, digits: number): number =>
	fewestDecimals([value], decimalsFor(value, digits));

/** As many decimals as these values need once they are rounded to so many. */
export function fewestDecimals(values: Iterable<number>, decimals: number): number {
	let needed = 0;
	for (const value of values) {
		if (!Number.isFinite(value)) continue;
		const settled = Number(value.toFixed(Math.min(decimals, 12)));
		while (needed < decimals && Number(value.toFixed(needed)) !== settled) needed++;
	}
	return needed;
}

/** "98 %"; "under 1 %" and "over 99 %" are not rounded to nothing or to all. */
export function shareText(share: number): string {
	const percent = share * 100;
	if (share >= 0.9995) return `${Math.round(percent)} %`;
	if (percent > 0 && percent < 1) return '<1 %';
	return `${Math.min(99, Math.round(percent))} %`;
}

/** How many units at once, so that what they bring can be read: 1, or a power of ten. */
export function lotFor(...amounts: readonly number[]): number {
	const most = amounts.reduce((size, each) => Math.max(size, Math.abs(each)), 0);
	if (most === 0 || most >= 10) return 1;
	return 10 ** Math.min(9, Math.ceil(Math.log10(10 / most)));
}

/** "0.01 %", upwards, so that nothing is called nearer than it is. */
export const percentText = (share: number): string =>
	share === 0 ? '0 %' : `${Math.ceil(share * 1e4) / 100} %`;
