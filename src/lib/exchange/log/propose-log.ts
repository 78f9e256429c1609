/**
 * A first reading of a log's columns: which member, which date, which numbers. What is summed, and where it goes, a person
 * says, or whoever asks for totals (`wanted.ts`).
 */
import { UnitSystem } from '$lib/units/system';
import type { Workbook } from '$lib/workbook/schema';
import { isDayFirst, hasOpenDates } from '../table/dates';
import { decimalSigns } from '../table/decimals';
import { sampleOf, type Cell, type Grid } from '../table/grid';
import { durationUnit, isDuration } from '../table/duration';
import { headingReadings } from '../table/heading';
import { numberParts } from '../table/number-text';
import { proposeMapping } from '../table/propose';
import type { LogFile } from './asked';
import type { Log, LogColumn } from './log';
import { isMonth, readMoment, withoutTime } from './moment';
import { withWanted } from './wanted';

export interface LogProposed extends Omit<LogFile, 'head'> {
	readonly log: Log;
	/** Texts of each column with how often they stand in it; null for one that holds too many to choose from. */
	readonly texts: readonly (readonly { readonly text: string; readonly rows: number }[] | null)[];
}

const SAMPLE = 200;
const ENOUGH = 0.6;
/** More cannot be ticked one by one. */
const MOST_TEXTS = 60;

/** `wanted` are the quantities whose totals are asked for. */
export function proposeLog(
	grid: Grid,
	workbook: Workbook,
	wanted: readonly string[] = []
): LogProposed {
	const signs = decimalSigns(grid);
	const meanings = proposeMapping(grid, workbook).columns.map(({ meaning }) => meaning);
	/** The dates of columns that hold some, without their times. */
	const dates = grid.head.map((_, at) =>
		isMostly(sampleOf(grid, at, SAMPLE), isMoment) ? sampleOf(grid, at).map(withoutTime) : []
	);
	const dated = dates.findIndex(({ length }) => length > 0);
	const columns = grid.head.map((heading, at): LogColumn => {
		const sample = sampleOf(grid, at, SAMPLE);
		if (at === dated) return { is: 'date', dayFirst: isDayFirst(dates[at]!) };
		const meaning = meanings[at]!;
		if (meaning.is === 'member') return meaning;
		return isMostly(sample, (cell) => typeof cell === 'number' || numberParts(cell) !== null)
			? { is: 'number', unit: unitIn(heading, workbook), decimal: signs[at]?.sign ?? null }
			: { is: 'nothing' };
	});
	const log: Log = {
		columns,
		scenario: workbook.scenarios[0]?.id ?? '',
		dates: [],
		always: [],
		only: null,
		// A row of a month covers that month.
		covers: dated >= 0 && sampleOf(grid, dated).every(isMonth) ? 'months' : null,
		zeroWithoutRows: false,
		sums: []
	};
	return {
		log: withWanted(log, grid.head, wanted, workbook),
		openDates: dates.map(hasOpenDates),
		hours: grid.head.map((_, at) =>
			sampleOf(grid, at, SAMPLE).some((cell) => {
				const read = readMoment(cell, true);
				return read.ok && read.hour !== null;
			})
		),
		durations: grid.head.map((_, at) =>
			sampleOf(grid, at, SAMPLE).some((cell) => isDuration(String(cell)))
		),
		texts: grid.head.map((_, at) => textsOf(grid, at))
	};
}

const isMoment = (cell: Cell) => readMoment(cell, true).ok || readMoment(cell, false).ok;

function isMostly(sample: readonly Cell[], is: (cell: Cell) => boolean): boolean {
	return sample.length > 0 && sample.filter(is).length / sample.length > ENOUGH;
}

/** "Stopped (min)": a unit that the heading marks as one. */
function unitIn(heading: string, workbook: Workbook): string {
	const { system } = UnitSystem.create(workbook.units ?? []);
	const marked = headingReadings(heading).find((reading) => reading.marked);
	if (!marked) return '';
	return durationUnit(marked.unit) !== null || system.parse(marked.unit).ok ? marked.unit : '';
}

function textsOf(grid: Grid, at: number) {
	const rows = new Map<string, { text: string; rows: number }>();
	for (const { cells } of grid.rows) {
		const text = String(cells[at] ?? '');
		const known = rows.get(text.toLowerCase());
		if (known) known.rows++;
		else if (rows.size === MOST_TEXTS) return null;
		else rows.set(text.toLowerCase(), { text, rows: 1 });
	}
	return [...rows.values()].sort((a, b) => b.rows - a.rows);
}
