/**
 * The plan solved again with an order of several items in it: what it loses, what is done less and what elsewhere, what is
 * free of a requirement without it and with it; and where it does not fit, the largest share that would.
 */
import type { Solver } from '../highs';
import type { Given, Placing, Share } from './questions';
import { entriesOf, roomWay, type Settled } from './settled';
import { isSeen, withoutTakes } from './without';

/** Halvings of the share that fits: to a tenth of a percent. */
const HALVINGS = 10;

/** Null where nothing is required of one of the cells. `hours`: rows of the requirement whose room is told. */
export function placingOf(
	solver: Solver,
	settled: Settled,
	takes: readonly Share[],
	hours: ReadonlySet<number>
): Placing | null {
	const { part, answer, gain } = settled;
	const withShare = withoutTakes(solver, settled, takes);
	if (!withShare) return null;
	const left = withShare(1);
	const rooms = part.rows.flatMap(({ cell }, row) =>
		hours.has(cell)
			? [
					{
						cell,
						free: freeOf(settled, row, answer.chosen),
						freeWith: left && freeOf(settled, row, left.chosen)
					}
				]
			: []
	);
	if (!left) return { cost: null, gives: [], rooms, fits: largestShare(withShare) };
	const { cost } = part.programme;
	const gives = [...part.cells].flatMap((cell, column): Given[] => {
		const before = answer.chosen[column]!;
		const amount = before - left.chosen[column]!;
		return isSeen(amount, before) ? [{ cell, amount, money: gain * cost[column]! * amount }] : [];
	});
	return {
		cost: Math.max(0, gain * (answer.objective - left.objective)),
		gives: gives.sort((a, b) => Math.abs(b.money) - Math.abs(a.money)),
		rooms,
		fits: null
	};
}

/** What is left of a row's bound; a hair of it, either way, is nothing. */
function freeOf({ part }: Settled, row: number, chosen: ArrayLike<number>): number {
	const used = entriesOf(part, row).reduce(
		(sum, { column, factor }) => sum + factor * chosen[column]!,
		0
	);
	const way = roomWay(part, row);
	const bound = (way === 1 ? part.programme.rowUpper : part.programme.rowLower)[row]!;
	const free = way * (bound - used);
	return free > 0 && isSeen(free, bound) ? free : 0;
}

function largestShare(withShare: (share: number) => unknown): number {
	let [low, high] = [0, 1];
	for (let i = 0; i < HALVINGS; i++) {
		const middle = (low + high) / 2;
		if (withShare(middle)) low = middle;
		else high = middle;
	}
	return low;
}
