/**
 * Values of a file that are permitted and hardly meant: outside of where they usually lie, many times what stood
 * there, or far from those of the other members. A slip of a digit or a unit is met by one of the three. What stood there
 * as a typical value, or of another member that a new one begins with, says nothing: then the first and the last judge alone.
 */
import { withUnit } from '$lib/engine/naming';
import { numberText, rangeText } from '$lib/engine/number-words';
import type { OwnQuantity } from '$lib/review/template';
import { farEntries } from '$lib/review/siblings';
import { axesOf } from '$lib/workbook/axes';
import { findSet } from '$lib/workbook/lookup';
import { isPermitted } from '$lib/workbook/range';
import { inputAt, inputValues } from '$lib/workbook/scenario';
import type { Workbook } from '$lib/workbook/schema';
import { withValues } from '$lib/workbook/values';
import { isDatedMonths } from './dated-months';
import { keyOf, type Brought } from './settle';

/** As many times what stood there, or as many times less, nobody changes a figure without a word. */
const MANY = 5;

/** Entries of the base that stand as typical values, by `typicalKey`. */
export type TypicalEntries = ReadonlySet<string>;
export const NONE_TYPICAL: TypicalEntries = new Set();
export const typicalKey = (quantity: string, at: readonly string[]): string =>
	[quantity, ...at].join('\u0001');

export const typicalEntries = (own: readonly OwnQuantity[]): TypicalEntries =>
	new Set(
		own.flatMap(({ quantity, shipped }) => shipped.map((at) => typicalKey(quantity.name, at)))
	);

/** Why each is doubted, by its place in the list. */
export function doubts(
	changes: readonly Brought[],
	workbook: Workbook,
	typical: TypicalEntries = NONE_TYPICAL,
	isCopied: (change: Brought) => boolean = () => false
): Map<Brought, string> {
	const base = workbook.scenarios[0]?.id;
	const far = farChanges(changes, workbook);
	const doubted = new Map<Brought, string>();
	for (const change of changes) {
		const { after, before, quantity } = change;
		if (typeof after !== 'number' || change.stays || quantity.shown !== undefined) continue;
		const unit = quantity.unit === '1' ? '' : (quantity.unit ?? '');
		const words: string[] = [];
		const stoodTypical =
			change.scenario === base && typical.has(typicalKey(quantity.name, change.at));
		const isTold = typeof before === 'number' && !stoodTypical && !isCopied(change);
		const jump = isTold ? jumpOf(before, after) : null;
		if (jump !== null)
			words.push(`It stood at ${withUnit(before as number, unit)}, and this is ${jump}.`);
		if (!isPermitted(after, quantity.usual ?? null))
			words.push(`Usual is ${rangeText(quantity.usual!, unit)}.`);
		const median = far.get(change);
		if (words.length === 0 && median !== undefined)
			words.push(`The others lie around ${withUnit(median, unit)}.`);
		if (words.length > 0 && stoodTypical) words.push('A typical value stood there.');
		if (words.length > 0) doubted.set(change, words.join(' '));
	}
	return doubted;
}

function jumpOf(before: number, after: number): string | null {
	if (before === 0 || after === 0) return null;
	const times = after / before;
	if (times < 0) return 'of the other sign';
	if (times >= MANY) return `${numberText(Number(times.toPrecision(3)))} times as much`;
	if (times <= 1 / MANY) return `a ${numberText(Number((1 / times).toPrecision(3)))}th of it`;
	return null;
}

/** A month is held against the other months of the same thing first: its siblings there may rightly be of another size. */
function isAsInOtherMonths(
	{ quantity, at, after, scenario }: Brought,
	workbook: Workbook
): boolean {
	const sets = axesOf(quantity).map(({ set }) => findSet(workbook, set));
	const axis = sets.findIndex((set) => set !== undefined && isDatedMonths(set));
	if (axis < 0 || typeof after !== 'number') return false;
	return sets[axis]!.members.some(({ id }) => {
		if (id === at[axis]) return false;
		const { value } = inputAt(workbook, scenario, quantity.name, at.with(axis, id));
		return typeof value === 'number' && jumpOf(value, after) === null;
	});
}

/** Those that lie far from their siblings now and did not before. */
function farChanges(changes: readonly Brought[], workbook: Workbook): Map<Brought, number> {
	const groups = new Map<string, Brought[]>();
	for (const change of changes) {
		const key = keyOf(change.scenario, change.quantity.name, []);
		const group = groups.get(key);
		if (group) group.push(change);
		else groups.set(key, [change]);
	}
	const far = new Map<Brought, number>();
	for (const group of groups.values()) {
		const { scenario, quantity } = group[0]!;
		const stood = inputValues(workbook, scenario, quantity.name);
		const placeOf = (at: readonly string[]) => at.join('\u0001');
		const was = new Set(farEntries(quantity, stood).map(({ at }) => placeOf(at)));
		const entries = group.map(({ at, after }) => ({ at, value: after }));
		const now = farEntries(quantity, withValues(stood, entries));
		const medians = new Map(now.map(({ at, median }) => [placeOf(at), median]));
		for (const change of group) {
			const median = medians.get(placeOf(change.at));
			if (median === undefined || was.has(placeOf(change.at))) continue;
			if (!isAsInOtherMonths(change, workbook)) far.set(change, median);
		}
	}
	return far;
}
