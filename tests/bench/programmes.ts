/**
 * Plans: deriving, solving cold and warm, every plan of the shipped plant cold, a price edited and all planned again, and
 * how deriving grows to 200 products on 40 lines. Times are the processor's of this thread, as the machine may be busy.
 */
import { readFileSync } from 'node:fs';
import { Model } from '$lib/engine/model';
import { derive } from '$lib/programmes/derive';
import { Solver } from '$lib/programmes/highs';
import type { LinearProgramme } from '$lib/programmes/linear';
import { Memory } from '$lib/programmes/memory';
import { planAll } from '$lib/programmes/plan-all';
import { solve, type Solved } from '$lib/programmes/solve';
import { tieWeights } from '$lib/programmes/ties';
import type { Workbook } from '$lib/workbook/schema';
import { exponent, median } from './measure';
import { plannedPlant } from './planned-plant';
import { heading, line } from './print';
import { commandOf, EDITS, openShipped } from './shipped';

/** Milliseconds of the processor in this thread; elsewhere than on Linux of the clock. */
function spent(): number {
	try {
		return Number(readFileSync('/proc/thread-self/schedstat', 'utf8').split(' ')[0]) / 1e6;
	} catch {
		return performance.now();
	}
}

function took(work: () => void): number {
	const start = spent();
	work();
	return spent() - start;
}

const ms = (value: number) => `${value.toFixed(1)} ms`;
const solver = await Solver.load();

heading('Plans of the shipped plant');
const workbook = withoutPlans(openShipped());
const model = Model.open(workbook);
const programme = workbook.programmes!.find(({ off }) => !off)!;
const scenarios = workbook.scenarios.map(({ id }) => id);
for (const id of scenarios) model.column(id);

const memory = new Memory();
let plans = 0;
const cold = took(() => {
	for (const { proven } of planAll(solver, model, undefined, { memory })) plans += Number(proven);
});
line('all plans, cold', `${ms(cold)} for ${plans} of ${scenarios.length} (goal: 3 s)`);

const derivation = derive(model, programme, scenarios[0]!);
if (!derivation.ok) throw new Error(derivation.problems.join(' '));
const { parts } = derivation.derived;
const decisions = parts.reduce((sum, { cells }) => sum + cells.length, 0);
const deriving = median(
	Array.from({ length: 20 }, () => took(() => void derive(model, programme, scenarios[0]!)))
);
line(
	'deriving',
	`${ms(deriving)} for ${decisions} decisions: ${ms((deriving * 480) / decisions)} for 480 (goal: 20 ms)`
);

const [part] = parts;
const ties = {
	near: new Float64Array(part!.cells.length),
	weight: tieWeights(part!.named),
	inside: true
};
const priced = part!.rows.flatMap(({ left }, row) => (left < 0 ? [] : [row])).slice(0, 100);
const yearCold = median(
	Array.from({ length: 15 }, () =>
		took(() => void solve(solver, part!.programme, { ties, priced }))
	)
);
const { bases } = solve(solver, part!.programme, { ties }) as Solved;
let turn = 0;
const yearWarm = median(
	Array.from({ length: 15 }, () => {
		const other = dearer(part!.programme, ++turn);
		return took(() => void solve(solver, other, { ties, priced, bases }));
	})
);
line('a year, cold', `${ms(yearCold)} with ${priced.length} worths of both sides (goal: 80 ms)`);
line('a year, warm', `${ms(yearWarm)} after an edit of prices (goal: 20 ms)`);

const edit = EDITS[0]!;
const replanned = median(
	Array.from({ length: 5 }, (_, turn) => {
		model.apply(commandOf(edit, turn));
		return took(() => {
			for (const _planned of planAll(solver, model, undefined, { memory, staleOnly: true }))
				void _planned;
		});
	})
);
line(edit.title, `all planned again in ${ms(replanned)} (goal: 500 ms)`);

heading('Growth of deriving: products, lines');
const SIZES = [
	[25, 5],
	[50, 10],
	[100, 20],
	[200, 40]
] as const;
const grown = SIZES.map(([products, lines]) => {
	const plant = plannedPlant(products, lines);
	const large = Model.open(plant);
	large.column('base');
	const [own] = plant.programmes!;
	let columns = 0;
	let entries = 0;
	const time = median(
		Array.from({ length: 5 }, () =>
			took(() => {
				const found = derive(large, own!, 'base');
				if (!found.ok) throw new Error(found.problems.join(' '));
				columns = found.derived.parts[0]!.cells.length;
				entries = found.derived.parts[0]!.programme.values.length;
			})
		)
	);
	const solved = took(() => {
		for (const { status } of planAll(solver, large))
			if (status !== 'optimal') throw new Error(`The plant of ${products} products: ${status}.`);
	});
	line(
		`${products} on ${lines}`,
		`${columns} decisions, ${entries} coefficients: derived in ${ms(time)}, planned in ${ms(solved)}`
	);
	return { entries, time };
});
const power = exponent(
	grown.map(({ entries }) => entries),
	grown.map(({ time }) => time)
);
line('deriving', `coefficients^${power.toFixed(2)} (goal: 1.1 or less)`);

function withoutPlans({ plans: _, ...book }: Workbook): Workbook {
	return book;
}

/** Other prices, the same shape. */
function dearer(of: LinearProgramme, turn: number): LinearProgramme {
	return {
		...of,
		cost: of.cost.map((cost, column) => cost * (1 + 0.001 * ((turn + column) % 7)))
	};
}
