/**
 * What a paper for a decision says first: by what decides, the net present value. Money that comes back is no gain where it
 * comes too late for what capital costs, so a payback is never said before that.
 */
import { formatDifference, formatNumber } from '$lib/ui/format';
import { count, listed, midSentence, years } from '$lib/ui/figure/words';
import type { Reading } from '$lib/ui/figure/read';
import type { Scale } from '$lib/ui/figure/scale';
import { outcomeOf, type Case } from '$lib/ui/pictures/payback/payback';
import { rowFigure } from '$lib/ui/pictures/payback/payback-table';
import { texts } from './texts';

export type Verdict = 'earns' | 'loses' | 'doubtful' | 'unknown';

/** By the net present value alone, unless the workbook cautions that it is none to read. */
export function verdictOf({ doubt, npv }: Pick<Case, 'doubt' | 'npv'>): Verdict {
	if (doubt) return 'doubtful';
	if (npv.kind !== 'value') return 'unknown';
	return npv.value < 0 ? 'loses' : 'earns';
}

/** One sentence for each case. */
export function verdictText(one: Case, scale: Scale, locale: string): string {
	const verdict = verdictOf(one);
	if (verdict === 'doubtful') return texts.doubtful(one.title, midSentence(one.doubt));
	if (verdict === 'unknown') return texts.unknown(one.title, one.npv.because || texts.noValue);
	const npv = `${rowFigure(one, 'npv', scale, locale).text} ${scale.unit}`;
	const back = outcomeOf(one) === 'pays' ? inYears(one.payback, locale) : null;
	const discounted =
		one.discountedPayback.kind === 'value' ? inYears(one.discountedPayback, locale) : null;
	return verdict === 'earns'
		? texts.earns(one.title, npv, back, discounted)
		: texts.loses(one.title, npv, back);
}

const inYears = (reading: Reading, locale: string) =>
	years(formatNumber(reading.value, 1, locale), reading.quantity?.quantity.unit ?? 'year');

/** The first sentence of the paper. */
export function headlineOf(cases: readonly Case[], scale: Scale, locale: string): string {
	const [only] = cases;
	if (!only) return texts.noCase;
	if (cases.length === 1) return verdictText(only, scale, locale);
	const earning = cases
		.filter((one) => verdictOf(one) === 'earns')
		.sort((a, b) => b.npv.value - a.npv.value);
	const titles = (verdict: Verdict) =>
		cases.filter((one) => verdictOf(one) === verdict).map(({ title }) => title);
	const losing = titles('loses');
	const [best] = earning;
	const first = best
		? texts.best(
				best.title,
				count(cases.length),
				`${formatDifference(best.npv.value * scale.factor, 0, locale)} ${scale.unit}`
			)
		: texts.noneEarns(count(cases.length));
	return [
		first,
		best && losing.length > 0 ? texts.theseLose(listed(losing)) : '',
		titles('doubtful').length > 0 ? texts.theseDoubtful(listed(titles('doubtful'))) : '',
		titles('unknown').length > 0 ? texts.theseUnknown(listed(titles('unknown'))) : ''
	]
		.filter(Boolean)
		.join(' ');
}
