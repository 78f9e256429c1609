/**
 * The price waterfall as bars in per cent of a width: totals stand on zero, the steps between them hang
 * where the price stood. Steps of nothing are left out of the picture and stay in the table.
 */
import type { PriceStep } from './quote';

export interface Bar {
	readonly label: string;
	readonly step: PriceStep;
	/** Per cent of the width. */
	readonly from: number;
	readonly to: number;
	/** A total, what leaves the price on its way to the last but one total, or a cost after it. */
	readonly look: 'total' | 'leaves' | 'adds' | 'cost';
	/** Where the next bar begins; null for the last. */
	readonly join: number | null;
}

export interface Waterfall {
	readonly bars: readonly Bar[];
	/** Where zero stands. */
	readonly zero: number;
}

export function waterfallOf(steps: readonly PriceStep[]): Waterfall {
	const drawn = steps.filter(
		({ amount, level, isTotal }) =>
			amount.kind === 'value' && level.kind === 'value' && (isTotal || amount.value !== 0)
	);
	const ends = drawn.flatMap(({ amount, level, isTotal }) =>
		isTotal ? [0, amount.value] : [level.value - amount.value, level.value]
	);
	const low = Math.min(0, ...ends);
	const high = Math.max(0, ...ends);
	const at = (value: number) => (high > low ? (100 * (value - low)) / (high - low) : 0);
	const totals = drawn.filter((step) => step.isTotal);
	const turn = drawn.indexOf(totals.at(-2) ?? totals[0] ?? drawn[0]!);
	const bars = drawn.map((step, i): Bar => {
		const { amount, level, isTotal } = step;
		const [start, end] = isTotal ? [0, amount.value] : [level.value - amount.value, level.value];
		const look = isTotal ? 'total' : amount.value > 0 ? 'adds' : i > turn ? 'cost' : 'leaves';
		return {
			...{ label: step.label, step, look },
			from: at(Math.min(start, end)),
			to: at(Math.max(start, end)),
			join: i < drawn.length - 1 ? at(end) : null
		};
	});
	return { bars, zero: at(0) };
}
