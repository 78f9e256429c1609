/**
 * One value for a picture: its number where it has one, else in words why it has none. What has no
 * number is never drawn as zero.
 */
import { cellAt, type Layout, type QuantityLayout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { ABSENT, isError, NO_ANSWER, NOT_ENTERED, OFF_END, OK } from '$lib/engine/state';
import type { Fault } from '$lib/browser/engine-messages';
import { formatNumber } from '../format';
import { inheritedFrom } from '../messages';
import { midSentence } from './words';

export interface Source {
	readonly layout: Layout;
	/** Of one scenario; undefined until it is computed. */
	readonly results: Results | undefined;
	readonly faults: readonly Fault[] | undefined;
}

export interface Reading {
	readonly kind: 'value' | 'absent' | 'no-answer' | 'not-entered' | 'error' | 'pending';
	/** NaN unless the kind is value. */
	readonly value: number;
	readonly quantity: QuantityLayout | undefined;
	/** Why there is no value: "error of batch time". Empty for a value. */
	readonly because: string;
}

/** Ordinal by set. */
export type At = Readonly<Record<string, number>>;

/** Every combination of members of these sets. */
export function placesOf(sets: readonly string[], { layout }: Source): At[] {
	return sets.reduce<At[]>(
		(places, set) =>
			places.flatMap((place) =>
				(layout.sets.get(set)?.members ?? []).map((_, i) => ({ ...place, [set]: i }))
			),
		[{}]
	);
}

/** What stands where there is no value. */
export const WITHOUT_VALUE: Readonly<Record<Reading['kind'], string>> = {
	value: '',
	absent: 'n/a',
	'no-answer': 'none',
	'not-entered': 'not entered',
	error: 'No value',
	pending: '…'
};

const KINDS: Readonly<Record<number, Reading['kind']>> = {
	[OK]: 'value',
	[ABSENT]: 'absent',
	[OFF_END]: 'absent',
	[NOT_ENTERED]: 'not-entered',
	[NO_ANSWER]: 'no-answer'
};

/** The value of a quantity at these members. A set left out must have one member only. */
export function read(source: Source, name: string, at: At = {}): Reading {
	const { layout, results } = source;
	const quantity = layout.byName.get(name);
	const nothing = { value: NaN, quantity, because: '' };
	if (!quantity)
		return { ...nothing, kind: 'error', because: `the workbook has no quantity ${name}` };
	if (!results) return { ...nothing, kind: 'pending' };
	const ordinals = quantity.axes.map((axis, i) =>
		Object.hasOwn(at, axis.set) ? (at[axis.set] ?? -1) : quantity.sizes[i] === 1 ? 0 : -1
	);
	const cell = cellAt(quantity, ordinals);
	if (cell < 0) return { ...nothing, kind: 'absent' };
	const state = results.states[cell] ?? OK;
	if (isError(state)) return { ...nothing, kind: 'error', because: errorOf(source, name) };
	const kind = KINDS[state] ?? 'absent';
	return { ...nothing, kind, value: kind === 'value' ? (results.values[cell] ?? NaN) : NaN };
}

/** Whose error a quantity carries. */
function errorOf({ layout, faults }: Source, name: string): string {
	const cause = inheritedFrom(layout, faults).get(name);
	if (cause) return `error of ${midSentence(cause)}`;
	const label = layout.byName.get(name)?.quantity.label ?? name;
	return `error of ${midSentence(label)} itself`;
}

/** A reading in words: its number, or what stands in its place. */
export function shown(reading: Reading, decimals: number, locale: string, factor = 1): string {
	if (reading.kind !== 'value') return WITHOUT_VALUE[reading.kind];
	return formatNumber(reading.value * factor, decimals, locale);
}

/** For a table that is taken along: the number in full, or the words with the reason. */
export function plain(reading: Reading, factor = 1): number | string {
	if (reading.kind === 'value') return reading.value * factor;
	return reading.because
		? `${WITHOUT_VALUE[reading.kind]} (${reading.because})`
		: WITHOUT_VALUE[reading.kind];
}

/** The sum of readings; the first without a value stands for all. Absent ones add nothing. */
export function sumOf(readings: readonly Reading[]): Reading | undefined {
	const bad = readings.find((reading) => reading.kind !== 'value' && reading.kind !== 'absent');
	if (bad) return bad;
	const values = readings.filter((reading) => reading.kind === 'value');
	const first = values[0];
	return first && { ...first, value: values.reduce((sum, value) => sum + value.value, 0) };
}
