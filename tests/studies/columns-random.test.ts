/**
 * Thousands of columns against one edit after the other: on workbooks at random, with inputs varied at random, a
 * draw's results are what the workbook shows with the draw entered, states included, whatever the blocks.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildPlan } from '$lib/engine/planner/plan';
import { conditionsOf, hideAbsent } from '$lib/engine/presence';
import { Scenarios } from '$lib/engine/scenarios';
import { BLOCK, openColumns, type Columns } from '$lib/studies/columns/columns';
import type { Varied } from '$lib/studies/columns/inputs';
import { drawnWorkbook } from '$lib/studies/drawn-workbook';
import type { Workbook } from '$lib/workbook/schema';
import { randomWorkbook, type Pick } from '../engine/random-workbook';

const starts = fc.noShrink(fc.noBias(fc.integer({ min: 1, max: 2 ** 32 - 1 })));
const NUMBERS = [0, 1, 2, -1, 0.5, 10, -7, 3, NaN];
const counted = { studies: 0, values: 0, moving: 0, bad: 0 };

function picker(start: number): Pick {
	let state = start >>> 0;
	return (count) => {
		state ^= state << 13;
		state ^= state >>> 17;
		state ^= state << 5;
		return Math.floor(((state >>> 0) / 2 ** 32) * count);
	};
}

/** Some of the inputs, one by one, as a whole quantity, or as a factor or an amount. */
function varyAtRandom(workbook: Workbook, pick: Pick): Varied[] {
	const inputs = workbook.sheets
		.flatMap(({ quantities }) => quantities)
		.filter(({ fixed, formula }) => !fixed && formula === undefined);
	const varied: Varied[] = [];
	for (const input of inputs) {
		if (pick(2) === 0) continue;
		const isNumber = input.type === undefined;
		const mode = isNumber && pick(3) === 0 ? (pick(2) === 0 ? 'scale' : 'add') : 'set';
		varied.push({ quantity: input.name, mode });
	}
	return varied;
}

function columnOf(workbook: Workbook, columns: Columns, scenario: string) {
	const column = new Scenarios(columns.plan, workbook).column(scenario);
	hideAbsent(conditionsOf(columns.plan), column);
	return column;
}

function study(workbook: Workbook, pick: Pick): void {
	const plan = buildPlan(workbook);
	const scenario = workbook.scenarios[pick(workbook.scenarios.length)]!.id;
	const ask = plan.layout.quantities
		.filter(({ count }) => count > 0)
		.flatMap(({ quantity }) => [
			{ quantity: quantity.name },
			...(pick(3) === 0 ? [{ quantity: quantity.name, scenario: workbook.scenarios[0]!.id }] : [])
		]);
	const vary = varyAtRandom(workbook, pick).filter(
		(varied) => openColumns({ workbook, plan, scenario, vary: [varied], ask }).ok
	);
	const opened = openColumns({ workbook, plan, scenario, vary, ask });
	if (!opened.ok) throw new Error(opened.problem.message);
	const columns = opened.value;
	const draws = vary.map(() => Array.from({ length: 5 }, () => NUMBERS[pick(NUMBERS.length)]!));
	const { values, states } = columns.run(draws, 0, 5);
	counted.studies++;
	for (let draw = 0; draw < 5; draw++) {
		const drawn = drawnWorkbook(columns, draws, draw);
		const byScenario = new Map<string, ReturnType<typeof columnOf>>();
		columns.results.forEach((result, i) => {
			const known = byScenario.get(result.scenario) ?? columnOf(drawn, columns, result.scenario);
			byScenario.set(result.scenario, known);
			const expected = [known.values[result.cell]! + 0, known.states[result.cell]!];
			const found = [values[i]![draw]!, states[i]![draw]!];
			counted.values++;
			if (found[1] !== 0) counted.bad++;
			if (!Object.is(found[0], result.base.value)) counted.moving++;
			if (!Object.is(found[0], expected[0]) || found[1] !== expected[1])
				throw new Error(
					`${result.quantity} ${result.members.join()} in ${result.scenario}, studied ${scenario}, draw ${draw}: ${found.join()} is not ${expected.join()}\n${JSON.stringify(vary)} ${JSON.stringify(draws)}\n${JSON.stringify(workbook)}`
				);
		});
	}
	const alone = columns.run(draws, 3, 1);
	alone.values.forEach((value, i) => expect(value[0]).toBe(values[i]![3]));
}

describe('columns', () => {
	it('of random workbooks are what entering each draw gives', () => {
		fc.assert(
			fc.property(starts, (start) => {
				const pick = picker(start);
				study(randomWorkbook(pick), pick);
			}),
			{ seed: 4, numRuns: 120 }
		);
		expect(counted.moving).toBeGreaterThan(counted.values * 0.1);
		expect(counted.bad).toBeGreaterThan(counted.values * 0.05);
		expect(counted.bad).toBeLessThan(counted.values * 0.8);
	});

	it('are the same however they are cut up', () => {
		const pick = picker(77);
		for (let round = 0; round < 12; round++) {
			const workbook = randomWorkbook(pick);
			const plan = buildPlan(workbook);
			const { id: scenario } = workbook.scenarios[0]!;
			const ask = plan.layout.quantities
				.filter(({ count }) => count > 0)
				.map(({ quantity }) => ({ quantity: quantity.name }));
			const vary = varyAtRandom(workbook, pick).filter(
				(varied) => openColumns({ workbook, plan, scenario, vary: [varied], ask }).ok
			);
			const opened = openColumns({ workbook, plan, scenario, vary, ask });
			if (!opened.ok) throw new Error(opened.problem.message);
			const count = 2 * BLOCK + 37;
			const draws = vary.map(() =>
				Array.from({ length: count }, () => NUMBERS[pick(NUMBERS.length)]!)
			);
			const whole = opened.value.run(draws, 0, count);
			for (const [from, size] of [
				[0, 1],
				[5, BLOCK + 1],
				[BLOCK, 37],
				[count - 3, 3]
			] as const) {
				const part = opened.value.run(draws, from, size);
				part.values.forEach((value, i) =>
					expect(value).toEqual(whole.values[i]!.slice(from, from + size))
				);
				part.states.forEach((state, i) =>
					expect(state).toEqual(whole.states[i]!.slice(from, from + size))
				);
			}
		}
	});
});
