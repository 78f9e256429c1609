/**
 * The symbol that a person probably meant: "hours" is h, "KG" is kg, "EURO" is EUR. What is offered is a
 * suggestion in a message; nothing is ever taken for another symbol silently.
 */

import { editDistance } from './edit-distance';

/** Words, in lower case, for built-in symbols. Plurals with s are found without standing here. */
const SPOKEN: ReadonlyMap<string, string> = new Map(
	Object.entries({
		m: 'meter metre mtr metr',
		mm: 'millimetre millimeter',
		cm: 'centimetre centimeter',
		km: 'kilometre kilometer',
		µm: 'micron micrometre micrometer mikron',
		kg: 'kgs kilo kilogram kilogramme',
		g: 'gram gramme gr',
		t: 'ton tonne to mt',
		s: 'sec second',
		min: 'minute',
		h: 'hour hr hrs',
		ms: 'millisecond msec',
		K: 'kelvin °c °k degc celsius',
		day: 'd',
		week: 'wk',
		month: 'mo mth',
		year: 'a y yr annum',
		EUR: 'euro',
		GBP: 'sterling quid',
		USD: 'us$ dollar usdollar',
		kEUR: 'teur t€ keuro',
		MEUR: 'meuro mioeur mio€',
		CHF: 'sfr fr',
		PLN: 'zł zl zloty',
		CZK: 'kč',
		JPY: 'yen',
		piece: 'pc pcs ea each pce item unit',
		person: 'people pers worker operator employee',
		coil: 'roll',
		kWh: 'kilowatthour kwhr',
		kW: 'kilowatt',
		W: 'watt',
		J: 'joule',
		N: 'newton',
		Pa: 'pascal',
		L: 'litre liter ltr',
		'%': 'percent pct',
		'‰': 'permille promille'
	}).flatMap(([symbol, words]) => words.split(' ').map((word) => [word, symbol] as const))
);

/** The nearest of the symbols, or undefined where none is near. Earlier symbols win a tie. */
export function nearestSymbol(typed: string, symbols: readonly string[]): string | undefined {
	const text = typed.trim().normalize('NFC');
	if (text === '') return undefined;
	const lower = text.toLowerCase();
	return (
		symbols.find((symbol) => symbol === text) ??
		ignoringCase(lower, symbols) ??
		spoken(lower, symbols) ??
		plural(lower, symbols) ??
		withDigit(text, symbols) ??
		mistyped(lower, symbols)
	);
}

function ignoringCase(lower: string, symbols: readonly string[]): string | undefined {
	return symbols.find((symbol) => symbol.toLowerCase() === lower);
}

function spoken(lower: string, symbols: readonly string[]): string | undefined {
	const meant = SPOKEN.get(lower) ?? SPOKEN.get(lower.replace(/s$/, ''));
	return meant !== undefined && symbols.includes(meant) ? meant : undefined;
}

function plural(lower: string, symbols: readonly string[]): string | undefined {
	return lower.endsWith('s')
		? (ignoringCase(lower.slice(0, -1), symbols) ?? ignoringCase(lower.slice(0, -2), symbols))
		: undefined;
}

/** "m2" is m², "mm3" is mm³. */
function withDigit(text: string, symbols: readonly string[]): string | undefined {
	const [, stem, digit] = /^(.+?)([23])$/.exec(text) ?? [];
	const known = stem === undefined ? undefined : symbols.find((symbol) => symbol === stem);
	return known === undefined ? undefined : known + (digit === '2' ? '²' : '³');
}

function mistyped(lower: string, symbols: readonly string[]): string | undefined {
	const allowed = lower.length >= 6 ? 2 : lower.length >= 3 ? 1 : 0;
	let nearest: string | undefined;
	let least = allowed + 1;
	for (const symbol of symbols) {
		if (symbol.length < 3 || Math.abs(symbol.length - lower.length) > allowed) continue;
		const distance = editDistance(lower, symbol.toLowerCase(), allowed);
		if (distance < least) [nearest, least] = [symbol, distance];
	}
	return nearest;
}
