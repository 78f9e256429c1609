/**
 * The figures of a starting view: single ones with what the scenario in hand changes, and those of one
 * set beside each other. Read from results; drawing is `Figures.svelte`'s.
 */
import { cellAt, type Layout, type QuantityLayout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import type { StaleCells } from '$lib/engine/stale';
import type { StaleBecause } from '$lib/engine/stale-words';
import { ABSENT, isError, OK } from '$lib/engine/state';
import type { Finding, Member } from '$lib/workbook/schema';
import { isClose, viewCell } from '../cells';
import { decimalsFor, formatDifference, formatRelative, formatUnit, isNoise } from '../format';
import { figureOf, figureText, fill, type Figure, type FigureOf } from '../show';

export type FiguresFinding = Extract<Finding, { kind: 'figures' }>;

export interface FiguresInput {
	readonly layout: Layout;
	/** Of the scenario whose figures are shown. */
	readonly base: Results | undefined;
	/** Of the scenario that is compared with it; undefined where there is none, or it is still to come. */
	readonly hand: Results | undefined;
	readonly subject: string | null;
	readonly locale: string;
	/** Why cells of a scenario, up to the last, rest on a plan that does not answer; left out, none does. */
	readonly stale?: Pick<StaleCells, 'of'> | null;
}

export interface FigureLine {
	readonly name: string;
	readonly label: string;
	readonly note: string;
	readonly figure: Figure;
	/** Words, not a number: they may be long. */
	readonly inWords: boolean;
	/** What the scenario in hand makes of it; null where none is. */
	readonly change: Change | null;
	/** The first cell of the quantity, for a figure that is a span. */
	readonly first: number;
	/** Why the figure itself is out of date; null where it is not. */
	readonly stale: StaleBecause | null;
}

export interface Change {
	readonly same: boolean;
	readonly difference: string;
	readonly relative: string;
	/** In place of a difference: another word, or "No value". */
	readonly instead: string;
	/** Why what it would be told against rests on a plan that does not answer: then nothing of it is told. */
	readonly stale: StaleBecause | null;
}

export interface FigureTable {
	readonly set: string;
	readonly members: readonly { readonly id: string; readonly label: string }[];
	readonly rows: readonly {
		readonly name: string;
		readonly label: string;
		readonly unit: string;
		readonly note: string;
		readonly cells: readonly TableCell[];
	}[];
}

export interface TableCell {
	readonly text: string;
	readonly isError: boolean;
	readonly cell: number | null;
	readonly stale: StaleBecause | null;
}

/** More members beside each other than this become one span. */
const MOST_BESIDE = 14;

export function figuresOf(input: FiguresInput, finding: FiguresFinding) {
	const lines: FigureLine[] = [];
	const bySet = new Map<string, QuantityLayout[]>();
	for (const name of finding.quantities) {
		const quantity = input.layout.byName.get(name);
		const free = quantity ? freeSets(input, quantity) : [];
		const members = input.layout.sets.get(free[0] ?? '')?.members.length ?? 0;
		if (quantity && free.length === 1 && members <= MOST_BESIDE)
			bySet.set(free[0] ?? '', [...(bySet.get(free[0] ?? '') ?? []), quantity]);
		else lines.push(lineOf(input, name));
	}
	const tables = [...bySet].map(([set, quantities]) => tableOf(input, set, quantities));
	return { title: titleOf(input, finding), lines, tables };
}

const reading = ({ layout, base, subject, locale }: FiguresInput): FigureOf => ({
	...{ layout, results: base, subject, locale }
});

const titleOf = (input: FiguresInput, { title }: FiguresFinding) => fill(reading(input), title);

/** Sets that neither the subject nor a single member settles. */
function freeSets(input: FiguresInput, { axes, sizes }: QuantityLayout): string[] {
	const subject = input.subject === null ? undefined : input.layout.workbook.front?.subject;
	return axes.flatMap(({ set }, i) => (set === subject || sizes[i] === 1 ? [] : [set]));
}

function lineOf(input: FiguresInput, name: string): FigureLine {
	const figure = figureOf(reading(input), name);
	const { quantity } = figure;
	const stale = staleOf(input, input.base, figure);
	return {
		...{ name, figure, stale, label: quantity?.quantity.label ?? name },
		note: quantity?.quantity.note ?? '',
		inWords: (quantity?.quantity.type ?? 'number') !== 'number' || figure.cell === null,
		// Beside a figure that is marked itself, there is nothing to add.
		change: stale ? null : changeOf(input, figure),
		first: quantity?.base ?? -1
	};
}

/** Of the cell that the figure stands in, or of all that it spans. */
function staleOf({ stale }: FiguresInput, results: Results | undefined, figure: Figure) {
	const { cell, quantity } = figure;
	if (!stale || !results || !quantity) return null;
	if (cell !== null) return stale.of(results.scenario, cell);
	return stale.of(results.scenario, quantity.base, quantity.base + quantity.count);
}

/** None where rounding alone gave it, as it is shown. */
const figureAt = ({ quantity }: QuantityLayout, value: number) =>
	isNoise(value, typeof quantity.formula === 'string') ? 0 : value;

function changeOf(input: FiguresInput, figure: Figure): Change | null {
	const { layout, base, hand, locale } = input;
	const { cell, quantity } = figure;
	if (cell === null || !quantity || !base || !hand) return null;
	const stale = staleOf(input, hand, figure);
	if (stale) return { same: false, difference: '', relative: '', instead: '', stale };
	const [before, after] = [base.states[cell] ?? OK, hand.states[cell] ?? OK];
	const [one, other] = [base, hand].map(({ values }) =>
		figureAt(quantity, values[cell] ?? NaN)
	) as [number, number];
	const none = { difference: '', relative: '', instead: '', stale: null };
	if (before === after && (before !== OK || isClose(one, other))) return { ...none, same: true };
	if (isError(after)) return { ...none, same: false, instead: 'No value' };
	if (after !== OK)
		return {
			...none,
			same: false,
			instead: viewCell({ layout, quantity, locale, base }, hand, cell).text
		};
	const isNumber = (quantity.quantity.type ?? 'number') === 'number';
	if (before !== OK || !isNumber)
		return { ...none, same: false, instead: figureText(layout, quantity, other, locale) };
	const decimals = decimalsFor(
		Math.max(Math.abs(one), Math.abs(other)),
		quantity.quantity.digits ?? 4
	);
	// Nothing of it would show beside the figure.
	if (Math.abs(other - one) < 0.05 * 10 ** -decimals) return { ...none, same: true };
	return {
		...none,
		same: false,
		difference: formatDifference(other - one, decimals, locale),
		// A percentage of a percentage would be taken for points.
		relative: quantity.quantity.unit === '%' ? '' : formatRelative(other, one, locale)
	};
}

function tableOf(
	input: FiguresInput,
	set: string,
	quantities: readonly QuantityLayout[]
): FigureTable {
	const { layout, base } = input;
	const definition = layout.sets.get(set);
	const all = (definition?.members ?? []).map((member, ordinal) => ({
		member,
		cells: quantities.map((quantity) => placeOf(input, quantity, set, ordinal))
	}));
	const isThere = (cell: number | null) => cell !== null && base?.states[cell] !== ABSENT;
	const present = all.filter(({ cells }) => !base || cells.some(isThere));
	const labels = labelsOf(present.map(({ member }) => member));
	return {
		set: definition?.label ?? set,
		members: present.map(({ member }, i) => ({ id: member.id, label: labels[i] ?? member.id })),
		rows: quantities.map((quantity, row) => ({
			name: quantity.quantity.name,
			label: quantity.quantity.label,
			unit: formatUnit(quantity.quantity.unit),
			note: quantity.quantity.note ?? '',
			cells: present.map(({ cells }) => cellOf(input, quantity, cells[row] ?? null))
		}))
	};
}

/** Labels where all are short enough for a column, else ids. */
function labelsOf(members: readonly Member[]): string[] {
	const labels = members.map(({ id, label }) => label ?? id);
	return labels.every((label) => label.length <= 9) ? labels : members.map(({ id }) => id);
}

function placeOf(input: FiguresInput, quantity: QuantityLayout, set: string, ordinal: number) {
	const { layout, subject } = input;
	const subjectSet = layout.workbook.front?.subject;
	const at = quantity.axes.map((axis, i) =>
		axis.set === set
			? ordinal
			: axis.set === subjectSet && subject !== null
				? (layout.ordinals.get(axis.set)?.get(subject) ?? -1)
				: quantity.sizes[i] === 1
					? 0
					: -1
	);
	const cell = cellAt(quantity, at);
	return cell < 0 ? null : cell;
}

function cellOf(
	{ layout, base, locale, stale: marks }: FiguresInput,
	quantity: QuantityLayout,
	cell: number | null
): TableCell {
	if (cell === null) return { text: '', isError: false, cell, stale: null };
	if (!base) return { text: '…', isError: false, cell, stale: null };
	const stale = marks?.of(base.scenario, cell) ?? null;
	const state = base.states[cell] ?? OK;
	if (isError(state)) return { text: 'No value', isError: true, cell, stale };
	if (state !== OK) {
		const { text } = viewCell({ layout, quantity, locale, base }, base, cell);
		return { text, isError: false, cell, stale };
	}
	const value = base.values[cell] ?? NaN;
	const isNumber = (quantity.quantity.type ?? 'number') === 'number';
	const text = isNumber
		? viewCell({ layout, quantity, locale, base }, base, cell).text
		: figureText(layout, quantity, value, locale);
	return { text, isError: false, cell, stale };
}
