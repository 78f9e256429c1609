/**
 * The plans that an evaluation stands on: those that no longer answer their programme are made anew, within the time
 * there is for it; of the others it is said that they are stale. The solver is read for a workbook with a programme alone.
 */
import type { Model } from '$lib/engine/model';
import type { Solver } from '$lib/programmes/highs';
import { Memory } from '$lib/programmes/memory';
import { planAll } from '$lib/programmes/plan-all';
import type { PlanState } from '$lib/protocol/results';
import { baseOf, findScenario } from '$lib/workbook/lookup';
import { activeProgrammes, planInForce } from '$lib/workbook/plans';
import { referenceOf, scenarioChain } from '$lib/workbook/scenario';

let loaded: Promise<Solver> | undefined;

/** By scenario; nothing for a workbook without a programme. */
export async function plansFor(
	model: Model,
	scenarios: readonly string[],
	seconds: number
): Promise<ReadonlyMap<string, readonly PlanState[]>> {
	const { workbook } = model;
	const programmes = activeProgrammes(workbook);
	const asked = scenarios.filter((id) => findScenario(workbook, id));
	if (programmes.length === 0) return new Map();
	const end = Date.now() + seconds * 1000;
	const needed = new Set([baseOf(workbook).id, ...asked]);
	for (const id of needed) {
		for (const one of scenarioChain(workbook, id)) needed.add(one.id);
		needed.add(referenceOf(workbook, id).id);
	}
	const { Solver } = await import('$lib/programmes/highs');
	loaded ??= Solver.load();
	const solver = await loaded;
	const without = new Map<string, string>();
	const place = (programme: string, scenario: string) => `${programme}\u0001${scenario}`;
	for (const { programme, scenario, plan, proven, problems } of planAll(
		solver,
		model,
		(_, scenario) => needed.has(scenario),
		{
			memory: new Memory(),
			staleOnly: true,
			isLate: () => Date.now() >= end,
			// No run of the solver may take all of the time that is left for the values.
			seconds: Math.max(0.01, seconds / 2)
		}
	))
		if (!plan || !proven)
			without.set(place(programme, scenario), problems.join(' ') || 'It could not be proven best.');
	const stateOf = (programme: string, scenario: string): PlanState => {
		const held = planInForce(model.workbook, programme, scenario);
		if (held?.kept !== undefined) return { programme, plan: 'kept' };
		const reason = without.get(place(programme, scenario));
		if (reason === undefined) return { programme, plan: 'current' };
		return { programme, plan: held ? 'stale' : 'none', reason };
	};
	return new Map(asked.map((id) => [id, programmes.map(({ name }) => stateOf(name, id))]));
}
