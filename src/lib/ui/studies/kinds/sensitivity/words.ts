/** Swings in words: which inputs decide, the rows of the picture, its table. */
import type { PlainTable } from '$lib/exchange/csv/write';
import type { SensitivityResult, SwingResult } from '$lib/studies/sensitivity';
import { OK } from '$lib/engine/state';
import { findQuantity } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import type { StudyOf } from '$lib/workbook/study-schema';
import { formatDifference } from '../../../format';
import type { Bar } from '../../bars';
import type { TableRow } from '../../BarTable.svelte';
import type { KindWords } from '../../kind-words';
import { inSentence, nameOf, titleOf } from '../../names';
import { movedText, rangeText } from '../../range-words';
import type { Shown } from '../../shown';

export const kind: KindWords<'sensitivity'> = {
	name: 'Sensitivity',
	asks: 'Which inputs matter most, each moved by itself',
	atEach: 'at every value that an input is moved to',
	points: 'points',
	fresh: ({ selected }) => ({ scenario: selected, all: { percent: 10 } }),
	figures: ({ base, swings }) => [
		base.value,
		...swings.flatMap(({ atLow, atHigh }) => [atLow.value, atHigh.value])
	],
	said: (workbook, study, result, shown) => ({
		title: sensitivityTitle(workbook, study, result, shown),
		line: sensitivityLine(workbook, study),
		table: sensitivityTable(workbook, study, result),
		summary: sensitivitySummary(workbook, study, result, shown)
	}),
	headline: ({ swings: [widest] }, unit) =>
		widest ? [{ label: `Reach of ${widest.label}`, value: widest.reach, unit }] : []
};

type Sensitivity = StudyOf<'sensitivity'>;

/** Rows drawn; all of them stand in the table. */
export const MOST_ROWS = 24;
const NUMBERS = ['No input', 'One input', 'Two inputs', 'Three inputs'];

export function sensitivityTitle(
	workbook: Workbook,
	study: Sensitivity,
	{ swings }: SensitivityResult,
	shown: Shown
): string {
	const name = inSentence(nameOf(workbook, study));
	const known = swings.filter(({ reach }) => Number.isFinite(reach));
	const [widest] = known;
	if (!widest) return `No input of the study moves ${name}`;
	const deciding = known.filter(({ reach }) => reach >= widest.reach / 2);
	const labels = deciding.map((swingResult) => swingName(workbook, study, swingResult));
	const first = labels[0] ?? '';
	if (deciding.length === 1)
		return `${first} decides: it moves ${name} by ${shown.whole(widest.reach)}`;
	if (deciding.length <= 3)
		return `${NUMBERS[deciding.length]} decide: ${labels.slice(0, -1).join(', ')} and ${labels.at(-1)}`;
	return `${deciding.length} inputs matter about equally; the widest, ${inSentence(first)}, moves ${name} by ${shown.whole(widest.reach)}`;
}

/** What the study calls an input, or else what the workbook does. */
export const swingName = (workbook: Workbook, study: Sensitivity, swing: SwingResult): string =>
	study.inputs?.some(({ label }) => label === swing.label) ? swing.label : nameOf(workbook, swing);

export const sensitivityLine = (workbook: Workbook, study: Sensitivity): string =>
	`${titleOf(workbook, study.scenario)}; each input moved alone over its range, the others as they stand`;

export function swingRows(
	workbook: Workbook,
	study: Sensitivity,
	{ base, swings }: SensitivityResult,
	shown: Shown
): TableRow[] {
	const widest = Math.max(0, ...swings.map(({ reach }) => reach).filter(Number.isFinite));
	return swings.slice(0, MOST_ROWS).map((swing, i): TableRow => {
		const ends = endsOf(swing);
		const bars = ends.flatMap(({ value }): Bar[] =>
			value === null || value === base.value
				? []
				: [
						{
							from: base.value * shown.factor,
							to: value * shown.factor,
							hatched: value < base.value,
							tone: 'ink',
							figure: shown.number(value)
						}
					]
		);
		const none = ends.filter(({ value }) => value === null);
		return {
			...{
				key: `${i} ${swing.label}`,
				name: swingName(workbook, study, swing),
				strong: swing.reach >= widest / 2
			},
			note: rangeText(workbook, swing, ends[0]!.input, ends[1]!.input, shown.locale),
			// Of two bars on one side the shorter stands on the longer, whose figure alone is written.
			bars: oneSided(bars) ? longestFirst(bars) : bars,
			end:
				none.length > 0
					? `no value at ${movedText(swing, none[0]!.input, shown.locale)}`
					: shown.number(swing.reach)
		};
	});
}

