/**
 * Units that arithmetic made, in the words of a person of the trade: not "kg*mm²/m³" but "kg/m", not "kW/kWh" but
 * "1/h". For messages only: the scale is left aside, and nothing is computed from what stands here.
 */
import { partsOf, raised } from './algebra';
import { baseDimension, equalDimensions, sumDimensions } from './dimension';
import { KNOWN } from './known';
import { factorsText, printOrder } from './print';
import type { Dimension, Unit, UnitPart, UnitSymbol } from './unit';

/** What the unit measures: "EUR/kg"; "1" for a plain number. */
export function naturalText(unit: Unit): string {
	return simplest(partsOf(unit), partsOf(unit));
}

/** The unit by which `a` must be multiplied to measure what `b` measures: from EUR/kg to EUR/m it is "kg/m". */
export function describeRatio(a: Unit, b: Unit): string {
	return simplest([...partsOf(b), ...raised(partsOf(a), -1)], [...partsOf(b), ...partsOf(a)]);
}

/** Derived units that may stand for several base units. */
const DERIVED = ['kWh', 'kW', 'N', 'Pa'].map(known);
const HOUR = known('h');

/** Of all ways to write the dimension, the one with the fewest factors, then the fewest symbols; the person's own symbols win a tie. */
function simplest(parts: readonly UnitPart[], preferred: readonly UnitPart[]): string {
	const symbolOf = (base: string): UnitSymbol =>
		preferred.find((part) => measures(part, base)) ?? (base === 's' ? HOUR : baseSymbol(base));
	const dimension = sumDimensions(parts);
	const ways = [
		gathered(parts, symbolOf),
		spelled(dimension, symbolOf),
		...DERIVED.flatMap((derived) =>
			[1, -1].map((exponent) => {
				const part = { ...derived, exponent };
				const rest = sumDimensions([
					{ dimension, exponent: 1 },
					{ dimension: derived.dimension, exponent: -exponent }
				]);
				return [part, ...spelled(rest, symbolOf)];
			})
		)
	];
	const best = ways.reduce((least, way) => (cost(way) < cost(least) ? way : least));
	return factorsText([...best].sort(printOrder));
}

/** The symbols as they stand, but m and mm become one, and plain numbers such as % are left out. */
function gathered(
	parts: readonly UnitPart[],
	symbolOf: (base: string) => UnitSymbol
): readonly UnitPart[] {
	const exponents = new Map<string, UnitPart>();
	for (const part of parts) {
		const [base, ...others] = Object.keys(part.dimension);
		if (base === undefined) continue;
		const symbol = others.length === 0 && measures(part, base) ? symbolOf(base) : part;
		const exponent = (exponents.get(symbol.symbol)?.exponent ?? 0) + part.exponent;
		exponents.set(symbol.symbol, { ...symbol, exponent });
	}
	return [...exponents.values()].filter((part) => part.exponent !== 0);
}

function spelled(
	dimension: Dimension,
	symbolOf: (base: string) => UnitSymbol
): readonly UnitPart[] {
	return Object.entries(dimension).map(([base, exponent]) => ({ ...symbolOf(base), exponent }));
}

function measures(part: UnitSymbol, base: string): boolean {
	return equalDimensions(part.dimension, baseDimension(base));
}

function baseSymbol(symbol: string): UnitSymbol {
	return { symbol, dimension: baseDimension(symbol), numerator: 1n, denominator: 1n };
}

function cost(parts: readonly UnitPart[]): number {
	const factors = parts.reduce((sum, part) => sum + Math.abs(part.exponent), 0);
	return factors + parts.length / 1000;
}

function known(symbol: string): UnitSymbol {
	const found = KNOWN.find((knownSymbol) => knownSymbol.symbol === symbol);
	if (!found) throw new Error(`${symbol} is not a built-in unit.`);
	return found;
}
