/** The index clause as terms of a formula, and how long the price stands, in words. */
import { decimalsWritten, formatNumber } from '../format';
import type { Reading } from '../figure/read';
import { years } from '../figure/words';
import type { Quote } from './quote';

export interface ClauseTerm {
	readonly label: string;
	/** As parts of one. */
	readonly share: number;
	readonly index: number;
}

/** A share or an index in its own unit, as a part of one. */
const asPart = (reading: Reading) =>
	reading.value * (reading.quantity?.quantity.unit === '%' ? 0.01 : 1);

export const clauseTerms = ({ clause }: Quote): ClauseTerm[] =>
	(clause?.parts ?? []).flatMap(({ label, share, index }) =>
		share.kind === 'value' && index.kind === 'value'
			? [{ label, share: asPart(share), index: Number(asPart(index).toPrecision(12)) }]
			: []
	);

export function percentText(reading: Reading, locale: string): string {
	const percent = Number((100 * asPart(reading)).toPrecision(12));
	return `${formatNumber(percent, decimalsWritten(percent, 2), locale)}\u00a0%`;
}

/** "Valid for 3 weeks, then by index". */
export function validityTitle({ validity, clause }: Quote, locale: string): string {
	if (validity?.kind !== 'value') return clause ? 'The price moves by index' : '';
	const { value } = validity;
	const time = years(
		formatNumber(value, decimalsWritten(value, 2), locale),
		validity.quantity?.quantity.unit ?? ''
	);
	return `Valid for ${time}${clause ? ', then by index' : ''}`;
}
