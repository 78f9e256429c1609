/** The plan solved again where so much is taken of what is required: an order that it knows nothing of. */
import type { Solver } from '../highs';
import { solve, type Solved } from '../solve';
import type { Share } from './questions';
import { roomWay, type Settled } from './settled';

/** Relative to what was chosen: below it nothing has changed. */
const SEEN = 1e-6;

/** Whether an amount is something beside what was chosen. */
export const isSeen = (amount: number, beside: number): boolean =>
	Math.abs(amount) > SEEN * Math.max(1, Math.abs(beside));

/** A share of the takes, solved; null where no plan is left. Null as a whole where nothing is required of one of the cells. */
export function withoutTakes(
	solver: Solver,
	{ part }: Settled,
	takes: readonly Share[]
): ((share?: number) => Solved | null) | null {
	const rows = takes.map(({ cell }) =>
		part.rows.findIndex((one) => one.cell === cell && one.left >= 0)
	);
	if (rows.some((row) => row < 0)) return null;
	return (share = 1) => {
		const bounds = {
			rowLower: part.programme.rowLower.slice(),
			rowUpper: part.programme.rowUpper.slice()
		};
		takes.forEach(({ amount }, i) => {
			const way = roomWay(part, rows[i]!);
			bounds[way === 1 ? 'rowUpper' : 'rowLower'][rows[i]!]! -= way * amount * share;
		});
		const left = solve(solver, { ...part.programme, ...bounds }, { priced: [] });
		return left.status === 'optimal' ? left : null;
	};
}
