/**
 * A list of prices against that of a frozen copy, by cause: the copy's inputs are put under today's list, and then today's
 * come back cause by cause, in the order of the workbook. What each brings is the step; they add up, as each begins where the
 * one before ended. Both ends are worked out by today's formulas.
 */
import type { FiguresAsked, OrderFigures } from '$lib/engine/quote-figures';
import { frozenColumn, scalarOf } from '$lib/engine/frozen';
import { isInputCell } from '$lib/engine/input-cell';
import { membersOf, type Layout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { OK } from '$lib/engine/state';
import type { Frozen, QuoteEntry } from '$lib/workbook/schema';
import type { PriceListPicture } from '$lib/workbook/quote-schema';
import type { Listed } from './list';

/** What the copy holds otherwise than today, of the inputs of each cause. */
export function heldBefore(
	layout: Layout,
	today: Results,
	copy: Frozen,
	{ causes }: PriceListPicture
): (readonly QuoteEntry[])[] {
	const then = frozenColumn(layout, copy);
	return causes.map(({ quantities }) =>
		quantities.flatMap((name) => {
			const place = layout.byName.get(name);
			if (!place || place.quantity.fixed) return [];
			const entries: QuoteEntry[] = [];
			for (let cell = place.base; cell < place.base + place.count; cell++) {
				if (then.states[cell] !== OK) continue;
				if (today.states[cell] === OK && today.values[cell] === then.values[cell]) continue;
				const isDecision = place.quantity.formula === undefined;
				if (!isDecision && !isInputCell(layout.workbook, place, cell)) continue;
				const at = membersOf(layout, cell);
				entries.push({
					...{ quantity: name, value: scalarOf(layout, place.quantity, then.values[cell]!) },
					...(at.length > 0 && { at })
				});
			}
			return entries;
		})
	);
}

export interface Moved {
	readonly then: number | null;
	/** By cause, in the order of the workbook. */
	readonly steps: readonly (number | null)[];
	readonly now: number | null;
}

/** Per row of the list, at one size: from then to now, cause by cause. Null where the engine cannot say. */
export async function movedBy(
	figures: (asked: FiguresAsked) => Promise<readonly OrderFigures[] | null>,
	rows: readonly Listed[],
	entries: readonly QuoteEntry[],
	held: readonly (readonly QuoteEntry[])[],
	name: string,
	size: number,
	told: (share: number) => void = () => undefined
): Promise<Moved[] | null> {
	const orders = rows.map((one) => [...entries, ...one.entries]);
	const levels: (number | null)[][] = [];
	let before: (number | null)[] | null = null;
	for (let k = 0; k <= held.length; k++) {
		const isSame = k > 0 && held[k - 1]!.length === 0;
		if (!isSame || !before) {
			const under = held.slice(k).flat();
			const found = await figures({ orders, names: [name], whole: false, under });
			if (!found) return null;
			before = found.map(({ rows: own }) => own[name]?.[size] ?? null);
		}
		levels.push(before);
		told((k + 1) / (held.length + 1));
	}
	return rows.map((_, i) => ({
		then: levels[0]![i] ?? null,
		steps: held.map((_cause, k) => {
			const [a, b] = [levels[k]![i], levels[k + 1]![i]];
			return a == null || b == null ? null : b - a;
		}),
		now: levels.at(-1)![i] ?? null
	}));
}
