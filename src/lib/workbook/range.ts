/** What a range lets through. */
import type { Range } from './schema';

export function isPermitted(value: number, range: Range | null): boolean {
	if (!range) return true;
	return !(
		(range.min !== undefined && value < range.min) ||
		(range.max !== undefined && value > range.max) ||
		(range.above !== undefined && value <= range.above) ||
		(range.below !== undefined && value >= range.below)
	);
}
