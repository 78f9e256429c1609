/** A risk study in words: its finding, the figures beside the picture, where draws failed, its table. */
import type { Entry, PlainTable } from '$lib/exchange/csv/write';
import type { RiskResult } from '$lib/studies/risk-result';
import { findQuantity } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import type { StudyOf } from '$lib/workbook/study-schema';
import type { Target } from '$lib/workbook/study-shapes';
import { formatNumber } from '../../../format';
import type { KindWords } from '../../kind-words';
import { inSentence, nameOf, titleOf } from '../../names';
import { percentText, type Shown } from '../../shown';

export const kind: KindWords<'risk'> = {
	name: 'Risk',
	asks: 'How sure a result is when inputs are not',
	atEach: 'in every draw',
	points: 'draws',
	fresh: ({ selected }) => ({ scenario: selected, inputs: [], draws: 10_000, seed: 1 }),
	figures: ({ percentiles, base }) => [percentiles['1'] ?? 0, percentiles['99'] ?? 0, base],
	said: (workbook, study, result, shown) => ({
		title: riskTitle(workbook, study, result, shown),
		line: riskLine(workbook, study, shown),
		table: riskTable(workbook, study, result),
		summary: riskSummaryText(workbook, study, result, shown)
	}),
	headline: ({ percentiles, target }, unit) => [
		{ label: 'Middle', value: percentiles['50'] ?? NaN, unit },
		{ label: '5 % lie below', value: percentiles['5'] ?? NaN, unit },
		{ label: '5 % lie above', value: percentiles['95'] ?? NaN, unit },
		...(target ? [{ label: 'Chance of the target', value: target.chance * 100, unit: '%' }] : [])
	]
};

type Risk = StudyOf<'risk'>;

const levelOf = (target: Target): number => Object.values<number>(target)[0]!;
const boundWords = (target: Target) => ('at_least' in target ? 'at least' : 'at most');

export function riskTitle(
	workbook: Workbook,
	study: Risk,
	result: RiskResult,
	shown: Shown
): string {
	const name = nameOf(workbook, study);
	if (result.errors === result.draws) return `${name} has no answer in any of the draws`;
	const [low, high] = [result.percentiles['5'] ?? NaN, result.percentiles['95'] ?? NaN];
	if (!study.target || !result.target)
		return `Nine times in ten ${inSentence(name)} lies between ${shown.number(low)} and ${shown.whole(high)}`;
	const chance = Math.round(result.target.chance * 100);
	const of = `${boundWords(study.target)} ${shown.whole(levelOf(study.target))}`;
	const count =
		chance === 0 && result.target.chance > 0
			? 'Less than one chance in 100'
			: chance === 1
				? 'One chance in 100'
				: chance === 100 && result.target.chance < 1
					? 'More than 99 chances in 100'
					: `${chance} chances in 100`;
	return `${count} of ${of}`;
}

export const riskLine = (workbook: Workbook, study: Risk, shown: Shown): string =>
	`${nameOf(workbook, study)} of ${titleOf(workbook, study.scenario)}${shown.unit ? `, ${shown.unit}` : ''}; all inputs moved together: columns count draws, the line reads the chance of ${study.target && 'at_most' in study.target ? 'at most' : 'at least'} that much`;

export interface Fact {
	readonly label: string;
	readonly value: string;
	readonly strong?: boolean;
}

export function riskFacts(study: Risk, result: RiskResult, shown: Shown): Fact[] {
	const at = (percent: string) => shown.whole(result.percentiles[percent] ?? NaN);
	const single = shareAtLeast(result.cumulative, result.base);
	return [
		...(study.target && result.target
			? [
					{
						label: `Target ${boundWords(study.target)} ${shown.whole(levelOf(study.target))} met`,
						value: percentText(result.target.chance, shown.locale),
						strong: true
					}
				]
			: []),
		{ label: 'As it stands, the single estimate', value: shown.whole(result.base) },
		...(single === null
			? []
			: [{ label: 'As high as the single estimate', value: percentText(single, shown.locale) }]),
		{ label: 'Middle of all draws', value: at('50') },
		{ label: '5 % of results lie below', value: at('5') },
		{ label: '5 % of results lie above', value: at('95') },
		{ label: 'Mean', value: shown.whole(result.mean) },
		{ label: 'Standard deviation', value: shown.whole(result.sd) }
	];
}

