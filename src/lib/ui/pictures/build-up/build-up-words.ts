/**
 * What the cost build-up says: its finding, what is drawn, its summary, and its table to take along.
 */
import type { PlainTable } from '$lib/exchange/csv/write';
import { formatDifference, formatNumber } from '../../format';
import type { BuildUp, Cost, CostRow, PartRole } from './build-up';
import { plain, shown, type Reading } from '../../figure/read';
import { count, listed, midSentence, spanOf, sentenceStart } from '../../figure/words';

const MATERIAL: readonly PartRole[] = ['resin', 'adhesive', 'barrier'];

/** Shares in percent of the parts with one of the roles, row by row; rows without a value are left out. */
function shares(buildUp: BuildUp, roles: readonly PartRole[]): number[] {
	return buildUp.rows.flatMap(({ base }) => {
		const own = base.parts.filter((_, part) =>
			roles.includes(buildUp.parts[part]?.role ?? 'other')
		);
		if (own.length === 0 || base.total.kind !== 'value' || !(base.total.value > 0)) return [];
		if (own.some((reading) => reading.kind !== 'value' && reading.kind !== 'absent')) return [];
		const sum = own.reduce((so, reading) => so + (reading.kind === 'value' ? reading.value : 0), 0);
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
	if (!largest) return unknownTitle(buildUp, label);
	const name = sentenceStart(largest.part.label);
	return `${name}: ${rangeText(largest.values, 0, locale)} of the ${label}`;
}

function unknownTitle({ rows }: BuildUp, label: string): string {
	const broken = rows.flatMap(({ base }) => [base.total, ...base.parts]);
	const because = broken.find((reading) => reading.because)?.because;
	return because ? `No value of the ${label}: ${because}` : `The ${label} is being computed`;
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
