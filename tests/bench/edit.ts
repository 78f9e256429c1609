/**
 * One input edited with all scenarios open: the interpreter beside the second engine, edit by edit in turn.
 *
 * The second engine is given the changed cell as such, which is the least that it can be asked. Before
 * anything is counted, both have answered some edits; at the end their values are compared.
 */
import { Model } from '$lib/engine/model';
import { Verifier } from '$lib/engine/second/verifier';
import { OK } from '$lib/engine/state';
import { cellAt } from '$lib/engine/layout';
import { commandOf, EDITS, openShipped, type Edit } from './shipped';
import { median, timed } from './measure';
import { heading, line, ratio } from './print';

const WARM_UP = 12;
const TURNS = 40;

const workbook = openShipped();
const scenarios = workbook.scenarios.map(({ id }) => id);
const model = Model.open(workbook);
const resultsOfAll = () => scenarios.map((id) => model.results(id));
resultsOfAll();
const { layout, plan } = model;

const verifier = Verifier.open(workbook, plan);
const built = timed(() => {
	for (const step of verifier.build()) void step;
});

heading(`One input edited, ${scenarios.length} scenarios open`);
const computed = plan.roots.subarray(0, layout.cells).filter((root) => root >= 0).length;
line('quantities', `${layout.quantities.length}`);
line(
	'values of a scenario',
	`${layout.cells} (${layout.cells - computed} entered, ${computed} computed), ${plan.cells - layout.cells} shared sums besides`
);
line('values of all scenarios', `${layout.cells * scenarios.length}`);
line('plan nodes', `${plan.nodes.count}`);
line('cells held', scenarios.map((id) => `${id} ${model.cellsHeldBy(id)}`).join(', '));
line(
	'second engine: first build',
	`${built.ms.toFixed(0)} ms, ${(built.cpu / 1000).toFixed(1)} s of a processor (goal: 4 or less)`
);
for (const edit of EDITS) measure(edit);
const agreement = verifier.compare(resultsOfAll());
line('after these edits', `${agreement.agreeing} of ${agreement.compared} values agree`);
for (const { reason, count } of agreement.notCompared) line('not judged', `${count}: ${reason}`);
if (agreement.sample) line('a sample only', `${agreement.sample.cells} of ${agreement.sample.of}`);
verifier.destroy();

function measure(edit: Edit): void {
	const cell = cellAt(
		layout.byName.get(edit.quantity)!,
		edit.at.map((id) => layout.ordinals.get('material')?.get(id) ?? -1)
	);
	const first: number[] = [];
	const second: number[] = [];
	for (let turn = 0; turn < WARM_UP + TURNS; turn++) {
		const command = commandOf(edit, turn);
		const outcome = { value: edit.value(turn), state: OK };
		const interpreter = timed(() => {
			model.apply(command);
			return resultsOfAll();
		});
		const cells = timed(() => {
			for (const step of verifier.apply([{ scenario: 'base', cell, outcome }])) void step;
		});
		if (turn < WARM_UP) continue;
		first.push(interpreter.ms);
		second.push(cells.ms);
	}
	line(
		edit.title,
		`interpreter ${median(first).toFixed(2)} ms, second engine ${median(second).toFixed(2)} ms: ${ratio(median(second) / median(first))} (goal: 6 or more)`
	);
}
