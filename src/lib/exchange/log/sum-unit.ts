/** The unit of what is summed, from the units of its columns, and how it becomes the quantity's. */
import type { UnitSystem } from '$lib/units/system';
import type { Quantity } from '$lib/workbook/schema';
import { readUnit } from '../table/column-unit';
import { durationUnit } from '../table/duration';
import type { Log, OpenSum } from './log';

export type SumUnit =
	| {
			readonly ok: true;
			readonly toOwn: (value: number) => number;
	  }
	| { readonly ok: false; readonly message: string };

const unitOf = (log: Log, column: number | undefined): string => {
	const found = column === undefined ? undefined : log.columns[column];
	return found?.is === 'number' ? (durationUnit(found.unit) ?? found.unit) : '';
};

/** "min/h", "min/(m/h)": as a unit is written below a stroke. */
const over = (above: string, below: string) =>
	`${above || '1'}/${/[*/]/.test(below) ? `(${below})` : below || '1'}`;

export function sumUnit(log: Log, sum: OpenSum, quantity: Quantity, units: UnitSystem): SumUnit {
	const own = quantity.unit ?? '1';
	if (sum.take === 'share') return readUnit('1', own, units);
	const counted = sum.take === 'count' ? (sum.unit ?? '1') : unitOf(log, sum.column);
	const written =
		sum.by_column === undefined ? counted : over(counted, unitOf(log, sum.by_column) || '1');
	const plain = () => readUnit(written || '1', own, units);
	if (sum.per === undefined) return plain();
	// An amount for each year is either per year, or an amount of which the quantity means one year's.
	const rate = readUnit(over(written, sum.per), own, units);
	if (rate.ok) return rate;
	const amount = plain();
	return amount.ok ? amount : rate;
}
