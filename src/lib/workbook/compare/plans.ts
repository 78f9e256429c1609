/** What people did to plans, in words. That a plan follows a change goes without saying. */
import { ownPlan } from '../plans';
import type { Workbook } from '../schema';

export function comparePlans(before: Workbook, after: Workbook): string[] {
	return (after.programmes ?? []).flatMap(({ name }) =>
		after.scenarios.flatMap(({ id, title }) => {
			const was = ownPlan(before, name, id)?.kept;
			const is = ownPlan(after, name, id)?.kept;
			if (was === is) return [];
			return [`plan of ${title}: ${is === undefined ? 'follows again' : `kept as of ${is}`}`];
		})
	);
}
