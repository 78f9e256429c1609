/** Where a scenario changes one member of many, or all but one: a member may be forgotten, or another one meant. */
import { axesOf } from '$lib/workbook/axes';
import { findQuantity, findSet } from '$lib/workbook/lookup';
import type { Scenario, Workbook } from '$lib/workbook/schema';
import { flatten } from '$lib/workbook/values';
import type { Line } from './line';

/** Of sets smaller than this, one member is not few. */
const FEWEST = 3;

/** A scenario that changes nothing but one cell says what it is about: that one is no lone change. */
export function loneChangeLines(workbook: Workbook, scenario: Scenario): Line[] {
	const { changes } = scenario;
	return changes.flatMap(({ quantity: name, value }): Line[] => {
		const quantity = findQuantity(workbook, name);
		const axes = quantity ? axesOf(quantity) : [];
		if (!quantity || axes.length === 0) return [];
		const cells = flatten(value);
		const [first] = cells;
		const sizes = axes.map(({ set }) => findSet(workbook, set)?.members.length ?? 0);
		const all = sizes.reduce((product, size) => product * size, 1);
		const line = (at: readonly string[], what: string): Line => ({
			...{ kind: 'lone_change', quantity, at, scenario: scenario.id, what },
			speaksOf: cells.map(({ at, value }) => `${at.join()}=${String(value)}`).join(' ')
		});
		if (first && cells.length === 1 && changes.length > 1 && all >= FEWEST)
			return [line(first.at, `${first.at.join(', ')} alone is changed`)];
		const missing = forgotten(workbook, quantity, cells);
		if (missing) return [line(missing, `All are changed but ${missing.join(', ')}`)];
		const left = leftOut(cells);
		return left
			? [line(left.at, `${left.at.join(', ')} is left out, ${left.like} has all of them`)]
			: [];
	});
}

/** Of two axes: the one cell that a row lacks where another row is changed in all that are changed anywhere. */
function leftOut(
	cells: readonly { readonly at: readonly string[] }[]
): { at: string[]; like: string } | null {
	if (cells.some(({ at }) => at.length !== 2)) return null;
	for (const [row, column] of [
		[0, 1],
		[1, 0]
	] as const) {
		const all = [...new Set(cells.map(({ at }) => at[column]!))];
		const rows = new Map<string, Set<string>>();
		for (const { at } of cells)
			rows.set(at[row]!, (rows.get(at[row]!) ?? new Set<string>()).add(at[column]!));
		const like = [...rows].find(([, has]) => has.size === all.length)?.[0];
		const short = [...rows].find(([, has]) => has.size === all.length - 1);
		if (all.length < FEWEST || like === undefined || !short) continue;
		const [id, has] = short;
		const lacks = all.find((one) => !has.has(one))!;
		return { at: row === 0 ? [id, lacks] : [lacks, id], like };
	}
	return null;
}

/** The one cell that is left of a row in which all others are changed. */
function forgotten(
	workbook: Workbook,
	quantity: Parameters<typeof axesOf>[0],
	cells: readonly { readonly at: readonly string[] }[]
): string[] | null {
	const axes = axesOf(quantity);
	for (let axis = 0; axis < axes.length; axis++) {
		const members = findSet(workbook, axes[axis]!.set)?.members ?? [];
		if (members.length < FEWEST) continue;
		const rows = new Map<string, { at: readonly string[]; has: Set<string> }>();
		for (const { at } of cells) {
			const key = at.filter((_, i) => i !== axis).join('\u0001');
			const row = rows.get(key) ?? { at, has: new Set<string>() };
			row.has.add(at[axis] ?? '');
			rows.set(key, row);
		}
		for (const { at, has } of rows.values()) {
			const left = members.filter(({ id }) => !has.has(id));
			if (left.length === 1 && has.size >= FEWEST)
				return at.map((id, i) => (i === axis ? left[0]!.id : id));
		}
	}
	return null;
}
