/** The answer of a study as one JSON object; a value without an answer is null. */
import type { StudyResult } from '$lib/studies/ask-study';
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
	throw new Error(`A study of the kind ${study.kind} was answered as ${result.kind}.`);
}
