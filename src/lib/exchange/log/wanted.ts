/**
 * Sums that somebody asks for, as a step of the first hour does its totals: which column of the log each is the sum of, by
 * the column's heading, else by its unit where no other column and no other total fits. What is found is a first reading,
 * which a person corrects; the rest is left to say.
 */
import { UnitSystem } from '$lib/units/system';
import { hasInputs } from '$lib/workbook/cells';
import { findQuantity } from '$lib/workbook/lookup';
import type { LogSum, Quantity, Workbook } from '$lib/workbook/schema';
import { readUnit } from '../table/column-unit';
import { headingReadings } from '../table/heading';
import { matchHeading } from '../table/match';
import { dateColumn, type Log, type OpenSum } from './log';

type Span = NonNullable<LogSum['per']>;

/** A total: the quantity as the rows hold it, "t" for "t/year", and what the sum is divided by. */
interface Total {
	readonly quantity: Quantity;
	readonly per: Span | null;
}

const SPANS: readonly (readonly [ending: RegExp, per: Span])[] = [
	[/\/(?:h|hour)$/, 'hour'],
	[/\/day$/, 'day'],
	[/\/week$/, 'week'],
	[/\/month$/, 'month'],
	[/\/year$/, 'year']
];

export function withWanted(
	log: Log,
	head: readonly string[],
	wanted: readonly string[],
	workbook: Workbook
): Log {
	const { system: units } = UnitSystem.create(workbook.units ?? []);
	const totals = wanted.flatMap((name) => totalOf(findQuantity(workbook, name)));
	const columns = [...log.columns];
	const sums: OpenSum[] = [];
	const open = new Map(totals.map((total) => [total.quantity.name, total]));
	const take = (column: number, { quantity, per }: Total, unit: string) => {
		const found = columns[column];
		if (found?.is !== 'number') return;
		if (found.unit === '' && unit !== '') columns[column] = { ...found, unit };
		open.delete(quantity.name);
		// Without the date of its rows nothing can be divided by time.
		const divides = per !== null && dateColumn(log) >= 0;
		sums.push({ quantity: quantity.name, take: 'sum', column, ...(divides && { per }) });
	};
	const numbers = columns.flatMap(({ is }, at) => (is === 'number' ? [at] : []));
	const called = (column: number) => {
		const list = [...open.values()].map(({ quantity }) => quantity);
		return matchHeading(head[column] ?? '', list, units);
	};
	for (const column of numbers) {
		const { quantities, sure, unit } = called(column);
		const total = open.get(quantities[0] ?? '');
		if (sure && total) take(column, total, unit);
	}
	// Of few totals, words that only one of them has are enough, where no other column has them too.
	const rest = numbers.filter((column) => sums.every((sum) => sum.column !== column));
	const held = rest.map((column) => ({ column, ...called(column) }));
	for (const { column, quantities, unit } of held) {
		const [name = '', ...others] = quantities;
		const total = open.get(name);
		const rivals = held.filter((one) => one.quantities.includes(name));
		if (total && others.length === 0 && rivals.length === 1) take(column, total, unit);
	}
	const left = numbers.filter((column) => sums.every((sum) => sum.column !== column));
	const fits = left.map((column) => {
		const own = columns[column];
		const written = own?.is === 'number' && own.unit !== '' ? [own.unit] : unitsIn(head[column]);
		// A figure that is no rate may be a mean, or a count: only its name tells that it is the sum.
		const rates = [...open.values()].filter(({ per }) => per !== null);
		return rates.flatMap((total) => {
			const unit = written.find((one) => readUnit(one, total.quantity.unit ?? '1', units).ok);
			return unit === undefined ? [] : [{ column, total, unit }];
		});
	});
	for (const [only, ...more] of fits) {
		if (!only || more.length > 0) continue;
		const rivals = fits.filter((list) => list.some(({ total }) => total === only.total));
		if (rivals.length === 1) take(only.column, only.total, only.unit);
	}
	return { ...log, columns, sums };
}

function totalOf(quantity: Quantity | undefined): Total[] {
	if (!quantity || !hasInputs(quantity) || (quantity.type ?? 'number') !== 'number') return [];
	const unit = quantity.unit ?? '1';
	const [ending, per] = SPANS.find(([end]) => end.test(unit)) ?? [null, null];
	return [{ quantity: ending ? { ...quantity, unit: unit.replace(ending, '') } : quantity, per }];
}

/** "kWh" alone, or "dosed kg": units that a heading may end with. */
const unitsIn = (heading = ''): string[] => [
	heading.trim(),
	...headingReadings(heading).flatMap(({ unit }) => (unit ? [unit] : []))
];
