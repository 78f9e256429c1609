/**
 * Two shipped studies that plan anew at every point, against the independent model, which allocates with GLPK and
 * works the cash by itself: which options together, and the demand at which the new line pays back.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { OK } from '$lib/engine/state';
import { Solver } from '$lib/programmes/highs';
import { Memory } from '$lib/programmes/memory';
import { answerStudy } from '$lib/studies/run';
import { apply, openShipped } from '../reference/shipped';
import { caseOf, COMBINATIONS } from './independent/option-cases';

/** The model's prices of materials are rounded to a tenth of a cent: with these the workbook buys at the same ones. */
const SAME_PRICES = [
	{ quantity: 'main_price', at: ['PB1'], value: (3.294 - 0.02 * 4) / 0.98 },
	{ quantity: 'main_price', at: ['PERT'], value: (1.948 - 0.015 * 3.8) / 0.985 }
];

const model = openShipped('marram');
apply(model, { kind: 'set_inputs', scenario: 'base', entries: SAME_PRICES });
const { workbook, plan } = model;

let solver: Solver;
beforeAll(async () => {
	solver = await Solver.load();
});
afterAll(() => solver.dispose());

function answered(name: string) {
	const study = workbook.studies?.find((one) => one.name === name);
	if (!study) throw new Error(`the workbook has no study ${name}`);
	const found = answerStudy(workbook, study, {
		plan,
		replanning: { solver, memory: new Memory() }
	});
	if (!found.ok) throw new Error(found.problem.message);
	return { study, result: found.value.result };
}

describe('which options together', () => {
	it('has the same winner, each combination worth the same, none of them credited with what the base could do', () => {
		const { study, result } = answered('best_options');
		if (study.kind !== 'optimise' || result.kind !== 'optimise') throw new Error(study.kind);
		const most = study.limits![0]!.bound;
		const limit = 'at_most' in most ? most.at_most : NaN;
		const cases = COMBINATIONS.map((one) => ({ ...one, case: caseOf(one.options) }));
		const within = cases.filter((one) => (one.case?.outlay ?? 0) <= limit);
		expect(result.beyondLimits).toBe(cases.length - within.length);
		expect(result.ranked).toHaveLength(within.length);
		expect(result.ranked.every(({ state }) => state === OK)).toBe(true);
		const worth = (one: (typeof cases)[number]) => one.case?.npv ?? 0;
		within.sort((a, b) => worth(b) - worth(a));
		result.ranked.forEach(({ choice, value }, place) => {
			const chosen = Object.fromEntries(
				study.options.map(({ label, alternatives }, option) => [
					label,
					alternatives[choice[option]!]!.label
				])
			);
			const own = within[place]!;
			expect(chosen, `place ${place}`).toEqual(own.chosen);
			const stake = (own.case?.outlay ?? 0) + (own.case?.workingCapital ?? 0);
			expect(Math.abs(value - worth(own)), `${value}, model ${worth(own)}`).toBeLessThan(
				1 + 1e-5 * stake
			);
		});
	});
});

describe('the demand at which the new line pays back in four years', () => {
	/** Of today's demand: 0.01 %. */
	const WITHIN = 1e-4;

	it('lies where the model passes from later than four years to sooner, with both plants planned for it', () => {
		const { study, result } = answered('demand_for_four_years');
		if (study.kind !== 'break_even' || result.kind !== 'break_even') throw new Error(study.kind);
		expect(result.crossings.map(({ kind }) => kind)).toEqual(['crosses']);
		const found = result.crossings[0]!.input;
		const payback = (demand: number) =>
			caseOf(['B new line L8', 'C new rewinder R4'], demand)!.payback!;
		expect(payback(found - WITHIN)).toBeGreaterThan(study.target);
		expect(payback(found + WITHIN)).toBeLessThan(study.target);
	});
});