/** The share of draws at or above a value, read from the curve. */
export function shareAtLeast(cumulative: readonly number[], value: number): number | null {
	if (!Number.isFinite(value) || cumulative.length < 2) return null;
	const last = cumulative.length - 1;
	if (value <= cumulative[0]!) return 1;
	if (value > cumulative[last]!) return 0;
	const above = cumulative.findIndex((one) => one >= value);
	const [a, b] = [cumulative[above - 1]!, cumulative[above]!];
	const place = above - 1 + (b > a ? (value - a) / (b - a) : 1);
	return 1 - place / last;
}

/** What went without an answer, and why. */
export function faultSentences(
	workbook: Workbook,
	study: Risk,
	result: RiskResult,
	locale: string
): string[] {
	if (result.errors === 0) return [];
	const share = percentText(result.errors / result.draws, locale);
	const first = `${nameOf(workbook, study)} has no answer in ${share} of draws (${formatNumber(result.errors, 0, locale)} of ${formatNumber(result.draws, 0, locale)}). They count as not meeting the target and stand in none of the other figures.`;
	const origins = result.origins.slice(0, 3).map(({ place, reason, count, draw }) => {
		const where = nameOf(workbook, place);
		const looked = result.lookedAt < result.errors ? ` of the ${result.lookedAt} looked at` : '';
		const words = reason.charAt(0).toUpperCase() + reason.slice(1);
		return `${count}${looked} arose in ${where}. Draw ${draw + 1}: ${words}${words.endsWith('.') ? '' : '.'}`;
	});
	return [first, ...origins];
}

/** How the draws were made, and what they were held against. */
export function drawnWords(result: RiskResult, locale: string): string {
	const { compared, notCompared } = result.check ?? { compared: 0, notCompared: 0 };
	const judged = !result.check
		? 'The second engine has not looked at the first draw yet.'
		: compared > 0
			? `The first draw agrees with the second engine in ${formatNumber(compared, 0, locale)} values${notCompared > 0 ? `; ${formatNumber(notCompared, 0, locale)} it does not judge` : ''}.`
			: 'The second engine judged no value of the first draw.';
	return `${formatNumber(result.draws, 0, locale)} draws, seed ${result.seed}. ${judged}`;
}

export function riskSummaryText(
	workbook: Workbook,
	study: Risk,
	result: RiskResult,
	shown: Shown
): string {
	const facts = riskFacts(study, result, shown).map(({ label, value }) => `${label}: ${value}`);
	return [
		`${nameOf(workbook, study)}.`,
		`${facts.join('; ')}.`,
		...faultSentences(workbook, study, result, shown.locale)
	].join(' ');
}

export function riskTable(workbook: Workbook, study: Risk, result: RiskResult): PlainTable {
	const unit = findQuantity(workbook, study.quantity)?.unit ?? '1';
	const name = `${nameOf(workbook, study)} [${unit}]`;
	const rows: Entry[][] = [
		...[
			['Draws', result.draws],
			['Seed', result.seed],
			['Draws without an answer', result.errors],
			['As it stands', result.base],
			['Mean', result.mean],
			['Standard deviation', result.sd],
			['Least', result.min],
			['Most', result.max]
		].map((row): Entry[] => row as Entry[]),
		...(result.target ? [['Chance of the target', result.target.chance] as Entry[]] : []),
		...result.cumulative.map((value, percent): Entry[] => [
			`${percent} % of draws are at most`,
			value
		]),
		...result.drivers.map(({ label, share }): Entry[] => [`Share of the spread: ${label}`, share])
	];
	return {
		caption: name,
		columns: ['Figure', name],
		rows: rows.map(([label, value]) => [
			label ?? '',
			typeof value === 'number' && !Number.isFinite(value) ? null : (value ?? null)
		])
	};
}

/** Inputs whose spread nobody gave a source for. */
export const withoutSource = (study: Risk): string[] =>
	study.inputs
		.filter(({ note }) => !note || /^invented|guess/i.test(note))
		.map(({ label }) => label);

/** Below the shares of inputs that go together; empty where each is drawn by itself. */
export const sharedWords = ({ correlations }: Pick<Risk, 'correlations'>): string =>
	correlations?.some(({ rank }) => rank !== 0)
		? 'Some inputs are correlated. Inputs that move together share their spread, and each is given all that goes with it, so the shares can add up to more than 100 %.'
		: '';

/** What stands behind ± in the table of how the figures settled. */
export const ERROR_WORDS =
	'± is the standard error of the percentile, as for plain random draws: about two times in three the figure that endless draws would give lies within it.';
