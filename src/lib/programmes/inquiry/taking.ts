/**
 * What it costs to give some of what is scarce to something that the plan knows nothing of, an order say: the plan solved
 * again without it, and of what pays by itself, what is done less for it.
 */
import type { Solver } from '../highs';
import { solve } from '../solve';
import type { Given, Taking } from './questions';
import { roomWay, type Settled } from './settled';

/** Relative to what was chosen: below it nothing has changed. */
const SEEN = 1e-6;

/** Null where nothing is required of the cell; `cost` is null where no plan is left. */
export function takingOf(
	solver: Solver,
	{ part, answer, gain }: Settled,
	cell: number,
	amount: number
): Taking | null {
	const row = part.rows.findIndex((one) => one.cell === cell && one.left >= 0);
	if (row < 0) return null;
	const way = roomWay(part, row);
	const bounds = {
		rowLower: part.programme.rowLower.slice(),
		rowUpper: part.programme.rowUpper.slice()
	};
	bounds[way === 1 ? 'rowUpper' : 'rowLower'][row]! -= way * amount;
	const left = solve(solver, { ...part.programme, ...bounds }, { priced: [] });
	if (left.status !== 'optimal') return { cost: null, gives: [] };
	const { cost } = part.programme;
	const gives = [...part.cells].flatMap((of, column): Given[] => {
		const before = answer.chosen[column]!;
		const less = before - left.chosen[column]!;
		const money = gain * cost[column]! * less;
		return money > 0 && less > SEEN * Math.max(1, Math.abs(before))
			? [{ cell: of, amount: less, money }]
			: [];
	});
	return {
		cost: Math.max(0, gain * (answer.objective - left.objective)),
		gives: gives.sort((a, b) => b.money - a.money)
	};
}
