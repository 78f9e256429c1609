/** Numbers, lists and ranges as sentences name them. */
import type { Range } from '$lib/workbook/schema';

/** Six significant digits, as far as they say anything. */
export const numberText = (value: number): string => String(Number(value.toPrecision(6)));

/** How whoever shows a sentence writes the numbers in it: as far as they say anything, and with every digit. */
export interface Writing {
	readonly short: (value: number) => string;
	readonly full: (value: number) => string;
}
export const PLAIN: Writing = { short: numberText, full: String };

/** "a", "a and b", "a, b and c". */
export function listed(names: readonly string[]): string {
	const last = names.at(-1) ?? '';
	return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} and ${last}`;
}

export function rangeText(
	{ min, max, above, below }: Range,
	unit: string,
	write = numberText
): string {
	const limits = [
		...(above === undefined ? [] : [`above ${write(above)}`]),
		...(min === undefined ? [] : [`at least ${write(min)}`]),
		...(below === undefined ? [] : [`below ${write(below)}`]),
		...(max === undefined ? [] : [`at most ${write(max)}`])
	];
	return unit === '' ? listed(limits) : `${listed(limits)} ${unit}`;
}
