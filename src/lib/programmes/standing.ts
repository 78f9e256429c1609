/**
 * Whether the plan that a scenario stands on is the best one now: the programme is derived from the formulas as they are,
 * and the plan that the workbook holds, not one made anew, is put to the rows with prices found now.
 */
import type { Model } from '$lib/engine/model';
import { valueText } from '$lib/engine/naming';
import type { Plan } from '$lib/engine/plan';
import { OK } from '$lib/engine/state';
import { planInForce } from '$lib/workbook/plans';
import type { Programme } from '$lib/workbook/programme-schema';
import { breachOf, certify, PROOF } from './certificate';
import { derive } from './derive';
import type { Solver } from './highs';
import { isMixed, objectiveOf } from './linear';
import type { Part } from './part';
import { movesAsDerived, scattered } from './proof';
import { GAP, solve, type Solved, type SolveSettings } from './solve';
import { whyNoPlan } from './words';

export interface Standing {
	readonly programme: string;
	readonly scenario: string;
	/** One for each member of `each`. */
	readonly parts: readonly StandingPart[];
	/** Why the plan cannot be judged as a whole; null where its parts are. */
	readonly problem: string | null;
	/** The day since which it is kept as it stands. */
	readonly kept: string | null;
}

export interface StandingPart {
	/** Member ids in the order of `each`. */
	readonly members: readonly string[];
	readonly isBest: boolean;
	/** What is wrong with the plan; null where it is the best. */
	readonly problem: string | null;
	/** How far the plan's objective is from the best one, never below 0; NaN where there is no best plan. */
	readonly short: number;
}

export function standingOf(
	solver: Solver,
	model: Model,
	programme: Programme,
	scenario: string,
	settings: Pick<SolveSettings, 'seconds' | 'gap'> = {}
): Standing {
	const held = planInForce(model.workbook, programme.name, scenario);
	const kept = held?.kept ?? null;
	const whole = { programme: programme.name, scenario, kept };
	const unfit = (problem: string): Standing => ({ ...whole, parts: [], problem });
	if (!held) return unfit(`${programme.title} has no plan yet: run solve.`);
	const derivation = derive(model, programme, scenario);
	if (!derivation.ok) return unfit(derivation.problems.join(' '));
	const { derived } = derivation;
	if (held.digest !== derived.digest && kept === null)
		return unfit(`The plan of ${programme.title} is stale: run solve.`);
	const stands = derived.parts.map((part) => chosenNow(model, scenario, part));
	const plans = [stands, derived.parts.map(scattered)];
	if (!movesAsDerived(model, scenario, derived, plans))
		return unfit(
			`${programme.title} could not be proven: the formulas answer otherwise than the numbers derived from them.`
		);
	const parts = derived.parts.map((part, at): StandingPart => {
		const answer = solve(solver, part.programme, settings);
		const { members } = part;
		if (answer.status !== 'optimal') {
			const why = whyNoPlan(model.plan, programme, part, answer).join(' ');
			return { members, isBest: false, problem: why, short: NaN };
		}
		return { members, ...judged(model.plan, part, stands[at]!, answer, settings.gap ?? GAP) };
	});
	return { ...whole, parts, problem: null };
}

/** What the formulas read as the plan; a decision without a value counts as none. */
function chosenNow(model: Model, scenario: string, { cells }: Part): Float64Array {
	const { values, states } = model.column(scenario);
	return Float64Array.from(cells, (cell) => (states[cell] === OK ? values[cell]! : NaN));
}

function judged(
	plan: Plan,
	{ programme, objectiveCell }: Part,
	stands: Float64Array,
	best: Solved,
	gap: number
): Omit<StandingPart, 'members'> {
	const objective = objectiveOf(programme, stands);
	const below = programme.maximise ? best.objective - objective : objective - best.objective;
	const short = Math.max(0, below);
	const fault = (problem: string) => ({ isBest: false, problem, short });
	const breach = breachOf(programme, stands);
	if (!(breach <= PROOF)) return fault('The plan breaks what is required.');
	// With whole numbers no prices prove a plan: it must come as near to the bound as was asked of the solver.
	const isBest = isMixed(programme)
		? short <= (gap + PROOF) * Math.max(Math.abs(best.objective), 1e-9)
		: certify(programme, stands, best.rowDual).holds;
	if (isBest) return { isBest, problem: null, short: 0 };
	return fault(
		short > 0
			? `The plan is short of the best by ${valueText(plan, objectiveCell, short)}.`
			: 'The plan could not be proven best.'
	);
}
