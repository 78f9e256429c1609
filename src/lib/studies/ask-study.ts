/** Asks any study of a workbook: first whether it can be asked at all, then for its answer. */
import type { Workbook } from '$lib/workbook/schema';
import { studyGaps, type StudyGap } from '$lib/workbook/study-gaps';
import type { Study } from '$lib/workbook/study-schema';
import { refuse, type Answer, type StudyProblem } from './problem';
import type { RunOptions, StudyResult } from './kinds';
import { runStudyHere } from './run';

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
