/** A time that was measured and carried on, in words no more exact than it is. */
import { formatNumber } from '../format';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;

/** "less than 1 s", "about 8 s", "about 4 min", "about 1.5 h". */
export function durationText(milliseconds: number, locale: string): string {
	if (milliseconds < 1000) return `less than ${formatNumber(1, 0, locale)} s`;
	if (milliseconds < 1.5 * MINUTE) return about(milliseconds / 1000, 's', locale);
	if (milliseconds < 1.5 * HOUR) return about(milliseconds / MINUTE, 'min', locale);
	return about(milliseconds / HOUR, 'h', locale, milliseconds < 10 * HOUR ? 1 : 0);
}

const about = (value: number, unit: string, locale: string, decimals = 0): string =>
	`about ${formatNumber(Math.round(value * 10 ** decimals) / 10 ** decimals, decimals, locale)} ${unit}`;
