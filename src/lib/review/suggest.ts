/**
 * Usual ranges, suggested from what stands: a third of the least to three times the most of a quantity's own values,
 * those of its siblings and of the scenarios. A person accepts them; nothing is set by itself.
 */
import type { Command } from '$lib/workbook/commands';
import { changesOf } from '$lib/workbook/lookup';
import { filledQuantities } from '$lib/workbook/plans';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { flatten } from '$lib/workbook/values';

export const WIDTH = 3;

export type Usual = NonNullable<Quantity['usual']>;

/** Null where there is nothing to go by, or the permitted range is as narrow already. */
export function suggestedUsual(workbook: Workbook, quantity: Quantity): Usual | null {
	if ((quantity.type ?? 'number') !== 'number' || quantity.shown) return null;
	const numbers = enteredNumbers(workbook, quantity);
	if (numbers.length === 0) return null;
	const positive = numbers.filter((value) => value > 0);
	const negative = numbers.filter((value) => value < 0);
	const hasZero = positive.length + negative.length < numbers.length;
	if (positive.length + negative.length === 0) return null;
	const sizes = (some: readonly number[]) => some.map(Math.abs);
	const [most, least] = [Math.max(...sizes(positive), 0), Math.min(...sizes(positive))];
	const [deepest, shallowest] = [Math.max(...sizes(negative), 0), Math.min(...sizes(negative))];
	const low = negative.length > 0 ? -deepest * WIDTH : hasZero ? 0 : least / WIDTH;
	const high = positive.length > 0 ? most * WIDTH : hasZero ? 0 : -shallowest / WIDTH;
	return narrowed(
		quantity,
		rounded(quantity, numbers, low, -1),
		rounded(quantity, numbers, high, 1)
	);
}

function enteredNumbers(workbook: Workbook, quantity: Quantity): number[] {
	const changed = workbook.scenarios.flatMap((scenario) => {
		const change = changesOf(scenario).get(quantity.name);
		return change ? flatten(change.value) : [];
	});
	return [...flatten(quantity.value), ...changed].flatMap(({ value }) =>
		typeof value === 'number' ? [value] : []
	);
}

/** Outwards to two digits; to whole numbers where all that stands is whole and counts something. */
function rounded(
	quantity: Quantity,
	numbers: readonly number[],
	value: number,
	out: 1 | -1
): number {
	if (value === 0) return 0;
	const step = 10 ** (Math.floor(Math.log10(Math.abs(value))) - 1);
	const round = out > 0 ? Math.ceil : Math.floor;
	const nice = Number((round(value / step - out * 1e-9) * step).toPrecision(3));
	const isCounted = quantity.whole || (step < 1 && numbers.every(Number.isInteger));
	// A count never rounds down to none: one is as usual as the least that stands.
	if (!isCounted) return nice;
	return out < 0 && value > 0 ? Math.max(1, Math.floor(value)) : round(nice);
}

/** Within the permitted range: where an end of that is as near, it does the same and better. */
function narrowed({ range, unit }: Quantity, min: number, max: number): Usual | null {
	const least = Math.max(range?.min ?? -Infinity, range?.above ?? -Infinity);
	// A share that may be all of it, and is far below: a fraction typed for a per cent shows at the low end.
	const whole = unit === '%' ? 100 : Infinity;
	const isAlreadyShare = max > whole && least >= 0;
	const most = Math.min(
		range?.max ?? Infinity,
		range?.below ?? Infinity,
		isAlreadyShare && Math.min(range?.max ?? whole, whole) === whole ? whole : Infinity
	);
	const usual = {
		...(min > least && { min }),
		...(max < most && { max })
	};
	return Object.keys(usual).length > 0 ? usual : null;
}

export interface Suggestion {
	readonly quantity: Quantity;
	readonly usual: Usual;
}

/** For every entered quantity without a usual range, or those of one sheet. */
export function suggestions(workbook: Workbook, sheet?: number): Suggestion[] {
	const filled = filledQuantities(workbook);
	const sheets = sheet === undefined ? workbook.sheets : workbook.sheets.slice(sheet, sheet + 1);
	return sheets.flatMap(({ quantities }) =>
		quantities.flatMap((quantity) => {
			if (quantity.usual || filled.has(quantity.name)) return [];
			const usual = suggestedUsual(workbook, quantity);
			return usual ? [{ quantity, usual }] : [];
		})
	);
}

/** The edit that accepts them. */
export const withSuggestions = (chosen: readonly Suggestion[]): Command => ({
	kind: 'several',
	commands: chosen.map(({ quantity, usual }) => ({
		...{ kind: 'replace_quantity', name: quantity.name, quantity: { ...quantity, usual } }
	}))
});
