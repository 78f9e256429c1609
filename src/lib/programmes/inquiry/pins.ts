/** What each value that somebody entered costs: the programme solved with it and without. */
import { openBounds } from '../bounds';
import type { Solver } from '../highs';
import type { LinearProgramme } from '../linear';
import { solve } from '../solve';
import type { Pins } from './questions';
import { isPinned, type Settled } from './settled';

/** So many are asked about one by one. */
export const MOST_PINS = 40;

export function pinsOf(solver: Solver, settled: Settled): Pins {
	const { part, gain, answer } = settled;
	const held = [...part.cells.keys()].filter((column) => isPinned(settled, part.cells[column]!));
	const costOf = (columns: readonly number[]) => {
		const free = solve(solver, released(settled, columns));
		return free.status === 'optimal'
			? Math.max(0, gain * (free.objective - answer.objective))
			: null;
	};
	return {
		each: held.slice(0, MOST_PINS).map((column) => ({
			cell: part.cells[column]!,
			value: part.programme.lower[column]!,
			cost: costOf([column])
		})),
		together: held.length === 0 ? 0 : costOf(held),
		more: Math.max(0, held.length - MOST_PINS)
	};
}

function released({ model, part }: Settled, columns: readonly number[]): LinearProgramme {
	const lower = part.programme.lower.slice();
	const upper = part.programme.upper.slice();
	for (const column of columns)
		[lower[column], upper[column]] = openBounds(model.plan, part.cells[column]!);
	return { ...part.programme, lower, upper };
}
