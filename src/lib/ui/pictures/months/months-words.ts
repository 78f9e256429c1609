/** What the year by month says: its finding, sums against what it is measured against, and its table. */
import type { PlainTable } from '$lib/exchange/csv/write';
import { plain, type Reading } from '../../figure/read';
import type { Scale } from '../../figure/scale';
import { decimalsFor, formatDifference, formatNumber } from '../../format';
import { largestOf, type Months, type Sum } from './months';
import { texts } from './texts';

interface Told {
	readonly months: Months;
	readonly scale: Scale;
	readonly locale: string;
}

const decimalsOf = ({ months, scale }: Told, value?: number): number =>
	value === 0 ? 0 : decimalsFor((value ?? largestOf(months)) * scale.factor, 4);

export function amountText(told: Told, value: number): string {
	const number = formatNumber(value * told.scale.factor, decimalsOf(told, value), told.locale);
	return [number, told.scale.unit].filter(Boolean).join('\u00a0');
}

function sumText(told: Told, { here, there }: Sum): string {
	const amount = amountText(told, here);
	const { referenceTitle } = told.months;
	if (there === null || referenceTitle === null) return amount;
	if (Math.abs(here - there) <= 1e-9 * Math.abs(here)) return texts.asIn(amount, referenceTitle);
	const difference = formatDifference(
		(here - there) * told.scale.factor,
		decimalsOf(told, here),
		told.locale
	);
	return texts.compared(amount, difference, referenceTitle);
}

/** The first whole year if there is one, else from where to where it goes. */
export function monthsTitle(told: Told): string {
	const { months } = told;
	const [year] = months.years;
	if (year) return `${months.label}. ${texts.fullYear(String(year.year), sumText(told, year))}`;
	const range = rangeText(told);
	return range ? `${months.label}. ${range}` : texts.nothing(months.label);
}

function rangeText(told: Told): string {
	const known = told.months.months.filter(({ here }) => here.kind === 'value');
	const [first] = known;
	if (!first) return '';
	const low = known.reduce(
		(least, one) => (one.here.value < least.here.value ? one : least),
		first
	);
	const high = known.reduce((most, one) => (one.here.value > most.here.value ? one : most), first);
	const amount = (one: typeof low) => amountText(told, one.here.value);
	return texts.lowestAndHighest(amount(low), low.label, amount(high), high.label);
}

export function monthsLine(told: Told): string {
	const { toDate, years, onClose } = told.months;
	const parts = [
		onClose && texts.onClose(onClose.first.label, onClose.last.label, onClose.next.label),
		toDate && texts.toDate(toDate.month, sumText(told, toDate)),
		...years.slice(1).map((sum) => texts.fullYear(String(sum.year), sumText(told, sum))),
		years.length > 0 ? rangeText(told) : ''
	];
	return parts.filter(Boolean).join('. ');
}

export const monthsSummary = (told: Told): string =>
	told.months.months
		.filter(({ here }) => here.kind === 'value')
		.map(({ label, here }) => texts.row(label, amountText(told, here.value)))
		.join(' ');

/** All months in full. */
export function monthsTable({ months }: Pick<Told, 'months'>): PlainTable {
	const { referenceTitle, quantity } = months;
	const unit = quantity?.unit && quantity.unit !== '1' ? quantity.unit : '';
	const withUnit = (label: string) => (unit ? `${label}, ${unit}` : label);
	const hasBefore = months.months.some(({ before }) => before !== null);
	const less = (here: Reading, there: Reading | null) =>
		here.kind === 'value' && there?.kind === 'value' ? here.value - there.value : '';
	return {
		caption: months.label,
		columns: [
			texts.month,
			texts.closed,
			withUnit(months.label),
			...(referenceTitle === null ? [] : [withUnit(referenceTitle), withUnit(texts.difference)]),
			...(hasBefore ? [withUnit(texts.yearBefore)] : [])
		],
		rows: months.months.map(({ label, isClosed, here, there, before }) => [
			label,
			isClosed ? texts.yes : texts.no,
			plain(here),
			...(there === null ? [] : [plain(there), less(here, there)]),
			...(hasBefore ? [before ? plain(before) : ''] : [])
		])
	};
}
