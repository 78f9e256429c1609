/** Makes the plans anew that an edit left behind, as the page does; null where the workbook plans nothing. */
import { Memory } from '$lib/programmes/memory';
import type { Follow } from '$lib/seeding/judge';
import { activeProgrammes } from '$lib/workbook/plans';
import type { Workbook } from '$lib/workbook/schema';

export async function followPlans(
	workbook: Workbook
): Promise<{ readonly follow: Follow; readonly dispose: () => void } | null> {
	if (activeProgrammes(workbook).length === 0) return null;
	const [{ Solver }, { planAll }] = await Promise.all([
		import('$lib/programmes/highs'),
		import('$lib/programmes/plan-all')
	]);
	const solver = await Solver.load();
	const memory = new Memory();
	return {
		follow: (model) =>
			[...planAll(solver, model, undefined, { staleOnly: true, memory })].length > 0,
		dispose: () => solver.dispose()
	};
}
