/**
 * Units as text that parses back: "EUR/(person*h)", "m²", "1/h", "1" for the plain number one.
 */
import { CURRENCIES } from './dimension';
import type { Dimension, UnitPart } from './unit';

interface Factor {
	readonly symbol: string;
	readonly exponent: number;
}

/** A dimension spelled out in base symbols: "EUR/kg", "m/s". */
export function dimensionText(dimension: Dimension): string {
	const factors = Object.entries(dimension).map(([symbol, exponent]) => ({ symbol, exponent }));
	return factorsText(
		factors.sort(
			(a, b) => baseRank(a.symbol) - baseRank(b.symbol) || byCodePoint(a.symbol, b.symbol)
		)
	);
}

/** Money first, then mass, length, counts, time, as people say it: EUR/(person*h). */
export function printOrder(a: UnitPart, b: UnitPart): number {
	return partRank(a) - partRank(b) || byCodePoint(a.symbol, b.symbol);
}

/** Symbols with their exponents, in the order given. */
export function factorsText(factors: readonly Factor[]): string {
	const above = factors.filter((factor) => factor.exponent > 0);
	const below = factors.filter((factor) => factor.exponent < 0);
	const numerator = above.map(factorText).join('*') || '1';
	if (below.length === 0) return numerator;
	const denominator = below.map(factorText).join('*');
	return `${numerator}/${below.length > 1 ? `(${denominator})` : denominator}`;
}

function factorText({ symbol, exponent }: Factor): string {
	const size = Math.abs(exponent);
	return symbol + (size === 1 ? '' : size === 2 ? '²' : size === 3 ? '³' : `^${size}`);
}

const RANK = { money: 0, plain: 1, derived: 2, mass: 3, length: 4, count: 5, time: 6, heat: 7 };
const BASE_RANKS: ReadonlyMap<string, number> = new Map([
	...CURRENCIES.map((symbol) => [symbol, RANK.money] as const),
	['kg', RANK.mass],
	['m', RANK.length],
	['s', RANK.time],
	['K', RANK.heat]
]);

function baseRank(symbol: string): number {
	return BASE_RANKS.get(symbol) ?? RANK.count;
}

function partRank({ dimension }: UnitPart): number {
	const bases = Object.keys(dimension);
	if (bases.length > 1) return RANK.derived;
	return bases[0] === undefined ? RANK.plain : baseRank(bases[0]);
}

function byCodePoint(a: string, b: string): number {
	return a < b ? -1 : a > b ? 1 : 0;
}
