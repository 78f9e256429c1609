/**
 * Dimensions: exponents of base symbols. Their scales and the symbols for multiples belong to `known.ts`.
 */
import type { Dimension } from './unit';

export const CURRENCIES = [
	'EUR',
	'USD',
	'GBP',
	'CHF',
	'SEK',
	'NOK',
	'DKK',
	'PLN',
	'CZK',
	'JPY'
] as const;

export const NO_DIMENSION: Dimension = sorted(new Map());

/** The dimension of a base symbol itself. */
export function baseDimension(symbol: string): Dimension {
	return sorted(new Map([[symbol, 1]]));
}

export function sumDimensions(
	terms: readonly { readonly dimension: Dimension; readonly exponent: number }[]
): Dimension {
	const exponents = new Map<string, number>();
	for (const { dimension, exponent } of terms)
		for (const [symbol, one] of Object.entries(dimension))
			exponents.set(symbol, (exponents.get(symbol) ?? 0) + one * exponent);
	return sorted(exponents);
}

export function equalDimensions(a: Dimension, b: Dimension): boolean {
	const symbols = Object.keys(a);
	return (
		symbols.length === Object.keys(b).length &&
		symbols.every((symbol) => Object.hasOwn(b, symbol) && a[symbol] === b[symbol])
	);
}

export function isPlain(dimension: Dimension): boolean {
	return Object.keys(dimension).length === 0;
}

/** Without zeros, keys in code-point order, and no prototype. */
function sorted(exponents: ReadonlyMap<string, number>): Dimension {
	const dimension = Object.create(null) as Record<string, number>;
	const kept = [...exponents].filter(([, exponent]) => exponent !== 0);
	for (const [symbol, exponent] of kept.sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)))
		// Assignment would set a prototype for "__proto__" on an object that has one.
		Object.defineProperty(dimension, symbol, {
			value: exponent,
			enumerable: true,
			configurable: true,
			writable: true
		});
	return dimension;
}
