/** Numbers, lists and ranges as sentences name them. */
import type { Range } from '$lib/workbook/schema';

/** Six significant digits, as far as they say anything. */
export const numberText = (value: number): string => String(Number(value.toPrecision(6)));

/** "a", "a and b", "a, b and c". */
export function listed(names: readonly string[]): string {
	const last = names.at(-1) ?? '';
	return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} and ${last}`;
}

export function rangeText({ min, max, above, below }: Range, unit: string): string {
	const limits = [
		...(above === undefined ? [] : [`above ${numberText(above)}`]),
		...(min === undefined ? [] : [`at least ${numberText(min)}`]),
		...(below === undefined ? [] : [`below ${numberText(below)}`]),
		...(max === undefined ? [] : [`at most ${numberText(max)}`])
	];
	return unit === '' ? listed(limits) : `${listed(limits)} ${unit}`;
}
