/** What people did to plans. That a plan follows a change goes without saying. */
import { ownPlan } from '../plans';
import type { Workbook } from '../schema';
import type { Change } from './change';

export function comparePlans(before: Workbook, after: Workbook): Change[] {
	return (after.programmes ?? []).flatMap(({ name }) =>
		after.scenarios.flatMap(({ id, title }) => {
			const was = ownPlan(before, name, id)?.kept;
			const is = ownPlan(after, name, id)?.kept;
			if (was === is) return [];
			return [{ kind: 'plan', scenario: title, kept: is ?? null }];
		})
	);
}
