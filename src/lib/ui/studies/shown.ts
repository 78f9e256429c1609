/** How a study's figures are written: one unit and as many decimals for all figures of a result. */
import type { UnitSystem } from '$lib/units/system';
import { findQuantity } from '$lib/workbook/lookup';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { decimalsFor, formatDifference, formatNumber } from '../format';
import { scaleFor } from '../figure/scale';

export interface Shown {
	/** As printed; empty for a plain number. */
	readonly unit: string;
	readonly factor: number;
	readonly locale: string;
	/** In the shown unit, without it. */
	number(value: number): string;
	/** The same with its sign. */
	signed(value: number): string;
	/** "1,054 kEUR" */
	whole(value: number): string;
	signedWhole(value: number): string;
}

/** For figures up to `largest`, to the digits that the quantity bears; "no value" where there is none. */
export function shownFor(
	units: UnitSystem,
	quantity: Pick<Quantity, 'unit' | 'digits'> | undefined,
	largest: number,
	locale: string
): Shown {
	const { factor, unit } = scaleFor(units, quantity?.unit, largest);
	const decimals = decimalsFor(largest * factor, quantity?.digits ?? 4);
	const behind = unit === '' ? '' : ` ${unit}`;
	const text = (write: typeof formatNumber, unitText: string) => (value: number) =>
		Number.isFinite(value)
			? `${write(rounded(value * factor, decimals), decimals, locale)}${unitText}`
			: 'no value';
	return {
		...{ unit, factor, locale },
		number: text(formatNumber, ''),
		signed: text(formatDifference, ''),
		whole: text(formatNumber, behind),
		signedWhole: text(formatDifference, behind)
	};
}

/** For these figures of a quantity, as who reads them writes numbers. */
export const shownOf = (
	reader: { readonly units: UnitSystem; readonly locale: string },
	workbook: Workbook,
	{ quantity }: { readonly quantity: string },
	figures: readonly number[]
): Shown =>
	shownFor(reader.units, findQuantity(workbook, quantity), largestOf(figures), reader.locale);

/** To the decimals shown, so that a remainder far below them is zero and not a figure of its own. */
const rounded = (value: number, decimals: number) => {
	const power = 10 ** decimals;
	const whole = Math.round(value * power) / power;
	return Number.isFinite(whole) ? whole + 0 : value;
};

const largestOf = (values: readonly number[]): number =>
	Math.max(0, ...values.filter(Number.isFinite).map(Math.abs));

/** "65 %", "3.1 %", "less than 0.1 %" of a share from 0 to 1. */
export function percentText(share: number, locale: string): string {
	const percent = share * 100;
	if (percent > 0 && percent < 0.1) return `less than ${formatNumber(0.1, 1, locale)} %`;
	if (percent < 100 && percent > 99.9) return `more than ${formatNumber(99.9, 1, locale)} %`;
	const decimals = percent >= 10 || percent === 0 ? 0 : 1;
	return `${formatNumber(Math.round(percent * 10 ** decimals) / 10 ** decimals, decimals, locale)} %`;
}
