/** What cells and fields of paths in time say. Fetched once a workbook has such a path, so that no first number waits for it. */
import type { Layout, QuantityLayout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { monthLabel, stepAt } from '$lib/workbook/paths';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import type { CellView } from '../cells';
import type { Entry, FieldSpec } from '../entry';
import { becomesOf } from '../entry-words';
import { asTyped } from '../format';
import type { Hint } from '../hint';
import { texts } from './texts';
import { pathWords, stepMark } from './words';

/** The row of all months of a path: its steps in place of a span. */
export function spanOfPath(
	span: CellView,
	layout: Layout,
	results: Results,
	scenario: string,
	row: {
		readonly quantity: QuantityLayout;
		readonly from: number;
		readonly ids: readonly string[];
	},
	locale: string
): CellView {
	if (row.ids.length !== row.quantity.axes.length - 1) return span;
	const place = { first: row.from, at: row.ids };
	const words = pathWords(layout, results, scenario, row.quantity, place, locale);
	return words ? { ...span, text: words.short, full: words.full } : span;
}

/** What begins in the month of a cell, beside its value; empty where it is as the month before. */
export function markOf(
	workbook: Workbook,
	scenario: string,
	name: string,
	at: readonly string[],
	locale: string
): string {
	const step = stepAt(workbook, scenario, name, at);
	return step ? stepMark(step, locale) : '';
}

/** What its field holds when it opens: the step that is entered, if one is. */
export function stepText(
	workbook: Workbook,
	scenario: string,
	name: string,
	at: readonly string[],
	{ locale }: FieldSpec
): string {
	const step = stepAt(workbook, scenario, name, at);
	if (step?.moved && step.set === null)
		return `${step.moved >= 0 ? '+' : ''}${asTyped(step.moved, locale)} %`;
	return step?.set === null || step?.set === undefined ? '' : asTyped(step.set, locale);
}

export function stepHint(
	workbook: Workbook,
	quantity: Quantity,
	at: readonly string[],
	entry: Extract<Entry, { ok: true }>,
	text: string,
	spec: FieldSpec
): Pick<Hint, 'becomes' | 'below'> {
	const month = monthLabel(workbook, quantity, at.at(-1) ?? '');
	return {
		becomes: entry.isMove ? '' : becomesOf(text, entry, spec),
		below: text.trim() === '' ? texts.empties : texts.untilNext(month)
	};
}
