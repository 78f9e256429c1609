/** The units as a reference lists them, on the command line and on its page alike, from the one table. */
import { CURRENCIES } from './dimension';
import { toNumber } from './fraction';
import { ALIASES, KNOWN, type KnownSymbol } from './known';
import { dimensionText } from './print';
import type { Dimension } from './unit';

export interface UnitEntry {
	readonly symbol: string;
	readonly label: string;
	/** What it measures, in a word: "energy". */
	readonly measures: string;
	/** In base units: "kg*m²/s²"; "1" for a share. */
	readonly dimension: string;
	/** How many of its dimension's base units one of it is. */
	readonly factor: number;
	/** Other spellings that mean the same. */
	readonly aliases: readonly string[];
}

const MEASURES: Readonly<Record<string, string>> = {
	m: 'length',
	kg: 'mass',
	s: 'time',
	K: 'temperature difference',
	'm³': 'volume',
	'kg*m/s²': 'force',
	'kg/(m*s²)': 'pressure',
	'kg*m²/s²': 'energy',
	'kg*m²/s³': 'power',
	'1/s': 'frequency',
	'1': 'share'
};

function measuresOf(dimension: Dimension, text: string): string {
	const isMoney = CURRENCIES.some((currency) => dimension[currency] === 1);
	return MEASURES[text] ?? (isMoney ? 'money' : 'count');
}

export function unitEntry({
	symbol,
	label,
	dimension,
	numerator,
	denominator
}: KnownSymbol): UnitEntry {
	const text = dimensionText(dimension);
	return {
		symbol,
		label,
		measures: measuresOf(dimension, text),
		dimension: text,
		factor: toNumber({ numerator, denominator }),
		aliases: [...ALIASES].flatMap(([alias, meant]) => (meant === symbol ? [alias] : []))
	};
}

/** Those that every workbook knows. */
export const unitEntries = (): UnitEntry[] => KNOWN.map(unitEntry);

/** "1000 m"; a count, or what is its own base, is one of itself. */
export const factorText = ({ factor, dimension }: UnitEntry) =>
	dimension === '1' ? String(factor) : `${factor} ${dimension}`;
