/**
 * What it costs to give some of what is scarce to something that the plan knows nothing of, an order say: the plan solved
 * again without it, and of what pays by itself, what is done less for it.
 */
import type { Solver } from '../highs';
import type { Given, Taking } from './questions';
import type { Settled } from './settled';
import { isSeen, withoutTakes } from './without';

/** Null where nothing is required of the cell; `cost` is null where no plan is left. */
export function takingOf(
	solver: Solver,
	settled: Settled,
	cell: number,
	amount: number
): Taking | null {
	const { part, answer, gain } = settled;
	const without = withoutTakes(solver, settled, [{ cell, amount }]);
	if (!without) return null;
	const left = without();
	if (!left) return { cost: null, gives: [] };
	const { cost } = part.programme;
	const gives = [...part.cells].flatMap((of, column): Given[] => {
		const before = answer.chosen[column]!;
		const less = before - left.chosen[column]!;
		const money = gain * cost[column]! * less;
		return money > 0 && less > 0 && isSeen(less, before) ? [{ cell: of, amount: less, money }] : [];
	});
	return {
		cost: Math.max(0, gain * (answer.objective - left.objective)),
		gives: gives.sort((a, b) => b.money - a.money)
	};
}
