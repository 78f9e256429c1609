/** The units as the reference lists them. */
import { expect, it } from 'vitest';
import { factorText, unitEntries } from '$lib/units/reference';
import { ALIASES, KNOWN } from '$lib/units/known';
import { unit } from './generated';

const entries = unitEntries();

it('every unit is listed, and its factor and dimension are those it is computed with', () => {
	expect(entries.map(({ symbol }) => symbol)).toEqual(KNOWN.map(({ symbol }) => symbol));
	for (const { symbol, factor, dimension } of entries) {
		expect(unit(symbol).scale).toBe(factor);
		expect({ ...unit(dimension).dimension }).toEqual({ ...unit(symbol).dimension });
		expect(unit(dimension).scale).toBe(1);
	}
});

it('other spellings stand with the symbol that they mean', () => {
	const listed = entries.flatMap(({ symbol, aliases }) => aliases.map((alias) => [alias, symbol]));
	expect(listed.sort()).toEqual([...ALIASES].sort());
});

it.each([
	['kWh', 'energy', '3600000 kg*m²/s²'],
	['min', 'time', '60 s'],
	['bar', 'pressure', '100000 kg/(m*s²)'],
	['kEUR', 'money', '1000 EUR'],
	['coil', 'count', '1 coil'],
	['%', 'share', '0.01'],
	['L', 'volume', '0.001 m³'],
	['Hz', 'frequency', '1 1/s'],
	['K', 'temperature difference', '1 K']
])('%s measures %s, and one of it is %s', (symbol, measures, one) => {
	const entry = entries.find((entry) => entry.symbol === symbol)!;
	expect(entry.measures).toBe(measures);
	expect(factorText(entry)).toBe(one);
});
