/**
 * What a metre is made of, product by product: the parts of cost in the base, and below them those of
 * the scenario in hand. Sentences are in `build-up-words.ts`; where the bars stand, in `build-up-bars.ts`.
 */
import type { Picture } from '$lib/workbook/schema';
import { decimalsFor, formatDifference, formatRelative, formatUnit } from '../../format';
import { read, shown, type Reading, type Source } from '../../figure/read';

export type BuildUpPicture = Extract<Picture, { kind: 'build_up' }>;
export type PartRole = BuildUpPicture['roles'][string] | 'other';

export interface Part {
	readonly label: string;
	readonly role: PartRole;
}

export interface Cost {
	/** In the order of the parts. */
	readonly parts: readonly Reading[];
	readonly total: Reading;
	readonly perUnit: Reading | undefined;
}

export interface CostRow {
	readonly id: string;
	readonly label: string;
	readonly base: Cost;
	readonly hand: Cost | null;
}

export interface BuildUp {
	readonly parts: readonly Part[];
	readonly rows: readonly CostRow[];
	readonly handTitle: string | null;
	/** As printed. */
	readonly unit: string;
	readonly perUnit: string | null;
	readonly totalLabel: string;
	readonly decimals: number;
	readonly perUnitDecimals: number;
}

export interface BuildUpInput {
	readonly picture: BuildUpPicture;
	readonly base: Source;
	readonly hand: { readonly title: string; readonly source: Source } | null;
}

export function buildUpOf({ picture, base, hand }: BuildUpInput): BuildUp {
	const { layout } = base;
	const members = layout.sets.get(picture.part)?.members ?? [];
	const parts = members.map(({ id, label }): Part => ({
		label: label ?? id,
		role: Object.hasOwn(picture.roles, id) ? (picture.roles[id] ?? 'other') : 'other'
	}));
	const costOf = (source: Source, subject: number): Cost => {
		const at = { [picture.subject]: subject };
		const of = (part: number) => read(source, picture.quantity, { ...at, [picture.part]: part });
		return {
			parts: parts.map((_, part) => of(part)),
			total: read(source, picture.total, at),
			perUnit: picture.per_unit === undefined ? undefined : read(source, picture.per_unit, at)
		};
	};
	const rows = (layout.sets.get(picture.subject)?.members ?? []).map(
		({ id, label }, subject): CostRow => ({
			...{ id, label: label ?? '' },
			base: costOf(base, subject),
			hand: hand && costOf(hand.source, subject)
		})
	);
	const unitOf = (name: string) => layout.byName.get(name)?.quantity;
	const digits = (name: string, readings: readonly (Reading | undefined)[]) => {
		const values = readings.flatMap((reading) =>
			reading?.kind === 'value' ? [Math.abs(reading.value)] : []
		);
		return columnDecimals(values, unitOf(name)?.digits ?? 4);
	};
	const { per_unit: perUnit = '' } = picture;
	return {
		parts,
		rows: rows.filter(
			(row) => row.base.total.kind !== 'absent' || (row.hand && row.hand.total.kind !== 'absent')
		),
		handTitle: hand?.title ?? null,
		unit: formatUnit(unitOf(picture.total)?.unit),
		perUnit: perUnit ? formatUnit(unitOf(perUnit)?.unit) : null,
		totalLabel: unitOf(picture.total)?.label ?? picture.total,
		decimals: digits(
			picture.total,
			rows.map((row) => row.base.total)
		),
		perUnitDecimals: digits(
			perUnit,
			rows.map((row) => row.base.perUnit)
		)
	};
}

/** As many decimals as the middle one of the values bears, so that neither small nor large ones rule. */
export function columnDecimals(values: readonly number[], digits: number): number {
	const sizes = values
		.map(Math.abs)
		.filter((size) => size > 0)
		.sort((a, b) => a - b);
	return decimalsFor(sizes[Math.floor(sizes.length / 2)] ?? 0, digits);
}

export interface Amount {
	readonly text: string;
	readonly isError: boolean;
	/** Whose error, or what else there is to say. */
	readonly because: string;
	/** In copper: the difference of the scenario in hand. */
	readonly difference: string;
}

/** The figures at the right of a row: the total with its difference, the sales unit with its percentage. */
export function amounts(
	buildUp: BuildUp,
	row: CostRow,
	locale: string
): { total: Amount; perUnit: Amount | null } {
	const amount = (
		base: Reading,
		hand: Reading | undefined,
		decimals: number,
		relative: boolean
	): Amount => ({
		text: shown(base, decimals, locale),
		isError: base.kind === 'error',
		because: base.because,
		difference: differenceText(base, hand, decimals, relative, locale)
	});
	const { base, hand } = row;
	return {
		total: amount(base.total, hand?.total, buildUp.decimals, false),
		perUnit: base.perUnit
			? amount(base.perUnit, hand?.perUnit, buildUp.perUnitDecimals, true)
			: null
	};
}

function differenceText(
	base: Reading,
	hand: Reading | undefined,
	decimals: number,
	relative: boolean,
	locale: string
) {
	if (!hand || hand.kind === 'pending') return '';
	if (hand.kind !== 'value') return base.kind === hand.kind ? '' : shown(hand, decimals, locale);
	if (base.kind !== 'value') return shown(hand, decimals, locale);
	const difference = hand.value - base.value;
	if (Math.abs(difference) <= 1e-12 * Math.abs(base.value)) return 'same';
	return relative
		? formatRelative(hand.value, base.value, locale)
		: formatDifference(difference, decimals, locale);
}
