/** What an entry becomes, said beside its field while it is typed. */
import { dateText } from '$lib/workbook/date-text';
import { readEntry, type Entry, type FieldSpec } from './entry';
import { formatUnit } from './format';
import { asEntered } from './scalar-words';

/**
 * "= 1.95 EUR/kg" where a unit was converted, something was worked out or a mark stands between digits; with two readings
 * "= 1,955 EUR/kg, one thousand nine hundred fifty-five, not 1.955". Empty where the entry is what it looks like.
 */
export function becomesOf(text: string, entry: Entry, spec: FieldSpec): string {
	if (!entry.ok || typeof entry.value !== 'number') return '';
	const isMarked = /[.,'’\s]/.test(text.trim());
	if (entry.from === null && !entry.isReckoned && !isMarked) return '';
	const number = spec.date ? dateText(entry.value) : asEntered(entry.value, spec.locale);
	const value = [number, spec.date ? '' : formatUnit(spec.unit)].filter(Boolean).join(' ');
	return `= ${[value, entry.inWords].filter(Boolean).join(', ')}`;
}

/** The same of what is typed so far; empty where it cannot be taken, which is said once it is kept. */
export const becoming = (text: string, spec: FieldSpec): string =>
	becomesOf(text, readEntry(text, spec), spec);
