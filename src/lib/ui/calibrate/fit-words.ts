/** Fitted figures, intervals and warnings as the page writes them. */
import type { Candidate } from '$lib/calibration/candidates';
import type { Warning } from '$lib/calibration/warnings';
import { decimalsFor, formatDifference, formatNumber, formatUnit } from '../format';
import { texts } from './texts';

/** As many decimals as the standard error has a use for: two of its digits. */
export function fittingDecimals({ value, error }: Pick<Candidate, 'value' | 'error'>): number {
	if (!error || !Number.isFinite(error)) return decimalsFor(value, 4);
	return Math.min(Math.max(1 - Math.floor(Math.log10(Math.abs(error))), 0), 10);
}

export interface CandidateWords {
	readonly value: string;
	readonly error: string;
	readonly interval: string;
	readonly stands: string;
	readonly difference: string;
	readonly inErrors: string;
	readonly unit: string;
}

export function candidateWords(one: Candidate, locale: string): CandidateWords {
	const decimals = fittingDecimals(one);
	const written = (value: number | null) =>
		value === null ? '' : formatNumber(value, decimals, locale);
	return {
		value: written(one.value),
		error: written(one.error),
		interval: one.low === null ? '' : `${written(one.low)} … ${written(one.high)}`,
		stands:
			one.quantity === null ? '' : one.stands === null ? texts.notEntered : written(one.stands),
		difference: one.difference === null ? '' : formatDifference(one.difference, decimals, locale),
		inErrors:
			one.inErrors === null ? '' : texts.inErrors(formatDifference(one.inErrors, 1, locale)),
		unit: formatUnit(one.unit === '1' ? '' : one.unit)
	};
}

export function warningWords(warning: Warning, xUnit: string, locale: string): string {
	const number = (value: number) => formatNumber(value, decimalsFor(value, 4), locale);
	const share = (value: number) => `${formatNumber(100 * value, 0, locale)} %`;
	const unit = formatUnit(xUnit);
	switch (warning.kind) {
		case 'few':
			return texts.few(warning.points);
		case 'out_of_reach':
			return texts.outOfReach(
				number(warning.today),
				number(warning.low),
				number(warning.high),
				unit
			);
		case 'negative':
			return texts.negative(texts.parameters[warning.parameter]);
		case 'may_be_nought':
			return texts.mayBeNought(texts.parameters[warning.parameter]);
		case 'far_from_nought':
			return texts.farFromNought(number(warning.low), unit);
		case 'explains_little':
			return texts.explainsLittle(share(warning.share));
		case 'one_group':
			return texts.oneGroup;
		case 'far':
			return texts.far(warning.points);
	}
}
