/**
 * Durations as people write them, "1:30". Whether that is an hour and a half or a minute and a half the column says by its
 * unit, "h:min" or "min:s", and nothing is guessed: it may be a time of day as well. Three parts have one reading.
 */
import { quoted } from './number-text';

export type DurationRead =
	| { readonly ok: true; readonly value: number; readonly unit: 'h' | 'min' }
	| { readonly ok: false; readonly message: string };

const TWO = /^(\d{1,6}):([0-5]\d)$/;
const THREE = /^(\d{1,6}):([0-5]\d):([0-5]\d)(?:[.,]\d+)?$/;
const HOURS = /^(?:h{1,2}:mi?n?m?(?::s{1,2})?)$/i;
const MINUTES = /^(?:m{1,2}|min):s{1,2}(?:ec)?$/i;

/** The unit in which a column of durations counts, from "h:min", "hh:mm:ss" or "min:s"; null where it is no such column. */
export function durationUnit(written: string): 'h' | 'min' | null {
	const text = written.trim();
	if (MINUTES.test(text)) return 'min';
	return HOURS.test(text) ? 'h' : null;
}

export const isDuration = (text: string): boolean =>
	TWO.test(text.trim()) || THREE.test(text.trim());

/** Null where neither the text nor the unit of its column speaks of a duration. */
export function readDuration(cell: string, columnUnit: string): DurationRead | null {
	const text = cell.trim();
	const unit = durationUnit(columnUnit);
	const [, hours, minutes, seconds] = THREE.exec(text) ?? [];
	if (hours !== undefined)
		return {
			...{ ok: true, unit: 'h' },
			value: (Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds)) / 3600
		};
	const [, whole, part] = TWO.exec(text) ?? [];
	if (whole === undefined)
		return unit === null
			? null
			: {
					ok: false,
					message: `${quoted(text)} is no duration as this column writes them. Write one as in 1:30.`
				};
	if (unit === null)
		return {
			ok: false,
			message: `${quoted(text)} may be hours and minutes, minutes and seconds, or a time of day. Write h:min or min:s as the unit of the column; where it is a time of day, leave the column out.`
		};
	return { ok: true, unit, value: (Number(whole) * 60 + Number(part)) / 60 };
}
