/**
 * The plant of 60 pipes, 300 items and 12 lines beside the shipped one: opening, editing, bringing a table in, planning.
 * Each opens in processes of its own, in turn, and of several rounds the least counts, as the machine may be busy.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { memoryUsage } from 'node:process';
import { Model } from '$lib/engine/model';
import { Solver } from '$lib/programmes/highs';
import { Memory } from '$lib/programmes/memory';
import { planAll } from '$lib/programmes/plan-all';
import { saveWorkbook } from '$lib/workbook/save';
import type { Workbook } from '$lib/workbook/schema';
import type { LargeFigures } from './large-figures';
import { largePlant } from './large-plant';
import { timed } from './measure';
import { heading, line } from './print';
import { commandOf, EDITS, openShipped } from './shipped';

const ROUNDS = 3;
const OPEN_MS = 3000;
const EDIT_MS = 100;
const IMPORT_MS = 2000;

interface PlanFigures {
	readonly text: string;
	readonly plans: number;
	readonly proven: number;
	readonly cold: number;
	readonly again: number;
	readonly bytes: number;
}

const solver = await Solver.load();
const folder = mkdtempSync(join(tmpdir(), 'metrewright-bench-'));
try {
	const [small, large] = [planned(openShipped()), planned(largePlant())];
	const files = [small, large].map(({ text }, at) => {
		const file = join(folder, `${at}.json`);
		writeFileSync(file, text);
		return file;
	});
	const rounds = Array.from({ length: ROUNDS }, () => files.map(figuresOf));
	report(
		rounds.map(([figures]) => figures!),
		rounds.map(([, figures]) => figures!),
		small,
		large
	);
} finally {
	rmSync(folder, { recursive: true });
}

function figuresOf(file: string): LargeFigures {
	const child = spawnSync(
		process.execPath,
		[join(dirname(process.argv[1] ?? ''), 'one-large.js'), file],
		{ encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'], maxBuffer: 2 ** 28 }
	);
	if (child.status !== 0) throw new Error(`${file} did not open.`);
	return JSON.parse(child.stdout) as LargeFigures;
}

/** All plans from nothing, then again after a price; the workbook as it is saved with them. */
function planned({ plans: _, ...workbook }: Workbook): PlanFigures {
	const model = Model.open(workbook);
	for (const { id } of workbook.scenarios) model.results(id);
	const memory = new Memory();
	const made: boolean[] = [];
	const cold = timed(() => {
		for (const { proven } of planAll(solver, model, undefined, { memory })) made.push(proven);
	}).cpu;
	const text = saveWorkbook(model.workbook);
	model.apply(commandOf(EDITS[0]!, 0));
	const again = timed(() => {
		for (const each of planAll(solver, model, undefined, { memory, staleOnly: true })) void each;
	}).cpu;
	const proven = made.filter(Boolean).length;
	return { text, plans: made.length, proven, cold, again, bytes: memoryUsage().rss };
}

function report(
	small: readonly LargeFigures[],
	large: readonly LargeFigures[],
	smallPlans: PlanFigures,
	largePlans: PlanFigures
): void {
	const [one, other] = [small[0]!, large[0]!];
	heading('A plant of 60 pipes, 300 items, 12 lines beside the shipped one, of a processor');
	line('values of all scenarios', `${other.values} beside ${one.values}`);
	line('plan nodes', `${other.nodes} beside ${one.nodes}`);
	const beside = (name: string, of: (figures: LargeFigures) => number, goal?: number) =>
		told(name, Math.min(...large.map(of)), Math.min(...small.map(of)), goal);
	beside('file read', (figures) => figures.read);
	beside('plan of cells', (figures) => figures.plan);
	beside('first numbers, all', (figures) => figures.base + figures.rest);
	beside(
		'file to first numbers',
		({ read, plan, base, rest }) => read + plan + base + rest,
		OPEN_MS
	);
	EDITS.forEach(({ title }, at) =>
		beside(`edit: ${title}`, ({ edits }) => edits[at] ?? NaN, EDIT_MS)
	);
	beside('edit: a formula', (figures) => figures.formula);
	beside('edit: one more item', (figures) => figures.member);
	const rows = `${other.rows} rows, ${other.changes} changes, ${other.doubted} doubted`;
	line('a table of 12 columns', `${rows}; beside ${one.rows} rows, ${one.changes} changes`);
	beside('table looked over', (figures) => figures.look);
	beside('table entered', (figures) => figures.enter);
	beside('table in all', ({ look, enter }) => look + enter, IMPORT_MS);
	line('plans proven', `${largePlans.proven} of ${largePlans.plans}`);
	told('all plans, from nothing', largePlans.cold, smallPlans.cold);
	told('all plans, after a price', largePlans.again, smallPlans.again);
	const mb = (bytes: number) => `${(bytes / 1e6).toFixed(0)} MB`;
	line('memory, open', `${mb(other.bytes)} beside ${mb(one.bytes)}`);
	line('memory, planning, in all', mb(largePlans.bytes));
}

function told(name: string, large: number, small: number, goal?: number): void {
	const verdict = goal === undefined ? '' : ` (goal: ${goal}${large <= goal ? '' : ', MISSED'})`;
	line(
		name,
		`${large.toFixed(0)} ms beside ${small.toFixed(1)} ms: ${(large / small).toFixed(1)} times${verdict}`
	);
}
