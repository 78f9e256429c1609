/** What can be chosen of a log, as lists, and what a choice makes of it. */
import { takesColumn, type Log, type LogColumn, type OpenSum } from '$lib/exchange/log/log';
import { waysFor } from '$lib/exchange/log/ways';
import { axesOf } from '$lib/workbook/axes';
import { hasInputs } from '$lib/workbook/cells';
import { findQuantity, findSet } from '$lib/workbook/lookup';
import type { DateWay, Workbook } from '$lib/workbook/schema';
import { texts } from './log-texts';
import { quantityOptions, type ListOption } from '../choose/options';
import { texts as fileTexts } from './texts';

export const nameOf = (head: readonly string[], column: number): string =>
	head[column] || fileTexts.columnNumber(column + 1);

/** Number inputs: nothing else can be a sum. */
export const numberInputs = (workbook: Workbook): ListOption[] => [
	{ value: '', text: texts.chooseOne },
	...quantityOptions(
		workbook,
		(quantity) => hasInputs(quantity) && (quantity.type ?? 'number') === 'number'
	)
];

/** Sets and axes by name that a column may name members of: those of the sums first. */
export function columnOptions(workbook: Workbook, now: LogColumn): ListOption[] {
	const options: ListOption[] = [
		{ value: 'nothing', text: texts.leftOut },
		{ value: 'date', text: texts.dateOfTheRow },
		{ value: 'number', text: texts.numbers },
		...workbook.sets.map(({ name, label }) => ({
			value: `member ${name}`,
			text: texts.whichOf(label.toLowerCase()),
			group: texts.namesTheThing
		}))
	];
	const value = columnValue(now);
	return options.some((one) => one.value === value) || now.is !== 'member'
		? options
		: [...options, { value, text: texts.whichOf(now.of), group: texts.namesTheThing }];
}
export const columnValue = (column: LogColumn): string =>
	column.is === 'member' ? `member ${column.of}` : column.is;

/** Only one column can date the rows, or name the members of a set. */
export function withColumn(log: Log, at: number, value: string, own: LogColumn): Log {
	const of = value.startsWith('member ') ? value.slice(7) : null;
	const next: LogColumn =
		of !== null
			? { is: 'member', of }
			: value === 'date'
				? own.is === 'date'
					? own
					: { is: 'date', dayFirst: null }
				: value === 'number'
					? own.is === 'number'
						? own
						: { is: 'number', unit: '', decimal: null }
					: { is: 'nothing' };
	const isTwin = (column: LogColumn) =>
		(next.is === 'date' && column.is === 'date') ||
		(next.is === 'member' && column.is === 'member' && column.of === next.of);
	return {
		...log,
		columns: log.columns.map((column, i) =>
			i === at ? next : isTwin(column) ? { is: 'nothing' } : column
		)
	};
}

export const replaced = (log: Log, at: number, column: LogColumn): Log => ({
	...log,
	columns: log.columns.map((one, i) => (i === at ? column : one))
});

export const takeOptions: ListOption[] = Object.entries(texts.takes).map(([value, text]) => ({
	value,
	text
}));

export const numberColumns = (log: Log, head: readonly string[]): ListOption[] =>
	log.columns.flatMap(({ is }, at) =>
		is === 'number' ? [{ value: String(at), text: nameOf(head, at) }] : []
	);

export const divisorOptions = (log: Log, sum: OpenSum, head: readonly string[]): ListOption[] => [
	{ value: '', text: texts.nothing },
	...Object.entries(texts.perTime).map(([value, text]) => ({ value, text, group: texts.byTime })),
	...(takesColumn(sum.take) && sum.take !== 'sum'
		? []
		: numberColumns(log, head).map((one) => ({ ...one, group: texts.bySum })))
];
export const divisorOf = ({ per, by_column }: OpenSum): string =>
	per ?? (by_column === undefined ? '' : String(by_column));

export function withDivisor(sum: OpenSum, value: string): OpenSum {
	const { per: _per, by_column: _by, ...rest } = sum;
	if (value === '') return rest;
	return /^\d/.test(value)
		? { ...rest, by_column: Number(value) }
		: { ...rest, per: value as NonNullable<OpenSum['per']> };
}

