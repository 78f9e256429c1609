/** How a study stands: whether its kept run is still good, and what that run found. */
import { freshnessOf, type Freshness } from '$lib/studies/fingerprint';
import type { Workbook } from '$lib/workbook/schema';
import type { Study } from '$lib/workbook/study-schema';
import type { UnitSystem } from '$lib/units/system';
import { findQuantity } from '$lib/workbook/lookup';
import { formatUnit } from '../format';
import { shownFor } from './shown';

export const FRESHNESS_WORDS: Readonly<Record<Freshness, string>> = {
	'never-run': 'No run kept yet',
	'up-to-date': 'Up to date',
	'out-of-date': 'Out of date: what it depends on has changed since its last run'
};

export interface Standing {
	readonly freshness: Freshness;
	readonly words: string;
	/** "Difference +1,105 kEUR" of the kept run; empty where none is kept. */
	readonly headline: readonly string[];
}

export function standingOf(
	workbook: Workbook,
	study: Study,
	units: UnitSystem,
	locale: string
): Standing {
	const freshness = freshnessOf(workbook, study);
	const digits = findQuantity(workbook, study.quantity)?.digits;
	const headline = (study.ran?.headline ?? []).map(({ label, value, unit }) => {
		if (value === null) return `${label}: none`;
		const quantity = { ...(unit === undefined ? {} : { unit }), ...(digits ? { digits } : {}) };
		const shown = shownFor(units, quantity, value, locale);
		const text = shown.number(value);
		const behind = shown.unit || formatUnit(unit);
		return `${label} ${text}${behind ? ` ${behind}` : ''}`;
	});
	return { freshness, words: FRESHNESS_WORDS[freshness], headline };
}
