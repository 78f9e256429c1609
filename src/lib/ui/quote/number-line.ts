/**
 * Where prices stand on one line: floor, target and list above it, this quote and the invoice below, no name
 * over another. Pixels in a box of known width; what is drawn with them is `NumberLine.svelte`.
 */
import { axisOf } from '../figure/axis';
import { spread } from '../figure/spread';

export interface Priced {
	readonly name: 'floor' | 'plan' | 'target' | 'list' | 'invoice' | 'quote';
	readonly value: number;
	readonly title: string;
	readonly below: string;
}

export interface Mark extends Priced {
	/** Where it stands, and where the middle of its words does. */
	readonly x: number;
	readonly words: number;
	readonly side: 'above' | 'below';
}

export interface NumberLine {
	readonly marks: readonly Mark[];
	readonly ticks: readonly { readonly x: number; readonly isLong: boolean }[];
	/** Right end of what lies under the floor; null where it has none. */
	readonly hatched: number | null;
}

/** Widths of a letter of title and small print, near enough to keep words apart. */
const LETTER = 8.2;
const SMALL = 6.6;

/** Below this width the invoice, which the waterfall shows as well, has no room. */
const ROOMY = 560;

export function numberLine(all: readonly Priced[], width: number): NumberLine {
	const prices = width < ROOMY ? all.filter((priced) => priced.name !== 'invoice') : all;
	if (prices.length === 0 || width <= 0) return { marks: [], ticks: [], hatched: null };
	const values = prices.map((price) => price.value);
	const [least, most] = [Math.min(...values), Math.max(...values)];
	const room = (most - least || Math.abs(most) || 1) * 0.16;
	const [low, high] = [least - room, most + room * 0.6];
	const at = (value: number) => ((value - low) / (high - low)) * width;
	const long = axisOf(low, high, 11).ticks;
	const step = (long[1] ?? 0) - (long[0] ?? 0);
	const ticks =
		step > 0
			? axisOf(low, high, 11 * 4).ticks.map((value) => ({
					x: at(value),
					isLong: Math.abs(value / step - Math.round(value / step)) < 1e-6
				}))
			: [];
	const marks = (['above', 'below'] as const).flatMap((side) => {
		const own = prices
			.filter(
				(price) => (price.name === 'quote' || price.name === 'invoice') === (side === 'below')
			)
			.sort((a, b) => a.value - b.value);
		const wide = (priced: Priced) =>
			Math.max(priced.title.length * LETTER, priced.below.length * SMALL, 40);
		const middles = spread(
			own.map((priced) => ({ at: at(priced.value), width: wide(priced) })),
			0,
			width,
			14
		);
		return own.map((priced, i) => ({
			...{ ...priced, side, x: at(priced.value) },
			words: middles[i] ?? at(priced.value)
		}));
	});
	const floor =
		prices.find((price) => price.name === 'plan') ?? prices.find((price) => price.name === 'floor');
	return { marks, ticks, hatched: floor ? at(floor.value) : null };
}
