/**
 * From one result to the other by what lies between, of a month or of the year to date: the largest first, what is hardly
 * anything taken together. Sentences are in `waterfall-words.ts`.
 */
import type { Picture } from '$lib/workbook/schema';
import { placesOf, read, type At, type Reading, type Source } from '../../figure/read';
import { formatUnit } from '../../format';

export type WaterfallPicture = Extract<Picture, { kind: 'waterfall' }>;

export interface Step {
	/** Null: several that are hardly anything, together. */
	readonly id: string | null;
	readonly label: string;
	readonly amount: number;
	/** Where the running result stands before it and after it. */
	readonly before: number;
	readonly after: number;
	/** What is taken together. */
	readonly holds: readonly { readonly label: string; readonly amount: number }[];
}

/** The figure behind a step that differs most, at its members. */
export interface Cause {
	readonly label: string;
	/** Labels of its members; empty for a single figure. */
	readonly of: readonly string[];
	readonly came: number;
	readonly meant: number;
	readonly unit: string;
}

export interface Month {
	readonly id: string;
	readonly label: string;
	readonly closed: boolean;
}

export interface Waterfall {
	readonly month: Month;
	readonly toDate: boolean;
	readonly fromLabel: string;
	readonly toLabel: string;
	readonly from: Reading;
	readonly to: Reading;
	readonly steps: readonly Step[];
	/** Steps without a value, with the reason. */
	readonly without: readonly { readonly label: string; readonly amount: Reading }[];
	/** As printed. */
	readonly unit: string;
	/** Why each of the three largest is what it is; for the year to date, the month that most of it came in. */
	readonly because: readonly {
		readonly step: Step;
		readonly cause: Cause | null;
		readonly month: { readonly label: string; readonly amount: number } | null;
	}[];
}

/** A step below this share of the largest is taken together with others like it. */
const HARDLY = 0.04;
const EXPLAINED = 3;

export function monthsOf({ month, closed }: WaterfallPicture, source: Source): Month[] {
	return (source.layout.sets.get(month)?.members ?? []).map(({ id, label }, i) => ({
		id,
		label: label ?? id,
		closed: read(source, closed, { [month]: i }).value === 1
	}));
}

/** The last closed month, else the first: what is looked at unless somebody chooses. */
export const lastClosed = (months: readonly Month[]): string =>
	(months.findLast(({ closed }) => closed) ?? months[0])?.id ?? '';

export function waterfallOf(
	picture: WaterfallPicture,
	source: Source,
	monthId: string,
	toDate: boolean
): Waterfall | null {
	const months = monthsOf(picture, source);
	const at = months.findIndex(({ id }) => id === monthId);
	const month = months[at];
	if (!month) return null;
	const { from, steps, to } = (toDate && picture.to_date) || picture;
	const here: At = { [picture.month]: at };
	const ends = { from: read(source, from, here), to: read(source, to, here) };
	const set = stepSet(picture, source, steps);
	const members = source.layout.sets.get(set)?.members ?? [];
	const all = members.map(({ id, label }, i) => ({
		...{ id, label: label ?? id },
		amount: read(source, steps, { ...here, [set]: i })
	}));
	const valued = all
		.flatMap(({ id, label, amount }) =>
			amount.kind === 'value' ? [{ id, label, amount: amount.value }] : []
		)
		.toSorted((a, b) => Math.abs(b.amount) - Math.abs(a.amount));
	const largest = Math.abs(valued[0]?.amount ?? 0);
	const large = valued.filter(({ amount }) => Math.abs(amount) > HARDLY * largest);
	const moving = valued.filter(({ amount }) => amount !== 0);
	// One alone is told by its name.
	const some = moving.length === large.length + 1 ? moving : large;
	const hardly = valued.slice(some.length);
	const sum = hardly.reduce((total, { amount }) => total + amount, 0);
	let run = ends.from.value;
	const put = (step: Omit<Step, 'before' | 'after'>): Step => {
		const before = run;
		run += step.amount;
		return { ...step, before, after: run };
	};
	const shown = [
		...some.map((step) => put({ ...step, holds: [] })),
		...(hardly.some(({ amount }) => amount !== 0)
			? [
					put({
						id: null,
						label: '',
						amount: sum,
						holds: hardly.filter(({ amount }) => amount !== 0)
					})
				]
			: [])
	];
	const quantityOf = (name: string) => source.layout.byName.get(name)?.quantity;
	return {
		month,
		toDate,
		fromLabel: quantityOf(from)?.label ?? from,
		toLabel: quantityOf(to)?.label ?? to,
		...ends,
		steps: shown,
		without: all.filter(({ amount }) => amount.kind !== 'value'),
		unit: formatUnit(quantityOf(to)?.unit),
		because: shown.slice(0, EXPLAINED).flatMap((step) =>
			step.id === null
				? []
				: [
						{
							step,
							cause: toDate ? null : causeOf(picture, source, step.id, at),
							month: toDate ? monthOf(picture, source, step, at) : null
						}
					]
		)
	};
}

