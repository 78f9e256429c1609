/** What a plan that is kept as it stands comes to as the formulas read it now, and whether all that is required still holds. */
import type { Model } from '$lib/engine/model';
import { OK } from '$lib/engine/state';

export function keptNow(
	model: Model,
	programme: string,
	scenario: string
): { readonly kept: number; readonly fits: boolean } {
	const found = model.workbook.programmes?.find(({ name }) => name === programme);
	const { values, states } = model.column(scenario);
	const valuesOf = (name: string): number[] => {
		const { base, count } = model.layout.byName.get(name) ?? { base: 0, count: 0 };
		return [...values.subarray(base, base + count)].filter((_, i) => states[base + i] === OK);
	};
	const objective = valuesOf(found?.maximise ?? found?.minimise ?? '');
	return {
		kept: objective.reduce((sum, value) => sum + value, 0),
		fits: (found?.constraints ?? []).every((name) => valuesOf(name).every((value) => value !== 0))
	};
}
