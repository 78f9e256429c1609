/** What a ranking says: which comes first, and how few make most of it; and its table. */
import type { PlainTable } from '$lib/exchange/csv/write';
import { count, sentenceStart } from '../../figure/words';
import { plain, shown } from '../../figure/read';
import { formatDifference, formatNumber } from '../../format';
import { fewestFor, type RankedRow, type Ranking } from './ranking';
import { texts } from './texts';

/** The share that "most of it" means: common practice in ranking causes. */
const MOST = 80;

export const percentText = (value: number | null, locale: string): string =>
	value === null ? '' : `${formatNumber(value, value < 9.95 ? 1 : 0, locale)}\u00a0%`;

export const amountText = (ranking: Ranking, value: number, locale: string): string =>
	[formatNumber(value, ranking.decimals, locale), ranking.unit].filter(Boolean).join('\u00a0');

export function rankingTitle(ranking: Ranking, locale: string): string {
	const first = ranking.rows[0];
	if (!first) return texts.nothing(ranking.part?.label ?? '');
	return texts.first(
		{
			label: sentenceStart(first.label),
			amount: amountText(ranking, first.amount.value, locale),
			share: percentText(first.share, locale)
		},
		ranking.part ? texts.inPart(ranking.part.label) : ''
	);
}

export function rankingLine(ranking: Ranking, locale: string): string {
	if (ranking.rows.length === 0) return '';
	const few = fewestFor(ranking, MOST);
	const sum = texts.total(ranking.amountLabel, amountText(ranking, ranking.total, locale));
	if (few === 0) return sum;
	const share = percentText(ranking.rows[few - 1]!.cumulative, locale);
	return `${texts.fewest(count(few), ranking.rows.length, share)}. ${sum}`;
}

export const rankingSummary = (ranking: Ranking, locale: string): string =>
	ranking.rows
		.map((row) =>
			texts.row(
				row.label,
				amountText(ranking, row.amount.value, locale),
				percentText(row.share, locale)
			)
		)
		.join(' ');

/** Against the base: "+12,300", "same"; empty where the base is shown. */
export function againstBase(ranking: Ranking, { amount, base }: RankedRow, locale: string): string {
	if (!base) return '';
	if (base.kind !== 'value') return shown(base, ranking.decimals, locale);
	const difference = amount.value - base.value;
	return Math.abs(difference) <= 1e-12 * Math.abs(base.value)
		? ''
		: formatDifference(difference, ranking.decimals, locale);
}

/** All of them, in full, in the order shown. */
export function rankingTable(ranking: Ranking): PlainTable {
	const withUnit = (label: string, unit: string) => (unit ? `${label}, ${unit}` : label);
	const hasBase = ranking.handTitle !== null;
	return {
		caption: [ranking.amountLabel, ranking.part?.label].filter(Boolean).join(', '),
		columns: [
			ranking.setLabel,
			withUnit(ranking.amountLabel, ranking.unit),
			...(hasBase ? [withUnit(texts.base, ranking.unit)] : []),
			withUnit(texts.share, texts.percent),
			withUnit(texts.cumulative, texts.percent),
			...ranking.columns.map(({ label, unit }) => withUnit(label, unit))
		],
		rows: [...ranking.rows, ...ranking.left].map((row) => [
			row.label,
			plain(row.amount),
			...(hasBase ? [differenceOf(row)] : []),
			row.share ?? '',
			row.cumulative ?? '',
			...row.readings.map((reading) => plain(reading))
		])
	};
}

const differenceOf = ({ amount, base }: RankedRow): number | string =>
	amount.kind === 'value' && base?.kind === 'value' ? amount.value - base.value : '';
