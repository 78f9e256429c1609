/**
 * One quantity as a single figure: at the subject, in one scenario, with its unit. The strip and the
 * contents read it; the grid has its own in `cells.ts`.
 */
import { dateText } from '$lib/workbook/date-text';
import { cellAt, type Layout, type QuantityLayout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { isError, OK } from '$lib/engine/state';
import { isLeftOver } from './cell-sizes';
import { choiceSet, numberText, PENDING, viewCell, viewSpan, type CellView } from './cells';
import { decimalsFor, decimalsWritten, MOST_DECIMALS, unitShown } from './format';

export interface Figure {
	readonly text: string;
	readonly unit: string;
	readonly full: string;
	readonly state: 'value' | 'nothing' | 'error' | 'pending';
	/** The cell it stands in; null where it is a span of several. */
	readonly cell: number | null;
	readonly quantity: QuantityLayout | null;
}

const MISSING: Figure = {
	text: '…',
	unit: '',
	full: '',
	state: 'pending',
	cell: null,
	quantity: null
};

/** The cell of a quantity for the subject; null where it has further axes. */
export function cellFor(
	layout: Layout,
	quantity: QuantityLayout,
	subject: string | null
): number | null {
	const subjectSet = layout.workbook.front?.subject;
	const ordinals: number[] = [];
	for (const [i, axis] of quantity.axes.entries()) {
		const ordinal =
			axis.set === subjectSet && subject !== null
				? layout.ordinals.get(axis.set)?.get(subject)
				: quantity.sizes[i] === 1
					? 0
					: undefined;
		if (ordinal === undefined) return null;
		ordinals.push(ordinal);
	}
	const cell = cellAt(quantity, ordinals);
	return cell < 0 ? null : cell;
}

/** A single number in words: "0.2965", with the digits that the quantity bears. */
export function figureText(
	layout: Layout,
	quantity: QuantityLayout,
	given: number,
	locale: string
): string {
	const alone = { beside: 0, isComputed: false };
	const value = isLeftOver(quantity.quantity, given, alone) ? 0 : given;
	if (quantity.quantity.type === 'yes_no') return value === 0 ? 'no' : 'yes';
	const set = choiceSet(layout, quantity);
	if (set) return set.members[value]?.label ?? set.members[value]?.id ?? String(value);
	const fitting = decimalsFor(value, quantity.quantity.digits ?? 4);
	if (quantity.quantity.shown === 'date') return dateText(value);
	const decimals = Math.min(fitting, decimalsWritten(value, MOST_DECIMALS));
	return numberText(quantity, value, decimals, locale);
}

export interface FigureOf {
	readonly layout: Layout;
	readonly results: Results | undefined;
	readonly subject: string | null;
	readonly locale: string;
}

export function figureOf(of: FigureOf, name: string): Figure {
	const { layout, results, locale } = of;
	const quantity = layout.byName.get(name);
	if (!quantity || !results) return { ...MISSING, quantity: quantity ?? null };
	const unit = unitShown(quantity.quantity);
	const cell = cellFor(layout, quantity, of.subject);
	const context = { layout, quantity, locale, base: results };
	const view: CellView =
		cell === null
			? viewSpan(context, results, quantity.base, quantity.base + quantity.count)
			: viewCell(context, results, cell);
	const state = cell === null ? null : (results.states[cell] ?? OK);
	const about = { unit, full: view.full, cell, quantity };
	if (view.kind === 'error' || (state !== null && isError(state)))
		return { ...about, text: 'No value', unit: '', state: 'error' };
	if (view.kind === 'nothing') return { ...about, text: view.text, unit: '', state: 'nothing' };
	if (view.kind === PENDING.kind) return MISSING;
	const text =
		cell === null ? view.text : figureText(layout, quantity, results.values[cell] ?? 0, locale);
	return { ...about, text, state: 'value' };
}

/** A template with {name} replaced by that quantity's figure and {subject} by the subject's id. */
export function fill(of: FigureOf, template: string): string {
	return template.replace(/\{([^{}]+)\}/g, (whole, name: string) => {
		if (name === 'subject') return of.subject ?? '';
		const figure = figureOf(of, name);
		if (!figure.quantity) return whole;
		return figure.unit ? `${figure.text} ${figure.unit}` : figure.text;
	});
}
