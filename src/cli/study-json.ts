/** The answer of a study as one JSON object; a value without an answer is null. */
import { OK } from '$lib/engine/state';
import type { Outcome } from '$lib/engine/results';
import type { RiskResult } from '$lib/studies/risk-result';
import type { StudyResult } from '$lib/studies/run';
import type { Study } from '$lib/workbook/study-schema';

export function studyAsJson(study: Study, result: StudyResult): object {
	const { quantity } = study;
	if (study.kind === 'bridge' && result.kind === 'bridge')
		return {
			kind: 'bridge',
			quantity,
			from: study.from,
			to: study.to,
			total: result.total,
			parts: result.parts.map(({ label, value }) => ({ label, value }))
		};
	if (study.kind === 'optimise' && result.kind === 'optimise')
		return {
			kind: 'optimise',
			quantity,
			direction: study.direction,
			combinations: result.combinations,
			beyond_limits: result.beyondLimits,
			without_answer: result.withoutAnswer,
			ranked: result.ranked.slice(0, 20).map(({ choice, value }) => ({
				value,
				choice: choice.map((alternative, option) => ({
					option: study.options[option]?.label ?? '',
					alternative: study.options[option]?.alternatives[alternative]?.label ?? ''
				}))
			}))
		};
	switch (result.kind) {
		case 'sensitivity':
			return {
				kind: 'sensitivity',
				quantity,
				base: numberOf(result.base),
				swings: result.swings.map(
					({ label, mode, low, high, atLow, atHigh, reach, elasticity, elasticityLess }) => ({
						...{ label, mode, low, high, at_low: numberOf(atLow), at_high: numberOf(atHigh) },
						...{ reach: known(reach), elasticity, elasticity_less: elasticityLess }
					})
				),
				cases: result.cases.map((case_) => ({ label: case_.label, value: numberOf(case_.result) })),
				without_effect: result.idle
			};
		case 'map':
			return {
				kind: 'map',
				quantity,
				across: result.across,
				down: result.down,
				values: result.down.map((_, row) =>
					result.across.map((__, column) =>
						known(result.values[row * result.across.length + column] ?? NaN)
					)
				)
			};
		case 'break_even':
			return {
				kind: 'break_even',
				quantity,
				target: result.target,
				input: result.input.quantity,
				crossings: result.crossings.map(({ kind, input, to }) => ({ kind, input, to })),
				sentence: result.sentence
			};
		case 'risk':
			return riskAsJson(result);
	}
	throw new Error(`A study of the kind ${study.kind} was answered as ${result.kind}.`);
}

function riskAsJson(result: RiskResult): object {
	const percentile = (percent: string) => known(result.percentiles[percent] ?? NaN);
	const { quantity, draws, seed, errors } = result;
	return {
		...{ kind: 'risk', quantity, draws, seed, errors },
		mean: known(result.mean),
		sd: known(result.sd),
		percentiles: { '5': percentile('5'), '50': percentile('50'), '95': percentile('95') }
	};
}

const known = (value: number): number | null => (Number.isFinite(value) ? value : null);
const numberOf = ({ value, state }: Outcome): number | null => (state === OK ? value : null);
