/**
 * What the capacity picture says: which resource limits and when, how much is short, its summary and its
 * table.
 */
import type { PlainTable } from '$lib/exchange/csv/write';
import { formatNumber, formatUnit } from '../../format';
import { isAbove, type Capacity, type LoadRow } from './capacity';
import { plain, shown, type Reading } from '../../figure/read';
import { count, listed } from '../../figure/words';

const whole = (reading: Reading | undefined, locale: string) =>
	reading ? shown(reading, 0, locale) : '';

/** "May and from August to November", from places of months. */
export function monthsText(places: readonly number[], labels: readonly string[]): string {
	const runs: number[][] = [];
	for (const place of places) {
		const last = runs.at(-1);
		if (last && last.at(-1) === place - 1) last.push(place);
		else runs.push([place]);
	}
	const label = (place: number | undefined) => labels[place ?? -1] ?? '';
	const long = (run: readonly number[]) => run.length > 2;
	const parts = runs.flatMap((run) =>
		long(run) ? [`from ${label(run[0])} to ${label(run.at(-1))}`] : run.map(label)
	);
	return `${runs[0] && !long(runs[0]) ? 'in ' : ''}${listed(parts)}`;
}

const aboveIn = (row: LoadRow) =>
	row.months.flatMap(({ load }, month) => (isAbove(load) ? [month] : []));

/** Months in which a row is above its hours and no other is fuller. */
const limitsIn = (row: LoadRow) =>
	row.months.flatMap(({ load, fullest }, month) => (fullest && isAbove(load) ? [month] : []));

/** The resource that limits the most months. */
function limiting(rows: readonly LoadRow[]): LoadRow | undefined {
	const most = Math.max(0, ...rows.map((row) => limitsIn(row).length));
	return most === 0 ? undefined : rows.find((row) => limitsIn(row).length === most);
}

/** The finding: who limits and when, and how many are short in the worst month. */
export function capacityTitle({ rows, months, groups }: Capacity, locale: string): string {
	const labels = months.map(({ label }) => label);
	const first = limiting(rows);
	if (!first) return nothingShort(rows, labels, locale);
	const when = limitsIn(first);
	const said =
		when.length === months.length
			? `${first.name} limits every month`
			: `${first.name} limits ${monthsText(when, labels)}`;
	// A resource may have loads of two kinds: it is counted once.
	const resources = (some: readonly LoadRow[]) =>
		new Set(some.map(({ id, group }) => `${groups[group]?.resource} ${id}`)).size;
	const shortIn = months.map((_, month) =>
		resources(rows.filter((row) => isAbove(row.months[month]!.load)))
	);
	const worst = Math.max(...shortIn);
	if (worst < 2) return said;
	const month = shortIn.indexOf(worst);
	return `${said}; ${labels[month]} is short on ${count(worst)} of ${count(resources(rows))} resources`;
}

function nothingShort(rows: readonly LoadRow[], labels: readonly string[], locale: string): string {
	let top: { row: LoadRow; month: number; value: number } | null = null;
	for (const row of rows)
		row.months.forEach(({ load }, month) => {
			if (load.kind === 'value' && load.value > (top?.value ?? -Infinity))
				top = { row, month, value: load.value };
		});
	const found = top as { row: LoadRow; month: number; value: number } | null;
	if (!found) return 'No load has a value yet';
	return `No month is short: ${found.row.name} is fullest, ${formatNumber(found.value, 0, locale)}\u00a0% in ${labels[found.month]}`;
}

/** Figures in all: what the whole drawing says to somebody who cannot see it. */
export function capacitySummary(capacity: Capacity, locale: string): string {
	const { rows, months, scenario } = capacity;
	const labels = months.map(({ label }) => label);
	const lines = rows.map((row) => {
		const above = aboveIn(row);
		const year = row.year ? `, year ${whole(row.year, locale)} %` : '';
		const short =
			row.short?.kind === 'value' && row.short.value > 0
				? `, short of ${whole(row.short, locale)} ${formatUnit(capacity.shortUnit)}`
				: '';
		const when = above.length === 0 ? 'within its hours all year' : monthsText(above, labels);
		return `${row.name} ${above.length === 0 ? when : `above its hours ${when}`}${year}${short}`;
	});
	const fullest = months.map(({ label }, month) => {
		const row = rows.find((row) => row.months[month]?.fullest);
		return row ? `${label} ${row.name} ${whole(row.months[month]?.load, locale)} %` : '';
	});
	return `Loads in ${scenario}. ${lines.join('. ')}. Fullest by month: ${fullest.filter(Boolean).join(', ')}.`;
}

export function capacityTable(capacity: Capacity): PlainTable {
	const { rows, months, groups, shortUnit, scenario } = capacity;
	const withYear = rows.some((row) => row.year);
	const withShort = rows.some((row) => row.short);
	return {
		caption: `Load on the hours on offer, in ${scenario}`,
		columns: [
			'Resource',
			'Kind',
			...months.map(({ label }) => `${label}, %`),
			...(withYear ? ['Year, %'] : []),
			...(withShort ? [`Short, ${formatUnit(shortUnit)}`] : []),
			'Fullest in'
		],
		rows: rows.map((row) => [
			row.name,
			groups[row.group]?.title ?? '',
			...row.months.map(({ load }) => plain(load)),
			...(withYear ? [row.year ? plain(row.year) : null] : []),
			...(withShort ? [row.short ? plain(row.short) : null] : []),
			row.months.flatMap(({ fullest }, i) => (fullest ? [months[i]?.label ?? ''] : [])).join(' ')
		])
	};
}
