/** The best combination in words, the rows of its table, and what separates the runners-up from it. */
import type { PlainTable } from '$lib/exchange/csv/write';
import {
	apart,
	type Combination,
	type OptimiseResult,
	type OptimiseStudy
} from '$lib/studies/choices';
import { findQuantity } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import type { KindWords } from '../../kind-words';
import { inSentence, nameOf, titleOf } from '../../names';
import type { Shown } from '../../shown';

export const kind: KindWords<'optimise'> = {
	name: 'Best combination',
	asks: 'Which of all combinations of alternatives is best',
	atEach: 'for every combination',
	points: 'combinations',
	scenarioLabel: 'Starting from',
	fresh: ({ base }) => ({ scenario: base, direction: 'highest', options: [] }),
	figures: ({ asItIs, ranked }) => [asItIs.value, ...ranked.map(({ value }) => value)],
	said(workbook, study, result, shown) {
		const title = optimiseTitle(workbook, study, result, shown);
		const [best, next] = result.ranked;
		return {
			...{ title, line: optimiseLine(workbook, study, result, shown) },
			table: optimiseTable(workbook, study, result),
			summary:
				best && next ? `${title}. The next best is ${separation(study, best, next, shown)}.` : title
		};
	},
	headline: ({ ranked: [best] }, unit) => [{ label: 'Best', value: best?.value ?? NaN, unit }]
};

export const MOST_RUNNERS_UP = 12;

export function optimiseTitle(
	workbook: Workbook,
	study: OptimiseStudy,
	{ ranked }: OptimiseResult,
	shown: Shown
): string {
	const name = nameOf(workbook, study);
	const [best] = ranked;
	if (!best) return 'No combination keeps the limits and has an answer';
	const chosen = choiceWords(study, best.choice);
	return `${chosen} gives the ${study.direction} ${inSentence(name)}: ${shown.whole(best.value)}`;
}

/** The alternatives taken, those that change nothing left out. */
export function choiceWords(study: OptimiseStudy, choice: readonly number[]): string {
	const changed = study.options.flatMap(({ label, alternatives }, i) => {
		const alternative = alternatives[choice[i]!];
		return alternative && alternative.changes.length > 0 ? [`${label}: ${alternative.label}`] : [];
	});
	return changed.length === 0 ? 'Changing nothing' : changed.join(', ');
}

export function optimiseLine(
	workbook: Workbook,
	study: OptimiseStudy,
	result: OptimiseResult,
	shown: Shown
) {
	const parts = [
		`${titleOf(workbook, study.scenario)} as it stands: ${shown.whole(result.asItIs.value)}`,
		`all ${result.combinations.toLocaleString(shown.locale)} combinations computed`,
		...(result.beyondLimits > 0 ? [`${result.beyondLimits} beyond the limits`] : []),
		...(result.withoutAnswer > 0 ? [`${result.withoutAnswer} without an answer`] : [])
	];
	return parts.join('; ');
}

/** "36 kEUR lower: New rewinder yes, not no" */
export function separation(
	study: OptimiseStudy,
	best: Combination,
	other: Combination,
	shown: Shown
): string {
	const differences = apart(study, other.choice, best.choice).map(
		({ option, one, other: instead }) => `${option} ${one}, not ${instead}`
	);
	const gap = other.value - best.value;
	const size = shown.whole(Math.abs(gap));
	const words =
		size === shown.whole(0)
			? 'as good, to the digits shown'
			: `${size} ${gap < 0 ? 'lower' : 'higher'}`;
	return `${words}: ${differences.join('; ')}`;
}

export function optimiseTable(
	workbook: Workbook,
	study: OptimiseStudy,
	result: OptimiseResult
): PlainTable {
	const unit = findQuantity(workbook, study.quantity)?.unit ?? '1';
	const limits = study.limits ?? [];
	return {
		caption: `${nameOf(workbook, study)} [${unit}] of all combinations, the best first`,
		columns: [
			...['Rank', ...study.options.map(({ label }) => label)],
			...[`${nameOf(workbook, study)} [${unit}]`, ...limits.map((limit) => nameOf(workbook, limit))]
		],
		rows: result.ranked
			.slice(0, 1000)
			.map(({ choice, value, limits: found }, rank) => [
				rank + 1,
				...choice.map((alternative, i) => study.options[i]?.alternatives[alternative]?.label ?? ''),
				value,
				...found.map((one) => (Number.isFinite(one) ? one : null))
			])
	};
}
