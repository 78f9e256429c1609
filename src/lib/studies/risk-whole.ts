/**
 * A risk study as one kind among others: all of its draws where one stands, and what the command line says of them.
 * Spreading the draws over workers is the browser's (`browser/study-pool.ts`).
 */
import type { Plan } from '$lib/engine/plan';
import type { Workbook } from '$lib/workbook/schema';
import { CHUNK } from './chunk';
import type { CheckFirst } from './first-draw';
import type { RunOptions } from './kinds';
import { answer, type Answer } from './problem';
import { finishRisk, firstDrawOf, layOutRisk, prepareRisk, runRisk, type RiskStudy } from './risk';
import type { RiskResult } from './risk-result';
import { columnsOf, figure, orNull, type Told } from './told';

export function runWholeRisk(
	workbook: Workbook,
	study: RiskStudy,
	plan: Plan,
	later: CheckFirst,
	_replanning: unknown,
	options: RunOptions
): Answer<RiskResult> {
	const opened = prepareRisk(workbook, study, { ...options, plan });
	if (!opened.ok) return opened;
	const prepared = opened.value;
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
		options.onprogress?.(from + count, draws);
	}
	return answer(finishRisk(prepared, laidOut, { values, states }));
}

export const riskTold: Told<RiskStudy, RiskResult> = {
	text(_study, result, { name, unit }) {
		const at = (percent: string) => result.percentiles[percent] ?? NaN;
		return [
			`${name}${unit && `,${unit}`}: ${result.draws} draws, seed ${result.seed}\n`,
			columnsOf([
				['As it stands', result.base],
				['Mean', result.mean],
				['Standard deviation', result.sd],
				['5 % lie below', at('5')],
				['Middle', at('50')],
				['5 % lie above', at('95')]
			]),
			result.target ? `Target met in ${figure(result.target.chance * 100)} % of draws\n` : '',
			result.errors > 0
				? `No answer in ${figure((result.errors / result.draws) * 100)} % of draws (${result.errors})\n`
				: '',
			...result.origins.slice(0, 3).map(({ count, reason }) => `  ${count}: ${reason}\n`),
			...result.notices.map((notice) => `${notice}\n`)
		].join('');
	},
	data(_study, { draws, seed, base, errors, mean, sd, percentiles, target, origins, notices }) {
		const at = (percent: string) => orNull(percentiles[percent] ?? NaN);
		return {
			...{ draws, seed, as_it_stands: orNull(base), mean: orNull(mean), sd: orNull(sd) },
			percentiles: { '5': at('5'), '50': at('50'), '95': at('95') },
			target: target && { chance: target.chance, standard_error: target.standardError },
			errors,
			error_share: errors / draws,
			origins: origins.map(({ count, reason }) => ({ count, reason })),
			notices
		};
	}
};
