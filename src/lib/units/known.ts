/**
 * The symbols that every workbook knows, with their words, in the order in which they are offered.
 *
 * Left out on purpose: degrees Celsius (its zero is not zero K; a difference is in K), inches and pounds (a
 * workbook that needs them defines them), and any length for day, week, month, year and shift, which are counts.
 */
import { CURRENCIES, NO_DIMENSION, baseDimension, sumDimensions } from './dimension';
import type { Dimension, UnitSymbol } from './unit';

export interface KnownSymbol extends UnitSymbol {
	/** What it is called in a list: "metre". */
	readonly label: string;
}

/** Other spellings that mean the same symbol. Dollar, kronor and yen signs stand for several currencies. */
export const ALIASES: ReadonlyMap<string, string> = new Map([
	['€', 'EUR'],
	['£', 'GBP'],
	['k€', 'kEUR'],
	['k£', 'kGBP'],
	['M€', 'MEUR'],
	['M£', 'MGBP'],
	['l', 'L'],
	['ml', 'mL'],
	['um', 'µm'],
	// The Greek letter, which many keyboards give, for the micro sign.
	['μm', 'µm']
]);

const length = baseDimension('m');
const mass = baseDimension('kg');
const time = baseDimension('s');
const volume = product({ m: 3 });
const force = product({ kg: 1, m: 1, s: -2 });
const pressure = product({ kg: 1, m: -1, s: -2 });
const energy = product({ kg: 1, m: 2, s: -2 });
const power = product({ kg: 1, m: 2, s: -3 });
const frequency = product({ s: -1 });

const CURRENCY_LABELS: Readonly<Record<(typeof CURRENCIES)[number], string>> = {
	EUR: 'euro',
	USD: 'US dollar',
	GBP: 'pound sterling',
	CHF: 'Swiss franc',
	SEK: 'Swedish krona',
	NOK: 'Norwegian krone',
	DKK: 'Danish krone',
	PLN: 'Polish zloty',
	CZK: 'Czech koruna',
	JPY: 'Japanese yen'
};

export const KNOWN: readonly KnownSymbol[] = [
	known('m', 'metre', length, 1),
	known('mm', 'millimetre', length, 1, 1000),
	known('cm', 'centimetre', length, 1, 100),
	known('dm', 'decimetre', length, 1, 10),
	known('km', 'kilometre', length, 1000),
	known('Mm', 'million metres', length, 1e6),
	known('µm', 'micrometre', length, 1, 1e6),
	known('kg', 'kilogram', mass, 1),
	known('g', 'gram', mass, 1, 1000),
	known('mg', 'milligram', mass, 1, 1e6),
	known('t', 'tonne', mass, 1000),
	known('s', 'second', time, 1),
	known('min', 'minute', time, 60),
	known('h', 'hour', time, 3600),
	known('ms', 'millisecond', time, 1, 1000),
	known('K', 'kelvin (temperature difference)', baseDimension('K'), 1),
	...['day', 'week', 'month', 'year', 'shift'].map(count),
	...CURRENCIES.map((symbol) => currency(symbol, '', 1)),
	...CURRENCIES.map((symbol) => currency(symbol, 'k', 1000)),
	...CURRENCIES.map((symbol) => currency(symbol, 'M', 1e6)),
	...['coil', 'pallet', 'drum', 'person', 'lot', 'piece'].map(count),
	known('kWh', 'kilowatt hour', energy, 3.6e6),
	known('Wh', 'watt hour', energy, 3600),
	known('MWh', 'megawatt hour', energy, 3.6e9),
	known('J', 'joule', energy, 1),
	known('kJ', 'kilojoule', energy, 1000),
	known('MJ', 'megajoule', energy, 1e6),
	known('GJ', 'gigajoule', energy, 1e9),
	known('kW', 'kilowatt', power, 1000),
	known('W', 'watt', power, 1),
	known('MW', 'megawatt', power, 1e6),
	known('N', 'newton', force, 1),
	known('bar', 'bar', pressure, 1e5),
	known('Pa', 'pascal', pressure, 1),
	known('kPa', 'kilopascal', pressure, 1000),
	known('MPa', 'megapascal', pressure, 1e6),
	known('L', 'litre', volume, 1, 1000),
	known('mL', 'millilitre', volume, 1, 1e6),
	known('Hz', 'hertz', frequency, 1),
	known('%', 'per cent', NO_DIMENSION, 1, 100),
	known('‰', 'per mille', NO_DIMENSION, 1, 1000),
	known('ppm', 'parts per million', NO_DIMENSION, 1, 1e6)
];

function known(
	symbol: string,
	label: string,
	dimension: Dimension,
	numerator: number,
	denominator = 1
): KnownSymbol {
	return {
		symbol,
		label,
		dimension,
		numerator: BigInt(numerator),
		denominator: BigInt(denominator)
	};
}

function count(symbol: string): KnownSymbol {
	return known(symbol, symbol, baseDimension(symbol), 1);
}

function currency(symbol: (typeof CURRENCIES)[number], prefix: string, many: number): KnownSymbol {
	const words = { '': '', k: 'thousand ', M: 'million ' }[prefix] ?? '';
	return known(prefix + symbol, words + CURRENCY_LABELS[symbol], baseDimension(symbol), many);
}

function product(exponents: Readonly<Record<string, number>>): Dimension {
	return sumDimensions(
		Object.entries(exponents).map(([symbol, exponent]) => ({
			dimension: baseDimension(symbol),
			exponent
		}))
	);
}
