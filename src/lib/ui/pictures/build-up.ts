/**
 * What a metre is made of, product by product: the parts of cost in the base, and below them those of
 * the scenario in hand. Gives rows, the finding, the table and a summary; where the bars stand is
 * `build-up-bars.ts`.
 */
import type { Picture } from '$lib/workbook/schema';
import { decimalsFor, formatDifference, formatNumber, formatRelative, formatUnit } from '../format';
import { plain, read, shown, type Reading, type Source } from './read';
import type { PlainTable } from './table';
import { count, listed, midSentence, spanOf } from './words';

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
		const values = readings.flatMap((one) => (one?.kind === 'value' ? [Math.abs(one.value)] : []));
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

const MATERIAL: readonly PartRole[] = ['resin', 'adhesive', 'barrier'];

/** Shares in percent of the parts with one of the roles, row by row; rows without a value are left out. */
function shares(buildUp: BuildUp, roles: readonly PartRole[]): number[] {
	return buildUp.rows.flatMap(({ base }) => {
		const own = base.parts.filter((_, part) =>
			roles.includes(buildUp.parts[part]?.role ?? 'other')
		);
		if (own.length === 0 || base.total.kind !== 'value' || !(base.total.value > 0)) return [];
		if (own.some((one) => one.kind !== 'value' && one.kind !== 'absent')) return [];
		const sum = own.reduce((so, one) => so + (one.kind === 'value' ? one.value : 0), 0);
		return [(100 * sum) / base.total.value];
	});
}

const rangeText = (values: readonly number[], decimals: number, locale: string) =>
	spanOf(
		formatNumber(Math.min(...values), decimals, locale),
		formatNumber(Math.max(...values), decimals, locale),
		'%'
	);

/** The finding: material's share where there is material, else that of the largest part. */
export function buildUpTitle(buildUp: BuildUp, locale: string): string {
	const label = midSentence(buildUp.totalLabel);
	if (buildUp.rows.length === 0) return `No product has a ${label}`;
	const material = shares(buildUp, MATERIAL);
	if (material.length > 0 && Math.max(...material) > 0)
		return `Material is ${rangeText(material, 0, locale)} of the ${label}`;
	const parts = buildUp.parts
		.map((part) => ({ part, values: shares(buildUp, [part.role]) }))
		.filter((one) => one.values.length > 0)
		.sort((a, b) => Math.max(...b.values) - Math.max(...a.values));
	const largest = parts[0];
	if (!largest) return `The ${label} cannot be shown yet`;
	const name = largest.part.label.charAt(0).toUpperCase() + largest.part.label.slice(1);
	return `${name}: ${rangeText(largest.values, 0, locale)} of the ${label}`;
}

/** What is drawn, and what the scenario in hand does to the totals. */
export function buildUpLine(buildUp: BuildUp, locale: string): string {
	const { handTitle, unit, totalLabel } = buildUp;
	const drawn = `${totalLabel} by product, ${unit}`;
	if (handTitle === null) return drawn;
	const changes = buildUp.rows.flatMap(({ base, hand }) =>
		base.total.kind === 'value' && hand?.total.kind === 'value' && base.total.value !== 0
			? [(100 * (hand.total.value - base.total.value)) / Math.abs(base.total.value)]
			: []
	);
	const below = `${drawn}: base, and ${handTitle} below it`;
	if (changes.length === 0) return below;
	const low = Math.min(...changes);
	const high = Math.max(...changes);
	if (Math.max(-low, high) < 0.05) return `${below}; no total differs`;
	const signed = (value: number) => formatDifference(value, 1, locale);
	return `${below}; totals change by ${spanOf(signed(low), signed(high), '%')}`;
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

/** Every part of every product, base and scenario in hand. */
export function buildUpTable(buildUp: BuildUp): PlainTable {
	const { parts, rows, unit, perUnit, handTitle, totalLabel } = buildUp;
	const line = (row: CostRow, scenario: string, cost: Cost) => [
		row.id,
		row.label,
		scenario,
		...cost.parts.map((part) => plain(part)),
		plain(cost.total),
		...(cost.perUnit ? [plain(cost.perUnit)] : [])
	];
	return {
		caption: `${totalLabel} by part`,
		columns: [
			'Product',
			'Name',
			'Scenario',
			...parts.map((part) => `${part.label}, ${unit}`),
			`${totalLabel}, ${unit}`,
			...(perUnit === null ? [] : [`${totalLabel}, ${perUnit}`])
		],
		rows: rows.flatMap((row) => [
			line(row, 'Base', row.base),
			...(row.hand && handTitle !== null ? [line(row, handTitle, row.hand)] : [])
		])
	};
}

/** The picture for somebody who cannot see it. */
export function buildUpSummary(buildUp: BuildUp, locale: string): string {
	const { rows, unit, decimals, parts, handTitle } = buildUp;
	const text = (reading: Reading) =>
		reading.kind === 'value' ? `${shown(reading, decimals, locale)} ${unit}` : plain(reading);
	const lines = rows.map((row) => {
		const hand = row.hand && handTitle !== null ? `, in ${handTitle} ${text(row.hand.total)}` : '';
		return `${row.id} ${text(row.base.total)}${hand}`;
	});
	const names = listed(parts.map((part) => part.label));
	return `Stacked bars of ${count(parts.length)} parts (${names}) for ${count(rows.length)} products. ${lines.join('; ')}.`;
}
