/** Which cells rest on what the plans of programmes fill, as far as one reads the other: followed along the plan of cells. */
import { activeProgrammes, shadowQuantities } from '$lib/workbook/plans';
import type { Workbook } from '$lib/workbook/schema';
import type { Plan } from './plan';

/** On the plan of the scenario that the cell is read in. */
export const HERE = 1;
/** On the plan of what that scenario is measured against, or of the base. */
export const ACROSS = 2;

/** By programme: for each cell of the layout none, one or both of the above. */
export type Resting = ReadonlyMap<string, Uint8Array>;

export const restingOf = (workbook: Workbook, plan: Plan): Resting =>
	new Map(
		activeProgrammes(workbook).map((programme) => [
			programme.name,
			restingOn(plan, [...programme.decisions, ...shadowQuantities(programme)])
		])
	);

function restingOn(
	{ layout, cells, dependents, readsOtherScenario }: Plan,
	names: readonly string[]
) {
	const marks = new Uint8Array(cells);
	const crosses = new Uint8Array(cells);
	for (const cell of readsOtherScenario) crosses[cell] = 1;
	const waiting: number[] = [];
	const mark = (cell: number, marked: number) => {
		if ((marks[cell]! | marked) === marks[cell]) return;
		marks[cell]! |= marked;
		waiting.push(cell);
	};
	for (const name of names) {
		const { base, count } = layout.byName.get(name) ?? { base: 0, count: 0 };
		for (let cell = base; cell < base + count; cell++) mark(cell, HERE);
	}
	for (let cell = waiting.pop(); cell !== undefined; cell = waiting.pop())
		for (let at = dependents.starts[cell]!; at < dependents.starts[cell + 1]!; at++) {
			const reader = dependents.targets[at]!;
			// Which of the two scenarios it reads here is not told apart.
			mark(reader, marks[cell]! | (crosses[reader] === 1 ? ACROSS : 0));
		}
	return marks.slice(0, layout.cells);
}
