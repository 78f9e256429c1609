/**
 * Runs any study of a workbook, and says what of its answer is worth keeping beside it.
 *
 * Each kind has a file of its own; here they meet. Whether the study can be asked at all is looked at
 * first, and its first column is computed by the second engine too where the caller wants that.
 */
import { findQuantity } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import { studyGaps } from '$lib/workbook/study-gaps';
import type { Ran, Study } from '$lib/workbook/study-schema';
import { runBridge, type BridgeResult } from './bridge';
import { runOptimise, type OptimiseResult } from './optimise';
import { refuse, type Answer } from './problem';
import { standsOn } from './stood-on';

export type StudyResult = BridgeResult | OptimiseResult;

export function askStudy(workbook: Workbook, study: Study): Answer<StudyResult> {
	const gap = studyGaps(workbook, study)[0];
	if (gap) return refuse('no-such-quantity', gap.message);
	switch (study.kind) {
		case 'bridge':
			return runBridge(workbook, study);
		case 'optimise':
			return runOptimise(workbook, study);
		default:
			return refuse('no-such-study', `There is no study of the kind ${study.kind} yet.`);
	}
}

/** What is kept of a run: the mark of what it stood on and its headline numbers, never the draws. */
export function ranOf(workbook: Workbook, study: Study, result: StudyResult): Ran {
	const unit = findQuantity(workbook, study.quantity)?.unit;
	const number = (label: string, value: number | undefined) => ({
		label,
		value: value === undefined || !Number.isFinite(value) ? null : value + 0,
		...(unit === undefined ? {} : { unit })
	});
	const headline = () => {
		switch (result.kind) {
			case 'bridge':
				return [number('Difference', result.total)];
			case 'optimise':
				return [number('Best', result.ranked[0]?.value)];
		}
	};
	return { stood_on: standsOn(workbook, study), headline: headline() };
}
