/** What a waterfall says: its finding, a sentence for each of the largest steps, and its table. */
import type { PlainTable } from '$lib/exchange/csv/write';
import { plain } from '../../figure/read';
import { formatDifference, formatNumber } from '../../format';
import type { Cause, Step, Waterfall } from './waterfall';
import { texts } from './texts';

const withUnit = (text: string, unit: string) => [text, unit].filter(Boolean).join('\u00a0');

export const amountWords = (value: number, unit: string, locale: string): string =>
	withUnit(formatNumber(value, 0, locale), unit);
export const signed = (value: number, locale: string): string => formatDifference(value, 0, locale);
/** Sign, amount and word say the same: no colour is needed to read it. */
export const verdictOf = (amount: number): string =>
	Math.abs(amount) < 0.5 ? '' : amount > 0 ? texts.favourable : texts.adverse;

const spanOf = ({ month, toDate }: Waterfall) => texts.spanOf(month.label, toDate);

export function waterfallTitle(waterfall: Waterfall, locale: string): string {
	const { from, to, month, toDate, unit } = waterfall;
	if (!month.closed && !toDate) return texts.isOpen(month.label);
	if (to.kind !== 'value') return texts.noValue(waterfall.toLabel, to.because);
	if (from.kind !== 'value') return texts.noValue(waterfall.fromLabel, from.because);
	const off = to.value - from.value;
	return Math.abs(off) < 0.5
		? texts.asMeant(spanOf(waterfall))
		: texts.title(spanOf(waterfall), amountWords(Math.abs(off), unit, locale), verdictOf(off));
}

export function waterfallLine(waterfall: Waterfall, locale: string): string {
	const { from, to, month, toDate, unit } = waterfall;
	if (!month.closed && !toDate) return texts.openLine;
	const end = (label: string, { kind, value }: Waterfall['from']) =>
		kind === 'value' ? `${label} ${amountWords(value, unit, locale)}` : '';
	return texts.fromTo(end(waterfall.fromLabel, from), end(waterfall.toLabel, to));
}

/** One for each of the largest steps, from the workbook's own labels and figures. */
export const sentencesOf = (waterfall: Waterfall, locale: string): string[] =>
	waterfall.because.map(({ step, cause, month }) => {
		const amount = amountWords(Math.abs(step.amount), waterfall.unit, locale);
		const head = (step.amount < 0 ? texts.tookOff : texts.added)(step.label, amount);
		const rest = cause
			? causeWords(cause, locale)
			: month && texts.mostIn(month.label, signedWith(month.amount, waterfall.unit, locale));
		return `${head}${rest ? `: ${rest}` : ''}.`;
	});

const signedWith = (value: number, unit: string, locale: string) =>
	withUnit(signed(value, locale), unit);

export function causeWords({ label, of, came, meant, unit }: Cause, locale: string): string {
	const decimals = decimalsApart(came, meant);
	const number = (value: number) => formatNumber(value, decimals, locale);
	const what = of.length > 0 ? `${label} of ${of.join(', ')}` : label;
	return texts.cause(what, number(came), withUnit(number(meant), unit));
}

/** As many as show the two apart with two digits of their difference. */
export function decimalsApart(a: number, b: number): number {
	const off = Math.abs(a - b);
	return off === 0 ? 0 : Math.min(8, Math.max(0, 1 - Math.floor(Math.log10(off))));
}

export const labelOf = ({ label, holds, id }: Step): string =>
	id === null ? texts.together(holds.length) : label;

export const waterfallSummary = (waterfall: Waterfall, locale: string): string =>
	[waterfallLine(waterfall, locale), ...sentencesOf(waterfall, locale)].filter(Boolean).join(' ');

/** All of it in full, with what is taken together one by one. */
export function waterfallTable(waterfall: Waterfall): PlainTable {
	const { from, to, steps, without, unit } = waterfall;
	const rows = steps.flatMap((step) =>
		step.id === null
			? step.holds.map(({ label, amount }) => [label, amount, verdictOf(amount), ''])
			: [[step.label, step.amount, verdictOf(step.amount), step.after]]
	);
	return {
		caption: spanOf(waterfall),
		columns: [texts.step, unit, texts.reads, [texts.runs, unit].filter(Boolean).join(', ')],
		rows: [
			[waterfall.fromLabel, plain(from), '', plain(from)],
			...rows,
			...without.map(({ label, amount }) => [label, plain(amount), '', '']),
			[waterfall.toLabel, plain(to), '', plain(to)]
		]
	};
}