const stepSet = ({ month }: WaterfallPicture, { layout }: Source, steps: string): string =>
	layout.byName.get(steps)?.axes.find(({ set }) => set !== month)?.set ?? '';

/** Of all figures behind a step the one that came to most, among those that lean the way the sum of them does. */
function causeOf(
	{ behind = [], month }: WaterfallPicture,
	source: Source,
	step: string,
	at: number
): Cause | null {
	const found = behind
		.filter(({ explains }) => explains === step)
		.flatMap(({ came, meant, weight }) => {
			const place = source.layout.byName.get(came);
			if (!place) return [];
			return placesOf(
				place.axes.map(({ set }) => set).filter((set) => set !== month),
				source
			).map((members) => {
				const here: At = { ...members, [month]: at };
				const [now, then] = [read(source, came, here), read(source, meant, here)];
				const by = weight === undefined ? null : read(source, weight, here);
				const counts = (now.value - then.value) * (by?.kind === 'value' ? by.value : 1);
				return { place, members, came: now.value, meant: then.value, counts };
			});
		})
		.filter(({ counts }) => Number.isFinite(counts) && counts !== 0);
	const lean = Math.sign(found.reduce((sum, { counts }) => sum + counts, 0));
	const [most] = found
		.filter(({ counts }) => Math.sign(counts) === lean)
		.toSorted((a, b) => Math.abs(b.counts) - Math.abs(a.counts));
	if (!most) return null;
	const { place, members } = most;
	return {
		label: place.quantity.label,
		of: Object.entries(members).map(([set, i]) => {
			const member = source.layout.sets.get(set)?.members[i];
			return member?.label ?? member?.id ?? '';
		}),
		came: most.came,
		meant: most.meant,
		unit: formatUnit(place.quantity.unit)
	};
}

/** The month that gave most of a step of the year to date. */
function monthOf(picture: WaterfallPicture, source: Source, { id, amount }: Step, at: number) {
	const { month, steps } = picture;
	const set = stepSet(picture, source, steps);
	const step = source.layout.sets.get(set)?.members.findIndex((one) => one.id === id) ?? -1;
	const [most] = monthsOf(picture, source)
		.slice(0, at + 1)
		.map(({ label }, i) => ({ label, ...read(source, steps, { [set]: step, [month]: i }) }))
		.filter(({ kind, value }) => kind === 'value' && Math.sign(value) === Math.sign(amount))
		.toSorted((a, b) => Math.abs(b.value) - Math.abs(a.value));
	return most ? { label: most.label, amount: most.value } : null;
}

export interface Scale {
	/** Where a running result lies, in hundredths of the width. */
	at(value: number): number;
	/** Where nothing lies; null where it is not in the picture. */
	readonly zero: number | null;
}

/** Wide enough for the running result alone: ends are marks and no bars, so nothing is cut off. */
export function scaleOf({ from, to, steps }: Waterfall): Scale {
	const values = [from.value, to.value, ...steps.map(({ after }) => after)].filter(Number.isFinite);
	const [low, high] = [Math.min(...values), Math.max(...values)];
	const room = (high - low || Math.abs(high) || 1) * 0.04;
	const at = (value: number) => (100 * (value - low + room)) / (high - low + 2 * room);
	return { at, zero: low - room < 0 && high + room > 0 ? at(0) : null };
}
