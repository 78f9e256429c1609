/**
 * The members of a set by what they amount to, the largest first, each with its share and the share of all down to it. Of the
 * whole, or of one member of a further set as a month. Sentences are in `ranking-words.ts`.
 */
import type { Picture } from '$lib/workbook/schema';
import { read, type Reading, type Source } from '../../figure/read';
import { formatUnit } from '../../format';
import { columnDecimals } from '../build-up/build-up';

export type RankingPicture = Extract<Picture, { kind: 'ranking' }>;

/** A member of the further set: what a ranking can be asked of. */
export interface RankedPart {
	readonly id: string;
	readonly label: string;
}

export interface RankedRow {
	readonly id: string;
	readonly label: string;
	readonly amount: Reading;
	/** As in the base, where another scenario is shown. */
	readonly base: Reading | null;
	/** Of the sum, in percent; null where there is none to be told: something is below nothing, or has no value. */
	readonly share: number | null;
	/** Of this one and all above it. */
	readonly cumulative: number | null;
	readonly readings: readonly Reading[];
}

export interface RankingColumn {
	readonly label: string;
	readonly unit: string;
	readonly decimals: number;
}

export interface Ranking {
	readonly setLabel: string;
	readonly amountLabel: string;
	/** As printed. */
	readonly unit: string;
	readonly decimals: number;
	readonly rows: readonly RankedRow[];
	/** Members without an amount there. */
	readonly left: readonly RankedRow[];
	/** Of all rows; NaN where there are none. */
	readonly total: number;
	readonly columns: readonly RankingColumn[];
	/** Title of the scenario whose figures these are, where it is not the base. */
	readonly handTitle: string | null;
	/** The part asked of; null: of the whole. */
	readonly part: RankedPart | null;
}

interface Asked {
	readonly picture: RankingPicture;
	readonly base: Source;
	readonly hand: { readonly title: string; readonly source: Source } | null;
	/** Id of a member of the further set; empty: of the whole. */
	readonly part: string;
}

/** The further set's members in which anything is ranked; empty where the picture names none. */
export function rankedParts(picture: RankingPicture, source: Source): readonly RankedPart[] {
	const { layout } = source;
	const set = rankedSet(picture, source);
	const axis = partAxis(picture, source);
	if (axis === undefined || picture.by_part === undefined) return [];
	const name = picture.by_part;
	const ranked = layout.sets.get(set)?.members ?? [];
	return (layout.sets.get(axis)?.members ?? []).flatMap(({ id, label }, part) =>
		ranked.some((_, i) => read(source, name, { [set]: i, [axis]: part }).kind === 'value')
			? [{ id, label: label ?? id }]
			: []
	);
}

export function rankingOf({ picture, base, hand, part }: Asked): Ranking {
	const source = hand?.source ?? base;
	const { layout } = source;
	const set = rankedSet(picture, source);
	const axis = partAxis(picture, source);
	const parts = (axis !== undefined && layout.sets.get(axis)?.members) || [];
	const ordinal = parts.findIndex(({ id }) => id === part);
	const ofPart = ordinal >= 0 && axis !== undefined && picture.by_part !== undefined;
	const name = ofPart ? picture.by_part! : picture.amount;
	const at = (i: number) => (ofPart ? { [set]: i, [axis]: ordinal } : { [set]: i });
	// Figures of the whole say nothing of a month.
	const columns = ofPart ? [] : (picture.columns ?? []);
	const all = (layout.sets.get(set)?.members ?? []).map(({ id, label }, i) => ({
		...{ id, label: label ?? id },
		amount: read(source, name, at(i)),
		base: hand && read(base, name, at(i)),
		readings: columns.map((column) => read(source, column, { [set]: i }))
	}));
	const valued = all
		.filter(({ amount }) => amount.kind === 'value' && amount.value !== 0)
		.toSorted((a, b) => b.amount.value - a.amount.value);
	const total = valued.reduce((sum, { amount }) => sum + amount.value, 0);
	const isWhole = all.every(({ amount }) => amount.kind !== 'error');
	const hasShares = isWhole && total > 0 && valued.every(({ amount }) => amount.value > 0);
	let run = 0;
	const rows = valued.map((row): RankedRow => {
		run += row.amount.value;
		const share = hasShares ? (100 * row.amount.value) / total : null;
		return { ...row, share, cumulative: hasShares ? (100 * run) / total : null };
	});
	const quantity = layout.byName.get(name)?.quantity;
	const known = parts[ordinal];
	return {
		...{ rows, handTitle: hand?.title ?? null },
		setLabel: layout.sets.get(set)?.label ?? set,
		amountLabel: quantity?.label ?? name,
		unit: formatUnit(quantity?.unit),
		decimals: decimalsOf(
			rows.map(({ amount }) => amount),
			quantity?.digits
		),
		left: all
			.filter(({ amount }) => amount.kind !== 'value' || amount.value === 0)
			.map((row) => ({ ...row, share: null, cumulative: null })),
		total: rows.length > 0 ? total : NaN,
		columns: columns.map((column, i) => ({
			label: layout.byName.get(column)?.quantity.label ?? column,
			unit: formatUnit(layout.byName.get(column)?.quantity.unit),
			decimals: decimalsOf(
				all.map(({ readings }) => readings[i]!),
				layout.byName.get(column)?.quantity.digits
			)
		})),
		part: known ? { id: known.id, label: known.label ?? known.id } : null
	};
}

/** How many of the first rows make at least this share of all; 0 where there are no shares. */
export function fewestFor(ranking: Ranking, percent: number): number {
	const at = ranking.rows.findIndex(
		({ cumulative }) => cumulative !== null && cumulative >= percent - 1e-9
	);
	return at + 1;
}

/** Where a bar begins and ends, in hundredths of the widest; from nothing to its amount. */
export function barOf(ranking: Ranking, { amount }: RankedRow): { from: number; width: number } {
	const values = ranking.rows.map((row) => row.amount.value);
	const low = Math.min(0, ...values);
	const span = Math.max(0, ...values) - low || 1;
	const from = (100 * (Math.min(0, amount.value) - low)) / span;
	return { from, width: (100 * Math.abs(amount.value)) / span };
}

const rankedSet = (picture: RankingPicture, { layout }: Source): string =>
	layout.byName.get(picture.amount)?.axes[0]?.set ?? '';

function partAxis(picture: RankingPicture, source: Source): string | undefined {
	if (picture.by_part === undefined) return undefined;
	const set = rankedSet(picture, source);
	return source.layout.byName.get(picture.by_part)?.axes.find((axis) => axis.set !== set)?.set;
}

function decimalsOf(readings: readonly Reading[], digits = 4): number {
	const values = readings.flatMap((one) => (one.kind === 'value' ? [one.value] : []));
	return columnDecimals(values, digits);
}
