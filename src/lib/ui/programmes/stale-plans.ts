/** Plans that do not answer the workbook as it is now, and with them the figures that are out of date. */
import type { PlanReport } from '$lib/browser/solver-messages';
import type { Resting } from '$lib/engine/resting';
import { StaleCells, type StalePlan } from '$lib/engine/stale';
import { activeProgrammes } from '$lib/workbook/plans';
import type { Workbook } from '$lib/workbook/schema';
import { isOutdone } from './standing';

interface PlanningNow {
	readonly isSlow: boolean;
	readonly report: PlanReport | null;
	readonly resting: Resting;
}

/** Null where every figure is up to date. */
export function staleCells(workbook: Workbook, planning: PlanningNow): StaleCells | null {
	const plans = stalePlans(workbook, planning);
	return plans.length === 0 ? null : new StaleCells(workbook, planning.resting, plans);
}

export function stalePlans(
	workbook: Workbook,
	{ isSlow, report }: Omit<PlanningNow, 'resting'>
): StalePlan[] {
	const programmes = activeProgrammes(workbook);
	// Until they are made, nobody knows which of them stay as they are.
	if (isSlow)
		return programmes.flatMap(({ name }) =>
			workbook.scenarios.map(({ id }) => ({
				...{ programme: name, scenario: id },
				because: 'planning' as const
			}))
		);
	const { unplanned = [], kept = [] } = report ?? {};
	return [
		...unplanned.map(({ programme, scenario }) => ({
			...{ programme, scenario },
			because: 'refused' as const
		})),
		...kept.filter(isOutdone).map(({ programme, scenario }) => ({
			...{ programme, scenario },
			because: 'kept' as const
		}))
	];
}
