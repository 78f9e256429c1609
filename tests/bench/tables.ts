/**
 * A table on its way in: read, its columns matched, looked over and entered, with all of its names new. Three hundred
 * rows beside thirty thousand, and thirty new members beside three hundred: what counts is how it grows.
 */
import { layOut } from '$lib/engine/layout';
import { readCsv } from '$lib/exchange/csv/rows';
import type { Grid } from '$lib/exchange/table/grid';
import { acceptedCommands, changeKey, lookOver } from '$lib/exchange/table/look';
import { choicesOf, NO_CHOICES, unknownKey } from '$lib/exchange/table/new-members';
import { proposeMapping } from '$lib/exchange/table/propose';
import { applyCommand } from '$lib/workbook/commands';
import { median, timed } from './measure';
import { heading, line, ratio } from './print';
import { openShipped } from './shipped';

const HEAD = [
	...['Product', 'List price (EUR/100 m)', 'Outside diameter', 'Packaging of a coil', 'Demand'],
	...['Net-net price obtained', 'Price of bought pipe', 'Description', 'a', 'b', 'c', 'd']
];
const TURNS = 7;
const workbook = openShipped();
const layout = layOut(workbook);

function textOf(rows: number): string {
	const row = (at: number) => `X${at};40,50;${15 + (at % 9)};0,6;900000;0,4;0,3;pipe ${at};1;2;3;4`;
	return [HEAD.join(';'), ...Array.from({ length: rows }, (_, at) => row(at))].join('\n');
}

function gridOf(text: string): Grid {
	const read = readCsv(text, 'items.csv');
	if (!read.ok) throw new Error(read.message);
	return read.grid;
}

/** The middle of several turns, after one that warms up. */
function middle(work: () => void): number {
	work();
	return median(Array.from({ length: TURNS }, () => timed(work).cpu));
}

function brought(rows: number, decided: boolean): number {
	const text = textOf(rows);
	const choices = decided
		? choicesOf(
				Array.from({ length: rows }, (_, at) => [
					unknownKey('product', `X${at}`),
					{ as: 'new', like: null }
				]),
				[]
			)
		: NO_CHOICES;
	return middle(() => {
		const grid = gridOf(text);
		const looked = lookOver(grid, proposeMapping(grid, workbook), choices, layout);
		if (!looked.ok) throw new Error(looked.message);
		if (!decided) return;
		const { look } = looked;
		const commands = acceptedCommands(look, new Set(look.changes.map(changeKey)));
		const made = applyCommand(workbook, { kind: 'several', commands });
		if (!made.ok) throw new Error(made.problem.message);
	});
}

heading(`A table of ${HEAD.length} columns brought in, of a processor`);
const [few, many] = [brought(300, false), brought(30_000, false)];
line('300 rows, looked over', `${few.toFixed(0)} ms`);
line('30,000 rows', `${many.toFixed(0)} ms: ${ratio(many / few)} as long for 100 times the rows`);
const [some, all] = [brought(30, true), brought(300, true)];
line('30 new members, entered', `${some.toFixed(0)} ms`);
line('300 new members', `${all.toFixed(0)} ms: ${ratio(all / some)} as long for 10 times as many`);
