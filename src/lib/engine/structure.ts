/**
 * What of a workbook shapes its cells and formulas, and what does not: words, entered values, scenarios, studies,
 * pictures and starting views. After an edit of the latter alone, cells keep their numbers and the plan stands.
 */
import { findFrozen } from '$lib/workbook/frozen';
import { formulasThatRead, isMeasuredByCopies } from '$lib/workbook/frozen-readers';
import { same, type Node } from '$lib/workbook/merge/same';
import type { Member, Quantity, Relation, SetDefinition, Workbook } from '$lib/workbook/schema';
import { layOut, type Layout } from './layout';

/** Whoever adds a field to the schema says here whether the plan reads it. */
type Shapes<T> = { readonly [Field in keyof Required<T>]: boolean };

const QUANTITY: Shapes<Quantity> = {
	...{ name: true, type: true, unit: true, per: true, in: true, fixed: true },
	...{ formula: true, where: true, range: true },
	// Of a fixed input it is folded into the formulas: see `isSameQuantity`.
	value: false,
	...{ label: false, note: false, source: false, date: false, spread: false },
	...{ shown: false, digits: false, open: false, whole: false, check: false, caution: false },
	...{ usual: false, other_names: false, path: false }
};
const SET: Shapes<SetDefinition> = {
	...{ name: true, members: true, cyclic: true, number_unit: true, spans: true, present: true },
	...{ label: false, plural: false, note: false, not_copied: false, comes_with: false, own: false },
	time: false
};
const MEMBER: Shapes<Member> = {
	...{ id: true, number: true, label: false, note: false },
	like: false
};
const RELATION: Shapes<Relation> = {
	...{ name: true, sets: true, pairs: true },
	...{ label: false, note: false }
};

/** Whether both have the same cells, computed by the same formulas. */
export const hasSameStructure = (before: Workbook, after: Workbook): boolean =>
	same(before.units as Node, after.units as Node) &&
	eachSame(before.sets, after.sets, isSameSet) &&
	eachSame(before.relations ?? [], after.relations ?? [], (a, b) => agree(RELATION, a, b)) &&
	readsSameCopies(before, after) &&
	(before.sheets === after.sheets ||
		eachSame(quantitiesOf(before), quantitiesOf(after), isSameQuantity));

/** The layout of a workbook, made anew only where it has another structure than the one before. */
export function layoutAfter(before: Layout, workbook: Workbook): Layout {
	return hasSameStructure(before.workbook, workbook)
		? withWorkbook(before, workbook)
		: layOut(workbook);
}

/** The layout with the words and values of a workbook of the same structure. */
export function withWorkbook(layout: Layout, workbook: Workbook): Layout {
	const { sheets, sets } = layout.workbook;
	if (sheets === workbook.sheets && sets === workbook.sets) return { ...layout, workbook };
	const current = workbook.sheets.flatMap((sheet, at) =>
		sheet.quantities.map((quantity) => ({ quantity, sheet: at }))
	);
	const quantities = layout.quantities.map((laidOut) => {
		const now = current[laidOut.index];
		// What an edit leaves alone stays the same object, so that a page sees that nothing of it has changed.
		const isKept = now?.quantity === laidOut.quantity && now.sheet === laidOut.sheet;
		return isKept ? laidOut : { ...laidOut, ...now };
	});
	return {
		...layout,
		workbook,
		quantities,
		byName: new Map(quantities.map((laidOut) => [laidOut.quantity.name, laidOut])),
		sets: new Map(workbook.sets.map((set) => [set.name, set]))
	};
}

const quantitiesOf = ({ sheets }: Workbook): Quantity[] =>
	sheets.flatMap(({ quantities }) => quantities);

/** Whether every frozen copy that is new, gone or under other names is read by no formula: their values are folded into the plan. */
function readsSameCopies(before: Workbook, after: Workbook): boolean {
	// What is read of another scenario may be absent where that is a copy.
	if (isMeasuredByCopies(before) !== isMeasuredByCopies(after)) return false;
	if (before.frozen === after.frozen) return true;
	const ids = new Set([...(before.frozen ?? []), ...(after.frozen ?? [])].map(({ id }) => id));
	return [...ids].every((id) => {
		const [was, is] = [findFrozen(before, id), findFrozen(after, id)];
		if (was?.quantities === is?.quantities) return true;
		return formulasThatRead(after, id).length === 0 && formulasThatRead(before, id).length === 0;
	});
}

const isSameQuantity = (a: Quantity, b: Quantity): boolean =>
	agree(QUANTITY, a, b) && (!a.fixed || same(a.value as Node, b.value as Node));

const isSameSet = ({ members: a, ...before }: SetDefinition, after: SetDefinition): boolean =>
	eachSame(a, after.members, (one, other) => agree(MEMBER, one, other)) &&
	agree({ ...SET, members: false }, { ...before, members: a }, after);

function eachSame<T>(
	before: readonly T[],
	after: readonly T[],
	isSame: (a: T, b: T) => boolean
): boolean {
	if (before === after) return true;
	return (
		before.length === after.length &&
		before.every((item, i) => item === after[i] || isSame(item, after[i]!))
	);
}

/** Whether two entries are the same in all that shapes the plan. */
const agree = <T extends object>(shapes: Shapes<T>, a: T, b: T): boolean =>
	(Object.keys(shapes) as (keyof T)[]).every(
		(field) => !shapes[field] || a[field] === b[field] || same(a[field] as Node, b[field] as Node)
	);
