/** The values that a study gives an input, in words: values with their unit, factors as percent, amounts with a sign. */
import { findQuantity } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import type { Mode } from '$lib/workbook/study-shapes';
import { formatDifference, formatNumber, formatUnit } from '../format';

interface Moved {
	readonly quantity: string;
	readonly mode: Mode;
}

const written = (value: number, signed: boolean, locale: string): string => {
	// Five digits: a value that was solved for has many more than anybody enters.
	const tidy = Number(value.toPrecision(5));
	const decimals = Math.max(0, Math.min(6, (String(tidy).split('.')[1] ?? '').length));
	return signed ? formatDifference(tidy, decimals, locale) : formatNumber(tidy, decimals, locale);
};

/** "1.95", "−10 %" or "+0.5", without the input's unit. */
export function movedText({ mode }: Pick<Moved, 'mode'>, value: number, locale: string): string {
	if (mode === 'scale') return `${written((value - 1) * 100, true, locale)} %`;
	return written(value, mode === 'add', locale);
}

/** The unit behind it; a factor has said its own. */
export function movedUnit(workbook: Workbook, { quantity, mode }: Moved): string {
	return mode === 'scale' ? '' : formatUnit(findQuantity(workbook, quantity)?.unit);
}

export function movedWhole(
	workbook: Workbook,
	moved: Moved,
	value: number,
	locale: string
): string {
	const unit = movedUnit(workbook, moved);
	return `${movedText(moved, value, locale)}${unit ? ` ${unit}` : ''}`;
}

/** "1.7 to 2.5 EUR/kg", "−10 to +10 %" */
export function rangeText(
	workbook: Workbook,
	moved: Moved,
	from: number,
	to: number,
	locale: string
): string {
	const first = movedText(moved, from, locale).replace(/ %$/, '');
	return `${first} to ${movedWhole(workbook, moved, to, locale)}`;
}
