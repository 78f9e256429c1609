/**
 * Units made at random from the built-in symbols, for laws that must hold for all of them.
 */
import fc from 'fast-check';
import { UnitSystem } from '$lib/units/system';
import type { Unit } from '$lib/units/unit';

const { system } = UnitSystem.create([]);

/** A unit that the test itself wrote and that must be one. */
export function unit(text: string): Unit {
	const result = system.parse(text);
	if (!result.ok) throw new Error(`${text}: ${result.problem.message}`);
	return result.unit;
}

export const anySymbol = fc.constantFrom(...system.symbols.map(({ symbol }) => symbol));

const factor = fc
	.tuple(anySymbol, fc.constantFrom('', '', '', '^2', '³', '^-1'))
	.map(([symbol, exponent]) => symbol + exponent);

/** The text of a unit of one to four symbols, some in brackets. */
export const anyUnitText = fc
	.tuple(
		fc.array(factor, { minLength: 1, maxLength: 2 }),
		fc.array(factor, { maxLength: 2 }),
		fc.boolean()
	)
	.map(([above, below, brackets]) => {
		const over = above.join('*');
		if (below.length === 0) return over;
		return brackets ? `${over}/(${below.join('*')})` : `${over}/${below.join('/')}`;
	})
	// Some are beyond the limits: W³*MW has s to the -12.
	.filter((text) => system.parse(text).ok);

export const anyUnit = anyUnitText.map(unit);
