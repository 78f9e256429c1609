/** What a range permits, in words. */
import type { Range } from '$lib/workbook/schema';
import { decimalsWritten, formatNumber, formatUnit } from './format';

/** "0.5 to 6 h", "above 0", "at most 100 %"; empty where everything is permitted. */
export function permittedText(range: Range | null, unit: string, locale: string): string {
	if (!range) return '';
	const show = (value: number) => formatNumber(value, decimalsWritten(value, 9), locale);
	const { min, max, above, below } = range;
	const units = formatUnit(unit) ? ` ${formatUnit(unit)}` : '';
	if (min !== undefined && max !== undefined) return `${show(min)} to ${show(max)}${units}`;
	const low =
		min !== undefined ? `at least ${show(min)}` : above !== undefined ? `above ${show(above)}` : '';
	const high =
		max !== undefined ? `at most ${show(max)}` : below !== undefined ? `below ${show(below)}` : '';
	const both = [low, high].filter(Boolean).join(', ');
	return both ? `${both}${units}` : '';
}
