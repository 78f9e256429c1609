/**
 * Asks any study of a workbook: first whether it can be asked at all, then for its answer; and says what
 * of the answer is worth keeping beside the study.
 */
import { findQuantity } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import { studyGaps, type StudyGap } from '$lib/workbook/study-gaps';
import type { Ran, Study } from '$lib/workbook/study-schema';
import { refuse, type Answer, type StudyProblem } from './problem';
import { runStudyHere, type RunOptions, type StudyResult } from './run';
import { standsOn } from './stood-on';

export function askStudy(
	workbook: Workbook,
	study: Study,
	options: RunOptions = {}
): Answer<StudyResult> {
	const [gap] = studyGaps(workbook, study);
	return gap ? refuse(CODES[gap.code], gap.message) : runStudyHere(workbook, study, options);
}

const CODES: Readonly<Record<StudyGap['code'], StudyProblem['code']>> = {
	'unknown-quantity': 'no-such-quantity',
	'unknown-scenario': 'no-such-scenario',
	'unknown-member': 'no-such-member',
	'which-member': 'no-such-member',
	'not-a-number': 'no-value',
	'not-an-input': 'not-an-input',
	'misplaced-value': 'no-value'
};

/** What is kept of a run: the mark of what it stood on and its headline numbers, never the draws. */
export const ranOf = (workbook: Workbook, study: Study, result: StudyResult): Ran => ({
	stood_on: standsOn(workbook, study),
	headline: headlineOf(workbook, study, result).map(({ label, value, unit }) => ({
		label,
		value: Number.isFinite(value) ? value + 0 : null,
		...(unit === undefined || unit === '1' ? {} : { unit })
	}))
});

interface Headline {
	readonly label: string;
	readonly value: number;
	readonly unit?: string | undefined;
}

function headlineOf(workbook: Workbook, study: Study, result: StudyResult): Headline[] {
	const unit = findQuantity(workbook, study.quantity)?.unit;
	switch (result.kind) {
		case 'bridge':
			return [{ label: 'Difference', value: result.total, unit }];
		case 'optimise':
			return [{ label: 'Best', value: result.ranked[0]?.value ?? NaN, unit }];
		case 'sensitivity': {
			const [widest] = result.swings;
			return widest ? [{ label: `Reach of ${widest.label}`, value: widest.reach, unit }] : [];
		}
		case 'map':
			return [{ label: 'As it stands', value: result.base.value, unit }];
		case 'break_even': {
			const input = findQuantity(workbook, result.input.quantity);
			const ofInput = result.input.mode === 'scale' ? undefined : input?.unit;
			const met = result.crossings.find(({ kind }) => kind !== 'jumps');
			return [{ label: 'Met at', value: met?.input ?? NaN, unit: ofInput }];
		}
		case 'risk':
			return [
				{ label: 'Middle', value: result.percentiles['50'] ?? NaN, unit },
				{ label: 'One in twenty below', value: result.percentiles['5'] ?? NaN, unit },
				{ label: 'One in twenty above', value: result.percentiles['95'] ?? NaN, unit },
				...(result.target
					? [{ label: 'Chance of the target', value: result.target.chance * 100, unit: '%' }]
					: [])
			];
	}
}
