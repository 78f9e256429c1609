/**
 * Workbooks at random: the interpreter and HyperFormula agree on every value of every scenario to 1e-9, kinds of
 * nothing and errors included; and after edits they still do, and are where a fresh start would be.
 */
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { buildPlan } from '$lib/engine/planner/plan';
import type { Plan } from '$lib/engine/plan';
import { conditionsOf, hideAbsent } from '$lib/engine/presence';
import type { Results } from '$lib/engine/results';
import { Scenarios } from '$lib/engine/scenarios';
import { Verifier } from '$lib/engine/second/verifier';
import type { Workbook } from '$lib/workbook/schema';
import { randomEdit, randomWorkbook, type Pick } from './random-workbook';

const FRESH_SEED = (Math.random() * 2 ** 31) | 0;
const counted = { workbooks: 0, formulas: 0, refused: 0, values: 0, notCompared: 0, bad: 0 };

function resultsOf(plan: Plan, scenarios: Scenarios, workbook: Workbook): Results[] {
	const conditions = conditionsOf(plan);
	return workbook.scenarios.map(({ id }) => {
		const column = scenarios.column(id);
		hideAbsent(conditions, column);
		return { scenario: id, ...column };
	});
}

const run = (steps: Generator<unknown>) => {
	for (const _ of steps);
};

function check(verifier: Verifier, results: readonly Results[], workbook: Workbook): void {
	const { compared, agreeing, disagreements, notCompared } = verifier.compare(results);
	for (const { count } of notCompared) counted.notCompared += count;
	if (disagreements.length > 0) {
		const formulas = workbook.sheets[0]!.quantities.map(
			({ name, formula, where }) => `${name}: ${JSON.stringify(formula)} ${where ?? ''}`
		);
		const [first] = disagreements;
		throw new Error(
			`${JSON.stringify(first)}\n${formulas.join('\n')}\n${JSON.stringify(workbook)}`
		);
	}
	expect(agreeing).toBe(compared);
}

function open(workbook: Workbook) {
	const plan = buildPlan(workbook);
	const scenarios = new Scenarios(plan, workbook);
	const verifier = Verifier.open(workbook, plan);
	run(verifier.build());
	return { plan, scenarios, verifier };
}

/** A start for `pick`; evenly spread, and nothing to shrink: a failure prints the workbook. */
const starts = fc.noShrink(fc.noBias(fc.integer({ min: 1, max: 2 ** 32 - 1 })));

function picker(start: number): Pick {
	let state = start >>> 0;
	return (count) => {
		state ^= state << 13;
		state ^= state >>> 17;
		state ^= state << 5;
		return Math.floor(((state >>> 0) / 2 ** 32) * count);
	};
}

function agreeOnAnything(seed: number, numRuns: number): void {
	fc.assert(
		fc.property(starts, (start) => {
			const workbook = randomWorkbook(picker(start));
			const { plan, scenarios, verifier } = open(workbook);
			counted.workbooks++;
			counted.formulas += plan.printed.size;
			counted.refused += new Set(plan.problems.map(({ quantity }) => quantity)).size;
			const results = resultsOf(plan, scenarios, workbook);
			for (const { states } of results) counted.values += states.length;
			for (const { states } of results) counted.bad += states.filter((state) => state > 0).length;
			check(verifier, results, workbook);
			verifier.destroy();
		}),
		{ seed, numRuns }
	);
}

describe('random workbooks', () => {
	it('both engines agree on, always the same', () => agreeOnAnything(1, 100));
	it(`both engines agree on, new ones each time (seed ${FRESH_SEED})`, () =>
		agreeOnAnything(FRESH_SEED, 50));

	it('both engines follow edits, to where a fresh start would be', () => {
		fc.assert(
			fc.property(starts, (start) => {
				const pick = picker(start);
				let workbook = randomWorkbook(pick);
				const { plan, scenarios, verifier } = open(workbook);
				for (let i = 0; i < 4; i++) {
					workbook = randomEdit(workbook, pick);
					scenarios.update(workbook);
					run(verifier.update(workbook));
					check(verifier, resultsOf(plan, scenarios, workbook), workbook);
				}
				const fresh = open(workbook);
				check(verifier, resultsOf(fresh.plan, fresh.scenarios, workbook), workbook);
				check(fresh.verifier, resultsOf(plan, scenarios, workbook), workbook);
				verifier.destroy();
				fresh.verifier.destroy();
			}),
			{ seed: 2, numRuns: 40 }
		);
	});

	it('are not for the most part refused, and hold what makes engines differ', () => {
		expect(counted.refused).toBeLessThan(counted.formulas * 0.25);
		expect(counted.bad).toBeGreaterThan(counted.values * 0.05);
		expect(counted.bad).toBeLessThan(counted.values * 0.75);
		expect(counted.notCompared).toBeLessThan(counted.values * 0.01);
	});

	afterAll(() => console.info(`random workbooks: ${JSON.stringify(counted)}`));
});
