/** Thousands of columns of the shipped plant: the part of the bench for studies that runs without a page. */
import { buildPlan } from '$lib/engine/planner/plan';
import { Verifier } from '$lib/engine/second/verifier';
import { openColumns, type Columns } from '$lib/studies/columns/columns';
import type { ColumnsRoom } from '$lib/studies/columns/result-reader';
import type { Varied } from '$lib/studies/columns/inputs';
import { drawnWorkbook } from '$lib/studies/drawn-workbook';
import { verifyFirstDraw } from '$lib/studies/first-draw';
import { uniformAt } from '$lib/studies/random/jumping-random';
import type { Plan } from '$lib/engine/plan';
import { OK } from '$lib/engine/state';
import type { Workbook } from '$lib/workbook/schema';
import { exponent, median, timed } from './measure';
import { heading, line, ratio } from './print';
import { grownPlant, openShipped } from './shipped';
import { CHAIN_OPERATIONS, costChain } from './study-chain';

const DRAWS = 10_000;
const CHUNK = 1024;
const SECOND = 50;
/** Each draw moves each input by up to this share. */
const SPREAD = 0.01;

const workbook = openShipped();
const plan = buildPlan(workbook);
heading(`Studies: ${DRAWS.toLocaleString('en')} draws of all quantities, one worker`);
const columns = openAll(workbook, plan);
line(
	'what moves',
	`${columns.inputs.length} input quantities; ${columns.results.length} results; ${columns.effort.steps} steps a draw, ${columns.effort.operations} operations`
);
const draws = drawsOf(columns, DRAWS);
const room = columns.room(CHUNK);
drawAll(columns, draws, 2 * CHUNK, room);
const spent = timed(() => drawAll(columns, draws, DRAWS, room));
const high = process.memoryUsage();
const perDraw = spent.cpu / DRAWS;
line('columns', `${spent.cpu.toFixed(0)} ms of the processor, ${perDraw.toFixed(3)} ms a draw`);
line(
	'operations',
	`${((columns.effort.operations * DRAWS) / spent.cpu / 1000).toFixed(0)} million a second, ${nanoseconds(spent.cpu, columns.effort.operations * DRAWS)} each`
);
line(
	'memory',
	`${megabytes(columns.blockBytes)} a block; process at ${megabytes(high.rss)}, of which arrays ${megabytes(high.arrayBuffers)}`
);
secondEngine();
byHand();
growth();

function secondEngine(): void {
	const verifier = Verifier.open(workbook, plan, Infinity);
	const built = timed(() => exhaust(verifier.build()));
	const each = Array.from({ length: SECOND }, (_, draw) => {
		const drawn = drawnWorkbook(columns, draws, draw);
		return timed(() => exhaust(verifier.update(drawn))).cpu;
	});
	verifier.destroy();
	// It has every scenario open, the columns one: what an edit costs it is shared out.
	const one = median(each) / workbook.scenarios.length;
	line(
		'second engine',
		`built in ${built.ms.toFixed(0)} ms; ${median(each).toFixed(0)} ms a draw in all ${workbook.scenarios.length} scenarios, ${one.toFixed(1)} ms in one (${SECOND} draws)`
	);
	line('so the columns are', `${ratio(one / perDraw)} as fast a draw (goal: 1,000)`);
	const check = timed(() => verifyFirstDraw(columns, draws));
	line(
		'check of the first draw',
		check.result.ok
			? `${check.result.value.compared} values agree, in ${check.ms.toFixed(0)} ms`
			: check.result.problem.message
	);
}

function byHand(): void {
	const count = 100_000;
	const spread = (key: number, from: number, to: number) =>
		Float64Array.from({ length: count }, (_, i) => from + (to - from) * uniformAt(key, i));
	const inputs = {
		diameter: spread(1, 15.9, 16.3),
		wall: spread(2, 2, 2.3),
		price: spread(3, 1.4, 2.2),
		speed: spread(4, 20, 40)
	};
	const cost = new Float64Array(count);
	for (let turn = 0; turn < 20; turn++) costChain(inputs, cost);
	const hand = median(Array.from({ length: 15 }, () => timed(() => costChain(inputs, cost)).cpu));
	const own = (hand * 1e6) / (count * CHAIN_OPERATIONS);
	const ours = (spent.cpu * 1e6) / (columns.effort.operations * DRAWS);
	line(
		'a chain written by hand',
		`${own.toFixed(2)} ns an operation; the columns take ${ratio(ours / own)} as long (goal: at most 4)`
	);
	const chain = openSome(workbook, plan);
	const few = drawsOf(chain, 8 * DRAWS);
	chain.run(few, 0, DRAWS);
	const product = timed(() => chain.run(few)).cpu;
	line(
		'one product alone',
		`${chain.effort.operations} operations a draw, ${nanoseconds(product, chain.effort.operations * 8 * DRAWS)} each: ${ratio((product * 1e6) / (chain.effort.operations * 8 * DRAWS) / own)} the hand's`
	);
}

