/** What moved since a quote was sent: the figures then and today, the inputs that differ, and what each did. */
import { cellAt, type Layout } from '$lib/engine/layout';
import { scalarOf } from '$lib/engine/frozen';
import type { Results } from '$lib/engine/results';
import { OK } from '$lib/engine/state';
import type { QuotePicture } from '$lib/workbook/quote-schema';
import type { Grounds, QuoteEntry, Scalar } from '$lib/workbook/schema';
import { flatten } from '$lib/workbook/values';
import { heldNumber } from './held';

export interface Moved {
	readonly name: string;
	readonly label: string;
	readonly unit: string;
	readonly then: number;
	readonly today: number | null;
}

export interface ChangedInput {
	readonly label: string;
	readonly unit: string;
	readonly at: readonly string[];
	readonly was: Scalar;
	readonly is: Scalar;
	/** Puts it back. */
	readonly entry: QuoteEntry;
}

const numberOf = (layout: Layout, results: Results, name: string): number | null => {
	const place = layout.byName.get(name);
	return place?.count === 1 && results.states[place.base] === OK
		? (results.values[place.base] ?? null)
		: null;
};

/** The figures that a price is judged by; those that it never had are left out. */
export function figuresSince(
	grounds: Grounds,
	{ price, floor, target, list, invoice, margin, hours }: QuotePicture,
	layout: Layout,
	today: Results
): Moved[] {
	return [price, floor, target, invoice, list, margin, hours].flatMap((name) => {
		const then = name === undefined ? null : heldNumber(grounds, name);
		if (name === undefined || then === null) return [];
		const { label = name, unit = '' } = layout.byName.get(name)?.quantity ?? {};
		return [{ name, label, unit, then, today: numberOf(layout, today, name) }];
	});
}

/** Inputs that hold another value today than the quote kept; what it enters itself has none but its own. */
export function inputsSince(
	{ inputs = {} }: Grounds,
	entries: readonly QuoteEntry[],
	layout: Layout,
	today: Results
): ChangedInput[] {
	const own = new Set(entries.map(({ quantity, at = [] }) => JSON.stringify([quantity, ...at])));
	return Object.entries(inputs).flatMap(([name, values]) => {
		const place = layout.byName.get(name);
		if (!place) return [];
		return flatten(values).flatMap(({ at, value }): ChangedInput[] => {
			const ordinals = place.axes.map(
				({ set }, i) => layout.ordinals.get(set)?.get(at[i] ?? '') ?? -1
			);
			const cell = at.length === place.axes.length ? cellAt(place, ordinals) : -1;
			if (cell < 0 || own.has(JSON.stringify([name, ...at]))) return [];
			const is =
				today.states[cell] === OK ? scalarOf(layout, place.quantity, today.values[cell]!) : null;
			if (is === value) return [];
			const { label, unit = '' } = place.quantity;
			const entry = { quantity: name, ...(at.length > 0 && { at }), value };
			return [{ label, unit, at, was: value, is, entry }];
		});
	});
}

/** How many of them are looked into: each is computed once more. */
export const MOST_LOOKED_INTO = 40;

export interface Effect extends ChangedInput {
	readonly onPrice: number | null;
	readonly onFloor: number | null;
}

/** What an input did: today's figure less the figure with that input put back. */
export function effectOf(
	input: ChangedInput,
	picture: QuotePicture,
	layout: Layout,
	today: Results,
	without: Results | null
): Effect {
	const less = (name: string) => {
		const now = numberOf(layout, today, name);
		const back = without && numberOf(layout, without, name);
		return now === null || back === null ? null : now - back;
	};
	return { ...input, onPrice: less(picture.price), onFloor: less(picture.floor) };
}

const sizeOf = ({ onPrice, onFloor }: Effect) =>
	Math.max(Math.abs(onPrice ?? 0), Math.abs(onFloor ?? 0));

export const largestFirst = (effects: readonly Effect[]): Effect[] =>
	[...effects].sort((a, b) => sizeOf(b) - sizeOf(a));

/** What the inputs one by one do not explain of a figure. */
export function restOf(
	moved: readonly Moved[],
	name: string,
	effects: readonly Effect[],
	of: 'onPrice' | 'onFloor'
): number | null {
	const figure = moved.find((one) => one.name === name);
	if (!figure || figure.today === null) return null;
	return figure.today - figure.then - effects.reduce((sum, effect) => sum + (effect[of] ?? 0), 0);
}
