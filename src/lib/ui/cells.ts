/**
 * What one cell of the grid says: a number cut at its decimal mark, words, one of the four kinds of
 * nothing, or an error; and beside it what differs from the base. A folded row says a span instead.
 *
 * Pure: results come in, words go out. Where rows stand belongs to `rows.ts`.
 */
import { dateText } from '$lib/workbook/date-text';
import { isInputCell } from '$lib/engine/input-cell';
import type { QuantityLayout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { ABSENT, isError, NO_ANSWER, NOT_ENTERED, OFF_END, OK } from '$lib/engine/state';
import type { Quantity, SetDefinition, Workbook } from '$lib/workbook/schema';
import {
	cut,
	decimalsFor,
	decimalsWritten,
	formatDifference,
	formatInFull,
	formatNumber,
	formatRelative,
	isWritten,
	MOST_DECIMALS,
	unitShown,
	type Parts
} from './format';
import { isLeftOver, sizesOf } from './cell-sizes';
import { cutToRoom, memberName } from './member-name';

export type CellKind = 'number' | 'words' | 'nothing' | 'error' | 'span' | 'pending';

export interface CellView {
	readonly kind: CellKind;
	/** For a number. */
	readonly parts: Parts | null;
	/** The whole text: for words, nothing, errors and spans, and for reading a number aloud. */
	readonly text: string;
	/** All digits, with the unit. */
	readonly full: string;
	/** Equal to the base; null in the base itself. */
	readonly same: boolean | null;
	readonly difference: Parts | null;
	readonly relative: string;
	/** In place of a difference: "instead of 5x24", "10 of 10 differ". */
	readonly instead: string;
	/** Whether a difference is there, but too small to be shown. */
	readonly isNearly: boolean;
}

const EMPTY = {
	...{ parts: null, full: '', same: null, difference: null, relative: '' },
	...{ instead: '', isNearly: false }
};
export const PENDING: CellView = { ...EMPTY, kind: 'pending', text: '…' };

/** The view before where the new one says the same, so that a page sees that nothing has changed. */
export function keepView(before: CellView, view: CellView): CellView {
	const isSame =
		before.kind === view.kind &&
		before.text === view.text &&
		before.full === view.full &&
		before.same === view.same &&
		before.relative === view.relative &&
		before.instead === view.instead &&
		before.isNearly === view.isNearly &&
		areSameParts(before.parts, view.parts) &&
		areSameParts(before.difference, view.difference);
	return isSame ? before : view;
}

/** A figure by itself: where it or the base's rests on a plan that does not answer, nobody knows what differs. */
export const withoutDifference = (view: CellView): CellView => ({
	...view,
	...{ same: null, difference: null, relative: '', instead: '', isNearly: false }
});

const areSameParts = (a: Parts | null, b: Parts | null): boolean =>
	a?.whole === b?.whole && a?.fraction === b?.fraction;

const NOTHING_WORDS: Readonly<Record<number, string>> = {
	[ABSENT]: 'n/a',
	[NOT_ENTERED]: 'not entered',
	[OFF_END]: 'outside the table',
	[NO_ANSWER]: 'none'
};

/** A layout as far as a cell is shown by it. */
interface HoldsSets {
	readonly workbook: Pick<Workbook, 'sets' | 'programmes'>;
	readonly byName?: ReadonlyMap<string, QuantityLayout>;
}

/** The set whose members the quantity holds; null for a number or a yes/no. */
export function choiceSet(layout: HoldsSets, quantity: QuantityLayout): SetDefinition | null {
	const { type } = quantity.quantity;
	if (typeof type !== 'object') return null;
	return layout.workbook.sets.find((set) => set.name === type.member_of) ?? null;
}

/** Decimals of a whole quantity, so that its members align: those that most of its values in the base need. */
export const quantityDecimals = (layout: QuantityLayout, results: Results): number =>
	sizesOf(layout, results).decimals;

interface Context {
	readonly layout: HoldsSets;
	readonly quantity: QuantityLayout;
	readonly locale: string;
	readonly base: Results;
}

function wordsOf({ layout, quantity }: Context, value: number): string {
	const { type, shown } = quantity.quantity;
	if (shown === 'date') return dateText(value);
	if (type === 'yes_no') return value === 0 ? 'no' : 'yes';
	const set = choiceSet(layout, quantity);
	const member = set?.members[value];
	return set && member ? memberName(set, member) : String(value);
}

const isWords = (quantity: QuantityLayout) =>
	quantity.quantity.type === 'yes_no' ||
	typeof quantity.quantity.type === 'object' ||
	quantity.quantity.shown === 'date';

/** A number of the quantity: a year stands without marks between thousands. */
export const numberText = (
	{ quantity }: QuantityLayout,
	value: number,
	decimals: number,
	locale: string
) =>
	quantity.shown === 'year' && Number.isInteger(value)
		? String(value).replace('-', '−')
		: formatNumber(value, decimals, locale);

/** The same as it stands in its row, where what is left over shows as none. */
function textInRow(context: Context, value: number, isEntered: boolean): string {
	const { quantity, base, locale, layout } = context;
	const sizes = sizesOf(quantity, base, layout);
	const { decimals } = sizes;
	const shown = isLeftOver(quantity.quantity, value, sizes) ? 0 : value;
	const own = isEntered ? enteredDecimals(quantity.quantity, value) : 0;
	return numberText(quantity, shown, Math.max(decimals, own), locale);
}

/** Decimals of an entered value as it was written, up to the digits that its quantity bears. */
const enteredDecimals = ({ digits = 4 }: Quantity, value: number): number =>
	isWritten(value)
		? Math.min(decimalsFor(value, digits), decimalsWritten(value, MOST_DECIMALS))
		: 0;

/** Equal as numbers go: the last bits of a sum in another order are no difference. */
export const isClose = (a: number, b: number) =>
	a === b || Math.abs(a - b) <= Math.max(1e-14, 1e-12 * Math.max(Math.abs(a), Math.abs(b)));

export function isSame(results: Results, other: Results, cell: number): boolean {
	const state = results.states[cell];
	if (state !== other.states[cell]) return false;
	if (state !== OK) return true;
	const a = results.values[cell] ?? 0;
	const b = other.values[cell] ?? 0;
	return isClose(a, b);
}

/** One cell in one scenario; `base` is what it is compared with, unless it is the base itself. */
export function viewCell(context: Context, results: Results, cell: number): CellView {
	const { quantity, locale, base } = context;
	const inBase = results === base;
	const same = inBase ? null : isSame(results, base, cell);
	const state = results.states[cell] ?? OK;
	const value = results.values[cell] ?? 0;
	const isEntered = isInputCell(context.layout.workbook, quantity, cell);
	const baseOk = base.states[cell] === OK;
	const baseValue = base.values[cell] ?? 0;
	if (isError(state)) return { ...EMPTY, kind: 'error', text: 'No value', same };
	if (state !== OK)
		return {
			...EMPTY,
			kind: 'nothing',
			text: NOTHING_WORDS[state] ?? 'nothing',
			same,
			instead: !inBase && baseOk ? insteadOf(context, baseValue, isEntered) : ''
		};
	if (isWords(quantity)) {
		const full = wordsOf(context, value);
		const text = cutToRoom(full);
		const instead = same === false && baseOk ? `instead of ${wordsOf(context, baseValue)}` : '';
		return { ...EMPTY, kind: 'words', text, full, same, instead };
	}
	const { decimals } = sizesOf(quantity, base, context.layout);
	const text = textInRow(context, value, isEntered);
	const unit = unitShown(quantity.quantity);
	const full = `${formatInFull(value, locale)}${unit ? ` ${unit}` : ''}`;
	const differs = same === false && baseOk;
	// The difference would be a row of zeros.
	if (differs && Math.abs(value - baseValue) < 10 ** -(decimals + 3))
		return {
			...EMPTY,
			kind: 'number',
			parts: cut(text, locale),
			text,
			full,
			same,
			instead: 'no change',
			isNearly: true
		};
	return {
		...EMPTY,
		kind: 'number',
		parts: cut(text, locale),
		text,
		full,
		same,
		difference: differs ? cut(formatDifference(value - baseValue, decimals, locale), locale) : null,
		relative: differs ? formatRelative(value, baseValue, locale) : '',
		instead: same === false && !baseOk ? 'only here' : ''
	};
}

function insteadOf(context: Context, baseValue: number, isEntered: boolean): string {
	if (isWords(context.quantity)) return `instead of ${wordsOf(context, baseValue)}`;
	return `instead of ${textInRow(context, baseValue, isEntered)}`;
}

interface Span {
	low: number;
	high: number;
	values: number;
	errors: number;
	absent: number;
	nothing: number;
	differ: number;
	/** Of those that differ, how many the base does not have at all. */
	onlyHere: number;
	first: number;
	allEqual: boolean;
}

function measure(results: Results, base: Results, from: number, to: number): Span {
	const span: Span = {
		low: Infinity,
		high: -Infinity,
		values: 0,
		errors: 0,
		absent: 0,
		nothing: 0,
		differ: 0,
		onlyHere: 0,
		first: NaN,
		allEqual: true
	};
	for (let cell = from; cell < to; cell++) {
		const state = results.states[cell] ?? OK;
		if (results !== base && !isSame(results, base, cell)) {
			span.differ++;
			if (base.states[cell] === ABSENT) span.onlyHere++;
		}
		if (state === ABSENT) span.absent++;
		else if (isError(state)) span.errors++;
		else if (state !== OK) span.nothing++;
		else {
			const value = results.values[cell] ?? 0;
			if (span.values === 0) span.first = value;
			else if (value !== span.first) span.allEqual = false;
			span.values++;
			if (value < span.low) span.low = value;
			if (value > span.high) span.high = value;
		}
	}
	return span;
}

/** A folded row: its members from the smallest to the largest, and how many differ from the base. */
export function viewSpan(context: Context, results: Results, from: number, to: number): CellView {
	const { quantity, base } = context;
	const span = measure(results, base, from, to);
	const inBase = results === base;
	const same = inBase ? null : span.differ === 0;
	const total = to - from - span.absent;
	const instead = differenceOf(span, to - from);
	const about = { ...EMPTY, same, instead };
	if (span.errors > 0) {
		// As short as can be: it has to stand in a column; the tip says it in full.
		const text = span.errors === total ? 'No value' : `${span.errors} of ${total} no value`;
		const full = span.errors === total ? text : `${span.errors} of ${total} have no value`;
		return { ...about, kind: 'error', text, full };
	}
	if (span.values === 0)
		return { ...about, kind: 'nothing', text: span.nothing > 0 ? 'blank' : 'n/a' };
	let text: string;
	if (isWords(quantity)) text = wordsSpan(context, span, results, from, to);
	else {
		const isEntered = quantity.quantity.formula === undefined;
		const [low, high] = [span.low, span.high].map((end) => textInRow(context, end, isEntered));
		const isOne = span.allEqual && span.values === 1;
		text = isOne ? low! : low === high ? `all ${low}` : `${low} to ${high}`;
		if (low === high && span.nothing > 0) text = `${low} in ${span.values} of ${total}`;
	}
	return { ...about, kind: 'span', text, full: text };
}

/** How many members differ from the base: one that the base has not at all is no other value of it. */
function differenceOf({ differ, onlyHere }: Span, of: number): string {
	if (differ === 0) return '';
	return differ === onlyHere ? `${differ} only here` : `${differ} of ${of} differ`;
}

function wordsSpan(context: Context, span: Span, results: Results, from: number, to: number) {
	if (span.allEqual) {
		const word = cutToRoom(wordsOf(context, span.first));
		// Those that say nothing do not say the same.
		return span.nothing === 0
			? `all ${word}`
			: `${word} in ${span.values} of ${span.values + span.nothing}`;
	}
	if (context.quantity.quantity.shown === 'date')
		return `${dateText(span.low)} to ${dateText(span.high)}`;
	const counts = new Map<string, number>();
	for (let cell = from; cell < to; cell++) {
		if (results.states[cell] !== OK) continue;
		const word = wordsOf(context, results.values[cell] ?? 0);
		counts.set(word, (counts.get(word) ?? 0) + 1);
	}
	if (context.quantity.quantity.type === 'yes_no')
		return `${counts.get('yes') ?? 0} of ${span.values} yes`;
	return `${counts.size} kinds`;
}