function growth(): void {
	heading('Studies: growth');
	const counts = [2000, 4000, 8000, 16_000];
	const many = drawsOf(columns, counts.at(-1)!);
	const byDraws = counts.map((count) => timed(() => drawAll(columns, many, count, room)).cpu);
	line(
		'in draws',
		`${counts.join(', ')}: ${times(byDraws)}; exponent ${exponent(counts, byDraws).toFixed(2)}`
	);
	const sizes = [1, 2, 4].map((factor) => {
		const grown = factor === 1 ? workbook : grownPlant(factor);
		const all = openAll(grown, buildPlan(grown));
		const own = drawsOf(all, 1000);
		const its = all.room(CHUNK);
		drawAll(all, own, 1000, its);
		return {
			cells: all.results.length,
			operations: all.effort.operations,
			cpu: timed(() => drawAll(all, own, 1000, its)).cpu
		};
	});
	const cells = sizes.map((size) => size.cells);
	const operations = sizes.map((size) => size.operations);
	const spentOn = sizes.map(({ cpu }) => cpu);
	line(
		'in cells',
		`${cells.join(', ')}: ${times(spentOn)}; exponent ${exponent(cells, spentOn).toFixed(2)}; in their ${operations.join(', ')} operations ${exponent(operations, spentOn).toFixed(2)}`
	);
}

/** All inputs that may move a little and leave everything with a value, and all quantities. */
function openAll(of: Workbook, its: Plan): Columns {
	const ask = its.layout.quantities
		.filter(({ count }) => count > 0)
		.map(({ quantity }) => ({ quantity: quantity.name }));
	const scenario = of.scenarios[0]!.id;
	const names = its.layout.quantities
		.filter(
			({ quantity, base, count }) =>
				count > 0 && its.roots[base] === -1 && !quantity.fixed && isAmount(quantity.unit)
		)
		.map(({ quantity }) => quantity.name);
	const vary = names.map((quantity): Varied => ({ quantity, mode: 'scale', lenient: true }));
	const all = open(of, its, scenario, vary, ask);
	// An input is left out where moving it takes a value away.
	const still = all.inputs.map(() => Float64Array.of(1, 1, 1));
	const kept = vary.filter((_, input) => {
		const moved = still.map((own, i) =>
			i === input ? Float64Array.of(1 - SPREAD, 1, 1 + SPREAD) : own
		);
		const { states } = all.run(moved);
		return states.every(([low, none, high]) => none !== OK || (low === OK && high === OK));
	});
	return open(of, its, scenario, kept, ask);
}

/** The cost of a metre of one product, and the inputs that move it. */
function openSome(of: Workbook, its: Plan): Columns {
	const vary = ['main_price', 'outside_diameter', 'wall_minimum', 'wage'].map(
		(quantity): Varied => ({ quantity, mode: 'scale' })
	);
	const members = [its.layout.sets.get('product')!.members[0]!.id];
	return open(of, its, of.scenarios[0]!.id, vary, [{ quantity: 'cost_per_metre', members }]);
}

function open(
	of: Workbook,
	its: Plan,
	scenario: string,
	vary: readonly Varied[],
	ask: readonly { readonly quantity: string; readonly members?: readonly string[] }[]
): Columns {
	const opened = openColumns({ workbook: of, plan: its, scenario, vary, ask });
	if (!opened.ok) throw new Error(opened.problem.message);
	return opened.value;
}

/** A price, a length, a time: what may be a little more or less, unlike a count or a share. */
function isAmount(unit: string | undefined): boolean {
	return unit !== undefined && unit !== '1' && unit !== '%';
}

function drawsOf({ inputs }: Columns, count: number): Float64Array[] {
	return inputs.map((_, input) =>
		Float64Array.from({ length: count }, (_, i) => 1 + SPREAD * (2 * uniformAt(input, i) - 1))
	);
}

/** In chunks that write over one another, as a study that keeps some figures of them would. */
function drawAll(
	of: Columns,
	own: readonly Float64Array[],
	count: number,
	into: ColumnsRoom
): number {
	let last = 0;
	for (let from = 0; from < count; from += CHUNK)
		last += of.run(own, from, Math.min(CHUNK, count - from), into).values[0]![0]!;
	return last;
}

function exhaust(steps: Generator<unknown>): void {
	for (const step of steps) void step;
}

function nanoseconds(milliseconds: number, operations: number): string {
	return `${((milliseconds * 1e6) / operations).toFixed(2)} ns`;
}

function megabytes(bytes: number): string {
	return `${(bytes / 2 ** 20).toFixed(0)} MB`;
}

function times(series: readonly number[]): string {
	return `${series.map((ms) => ms.toFixed(0)).join(', ')} ms`;
}
