/**
 * Any study of a workbook, run from beginning to end where one stands: for the command line, for a worker, and for
 * tests. Spreading a risk study over workers is the browser's (`browser/study-pool.ts`).
 */
import { buildPlan } from '$lib/engine/planner/plan';
import type { Workbook } from '$lib/workbook/schema';
import type { Study } from '$lib/workbook/study-schema';
import { verifierSteps, toTheEnd, type CheckFirst, type FirstDraw } from './first-draw';
import { kindOf, type RunOptions, type StudyResult } from './kinds';
import { answer, type Answer } from './problem';

/** The second engine at work; between steps others may have their turn. */
export type CheckSteps = Generator<void, Answer<StudyResult>>;

/** A study with its answer, which the second engine has not looked at yet. */
export interface Answered {
	readonly result: StudyResult;
	/** Has the first draw checked, step by step: the answer to be trusted, or why there is none. */
	readonly check: () => CheckSteps;
}

/** The answer, once the second engine agrees on the first draw. */
export function runStudyHere(
	workbook: Workbook,
	study: Study,
	options: RunOptions = {}
): Answer<StudyResult> {
	const answered = answerStudy(workbook, study, options);
	return answered.ok ? toTheEnd(answered.value.check()) : answered;
}

/** The answer at once, and its check for afterwards: the second engine takes longer than everything else together. */
export function answerStudy(
	workbook: Workbook,
	study: Study,
	options: RunOptions = {}
): Answer<Answered> {
	let check: (() => Generator<void, Answer<FirstDraw>>) | null = null;
	const later: CheckFirst = (columns, draws) => {
		check = () => verifierSteps(columns, draws);
		return answer(null);
	};
	const found = kindOf(study).run(
		workbook,
		study,
		options.plan ?? buildPlan(workbook),
		later,
		options.replanning,
		options
	);
	if (!found.ok) return found;
	return answer({ result: found.value, check: () => checked(found.value, check!()) });
}

/** The result with its check, or why it cannot stand. */
export function* checked(
	result: StudyResult,
	steps: Generator<void, Answer<FirstDraw>>
): CheckSteps {
	const check = yield* steps;
	return check.ok ? answer({ ...result, check: check.value }) : check;
}
