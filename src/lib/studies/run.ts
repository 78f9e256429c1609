/**
 * Any study of a workbook, run from beginning to end where one stands: for the command line, for a worker, and for
 * tests. Spreading a risk study over workers is the browser's (`browser/study-pool.ts`).
 */
import { buildPlan } from '$lib/engine/planner/plan';
import type { Plan } from '$lib/engine/plan';
import type { Workbook } from '$lib/workbook/schema';
import type { Study } from '$lib/workbook/study-schema';
import { runBreakEven, type BreakEvenResult } from './break-even';
import { runBridge, type BridgeResult } from './bridge';
import type { OptimiseResult } from './choices';
import { CHUNK } from './chunk';
import { runMap, type MapResult } from './map';
import { runOptimise } from './optimise';
import type { Replanning } from './following';
import { verifierSteps, toTheEnd, type CheckFirst, type FirstDraw } from './first-draw';
import { answer, type Answer } from './problem';
import {
	finishRisk,
	firstDrawOf,
	layOutRisk,
	prepareRisk,
	runRisk,
	type PreparedRisk
} from './risk';
import type { RiskResult } from './risk-result';
import { runSensitivity, type SensitivityResult } from './sensitivity';

export type StudyResult =
	BridgeResult | SensitivityResult | MapResult | BreakEvenResult | RiskResult | OptimiseResult;

export interface RunOptions {
	/** Of this workbook; built when left out. */
	readonly plan?: Plan | undefined;
	/** Instead of a risk study's own. */
	readonly draws?: number | undefined;
	readonly seed?: number | undefined;
	readonly onprogress?: ((done: number, of: number) => void) | undefined;
	/** Where the study asks for plans to follow; left out: they stay as they stand. */
	readonly replanning?: Replanning | undefined;
}

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
	const found = resultOf(workbook, study, options, later);
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

function resultOf(
	workbook: Workbook,
	study: Study,
	options: RunOptions,
	later: CheckFirst
): Answer<StudyResult> {
	const plan = options.plan ?? buildPlan(workbook);
	switch (study.kind) {
		case 'bridge':
			return runBridge(workbook, study, plan, later, options.replanning);
		case 'sensitivity':
			return runSensitivity(workbook, study, plan, later, options.replanning);
		case 'map':
			return runMap(workbook, study, plan, later, options.replanning);
		case 'break_even':
			return runBreakEven(workbook, study, plan, later, options.replanning);
		case 'optimise':
			return runOptimise(workbook, study, plan, later, options.replanning);
		case 'risk': {
			const prepared = prepareRisk(workbook, study, { ...options, plan });
			return prepared.ok ? answer(drawAll(prepared.value, options, later)) : prepared;
		}
	}
}

function drawAll(
	prepared: PreparedRisk,
	{ onprogress }: RunOptions,
	later: CheckFirst
): RiskResult {
	const { columns, draws } = prepared;
	const laidOut = layOutRisk(prepared);
	later(columns, firstDrawOf(prepared, laidOut));
	const values = columns.results.map(() => new Float64Array(draws));
	const states = columns.results.map(() => new Uint8Array(draws));
	for (let from = 0; from < draws; from += CHUNK) {
		const count = Math.min(CHUNK, draws - from);
		const part = runRisk(prepared, laidOut, 0, from, count);
		part.values.forEach((value, i) => values[i]!.set(value, from));
		part.states.forEach((state, i) => states[i]!.set(state, from));
		onprogress?.(from + count, draws);
	}
	return finishRisk(prepared, laidOut, { values, states });
}
