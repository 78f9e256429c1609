/**
 * Units for a picture: one for all its lengths, and thousands of money where figures grow long.
 * Sizes of things drawn to scale are chosen here too.
 */
import { factor } from '$lib/units/convert';
import { sameDimension } from '$lib/units/algebra';
import type { UnitSystem } from '$lib/units/system';
import { formatUnit } from '../format';

export interface Scale {
	/** What a value in the quantity's unit is multiplied by. */
	readonly factor: number;
	/** As printed. */
	readonly unit: string;
}

const THOUSANDS_FROM = 100_000;

/** Thousands where the largest figure is long and the unit has such a multiple: EUR gives kEUR. */
export function scaleFor(units: UnitSystem, unit: string | undefined, largest: number): Scale {
	const own = { factor: 1, unit: formatUnit(unit) };
	if (!unit || !(Math.abs(largest) >= THOUSANDS_FROM)) return own;
	const many = units.parse(`k${unit}`);
	const unitResult = units.parse(unit);
	if (!many.ok || !unitResult.ok || !sameDimension(unitResult.unit, many.unit)) return own;
	return { factor: factor(unitResult.unit, many.unit), unit: formatUnit(`k${unit}`) };
}

/** How many `to` one `from` is; null where they do not measure the same thing. */
export function factorBetween(units: UnitSystem, from: string, to: string): number | null {
	const unitResult = units.parse(from);
	const other = units.parse(to);
	if (!unitResult.ok || !other.ok || !sameDimension(unitResult.unit, other.unit)) return null;
	return factor(unitResult.unit, other.unit);
}

/** The largest of 1, 2 and 5 times a power of ten that is at most `most`. */
export function roundLength(most: number): number {
	if (!(most > 0)) return 0;
	const power = 10 ** Math.floor(Math.log10(most));
	const step = [5, 2, 1].find((one) => one * power <= most * (1 + 1e-9)) ?? 1;
	return Number((step * power).toPrecision(1));
}
