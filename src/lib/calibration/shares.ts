/** Shares that add up to 1: of each member in the whole, once for each group of points, and their mean over the groups. */
import { studentAbove } from './quantiles';

export interface SharePoint {
	readonly of: string;
	/** What belongs together, such as a year; empty where all does. */
	readonly group: string;
	readonly y: number;
}

export interface Share {
	readonly of: string;
	readonly value: number;
	readonly error: number | null;
	readonly low: number | null;
	readonly high: number | null;
}

export type SharesRead =
	| { readonly ok: true; readonly shares: readonly Share[]; readonly groups: number }
	| { readonly ok: false; readonly message: string };

/** Of all members; a group that lacks one cannot tell the shares of the others. */
export function fittedShares(
	points: readonly SharePoint[],
	members: readonly string[]
): SharesRead {
	const groups = new Map<string, Map<string, number>>();
	for (const { of, group, y } of points) {
		if (!members.includes(of)) continue;
		const sums = groups.get(group) ?? new Map<string, number>();
		sums.set(of, (sums.get(of) ?? 0) + y);
		groups.set(group, sums);
	}
	if (groups.size === 0) return { ok: false, message: 'There are no points yet.' };
	for (const [group, sums] of groups) {
		const lacks = members.filter((member) => !sums.has(member));
		const name = group === '' ? '' : `${group}: `;
		if (lacks.length > 0)
			return {
				ok: false,
				message: `${name}there is no point of ${lacks.slice(0, 4).join(', ')}${lacks.length > 4 ? ' …' : ''}. Add them, with 0 where there was none.`
			};
		const whole = [...sums.values()].reduce((all, one) => all + one, 0);
		if (!(whole > 0) || [...sums.values()].some((one) => one < 0))
			return {
				ok: false,
				message: `${name}shares need amounts of 0 or more that do not all come to 0. Look at the points.`
			};
	}
	const count = groups.size;
	const byGroup = [...groups.values()].map((sums) => {
		const whole = [...sums.values()].reduce((all, one) => all + one, 0);
		return (member: string) => sums.get(member)! / whole;
	});
	const reach = count > 1 ? studentAbove(0.025, count - 1) : 0;
	const shares = members.map((of): Share => {
		const own = byGroup.map((share) => share(of));
		const value = own.reduce((all, one) => all + one, 0) / count;
		if (count < 2) return { of, value, error: null, low: null, high: null };
		const squares = own.reduce((all, one) => all + (one - value) ** 2, 0);
		const error = Math.sqrt(squares / (count - 1) / count);
		return { of, value, error, low: value - reach * error, high: value + reach * error };
	});
	return { ok: true, shares, groups: count };
}
