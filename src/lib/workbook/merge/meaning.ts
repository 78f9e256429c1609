/**
 * Changes to different fields that must not simply be put together: a number entered in kg by one person while
 * another made the unit t would be wrong by a thousand. Such a quantity is asked about as a whole.
 */
import { changesOf, findQuantity } from '../lookup';
import type { Change, Quantity, Workbook } from '../schema';
import type { Conflicts } from './conflict';
import { same, type Node } from './same';

/** Fields that say what an entered value means. */
const MEANING = ['unit', 'type', 'per', 'in', 'fixed'] as const;

export interface Three {
	readonly base: Workbook;
	readonly mine: Workbook;
	readonly theirs: Workbook;
}

/** The versions, where for each quantity asked about the side that does not stand has gone back to the base. */
export function settleMeanings(three: Three, asks: Conflicts): Three {
	let { mine, theirs } = three;
	for (const { quantity } of allQuantities(three.base)) {
		const { name } = quantity;
		const one = findQuantity(mine, name);
		const other = findQuantity(theirs, name);
		if (!one || !other) continue;
		const clash =
			(changesMeaning(quantity, one) && changesValues(three.base, theirs, name)) ||
			(changesMeaning(quantity, other) && changesValues(three.base, mine, name));
		if (!clash || (same(one as Node, other as Node) && !changesValues(mine, theirs, name)))
			continue;
		const side = asks.ask('meaning', ['quantities', name], {
			base: quantity as Node,
			mine: one as Node,
			theirs: other as Node
		});
		if (side === 'mine') theirs = withQuantityOf(theirs, three.base, name);
		else mine = withQuantityOf(mine, three.base, name);
	}
	return { base: three.base, mine, theirs };
}

const allQuantities = (workbook: Workbook) =>
	workbook.sheets.flatMap(({ quantities }) => quantities.map((quantity) => ({ quantity })));

function changesMeaning(before: Quantity, after: Quantity): boolean {
	return MEANING.some((field) => !same(before[field] as Node, after[field] as Node));
}

/** Whether any entered value differs, in the base or in a scenario. */
function changesValues(before: Workbook, after: Workbook, name: string): boolean {
	const valueOf = (workbook: Workbook) => findQuantity(workbook, name)?.value as Node;
	if (!same(valueOf(before), valueOf(after))) return true;
	const changes = (workbook: Workbook) =>
		workbook.scenarios.flatMap((scenario) => {
			const change = changesOf(scenario).get(name);
			return change ? [[scenario.id, change.value]] : [];
		}) as Node;
	return !same(changes(before), changes(after));
}

function withQuantityOf(workbook: Workbook, source: Workbook, name: string): Workbook {
	const quantity = findQuantity(source, name)!;
	return {
		...workbook,
		sheets: workbook.sheets.map((sheet) => ({
			...sheet,
			quantities: sheet.quantities.map((one) => (one.name === name ? quantity : one))
		})),
		scenarios: workbook.scenarios.map((scenario) => {
			const there = source.scenarios.find(({ id }) => id === scenario.id);
			const change: Change | undefined = there && changesOf(there).get(name);
			const others = scenario.changes.filter((change) => change.quantity !== name);
			if (change === undefined && others.length === scenario.changes.length) return scenario;
			return { ...scenario, changes: change ? [...others, change] : others };
		})
	};
}
