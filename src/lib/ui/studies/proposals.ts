/**
 * What a study proposes, as scenarios: nothing of it is in the workbook before a person accepts it.
 *
 * A study moves an input where it was entered, so that what the scenario is measured against moves with it.
 * Where both take the input from the same place, the proposal is therefore two scenarios.
 */
import { isAmong } from '$lib/studies/cell-entries';
import { axesOf } from '$lib/workbook/axes';
import { cellGuide, isInput, placeProblem } from '$lib/workbook/cells';
import type { Command } from '$lib/workbook/commands';
import { columnsOf, findQuantity, findSet } from '$lib/workbook/lookup';
import { copyMeasuredAgainst, inputAt, referenceOf } from '$lib/workbook/scenario';
import type { Change, Scenario, Workbook } from '$lib/workbook/schema';
import type { Mode } from '$lib/workbook/study-shapes';
import { withValues } from '$lib/workbook/values';
import { freeTitle, idFrom } from '../scenarios/words';

export interface Proposal {
	readonly commands: readonly Command[];
	/** Id of the scenario that has the proposed result. */
	readonly id: string;
}

interface Moved {
	readonly quantity: string;
	readonly members?: readonly (string | null)[] | undefined;
	readonly mode: Mode;
}

/** A scenario on another with these changes. */
export function proposalOfChanges(
	workbook: Workbook,
	parent: string,
	changes: Change[],
	title: string
): Proposal {
	const scenario = fresh(workbook, title, parent, changes, referenceOf(workbook, parent).id);
	return { commands: [adding(workbook, scenario)], id: scenario.id };
}

/** A scenario with an input moved to where a study found the target met. */
export function proposalOfInput(
	workbook: Workbook,
	parent: string,
	input: Moved,
	value: number,
	title: string
): Proposal {
	const reference = referenceOf(workbook, parent).id;
	const own = changeOf(workbook, parent, input, value);
	const isCopy = copyMeasuredAgainst(workbook, parent) !== undefined;
	if (isCopy || reference === parent || !sameOrigin(workbook, parent, reference, input))
		return proposalOfChanges(workbook, parent, own, title);
	const twin = fresh(
		workbook,
		`${title}, to compare`,
		reference,
		changeOf(workbook, reference, input, value),
		referenceOf(workbook, reference).id
	);
	const more = { ...workbook, scenarios: [...workbook.scenarios, twin] };
	const scenario = fresh(more, title, parent, own, twin.id);
	return { commands: [adding(workbook, twin), adding(more, scenario)], id: scenario.id };
}

const adding = ({ scenarios }: Workbook, scenario: Scenario): Command => ({
	kind: 'add_scenario',
	scenario,
	index: scenarios.length
});

function fresh(
	workbook: Workbook,
	wanted: string,
	parent: string,
	changes: Change[],
	against: string
): Scenario {
	const base = workbook.scenarios[0]?.id;
	const title = freeTitle(workbook, wanted.slice(0, 180));
	const taken = new Set(columnsOf(workbook).map(({ id }) => id));
	return {
		...{ id: idFrom(title, taken, 'proposal'), title, parent, changes },
		...(against === base ? {} : { against })
	};
}

/** The input cells that are meant, as member ids. */
function cellsOf(workbook: Workbook, input: Moved): string[][] {
	const quantity = findQuantity(workbook, input.quantity);
	const guide = quantity && cellGuide(workbook, quantity);
	if (!guide || !quantity) return [];
	const all = axesOf(quantity).reduce<string[][]>(
		(places, { set }) =>
			places.flatMap((at) => (findSet(workbook, set)?.members ?? []).map(({ id }) => [...at, id])),
		[[]]
	);
	return all.filter(
		(at) =>
			isAmong({ quantity: input.quantity, at }, input) &&
			placeProblem(guide, at) === null &&
			isInput(guide, at)
	);
}

function changeOf(workbook: Workbook, scenario: string, input: Moved, value: number): Change[] {
	const entries = cellsOf(workbook, input).flatMap((at) => {
		const now = inputAt(workbook, scenario, input.quantity, at).value;
		if (input.mode === 'set') return [{ at, value }];
		if (typeof now !== 'number') return [];
		return [{ at, value: input.mode === 'scale' ? now * value : now + value }];
	});
	const values = withValues(undefined, entries);
	return values === undefined ? [] : [{ quantity: input.quantity, value: values }];
}

/** Whether two scenarios take these cells from where the same scenario says so. */
const sameOrigin = (workbook: Workbook, one: string, other: string, input: Moved): boolean =>
	cellsOf(workbook, input).some(
		(at) =>
			inputAt(workbook, one, input.quantity, at).from ===
			inputAt(workbook, other, input.quantity, at).from
	);
