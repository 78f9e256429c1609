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
import { frozenSheet } from './frozen-sheet';
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
	const { scenarios, frozen = [] } = workbook;
	const [overview, ...others] = sheetNames([
		'Overview',
		...[...scenarios, ...frozen].map(({ title }) => title),
		'Notes'
	]) as [string, ...string[]];
	const names = others.slice(0, scenarios.length);
	const book = new Book(plan, sourcesOf(workbook, plan), {
		literals: IN_FILE,
		sheetNames: names.map(quoted),
		arrangement: arrangementOf(layout)
	});
	const values = scenarios.map((scenario, place) =>
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
		...frozen.map((copy, i) => frozenSheet(copy, others[scenarios.length + i]!)),
		notesSheet(workbook, others.at(-1)!)
	];
}
