/** Answers of studies that a paper may show: those of the workbook as it is now. */
import { fingerprintOf } from '$lib/studies/fingerprint';
import type { StudyResult } from '$lib/studies/kinds';
import type { Workbook } from '$lib/workbook/schema';
import type { StudyRun } from '../studies/study-runner.svelte';

export function currentAnswer(run: StudyRun | undefined, workbook: Workbook): StudyResult | null {
	if (!run?.answer.ok) return null;
	const study = workbook.studies?.find(({ name }) => name === run.study.name);
	if (!study) return null;
	const isCurrent =
		run.workbook === workbook ||
		fingerprintOf(run.workbook, run.study) === fingerprintOf(workbook, study);
	return isCurrent ? run.answer.value : null;
}
