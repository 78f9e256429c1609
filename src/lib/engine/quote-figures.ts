/**
 * Figures of many orders over the workbook as it is, each put over it and taken off again: what a page of several items
 * or a list of prices reads of each, and a sentence where there is none.
 */
import type { Grounds, QuoteEntry, Scalar } from '$lib/workbook/schema';
import { pictureOf } from '$lib/workbook/lookup';
import { overlaid } from '$lib/workbook/quote-overlay';
import { scalarOf } from './frozen';
import type { Model } from './model';
import { figuresOf } from './quote-grounds';
import { OK } from './state';

export interface FiguresAsked {
	readonly orders: readonly (readonly QuoteEntry[])[];
	readonly names: readonly string[];
	/** With every figure of the quote's page, as an offer holds them. */
	readonly whole: boolean;
	/** Entries that hold for all of them, over which each is put: last year's inputs, say. */
	readonly under?: readonly QuoteEntry[];
}

export interface OrderFigures {
	/** Those of no set. */
	readonly values: Readonly<Record<string, Scalar>>;
	/** Those of one set, by its members. */
	readonly rows: Readonly<Record<string, readonly (number | null)[]>>;
	/** Why one has no value. */
	readonly why: Readonly<Record<string, string>>;
	readonly held: Pick<Grounds, 'figures' | 'sets'> | null;
}

export function orderFigures(
	model: Model,
	{ orders, names, whole, under }: FiguresAsked
): OrderFigures[] {
	const before = model.workbook;
	const picture = pictureOf(before, 'quote');
	const first = under && overlaid(before, under);
	try {
		return orders.map((entries) => {
			const { workbook, id } = first
				? overlaid(first.workbook, entries, first.id)
				: overlaid(before, entries);
			model.take(workbook);
			const read = readOf(model, id, names);
			const held =
				whole && picture
					? figuresOf(model.layout, { scenario: id, ...model.column(id) }, picture)
					: null;
			return { ...read, held };
		});
	} finally {
		model.take(before);
	}
}

function readOf(model: Model, id: string, names: readonly string[]): Omit<OrderFigures, 'held'> {
	const { layout } = model;
	const column = model.column(id);
	const values: Record<string, Scalar> = {};
	const rows: Record<string, (number | null)[]> = {};
	const why: Record<string, string> = {};
	for (const name of names) {
		const place = layout.byName.get(name);
		if (!place) continue;
		if (place.axes.length === 1) {
			rows[name] = Array.from({ length: place.count }, (_, i) =>
				column.states[place.base + i] === OK ? column.values[place.base + i]! : null
			);
			continue;
		}
		if (place.axes.length > 0) continue;
		const isThere = column.states[place.base] === OK;
		values[name] = isThere ? scalarOf(layout, place.quantity, column.values[place.base]!) : null;
		if (!isThere) why[name] = model.origin(id, place.base)?.reason ?? '';
	}
	return { values, rows, why };
}
