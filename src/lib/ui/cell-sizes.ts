/**
 * How large the values of a quantity are: the decimals that most of them need, and below what a value is only what rounding,
 * or the hair by which a plan keeps inside its bounds, leaves of none.
 */
import type { QuantityLayout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { OK } from '$lib/engine/state';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { differenceTerms } from './difference-terms';
import { decimalsFor, decimalsWritten, isNoise } from './format';

/** A layout as far as sizes are read from it. */
export interface HoldsQuantities {
	readonly workbook: Pick<Workbook, 'programmes'>;
	readonly byName: ReadonlyMap<string, QuantityLayout>;
}

export interface Sizes {
	readonly decimals: number;
	/** The largest of its values, or of the terms of which it is the difference. */
	readonly beside: number;
	readonly isComputed: boolean;
}

const kept = new WeakMap<Results, Map<string, Sizes>>();

/** Read of the layout only where they are not known yet: a cell that is drawn hangs on nothing else. */
export function sizesOf(
	of: QuantityLayout,
	results: Results,
	layout: Partial<HoldsQuantities> = {}
): Sizes {
	const known = kept.get(results) ?? new Map<string, Sizes>();
	kept.set(results, known);
	const key = `${of.quantity.name}${'byName' in layout ? '' : ' alone'}`;
	const found = known.get(key);
	if (found !== undefined) return found;
	const digits = of.quantity.digits ?? 4;
	const { largest, written, all } = measured(of, results);
	const sizes = {
		isComputed: of.quantity.formula !== undefined || isDecided(of.quantity, layout.workbook),
		beside: Math.max(largest, ...termSizes(of.quantity, results, layout.byName))
	};
	const fitting = isLeftOver(of.quantity, largest, sizes)
		? 0
		: Math.min(
				decimalsFor(usualLargest(all, largest), digits),
				decimalsFor(largest, digits) + MORE_FOR_MOST
			);
	// Values that all are written in fewer decimals need no zeros behind them.
	const made = { ...sizes, decimals: Math.min(fitting, written) };
	known.set(key, made);
	return made;
}

function measured({ base, count }: QuantityLayout, results: Results) {
	let [largest, written] = [0, 0];
	const all: number[] = [];
	for (let cell = base; cell < base + count; cell++) {
		if (results.states[cell] !== OK) continue;
		const value = results.values[cell] ?? 0;
		largest = Math.max(largest, Math.abs(value));
		if (!isNoise(value)) all.push(Math.abs(value));
		if (written < 6) written = Math.max(written, decimalsWritten(value, 6));
	}
	return { largest, written, all };
}

/** What a programme decides is computed as much as what a formula gives. */
const isDecided = ({ name }: Quantity, workbook: HoldsQuantities['workbook'] | undefined) =>
	workbook?.programmes?.some(({ decisions }) => decisions.includes(name)) ?? false;

const termSizes = (
	{ formula }: Quantity,
	results: Results,
	byName: HoldsQuantities['byName'] | undefined
): number[] =>
	typeof formula !== 'string' || !byName
		? []
		: differenceTerms(formula).flatMap((name) => {
				const term = byName.get(name);
				return term ? [measured(term, results).largest] : [];
			});

/** Beyond as many times the middle of its row, a value says nothing of the decimals that the others need. */
const OUTLYING = 10;
/** As many decimals more than fit the largest are shown where most of a row need them. */
const MORE_FOR_MOST = 2;

/** The largest of a row but for what lies far out. Values far smaller than the others keep digits of their own. */
function usualLargest(sizes: readonly number[], largest: number): number {
	const sorted = sizes.filter((size) => size >= REST * largest).sort((a, b) => a - b);
	const middle = sorted[Math.floor(sorted.length / 2)] ?? largest;
	return sorted.findLast((size) => size <= OUTLYING * middle) ?? largest;
}

/** Below this share of the largest of its row, or of its terms, a computed value is what is left of none. */
const REST = 1e-9;

/** Whether a value is no figure: within the tolerance of its check, or a computed one lost beside what it came from. */
export const isLeftOver = (
	{ check, formula }: Quantity,
	value: number,
	{ beside, isComputed }: Pick<Sizes, 'beside' | 'isComputed'>
): boolean =>
	Math.abs(value) <= (check?.tolerance ?? -1) ||
	isNoise(value, typeof formula === 'string') ||
	(isComputed && Math.abs(value) < REST * beside);
