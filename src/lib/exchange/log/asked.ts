/** What has to be said of a log before its rows are summed: the first that is not, as a sentence; null where all is. */
import { UnitSystem } from '$lib/units/system';
import { axesOf } from '$lib/workbook/axes';
import { findQuantity, findScenario, findSet } from '$lib/workbook/lookup';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { daysOf, MOST_DAYS } from './covered';
import { takesColumn, type Log, type OpenSum } from './log';
import { sumUnit } from './sum-unit';
import { membersBy, needsHour } from './ways';

export interface LogFile {
	readonly head: readonly string[];
	/** Columns with dates of which a person may say whether the day or the month comes first. */
	readonly openDates: readonly boolean[];
	/** Columns with times behind their dates. */
	readonly hours: readonly boolean[];
	/** Columns with cells as "1:30". */
	readonly durations: readonly boolean[];
}

export function askedOf(log: Log, file: LogFile, workbook: Workbook): string | null {
	const { sums, only, columns, covers } = log;
	const nameOf = (column: number) => file.head[column] || `column ${column + 1}`;
	if (!findScenario(workbook, log.scenario)) return 'Choose first which scenario the sums go into.';
	const dated = columns.flatMap(({ is }, at) => (is === 'date' ? [at] : []));
	if (dated.length > 1)
		return `${dated.map(nameOf).join(' and ')} are both dates: say which one dates a row, and leave the other out.`;
	const [date] = dated;
	const dateOf = date === undefined ? undefined : columns[date];
	if (
		date !== undefined &&
		file.openDates[date] &&
		dateOf?.is === 'date' &&
		dateOf.dayFirst === null
	)
		return `Say first of the dates of ${nameOf(date)} whether the day or the month comes first.`;
	if (sums.length === 0) return 'Say first what is summed, and into which quantity.';
	for (const sum of sums) {
		const open = askedOfSum(sum, log, workbook, nameOf, file);
		if (open) return open;
	}
	for (const sum of sums) {
		const open = askedOfAxes(findQuantity(workbook, sum.quantity!)!, log, file, workbook, date);
		if (open) return open;
	}
	if (only && only.values.length === 0)
		return `Choose which rows are taken by ${nameOf(only.column)}, or take all.`;
	const needsPeriod = sums.some(({ per }) => per !== undefined);
	if (needsPeriod && date === undefined)
		return 'What is divided by time needs the column that dates the rows: say which it is.';
	if (covers === null && date !== undefined && (needsPeriod || log.zeroWithoutRows))
		return 'Say which period the log covers: what is divided by time stands on it.';
	if (covers !== null && typeof covers === 'object') {
		if (!Number.isFinite(daysOf(covers))) return 'Say from which day to which the log covers.';
		if (daysOf(covers) < 1) return 'The period that the log covers ends before it begins.';
		if (daysOf(covers) > MOST_DAYS)
			return 'The period is longer than 100 years. Look at its years.';
	}
	return twins(sums, workbook);
}

function askedOfSum(
	sum: OpenSum,
	log: Log,
	workbook: Workbook,
	nameOf: (column: number) => string,
	{ durations }: LogFile
): string | null {
	const quantity = sum.quantity === null ? undefined : findQuantity(workbook, sum.quantity);
	if (!quantity) return 'Choose first the quantity that each sum is entered into.';
	if (takesColumn(sum.take) && sum.column === undefined)
		return `Choose the column of numbers that goes into ${quantity.label}.`;
	for (const column of [sum.column, sum.by_column])
		if (column !== undefined) {
			const found = log.columns[column];
			if (found?.is !== 'number')
				return `${nameOf(column)} goes into ${quantity.label}: say that it holds numbers, or choose another column.`;
			if (found.unit === '' && sum.take !== 'share')
				return durations[column]
					? `Say of ${nameOf(column)} whether 1:30 is h:min or min:s, as its unit; where it is a time of day, sum another column.`
					: `Say the unit of ${nameOf(column)}; 1 for a plain number.`;
		}
	if (sum.take === 'share') {
		const axes = axesOf(quantity);
		if (!axes.some(({ name, set }) => name === sum.share_of || set === sum.share_of))
			return `Say over what the shares of ${quantity.label} add up to 100 %.`;
	}
	const { system } = UnitSystem.create(workbook.units ?? []);
	const unit = sumUnit(log, sum, quantity, system);
	return unit.ok ? null : `${quantity.label}: ${unit.message}`;
}

function askedOfAxes(
	quantity: Quantity,
	log: Log,
	{ hours }: LogFile,
	workbook: Workbook,
	date: number | undefined
): string | null {
	for (const { name, set: setName } of axesOf(quantity)) {
		const is = ({ of }: { of: string }) => of === name || of === setName;
		const set = findSet(workbook, setName);
		const called = set?.label.toLowerCase() ?? name;
		const byColumn = log.columns.some((column) => column.is === 'member' && is(column));
		const always = log.always.find(is);
		const byDate = log.dates.find(is);
		if (always && !set?.members.some(({ id }) => id === always.id))
			return `There is no ${called} ${always.id} any more. Choose another.`;
		if (byColumn || always) continue;
		if (!byDate)
			return `${quantity.label} is per ${called}: say which column gives the ${called}, or choose one for all rows.`;
		if (date === undefined)
			return `The ${called} follows from a date: say which column dates the rows.`;
		if (!set || !membersBy(set, byDate.by))
			return `No ${called} can be told by the date in that way. Choose another way, or number the members.`;
		if (needsHour(byDate.by) && !hours[date])
			return `The ${called} follows from the hour, and the dates of the rows have no times. Choose another way.`;
	}
	return null;
}

/** Two sums cannot both be entered in the same place. */
function twins(sums: Log['sums'], workbook: Workbook): string | null {
	const seen = new Set<string>();
	for (const { quantity } of sums) {
		if (seen.has(quantity!))
			return `Two sums go into ${findQuantity(workbook, quantity!)?.label}. Keep one of them.`;
		seen.add(quantity!);
	}
	return null;
}
