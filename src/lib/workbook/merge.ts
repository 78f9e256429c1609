/**
 * Two people's workbooks made into one, from the version that both started from. Changes to different things
 * stand side by side; changes to the same thing are asked about, with both values.
 *
 * Whatever one of them changed is in the result, or in the list of conflicts; nothing is dropped in silence.
 */
import { findProblems } from './consistency';
import { problemLine } from './consistency/findings';
import type { Json } from './json';
import { baseOf } from './lookup';
import { Conflicts, type Choose, type Conflict } from './merge/conflict';
import { settleMeanings, type Three } from './merge/meaning';
import { mergeNodes } from './merge/nodes';
import { mergedOrder, ordersDiffer } from './merge/order';
import { takeApart, type Parts } from './merge/parts';
import { fieldOf, same, type Fields, type Node } from './merge/same';
import { withoutStrayPlans } from './plans';
import type { Quantity, Sheet, Workbook } from './schema';

export type { Choose, Conflict, ConflictReason, Side } from './merge/conflict';

export interface Merged {
	/** With every answered conflict settled; where `conflicts` is not empty, theirs stands in those places. */
	readonly workbook: Workbook;
	/** What nobody has answered. */
	readonly conflicts: readonly Conflict[];
}

export function mergeWorkbooks(three: Three, choose: Choose = () => undefined): Merged {
	const { base, mine, theirs } = three;
	const asks = new Conflicts(choose);
	const done = (workbook: Workbook): Merged => ({ workbook, conflicts: asks.open });
	const [was, one, other] = [base, mine, theirs].map((workbook) => workbook as unknown as Json);
	if (same(one, other) || same(was, other)) return done(mine);
	if (same(was, one)) return done(theirs);

	// What the quantities' own values are the values of has changed: nothing can be put together then.
	const bases = new Set([base, mine, theirs].map((workbook) => baseOf(workbook).id));
	if (bases.size > 1) {
		const [first, second, third] = [base, mine, theirs].map((workbook) => baseOf(workbook).id);
		const versions = { base: first, mine: second, theirs: third };
		return done(asks.ask('meaning', ['scenarios'], versions) === 'mine' ? mine : theirs);
	}

	const settled = settleMeanings(three, asks);
	const workbook = putTogether(settled, asks);
	const [found, ...others] = findProblems(workbook);
	if (!found) return done(workbook);
	// What was wrong before the merge must not keep anyone from saving.
	const before = new Set([base, mine, theirs].flatMap(findProblems).map(problemLine));
	const problem = [found, ...others].find(
		(workbookProblem) => !before.has(problemLine(workbookProblem))
	);
	if (!problem) return done(workbook);
	const side = asks.ask('unsound', ['workbook', problem.code], {}, problemLine(problem));
	return done(side === 'mine' ? mine : theirs);
}

function putTogether({ base, mine, theirs }: Three, asks: Conflicts): Workbook {
	const parts = {
		base: takeApart(base),
		mine: takeApart(mine, base),
		theirs: takeApart(theirs, base)
	};
	const merged = (of: (parts: Parts) => Node, path: readonly string[]) =>
		mergeNodes(
			{ base: of(parts.base), mine: of(parts.mine), theirs: of(parts.theirs) },
			path,
			asks
		);
	const rest = merged(({ rest }) => rest, []) as unknown as Omit<Workbook, 'sheets'>;
	const quantities = merged(({ quantities }) => quantities, ['quantities']) as Fields;
	const places = mergePlaces(parts, Object.keys(quantities), asks);
	const sheets = mergeSheets(parts, quantities, places, asks);
	// A plan that one of them made anew goes with what the other took away.
	return withoutStrayPlans({ ...rest, sheets });
}

type PartsOfThree = Readonly<Record<'base' | 'mine' | 'theirs', Parts>>;

function mergeSheets(
	parts: PartsOfThree,
	quantities: Fields,
	merged: ReadonlyMap<string, Node>,
	asks: Conflicts
): Sheet[] {
	const { base, mine, theirs } = parts;
	const names = Object.keys(quantities);
	const places = new Map(merged);
	const kept = new Map<string, Fields>();
	for (const key of new Set([...theirs.sheets.keys(), ...mine.sheets.keys()])) {
		const versions = {
			base: base.sheets.get(key),
			mine: mine.sheets.get(key),
			theirs: theirs.sheets.get(key)
		};
		const sheet = mergeNodes(versions, ['sheets', key], asks);
		if (sheet !== undefined) kept.set(key, sheet as Fields);
		else if (names.some((name) => places.get(name) === key)) {
			// One took the sheet away, the other put a quantity on it.
			const side = asks.ask('removed_and_changed', ['sheets', key, 'quantities'], versions);
			const stands = side === 'mine' ? versions.mine : versions.theirs;
			if (stands !== undefined) kept.set(key, stands);
			else stayOn(parts[side], places, key);
		}
	}
	const orders = {
		base: [...base.sheets.keys()],
		mine: [...mine.sheets.keys()],
		theirs: [...theirs.sheets.keys()]
	};
	const leader = ordersDiffer(orders)
		? asks.ask('order', ['sheets', 'order'], listed(orders))
		: 'theirs';
	return mergedOrder(orders, new Set(kept.keys()), leader).map((key) => {
		const here = new Set(names.filter((name) => places.get(name) === key));
		const order = namesOn(parts, key, here, asks);
		return {
			...(kept.get(key) as unknown as Omit<Sheet, 'quantities'>),
			quantities: order.map((name) => fieldOf(quantities, name) as unknown as Quantity)
		};
	});
}

/** The sheet goes with what is on it, but not with what the side that took it away has on another. */
function stayOn({ sheetOf }: Parts, places: Map<string, Node>, gone: string): void {
	for (const [name, place] of places) {
		const own = fieldOf(sheetOf, name);
		if (place === gone && own !== undefined) places.set(name, own);
	}
}

/** The sheet of each quantity that stands. Where one side took the quantity away, the other's place counts. */
function mergePlaces(
	{ base, mine, theirs }: PartsOfThree,
	names: readonly string[],
	asks: Conflicts
): Map<string, Node> {
	return new Map(
		names.map((name) => {
			const [was, one, other] = [base, mine, theirs].map((parts) => fieldOf(parts.sheetOf, name));
			const versions = { base: was, mine: one ?? other, theirs: other ?? one };
			return [name, mergeNodes(versions, ['sheet_of', name], asks)];
		})
	);
}

function namesOn(
	{ base, mine, theirs }: PartsOfThree,
	key: string,
	here: ReadonlySet<string>,
	asks: Conflicts
): string[] {
	const on = (parts: Parts) => parts.names.get(key) ?? [];
	const orders = { base: on(base), mine: on(mine), theirs: on(theirs) };
	const leader = ordersDiffer(orders)
		? asks.ask('order', ['sheets', key, 'quantities', 'order'], listed(orders))
		: 'theirs';
	return mergedOrder(orders, here, leader);
}

const listed = (orders: Readonly<Record<'base' | 'mine' | 'theirs', readonly string[]>>) => ({
	base: [...orders.base],
	mine: [...orders.mine],
	theirs: [...orders.theirs]
});
