/** Random workbooks and edits: what the model holds is what a fresh start and a full computation give. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildPlan } from '$lib/engine/planner/plan';
import { Inputs } from '$lib/engine/inputs';
import { emptyColumns, evaluateCells, type Columns } from '$lib/engine/interpreter/evaluate';
import { Model } from '$lib/engine/model';
import type { Plan } from '$lib/engine/plan';
import { Scenarios } from '$lib/engine/scenarios';
import { CIRCULAR } from '$lib/engine/state';
import { baseOf } from '$lib/workbook/lookup';
import { referenceOf } from '$lib/workbook/scenario';
import { patchBetween } from '$lib/workbook/patch';
import type { Workbook } from '$lib/workbook/schema';
import { randomEdit, randomWorkbook } from './random-workbook';

const numbers = (g: fc.GeneratorValue) => (count: number) => g(fc.nat, { max: count - 1 });
const RUNS = { numRuns: 60, endOnFailure: true };

/** Every cell of a scenario computed from its inputs, nothing taken over from its parent. */
function wholly(
	plan: Plan,
	workbook: Workbook,
	id: string,
	columns: Map<string, Columns>
): Columns {
	const known = columns.get(id);
	if (known) return known;
	const inputs = new Inputs(plan, workbook);
	const column = emptyColumns(plan.cells, 1);
	const { cells, values, states } = inputs.read(id, inputs.all());
	cells.forEach((cell, i) => {
		column.values[cell] = values[i]!;
		column.states[cell] = states[i]!;
	});
	for (const cell of plan.circular) {
		column.values[cell] = NaN;
		column.states[cell] = CIRCULAR;
	}
	const base = baseOf(workbook).id;
	const reference = referenceOf(workbook, id).id;
	const others =
		id === base
			? {}
			: {
					base: wholly(plan, workbook, base, columns),
					...(reference === id ? {} : { against: wholly(plan, workbook, reference, columns) })
				};
	evaluateCells(plan, plan.order, column, 1, others);
	columns.set(id, column);
	return column;
}

describe('random workbooks', () => {
	it('a scenario that holds only what it reaches has the values of one computed wholly', () => {
		fc.assert(
			fc.property(fc.gen(), (g) => {
				const workbook = randomWorkbook(numbers(g));
				const plan = buildPlan(workbook);
				const scenarios = new Scenarios(plan, workbook);
				const columns = new Map<string, Columns>();
				for (const { id } of workbook.scenarios)
					expect(scenarios.column(id)).toEqual(wholly(plan, workbook, id, columns));
			}),
			RUNS
		);
	});

	it('after edits every scenario has the values that a fresh start gives, and says if they changed', () => {
		fc.assert(
			fc.property(fc.gen(), (g) => {
				const pick = numbers(g);
				let workbook = randomWorkbook(pick);
				const plan = buildPlan(workbook);
				const scenarios = new Scenarios(plan, workbook);
				// Some have been asked for before the edits, some not.
				for (const { id } of workbook.scenarios) if (pick(3) > 0) scenarios.column(id);
				for (let edits = 0; edits < 4; edits++) {
					const before = new Scenarios(plan, workbook);
					workbook = randomEdit(workbook, pick);
					const changed = scenarios.update(workbook);
					const fresh = new Scenarios(plan, workbook);
					for (const { id } of workbook.scenarios) {
						const column = fresh.column(id);
						if (!changed.includes(id)) expect(column).toEqual(before.column(id));
						if (pick(2) === 0 || edits === 3) expect(scenarios.column(id)).toEqual(column);
					}
				}
			}),
			RUNS
		);
	});

	it('a scenario without changes equals its parent', () => {
		fc.assert(
			fc.property(fc.gen(), (g) => {
				const workbook = randomWorkbook(numbers(g));
				const parent = workbook.scenarios.at(-1)!;
				const same = { ...parent, id: 'same', parent: parent.id, changes: [] };
				const model = Model.open({ ...workbook, scenarios: [...workbook.scenarios, same] });
				expect(model.cellsHeldBy('same')).toBe(0);
				expect(model.results('same')).toEqual({ ...model.results(parent.id), scenario: 'same' });
			}),
			RUNS
		);
	});

	it('entering what stands there already changes nothing, and every edit can be taken back', () => {
		fc.assert(
			fc.property(fc.gen(), (g) => {
				const pick = numbers(g);
				const workbook = randomWorkbook(pick);
				const model = Model.open(workbook);
				const ids = workbook.scenarios.map(({ id }) => id);
				const before = ids.map((id) => model.results(id));
				const restore = (to: Workbook) => {
					const patch = patchBetween(model.workbook, to) ?? { fields: [] };
					return model.apply({ kind: 'patch', patch });
				};
				expect(restore({ ...workbook })).toMatchObject({ ok: true, changed: [] });
				restore(randomEdit(workbook, pick));
				restore(workbook);
				expect(ids.map((id) => model.results(id))).toEqual(before);
			}),
			RUNS
		);
	});
});