const oneSided = ([one, other]: readonly Bar[]) =>
	one !== undefined && other !== undefined && one.hatched === other.hatched;

function longestFirst(bars: readonly Bar[]): Bar[] {
	const sorted = [...bars].sort((a, b) => Math.abs(b.to - b.from) - Math.abs(a.to - a.from));
	return sorted.map((bar, i) => (i === 0 ? bar : { ...bar, figure: '' }));
}

/** The two ends of the input, the one with the lower result first. */
function endsOf({ low, high, atLow, atHigh }: SwingResult) {
	const ends = [
		{ input: low, value: atLow.state === OK ? atLow.value : null },
		{ input: high, value: atHigh.state === OK ? atHigh.value : null }
	];
	return (ends[0]!.value ?? -Infinity) > (ends[1]!.value ?? Infinity) ? ends.reverse() : ends;
}

export function sensitivitySummary(
	workbook: Workbook,
	study: Sensitivity,
	result: SensitivityResult,
	shown: Shown
): string {
	const rows = result.swings.slice(0, 5).map((swing) => {
		const ends = endsOf(swing);
		return `${swingName(workbook, study, swing)}, ${rangeText(workbook, swing, ends[0]!.input, ends[1]!.input, shown.locale)}: ${ends.map(({ value }) => shown.number(value ?? NaN)).join(' to ')}`;
	});
	return `${nameOf(workbook, study)} is ${shown.whole(result.base.value)} as it stands. ${rows.join('; ')}.`;
}

export function sensitivityTable(
	workbook: Workbook,
	study: Sensitivity,
	result: SensitivityResult
): PlainTable {
	const unit = findQuantity(workbook, study.quantity)?.unit ?? '1';
	const name = nameOf(workbook, study);
	const number = ({ value, state }: SwingResult['atLow']) => (state === OK ? value : null);
	return {
		caption: `${name} [${unit}] with each input moved alone`,
		columns: [
			...['Input', 'Range in', 'From', 'To'],
			...[`${name} at From`, `${name} at To`, 'Reach', '% for 1 % more', '% for 1 % less']
		],
		rows: [
			...result.swings.map((swing) => [
				...[swingName(workbook, study, swing), swing.mode, swing.low, swing.high],
				...[number(swing.atLow), number(swing.atHigh)],
				Number.isFinite(swing.reach) ? swing.reach : null,
				swing.elasticity,
				swing.elasticityLess
			]),
			...result.cases.map(({ label, result: found }) => [
				...[label, 'case', null, null],
				...[number(found), null, null, null, null]
			])
		]
	};
}

type Elastic = Pick<SwingResult, 'elasticity' | 'elasticityLess'>;

/** The inputs that move the result most for one per cent of them, either way. */
export function mostElastic(swings: readonly SwingResult[]): SwingResult[] {
	const size = ({ elasticity, elasticityLess }: Elastic) =>
		Math.max(Math.abs(elasticity ?? 0), Math.abs(elasticityLess ?? 0));
	return swings
		.filter(({ elasticity, elasticityLess }) => elasticity !== null || elasticityLess !== null)
		.sort((a, b) => size(b) - size(a))
		.slice(0, 8);
}

/** "+1.3 %" for one per cent more; what one per cent less does is added where it is not about the opposite. */
export function elasticityText({ elasticity, elasticityLess }: Elastic, locale: string): string {
	const text = (value: number | null) =>
		value === null
			? 'no value'
			: `${formatDifference(Number(value.toPrecision(3)), Math.abs(value) >= 10 ? 1 : 2, locale)} %`;
	return isKink({ elasticity, elasticityLess })
		? `${text(elasticity)}; one per cent less: ${text(elasticityLess)}`
		: text(elasticity);
}

/** More than a tenth apart, and by more than the figures show. */
function isKink({ elasticity, elasticityLess }: Elastic): boolean {
	if (elasticity === null || elasticityLess === null) return elasticity !== elasticityLess;
	const apart = Math.abs(elasticity + elasticityLess);
	return apart > 0.1 * Math.abs(elasticity) && apart > 0.005;
}
