/**
 * Which quantity a column holds, by its heading: by label, by name, by the words in them, by another name. Where several fit, or a
 * name fits but others hold its words as well ("price"), a person is asked.
 */
import type { UnitSystem } from '$lib/units/system';
import type { Quantity } from '$lib/workbook/schema';
import { readUnit } from './column-unit';
import { headingReadings, looksLikeUnit, wordsOf, type HeadingReading } from './heading';

export interface Match {
	/** None fits; or those that may be meant, the likeliest first. */
	readonly quantities: readonly string[];
	/** It is the one; else a person chooses. */
	readonly sure: boolean;
	/** As the heading writes it; empty for the quantity's own. */
	readonly unit: string;
}

const NONE: Match = { quantities: [], sure: false, unit: '' };
/** Words that tell nothing apart. */
const EMPTY_WORDS = new Set(['of', 'the', 'a', 'an', 'in', 'for', 'to', 'per', 'and', 'by']);

export function matchHeading(
	heading: string,
	candidates: readonly Quantity[],
	units: UnitSystem
): Match {
	const readings = headingReadings(heading);
	return (
		first(readings, (reading) => byName(reading, candidates, units)) ??
		first(readings, (reading) => byWords(reading, candidates, units)) ??
		first(readings, (reading) => byOtherName(reading, candidates, units)) ??
		NONE
	);
}

function byName(reading: HeadingReading, candidates: readonly Quantity[], units: UnitSystem) {
	const called = candidates.filter(({ name, label }) =>
		[wordsOf(name), wordsOf(label)].includes(reading.words)
	);
	const fits = called.filter((quantity) => takesUnit(reading, quantity, units));
	const [one, ...more] = fits;
	if (!one) return null;
	const isPlainWord = wordsOf(one.label) !== reading.words && !reading.words.includes(' ');
	const others = isPlainWord ? candidates.filter((other) => holds(other, reading.words)) : [];
	const between = [one, ...more, ...others.filter((other) => !fits.includes(other))];
	return matched(between, reading, between.length === 1);
}

function byWords(reading: HeadingReading, candidates: readonly Quantity[], units: UnitSystem) {
	const held = candidates.filter(
		(quantity) => holds(quantity, reading.words) && takesUnit(reading, quantity, units)
	);
	const [one, ...more] = held;
	if (!one) return null;
	// One word of five may mean anything.
	const isMost = 2 * telling(reading.words).length >= telling(wordsOf(one.label)).length;
	return matched(held, reading, more.length === 0 && isMost);
}

/** By what else it is called, as a whole: "hourly wage". */
function byOtherName(reading: HeadingReading, candidates: readonly Quantity[], units: UnitSystem) {
	const called = candidates.filter(
		(quantity) =>
			quantity.other_names?.some((name) => wordsOf(name) === reading.words) &&
			takesUnit(reading, quantity, units)
	);
	return called.length > 0 ? matched(called, reading, called.length === 1) : null;
}

const matched = (
	quantities: readonly Quantity[],
	{ unit }: HeadingReading,
	sure: boolean
): Match => ({
	quantities: quantities.map(({ name }) => name),
	sure,
	unit
});

const telling = (words: string) =>
	words.split(' ').filter((word) => !EMPTY_WORDS.has(word) && word.length > 1);

function holds({ name, label }: Quantity, words: string): boolean {
	const wanted = telling(words);
	const own = new Set(`${wordsOf(name)} ${wordsOf(label)}`.split(' '));
	return wanted.length > 0 && wanted.every((word) => own.has(word));
}

/** A unit that is marked as one is taken though it does not fit: then the column says why. */
function takesUnit(
	{ unit, marked }: HeadingReading,
	quantity: Quantity,
	units: UnitSystem
): boolean {
	if (unit === '') return true;
	if ((quantity.type ?? 'number') !== 'number') return false;
	return readUnit(unit, quantity.unit ?? '1', units).ok || (marked && looksLikeUnit(unit));
}

function first<T, R>(list: readonly T[], find: (one: T) => R | null): R | null {
	for (const one of list) {
		const found = find(one);
		if (found !== null) return found;
	}
	return null;
}
