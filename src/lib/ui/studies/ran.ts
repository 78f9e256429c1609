/** What of an answer is worth keeping beside the study. */
import { fingerprintOf } from '$lib/studies/fingerprint';
import type { StudyResult } from '$lib/studies/kinds';
import { findQuantity } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import type { Study } from '$lib/workbook/study-schema';
import type { Ran } from '$lib/workbook/study-shapes';
import { wordsOf } from './kind-words';

/** The mark of what a run stood on and its headline numbers, never the draws. */
export function ranOf(workbook: Workbook, study: Study, result: StudyResult): Ran {
	const unitOf = (quantity: string) => findQuantity(workbook, quantity)?.unit;
	return {
		stood_on: fingerprintOf(workbook, study),
		headline: wordsOf(result)
			.headline(result, unitOf(study.quantity), unitOf)
			.map(({ label, value, unit }) => ({
				label,
				value: Number.isFinite(value) ? value + 0 : null,
				...(unit === undefined || unit === '1' ? {} : { unit })
			}))
	};
}
