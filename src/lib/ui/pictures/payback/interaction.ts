/**
 * Options together against each alone: what a scenario that holds several is worth beyond the sum of the
 * scenarios that hold one of them each, all measured against the same. A difference of results, as between
 * any two scenarios; the results are the workbook's. Worth a year, for the lives of cases differ: net present values over
 * other lives do not add up.
 */
import type { Layout } from '$lib/engine/layout';
import { baseOf } from '$lib/workbook/lookup';
import type { Case } from './payback';
import { read, type Reading, type Source } from '../../figure/read';

export interface Interaction {
	readonly together: Case;
	/** In the order of the options. */
	readonly alone: readonly Case[];
	readonly sum: number;
	/** What together is worth a year beyond the sum. */
	readonly beyond: number;
	readonly unit: string;
}

export interface InteractionInput {
	readonly cases: readonly Case[];
	/** Yes or no per option. */
	readonly options: string;
	readonly layout: Layout;
	readonly sourceOf: (scenario: string) => Source;
}

/** Places of the options that a scenario holds; null where one is not known. */
function heldBy({ options, layout, sourceOf }: InteractionInput, scenario: string) {
	const set = layout.byName.get(options)?.axes[0]?.set;
	const members = set === undefined ? [] : (layout.sets.get(set)?.members ?? []);
	const source = sourceOf(scenario);
	const readings = members.map((_, at): Reading => read(source, options, { [set ?? '']: at }));
	if (readings.some((reading) => reading.kind !== 'value')) return null;
	return readings.flatMap((reading, at) => (reading.value === 1 ? [at] : []));
}

/** For every case of several options of which each has a case of its own. */
export function interactionsOf(input: InteractionInput): Interaction[] {
	const { cases, layout } = input;
	const { workbook } = layout;
	const against = (id: string) =>
		workbook.scenarios.find((scenario) => scenario.id === id)?.against ?? baseOf(workbook).id;
	const held = new Map(cases.map((case_) => [case_.id, heldBy(input, case_.id)]));
	return cases.flatMap((together): Interaction[] => {
		const options = held.get(together.id) ?? [];
		if (options.length < 2 || together.annualValue.kind !== 'value') return [];
		const alone = options.flatMap((option) => {
			const own = cases.find((case_) => {
				const holds = held.get(case_.id);
				return (
					holds?.length === 1 && holds[0] === option && against(case_.id) === against(together.id)
				);
			});
			return own?.annualValue.kind === 'value' ? [own] : [];
		});
		if (alone.length < options.length) return [];
		const sum = alone.reduce((so, one) => so + one.annualValue.value, 0);
		const unit = together.annualValue.quantity?.quantity.unit ?? '';
		return [{ together, alone, sum, beyond: together.annualValue.value - sum, unit }];
	});
}
