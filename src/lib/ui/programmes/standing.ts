/** How the plan of a programme stands in a scenario: best, being planned, kept, or no answer to the workbook. */
import type { KeptShort, PlanReport } from '$lib/browser/solver-messages';
import { planInForce } from '$lib/workbook/plans';
import type { Programme, ProgrammePlan } from '$lib/workbook/programme-schema';
import type { Workbook } from '$lib/workbook/schema';

export type Standing =
	| { readonly is: 'planning'; readonly plan: ProgrammePlan | null }
	| { readonly is: 'refused'; readonly plan: ProgrammePlan | null; readonly because: string }
	/** `short`: what the best plan brings more; `fits`: whether the one that is kept still does what is required. */
	| {
			readonly is: 'kept';
			readonly plan: ProgrammePlan;
			readonly since: string;
			readonly short: number;
			readonly fits: boolean;
	  }
	| { readonly is: 'best'; readonly plan: ProgrammePlan }
	| { readonly is: 'none'; readonly plan: null };

export function standingOf(
	workbook: Workbook,
	programme: Programme,
	scenario: string,
	planning: { readonly busy: boolean; readonly report: PlanReport | null } | null
): Standing {
	const plan = planInForce(workbook, programme.name, scenario) ?? null;
	if (planning?.busy) return { is: 'planning', plan };
	const isThis = (of: { programme: string; scenario: string }) =>
		of.programme === programme.name && of.scenario === scenario;
	const refusal = planning?.report?.unplanned.find(isThis);
	if (refusal) return { is: 'refused', plan, because: refusal.message };
	if (!plan) return { is: 'none', plan: null };
	if (plan.kept !== undefined) {
		const found = planning?.report?.kept.find(isThis);
		const gain = programme.maximise === undefined ? -1 : 1;
		const short = found && isOutdone(found) ? gain * (found.best - found.kept) : 0;
		return { is: 'kept', plan, since: plan.kept, short, fits: found?.fits ?? true };
	}
	return { is: 'best', plan };
}

/** Whether a plan that is kept fits no more, or falls short of the best by more than rounding. */
export const isOutdone = ({ best, kept, fits }: Pick<KeptShort, 'best' | 'kept' | 'fits'>) =>
	!fits || Math.abs(best - kept) > 1e-6 * Math.max(1, Math.abs(best));

/** Of all programmes in all scenarios: how many plans are proven best, kept, and no answer any more. */
export function planCounts(report: PlanReport): {
	readonly proven: number;
	readonly kept: number;
	readonly stale: number;
} {
	const stale = report.unplanned.length;
	const kept = report.kept.length;
	return { proven: Math.max(0, report.of - stale - kept), kept, stale };
}
