/**
 * Any study of a workbook, run from beginning to end where one stands: for the command line, for a worker, and for
 * tests. Spreading a risk study over workers is the browser's (`browser/study-pool.ts`).
 */
import { buildPlan } from '$lib/engine/build/plan';
import type { Plan } from '$lib/engine/plan';
import type { Workbook } from '$lib/workbook/schema';
import type { Study } from '$lib/workbook/study-schema';
import { runBreakEven, type BreakEvenResult } from './break-even';
import { runBridge, type BridgeResult } from './bridge';
import type { OptimiseResult } from './choices';
import { CHUNK } from './chunk';
import { runMap, type MapResult } from './map';
import { runOptimise } from './optimise';
import { answer, type Answer } from './problem';
import { checkRisk, finishRisk, layOutRisk, prepareRisk, runRisk, type PreparedRisk } from './risk';
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
}

export function runStudyHere(
	workbook: Workbook,
	study: Study,
	options: RunOptions = {}
): Answer<StudyResult> {
	const plan = options.plan ?? buildPlan(workbook);
	switch (study.kind) {
		case 'bridge':
			return runBridge(workbook, study, plan);
		case 'sensitivity':
			return runSensitivity(workbook, study, plan);
		case 'map':
			return runMap(workbook, study, plan);
		case 'break_even':
			return runBreakEven(workbook, study, plan);
		case 'optimise':
			return runOptimise(workbook, study, plan);
		case 'risk': {
			const prepared = prepareRisk(workbook, study, { ...options, plan });
			return prepared.ok ? runAll(prepared.value, options) : prepared;
		}
	}
}

function runAll(prepared: PreparedRisk, { onprogress }: RunOptions): Answer<RiskResult> {
	const { columns, draws } = prepared;
	const laidOut = layOutRisk(prepared);
	const check = checkRisk(prepared, laidOut);
	if (!check.ok) return check;
	const values = columns.results.map(() => new Float64Array(draws));
	const states = columns.results.map(() => new Uint8Array(draws));
	for (let from = 0; from < draws; from += CHUNK) {
		const count = Math.min(CHUNK, draws - from);
		const part = runRisk(prepared, laidOut, 0, from, count);
		part.values.forEach((one, i) => values[i]!.set(one, from));
		part.states.forEach((one, i) => states[i]!.set(one, from));
		onprogress?.(from + count, draws);
	}
	return answer(finishRisk(prepared, laidOut, { values, states }, check.value));
}
