/** What of an answer is worth keeping beside the study. */
import { findQuantity } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import type { Ran, Study } from '$lib/workbook/study-schema';
import type { StudyResult } from './run';
import { fingerprintOf } from './fingerprint';

/** What is kept of a run: the mark of what it stood on and its headline numbers, never the draws. */
export const ranOf = (workbook: Workbook, study: Study, result: StudyResult): Ran => ({
	stood_on: fingerprintOf(workbook, study),
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
