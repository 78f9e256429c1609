/** A risk study: inputs with names of their own, distributions and correlations that can be. */
import type { StudyOf } from './study-schema';
import type { Distribution } from './study-shapes';
import type { TakesFindings } from './study-parts';

type Path = readonly PropertyKey[];

export function checkRisk(findings: TakesFindings, study: StudyOf<'risk'>, path: Path): void {
	const labels = new Set<string>();
	study.inputs.forEach(({ label, distribution }, i) => {
		const here = [...path, 'inputs', i];
		if (labels.has(label))
			findings.add(
				[...here, 'label'],
				'duplicate-input',
				`two inputs are called ${label}`,
				'Call one of them otherwise: correlations go by this name.'
			);
		labels.add(label);
		const wrong = distributionProblem(distribution);
		if (wrong) findings.add([...here, 'distribution'], wrong.code, wrong.message, wrong.remedy);
	});
	const pairs = new Set<string>();
	(study.correlations ?? []).forEach(({ between }, i) => {
		const here = [...path, 'correlations', i];
		const strange = between.find((label) => !labels.has(label));
		if (strange !== undefined)
			findings.add(
				here,
				'unknown-input',
				`no input of the study is called ${strange}`,
				'Correct the name, or take the correlation out.'
			);
		if (between[0] === between[1])
			findings.add(
				here,
				'correlated-with-itself',
				`${between[0]} is correlated with itself`,
				'Name two inputs.'
			);
		const pair = [...between].sort().join('\u0001');
		if (pairs.has(pair))
			findings.add(
				here,
				'duplicate-correlation',
				`${between[0]} and ${between[1]} are correlated twice`,
				'Keep one of the two.'
			);
		pairs.add(pair);
	});
}

/** Why a distribution cannot be; null where it can. */
export function distributionProblem(
	distribution: Distribution
): { code: string; message: string; remedy: string } | null {
	const wrong = (message: string, remedy: string) => ({
		code: 'bad-distribution',
		message,
		remedy
	});
	switch (distribution.kind) {
		case 'triangular':
		case 'pert': {
			const { min, likely, max } = distribution;
			if (min > max)
				return wrong(`the lowest value ${min} is above the highest, ${max}`, 'Swap the two.');
			if (likely < min || likely > max)
				return wrong(
					`the likely value ${likely} is not between ${min} and ${max}`,
					'Put it between them.'
				);
			return null;
		}
		case 'uniform': {
			const { min, max } = distribution;
			return min > max
				? wrong(`the lowest value ${min} is above the highest, ${max}`, 'Swap the two.')
				: null;
		}
		case 'normal':
			return distribution.sd < 0
				? wrong(`the standard deviation is ${distribution.sd}`, 'Give one of 0 or more.')
				: null;
		case 'lognormal': {
			const { median, sd_log } = distribution;
			if (!(median > 0)) return wrong(`the median is ${median}`, 'Give one above 0.');
			return sd_log < 0
				? wrong(`the deviation of the logarithm is ${sd_log}`, 'Give one of 0 or more.')
				: null;
		}
		case 'discrete': {
			const negative = distribution.values.find(({ weight }) => weight < 0);
			if (negative)
				return wrong(
					`the value ${negative.value} has the weight ${negative.weight}`,
					'Give weights of 0 or more.'
				);
			return distribution.values.every(({ weight }) => weight === 0)
				? wrong('all weights are 0', 'Give at least one value a weight.')
				: null;
		}
		case 'data':
			return null;
	}
}
