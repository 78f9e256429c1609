/**
 * Where the errors of a study arose: draws in which a result has no value are entered in the workbook one after
 * the other, and asked why there. Every failing draw is counted by what it is; so many of them are looked
 * at, evenly spread, that the usual study has all of its own explained.
 */
import type { Answers } from '$lib/engine/root-cause';
import { conditionsOf, hideAbsent } from '$lib/engine/presence';
import { originOf } from '$lib/engine/reason';
import type { Place } from '$lib/engine/results';
import { Scenarios, type Column } from '$lib/engine/scenarios';
import { reasonText } from '$lib/engine/wording';
import { placeOf } from '$lib/engine/layout';
import type { State } from '$lib/engine/state';
import { baseOf } from '$lib/workbook/lookup';
import type { Columns } from './columns/columns';
import { drawnWorkbook } from './drawn-workbook';

/** Failing draws that are looked at for each result. */
export const LOOKED_AT = 200;

export interface FaultOrigin {
	/** Where it arose. */
	readonly place: Place;
	readonly state: State;
	/** A sentence with the figures of the first such draw. */
	readonly reason: string;
	/** The first draw in which it was found, from 0. */
	readonly draw: number;
	/** How many of the draws that were looked at failed there. */
	readonly count: number;
}

/** At most `most` of the failing draws, evenly spread, the first always among them. */
export function spreadOver(failing: ArrayLike<number>, most = LOOKED_AT): number[] {
	const count = Math.min(failing.length, most);
	return Array.from(
		{ length: count },
		(_, i) => failing[Math.floor((i * failing.length) / count)]!
	);
}

/** Origins of the failures of one result; `draws` holds the draws to look at, `numbers` what they are called. */
export function faultOrigins(
	columns: Columns,
	result: number,
	draws: readonly ArrayLike<number>[],
	numbers: readonly number[]
): FaultOrigin[] {
	const { plan, workbook } = columns;
	const { scenario, cell } = columns.results[result]!;
	const conditions = conditionsOf(plan);
	const scenarios = new Scenarios(plan, workbook);
	const found = new Map<string, FaultOrigin>();
	numbers.forEach((draw, i) => {
		const drawn = drawnWorkbook(columns, draws, i);
		scenarios.update(drawn);
		const known = new Map<string, Column>();
		const answers: Answers = {
			plan,
			layout: plan.layout,
			base: baseOf(drawn).id,
			conditions,
			column(id) {
				const column = known.get(id) ?? scenarios.column(id);
				if (!known.has(id) && !scenarios.isCopy(id)) hideAbsent(conditions, column);
				known.set(id, column);
				return column;
			},
			referenceOf: (id) => scenarios.referenceOf(id),
			isCopy: (id) => scenarios.isCopy(id)
		};
		const origin = originOf(answers, drawn, scenario, cell);
		if (!origin) return;
		const place = origin.from ?? placeOf(plan.layout, cell);
		const state = answers.column(scenario).states[cell]!;
		const key = `${place.cell} ${state}`;
		const before = found.get(key);
		found.set(key, {
			place,
			state,
			reason: before?.reason ?? (origin.reason || reasonText(state)),
			draw: before?.draw ?? draw,
			count: (before?.count ?? 0) + 1
		});
	});
	return [...found.values()].sort((a, b) => b.count - a.count || a.draw - b.draw);
}
