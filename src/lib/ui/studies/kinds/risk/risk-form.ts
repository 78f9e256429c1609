/** Edits of a risk study that touch its inputs and its correlations at once: these go by the inputs' names. */
import type { Correlation, StudyOf } from '$lib/workbook/study-schema';
import { changedAt, withoutAt } from '../../settings/lists';

type Risk = StudyOf<'risk'>;

export function relabelled(study: Risk, index: number, label: string): Risk {
	const old = study.inputs[index]?.label;
	const renamed = (one: string) => (one === old ? label : one);
	return withCorrelations(
		{ ...study, inputs: changedAt(study.inputs, index, { label }) },
		(study.correlations ?? []).map(({ between: [a, b], rank }) => ({
			between: [renamed(a), renamed(b)],
			rank
		}))
	);
}

export function withoutInput(study: Risk, index: number): Risk {
	const gone = study.inputs[index]?.label ?? '';
	return withCorrelations(
		{ ...study, inputs: withoutAt(study.inputs, index) },
		(study.correlations ?? []).filter(({ between }) => !between.includes(gone))
	);
}

export function withCorrelations(study: Risk, correlations: readonly Correlation[]): Risk {
	const { correlations: _correlations, ...rest } = study;
	return correlations.length > 0 ? { ...rest, correlations: [...correlations] } : rest;
}

/** The first two inputs that are not correlated yet. */
export function freePair({ inputs, correlations = [] }: Risk): [string, string] | null {
	for (const [i, { label: one }] of inputs.entries())
		for (const { label: other } of inputs.slice(i + 1))
			if (!correlations.some(({ between }) => between.includes(one) && between.includes(other)))
				return [one, other];
	return null;
}
