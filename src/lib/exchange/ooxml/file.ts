/**
 * A workbook as a file of ISO/IEC 29500 with live formulas: what the second engine computes, in sheets that a person
 * can read. Inputs are numbers, results recalculate, and the numbers kept in the file are those on
 * the screen.
 *
 * Its parts are built here; `write.ts` makes bytes of them.
 */
import { Book } from '$lib/engine/cells/book';
import type { Plan } from '$lib/engine/plan';
import type { Results } from '$lib/engine/results';
import { sourcesOf } from '$lib/engine/second/sources';
import type { Workbook } from '$lib/workbook/schema';
import { arrangementOf } from './arrangement';
import type { FileSheet, StaleMarks } from './cell';
import { quoted, sheetNames } from './names';
import { notesSheet } from './notes';
import { overviewSheet } from './overview';
import { IN_FILE } from './texts';
import { valueSheet } from './value-sheet';

/** `results` of each scenario, in the workbook's order; `stale` marks those that are out of date. */
export function sheetsOf(
	workbook: Workbook,
	plan: Plan,
	results: readonly Results[],
	stale: StaleMarks | null = null
): FileSheet[] {
	const { layout } = plan;
	const [overview, ...names] = sheetNames([
		'Overview',
		...workbook.scenarios.map(({ title }) => title),
		'Notes'
	]) as [string, ...string[]];
	const book = new Book(plan, sourcesOf(workbook, plan), {
		literals: IN_FILE,
		sheetNames: names.slice(0, -1).map(quoted),
		arrangement: arrangementOf(layout)
	});
	const values = workbook.scenarios.map((scenario, place) =>
		valueSheet({
			layout,
			book,
			place,
			scenario,
			results: results[place]!,
			name: names[place]!,
			isBase: place === 0,
			stale
		})
	);
	return [
		overviewSheet({ layout, book, results, name: overview, sheetNames: names, stale }),
		...values,
		notesSheet(workbook, names.at(-1)!)
	];
}
