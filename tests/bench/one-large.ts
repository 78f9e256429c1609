/**
 * A process of its own that opens the workbook file it is given, edits it and brings a table in, and prints what that
 * took of the processor as JSON. Opening is cold, as on a page; the rest is the least of several turns.
 */
import { readFileSync } from 'node:fs';
import { memoryUsage } from 'node:process';
import { layOut } from '$lib/engine/layout';
import { Model } from '$lib/engine/model';
import { readCsv } from '$lib/exchange/csv/rows';
import { acceptedCommands, changeKey, lookOver } from '$lib/exchange/table/look';
import { NO_CHOICES } from '$lib/exchange/table/new-members';
import { proposeMapping } from '$lib/exchange/table/propose';
import type { Command } from '$lib/workbook/commands';
import { loadWorkbook } from '$lib/workbook/load';
import { findQuantity, findSet } from '$lib/workbook/lookup';
import { itemTable } from './item-table';
import type { LargeFigures } from './large-figures';
import { timed } from './measure';
import { commandOf, EDITS } from './shipped';

const TURNS = 12;
const FEW = 3;

const file = process.argv[2] ?? '';
const loaded = timed(() => loadWorkbook(readFileSync(file, 'utf8'), file));
if (!loaded.result.ok) throw new Error(loaded.result.problem.line);
const { workbook } = loaded.result;
const scenarios = workbook.scenarios.map(({ id }) => id);
const opened = timed(() => Model.open(workbook));
const model = opened.result;
const base = timed(() => model.results(scenarios[0] ?? ''));
const rest = timed(() => scenarios.forEach((id) => model.results(id)));

const edits = EDITS.map((edit) => least(TURNS, (turn) => taken(commandOf(edit, turn))));
const { heapUsed, arrayBuffers } = memoryUsage();
const formula = least(FEW, (turn) => taken(otherFormula(turn)));
const member = least(FEW, (turn) => taken(oneMore(turn)));
const text = itemTable(workbook);
const layout = layOut(workbook);
const look = least(FEW, () => looked());
const { changes, doubted } = looked();
const commands = acceptedCommands(looked(), new Set(changes.map(changeKey)));
const enter = least(FEW, () => {
	taken({ kind: 'several', commands });
	model.take(workbook);
});

const figures: LargeFigures = {
	values: scenarios.reduce((sum, id) => sum + model.cellsHeldBy(id), 0),
	nodes: model.plan.nodes.count,
	rows: text.split('\n').length - 1,
	changes: changes.length,
	doubted: doubted.size,
	read: loaded.cpu,
	plan: opened.cpu,
	base: base.cpu,
	rest: rest.cpu,
	...{ edits, formula, member, look, enter },
	bytes: heapUsed + arrayBuffers
};
console.log(JSON.stringify(figures));

/** Entered, and all scenarios answered. */
function taken(command: Command): void {
	const applied = model.apply(command);
	if (!applied.ok) throw new Error(applied.problem.message);
	for (const id of applied.changed) model.results(id);
}

function least(turns: number, work: (turn: number) => void): number {
	const each = Array.from({ length: turns }, (_, turn) => timed(() => work(turn)).cpu);
	return Math.min(...each);
}

function looked() {
	const read = readCsv(text, 'items.csv');
	if (!read.ok) throw new Error(read.message);
	const over = lookOver(read.grid, proposeMapping(read.grid, workbook), NO_CHOICES, layout);
	if (!over.ok) throw new Error(over.message);
	return over.look;
}

/** A formula that much rests on, written otherwise each time. */
function otherFormula(turn: number): Command {
	const quantity = findQuantity(workbook, 'cost_per_metre');
	if (typeof quantity?.formula !== 'string') throw new Error('No such formula.');
	const formula = `${quantity.formula} * ${1 + (turn + 1) / 1000}`;
	return { kind: 'replace_quantity', name: quantity.name, quantity: { ...quantity, formula } };
}

/** One more item of the first one's kind. */
function oneMore(turn: number): Command {
	const [first] = findSet(workbook, 'item')?.members ?? [];
	return {
		...{ kind: 'add_member', set: 'item', index: 0 },
		...{ member: { id: `NEW-${turn}` }, like: first?.id }
	};
}