/** Another way of taking leaves out what it has no use for. */
export function withTake(sum: OpenSum, take: OpenSum['take']): OpenSum {
	const { column, unit, share_of, ...rest } = sum;
	const divided = take === 'share' ? withDivisor(rest, '') : rest;
	const next = take === 'sum' || take === 'count' ? divided : withoutSum(divided);
	return {
		...next,
		take,
		...(column !== undefined && take !== 'count' && { column }),
		...(unit !== undefined && take === 'count' && { unit }),
		...(share_of !== undefined && take === 'share' && { share_of })
	};
}
const withoutSum = (sum: OpenSum): OpenSum =>
	sum.by_column === undefined ? sum : withDivisor(sum, '');

export const axesOfSum = (workbook: Workbook, { quantity }: OpenSum) => {
	const found = quantity === null ? undefined : findQuantity(workbook, quantity);
	return found ? axesOf(found) : [];
};

/** A sum of its own, with the only column of numbers where there is one. */
export function freshSum(log: Log): OpenSum {
	const numbers = log.columns.flatMap(({ is }, at) => (is === 'number' ? [at] : []));
	const isOnly = numbers.length === 1;
	return {
		quantity: null,
		take: numbers.length > 0 ? 'sum' : 'count',
		...(isOnly && { column: numbers[0]! })
	};
}

export interface AskedAxis {
	/** As a column or a date names it. */
	readonly of: string;
	readonly label: string;
	readonly value: string;
	readonly options: readonly ListOption[];
}

/** The axes that the sums are per and no column names: what else may tell them. */
export function askedAxes(log: Log, workbook: Workbook): AskedAxis[] {
	const axes = new Map(
		log.sums.flatMap((sum) => axesOfSum(workbook, sum)).map((axis) => [axis.name, axis])
	);
	return [...axes.values()].flatMap(({ name, set: setName }): AskedAxis[] => {
		const is = ({ of }: { of: string }) => of === name || of === setName;
		if (log.columns.some((column) => column.is === 'member' && is(column))) return [];
		const set = findSet(workbook, setName);
		if (!set) return [];
		const ways = waysFor(set).ways;
		const way = log.dates.find(is);
		const always = log.always.find(is);
		return [
			{
				of: name,
				label: set.label,
				value: way ? `by ${way.by}` : always ? `always ${always.id}` : '',
				options: [
					{ value: '', text: texts.chooseOne },
					...ways.map((by) => ({ value: `by ${by}`, text: texts.ways[by], group: texts.byDate })),
					...set.members.map(({ id, label }) => ({
						value: `always ${id}`,
						text: texts.alwaysMember(label ?? id),
						group: texts.always
					}))
				]
			}
		];
	});
}

export function withAxis(log: Log, of: string, setName: string, value: string): Log {
	const isOther = (one: { of: string }) => one.of !== of && one.of !== setName;
	const dates = log.dates.filter(isOther);
	const always = log.always.filter(isOther);
	if (value.startsWith('by '))
		return { ...log, dates: [...dates, { of, by: value.slice(3) as DateWay }], always };
	if (value.startsWith('always '))
		return { ...log, dates, always: [...always, { of, id: value.slice(7) }] };
	return { ...log, dates, always };
}

/** A quantity that is chosen brings the ways that its sets leave no doubt of. */
export function withQuantity(log: Log, at: number, name: string, workbook: Workbook): Log {
	const sums = log.sums.map((sum, i) => (i === at ? { ...sum, quantity: name || null } : sum));
	let next: Log = { ...log, sums };
	if (!log.columns.some(({ is }) => is === 'date')) return next;
	for (const { name: axis, set: setName } of axesOfSum(workbook, sums[at]!)) {
		const set = findSet(workbook, setName);
		const asked = askedAxes(next, workbook).find(({ of }) => of === axis);
		const sure = set && asked?.value === '' ? waysFor(set).sure : null;
		if (sure) next = withAxis(next, axis, setName, `by ${sure}`);
	}
	return next;
}

/** What was summed from the start, with the ways that the sets of its quantities leave no doubt of. */
export const withWaysOfDates = (log: Log, workbook: Workbook): Log =>
	log.sums.reduce(
		(next, { quantity }, at) => withQuantity(next, at, quantity ?? '', workbook),
		log
	);

export const coverOptions: ListOption[] = [
	{ value: '', text: texts.chooseOne },
	...Object.entries(texts.covers).map(([value, text]) => ({ value, text }))
];
export const coverValue = ({ covers }: Log): string =>
	covers === null ? '' : typeof covers === 'string' ? covers : 'days';
