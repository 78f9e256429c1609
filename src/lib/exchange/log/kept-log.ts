/**
 * How a log was summed, kept with the headings of its columns, and given to the next file that has them. What that file
 * or the workbook has no more is told, and asked about.
 */
import { axesOf } from '$lib/workbook/axes';
import { findQuantity, findScenario, findSet } from '$lib/workbook/lookup';
import { LIMITS, type KeptColumn, type KeptTable, type Workbook } from '$lib/workbook/schema';
import { placesIn, shortened, type HeadingsCompared } from '../table/kept';
import type { Log, LogColumn } from './log';

/** Null while a quantity is not said. A period that was named by its days is of this file alone. */
export function keptLogOf(title: string, head: readonly string[], log: Log): KeptTable | null {
	const sums = log.sums.flatMap(({ quantity, ...sum }) =>
		quantity === null ? [] : [{ quantity, ...sum }]
	);
	if (sums.length === 0 || sums.length < log.sums.length || log.only?.values.length === 0)
		return null;
	return {
		title,
		columns: log.columns.map((column, at): KeptColumn => {
			const heading = shortened(head[at] ?? '');
			switch (column.is) {
				case 'nothing':
					return { heading, is: 'nothing' };
				case 'member':
					return { heading, is: 'member', of: column.of };
				case 'date':
					return {
						heading,
						is: 'date',
						...(column.dayFirst !== null && { day_first: column.dayFirst })
					};
				case 'number':
					return {
						heading,
						is: 'number',
						...(column.unit && { unit: column.unit }),
						...(column.decimal && { decimal: column.decimal })
					};
			}
		}),
		log: {
			scenario: log.scenario,
			...(log.dates.length > 0 && { dates: [...log.dates] }),
			...(log.always.length > 0 && { always: [...log.always] }),
			...(log.only && {
				only: {
					column: log.only.column,
					values: log.only.values.map((value) => value.slice(0, LIMITS.label))
				}
			}),
			...(typeof log.covers === 'string' && { covers: log.covers }),
			...(log.zeroWithoutRows && { without_rows: 'zero' as const }),
			sums
		}
	};
}

export interface ReusedLog extends HeadingsCompared {
	readonly log: Log;
	/** Headings of columns whose set the workbook has no more. */
	readonly lost: readonly string[];
	/** Headings of columns that show another sign before decimals, or another order of dates, than was kept. */
	readonly otherwise: readonly string[];
}

/** `proposed` is the program's own reading of the file. */
export function reuseLog(
	table: KeptTable,
	head: readonly string[],
	proposed: Log,
	ownSigns: readonly boolean[],
	workbook: Workbook
): ReusedLog {
	const { places, fresh, gone } = placesIn(head, table);
	const kept = table.log!;
	/** The column of the file that stands for a kept one. */
	const here = (place: number | undefined): number | undefined => {
		const at = place === undefined ? -1 : places.indexOf(place);
		return at < 0 ? undefined : at;
	};
	const lost: string[] = [];
	const otherwise: string[] = [];
	const columns = head.map((heading, at): LogColumn => {
		const place = places[at] ?? null;
		const column = place === null ? undefined : table.columns[place];
		const own = proposed.columns[at]!;
		switch (column?.is) {
			case 'member':
				if (isSetOrAxis(workbook, column.of)) return { is: 'member', of: column.of };
				lost.push(heading);
				return { is: 'nothing' };
			case 'date': {
				const shown = own.is === 'date' ? own.dayFirst : null;
				const dayFirst = shown ?? column.day_first ?? null;
				if (shown !== null && column.day_first !== undefined && shown !== column.day_first)
					otherwise.push(heading);
				return { is: 'date', dayFirst };
			}
			case 'number': {
				const shown = own.is === 'number' && ownSigns[at] ? own.decimal : null;
				if (shown !== null && column.decimal !== undefined && shown !== column.decimal)
					otherwise.push(heading);
				const decimal = shown ?? column.decimal ?? (own.is === 'number' ? own.decimal : null);
				return { is: 'number', unit: column.unit ?? '', decimal };
			}
			// A new column may name the date or the member a second time: whoever wants it says so.
			default:
				return { is: 'nothing' };
		}
	});
	const only = kept.only && here(kept.only.column);
	return {
		log: {
			columns,
			scenario: findScenario(workbook, kept.scenario) ? kept.scenario : '',
			dates: kept.dates ?? [],
			always: kept.always ?? [],
			// Without its column nothing is chosen, and that is asked about.
			only: !kept.only
				? null
				: only === undefined
					? { column: 0, values: [] }
					: { column: only, values: kept.only.values },
			covers: kept.covers ?? null,
			zeroWithoutRows: kept.without_rows === 'zero',
			sums: kept.sums.map(({ column, by_column, quantity, ...sum }) => {
				const [of, by] = [here(column), here(by_column)];
				return {
					...sum,
					quantity: findQuantity(workbook, quantity) ? quantity : null,
					...(of !== undefined && { column: of }),
					...(by !== undefined && { by_column: by })
				};
			})
		},
		fresh,
		gone,
		lost,
		otherwise
	};
}

const isSetOrAxis = (workbook: Workbook, name: string) =>
	findSet(workbook, name) !== undefined ||
	workbook.sheets.some(({ quantities }) =>
		quantities.some((quantity) => axesOf(quantity).some((axis) => axis.name === name))
	);
