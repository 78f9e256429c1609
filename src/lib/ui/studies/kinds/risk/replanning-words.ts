/** What being able to plan anew is worth: the same draws with the plan as it stands, and with plans that follow. */
import { fingerprintOf } from '$lib/studies/fingerprint';
import type { RiskResult } from '$lib/studies/risk-result';
import type { Workbook } from '$lib/workbook/schema';
import { plansOf } from '$lib/workbook/study-parts';
import type { Study, StudyOf } from '$lib/workbook/study-schema';
import type { Shown } from '../../shown';
import type { StudyRun } from '../../study-runner.svelte';
import { texts } from './texts';

/** Empty where the other way was not run, or on something else. */
export function replanningWords(
	workbook: Workbook,
	study: StudyOf<'risk'>,
	result: RiskResult,
	other: StudyRun | undefined,
	shown: Shown
): string {
	if (!other?.answer.ok || plansOf(other.study) === plansOf(study)) return '';
	const before = other.answer.value;
	if (before.kind !== 'risk' || markOf(workbook, study) !== markOf(other.workbook, other.study))
		return '';
	// The mean of differences is the difference of means only over the same draws.
	if (result.errors + before.errors > 0) return '';
	const [anew, kept] = plansOf(study) === 'follow' ? [result, before] : [before, result];
	return texts.worthOfReplanning(
		shown.signedWhole(anew.mean - kept.mean),
		shown.number(anew.mean),
		shown.whole(kept.mean),
		shown.number(anew.percentiles['5'] ?? NaN),
		shown.whole(kept.percentiles['5'] ?? NaN)
	);
}

const markOf = (workbook: Workbook, study: Study): string => {
	const { plans: _, ...rest } = study;
	return fingerprintOf(workbook, rest as Study);
};
