/** Steps of the first hour follow the new name of a quantity that they ask for. */
import type { Step, Workbook } from '../schema';
import { mapped } from './lists';

export function withQuantityRenamedInSteps(workbook: Workbook, from: string, to: string): Workbook {
	if (!workbook.steps) return workbook;
	const named = (names: readonly string[]) => names.map((name) => (name === from ? to : name));
	const steps = mapped(workbook.steps, (step): Step => {
		const { quantities, compare } = step;
		if (!quantities?.includes(from) && !compare?.includes(from)) return step;
		return {
			...step,
			...(quantities && { quantities: named(quantities) }),
			...(compare && { compare: named(compare) })
		};
	});
	return steps === workbook.steps ? workbook : { ...workbook, steps };
}
