/**
 * A process of its own for one size of plant, so that each starts cold and holds nothing else: opens it,
 * answers it, edits it, and prints what that took as JSON. Run with --expose-gc; its argument says how many
 * times the products.
 */
import { memoryUsage } from 'node:process';
import { cellAt } from '$lib/engine/layout';
import { Reach } from '$lib/engine/interpreter/reach';
import { Model } from '$lib/engine/model';
import { Verifier } from '$lib/engine/second/verifier';
import { baseOf } from '$lib/workbook/lookup';
import { median, timed, type Timed } from './measure';
import { commandOf, EDITS, grownPlant, type Edit } from './shipped';
import type { EditFigures, SizeFigures } from './size-figures';

const times = Number(process.argv[2] ?? '1');
/** Small plants are done in no time: more turns there, so that the middle is steady. */
const TURNS = Math.max(7, Math.round(60 / times));
const OPENINGS = Math.max(2, Math.round(12 / times));

const workbook = grownPlant(times);
const scenarios = workbook.scenarios.map(({ id }) => id);
const base = baseOf(workbook).id;

const before = held();
const model = Model.open(workbook);
for (const id of scenarios) model.results(id);
const bytes = held() - before;

const figures: SizeFigures = {
	times,
	values: scenarios.reduce((sum, id) => sum + model.cellsHeldBy(id), 0),
	nodes: model.plan.nodes.count,
	problems: model.problems.length,
	second: secondEngine(),
	edits: EDITS.map(measure),
	...measureOpening(),
	bytes
};
console.log(JSON.stringify(figures));

function measure(edit: Edit): EditFigures {
	const series: Timed<unknown>[] = [];
	for (let turn = 0; turn < 2 * TURNS; turn++) {
		const one = timed(() => {
			const applied = model.apply(commandOf(edit, turn));
			if (applied.ok) for (const id of applied.changed) model.results(id);
		});
		if (turn >= TURNS) series.push(one);
	}
	return { values: reachedBy(edit), ...middle(series) };
}

/** How many values of all scenarios an edit computes anew. */
function reachedBy({ quantity, at }: Edit): number {
	const { layout, plan } = model;
	const one = layout.byName.get(quantity);
	const members = at.map((id, axis) => layout.ordinals.get(one?.axes[axis]?.set ?? '')?.get(id));
	const cell = one
		? cellAt(
				one,
				members.map((ordinal) => ordinal ?? -1)
			)
		: -1;
	const reach = new Reach(plan);
	const { formulas } = reach.from([cell]);
	return scenarios.reduce((sum, id) => {
		if (id === base) return sum + formulas.length;
		const own = new Set(reach.from(model.inputsChangedBy(id)).cells);
		return sum + formulas.filter((formula) => own.has(formula)).length;
	}, 0);
}

function measureOpening(): Pick<SizeFigures, 'plan' | 'pass'> {
	const plans: Timed<Model>[] = [];
	const passes: Timed<unknown>[] = [];
	for (let turn = 0; turn < OPENINGS; turn++) {
		const plan = timed(() => Model.open(workbook));
		plans.push(plan);
		passes.push(timed(() => scenarios.forEach((id) => plan.result.results(id))));
	}
	return { plan: middle(plans), pass: middle(passes) };
}

function middle(series: readonly Timed<unknown>[]): { ms: number; cpu: number } {
	return { ms: median(series.map(({ ms }) => ms)), cpu: median(series.map(({ cpu }) => cpu)) };
}

function secondEngine(): string {
	const verifier = Verifier.open(workbook, model.plan);
	const { sample } = verifier.compare([]);
	verifier.destroy();
	if (!sample) return 'the second engine checks all of them';
	return `the second engine checks ${sample.cells} of ${sample.of}, in ${sample.scenarios.join(', ')}`;
}

/** Bytes that are in use, in the heap and in the arrays of numbers beside it. */
function held(): number {
	globalThis.gc?.();
	globalThis.gc?.();
	const { heapUsed, arrayBuffers } = memoryUsage();
	return heapUsed + arrayBuffers;
}
