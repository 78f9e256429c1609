/**
 * Entries that still stand as in the workbook that this one was begun from. As long as its figures are said to be
 * invented nothing is asked; once somebody says that they are the plant's own, each of these is a claim.
 */
import type { Quantity, Tick, Workbook } from '$lib/workbook/schema';
import { hasInputs } from '$lib/workbook/cells';
import { isTypical } from '$lib/workbook/begin/typical';
import { flatten, valueAt } from '$lib/workbook/values';
import type { Line } from './line';
import { tickOf, withTicks } from './ticks';

/** How many entered values there are, and how many of them are the template's. */
export interface OwnCount {
	readonly entered: number;
	readonly same: number;
}

/** Whether the review list asks about them. */
export const asksOfTemplate = (workbook: Workbook): boolean =>
	workbook.begun_from !== undefined && !workbook.invented;

export function* templateLines(workbook: Workbook, template: Workbook): Generator<readonly Line[]> {
	if (!asksOfTemplate(workbook)) return;
	for (const count of counts(workbook, template))
		if (count.shipped.length > 0) yield [lineOf(count, template)];
}

/** A quantity with entries: how many are one's own, or were said to be right as they stand. */
export interface OwnQuantity extends OwnCount {
	readonly sheet: string;
	readonly quantity: Quantity;
	/** Members of those that are still the template's; none where somebody has ticked the quantity off. */
	readonly shipped: readonly (readonly string[])[];
}

/** What was counted last of a workbook: the page and the sheets of the grid ask for the same. */
const counted = new WeakMap<Workbook, { template: Workbook; own: readonly OwnQuantity[] }>();

/** In the order of the sheets. */
export function ownQuantities(workbook: Workbook, template: Workbook): readonly OwnQuantity[] {
	const known = counted.get(workbook);
	if (known?.template === template) return known.own;
	const own = countOwn(workbook, template);
	counted.set(workbook, { template, own });
	return own;
}

function countOwn(workbook: Workbook, template: Workbook): OwnQuantity[] {
	const all = [...counts(workbook, template)];
	const lines = all.map((count) => lineOf(count, template));
	const ticked = new Set((workbook.reviewed ?? []).map(({ id, of }) => `${id} ${of}`));
	return withTicks(workbook, lines).map(({ tick }, i): OwnQuantity => {
		const { sheet, quantity, entered, shipped } = all[i]!;
		const open = tick
			? []
			: ticked.size === 0
				? shipped
				: shipped.filter((at) => !ticked.has(tickKey(mineTick(quantity, at, template))));
		return { sheet, quantity, entered, same: open.length, shipped: open };
	});
}

const tickKey = ({ id, of }: Tick) => `${id} ${of}`;

/** Says of one entry that it is right as it stands: it holds until the entry changes. */
export function mineTick(quantity: Quantity, at: readonly string[], template: Workbook): Tick {
	const line: Line = {
		...{ kind: 'as_in_template', quantity, at, scenario: null, what: '' },
		// A quantity with one entry is the line of the review list itself.
		speaksOf: at.length === 0 ? template.title : JSON.stringify(valueAt(quantity.value, at) ?? null)
	};
	return tickOf(line, MINE, MINE);
}
/** Who ticked a single entry is whoever typed it. */
const MINE = 'entered';

/** By the title of each sheet with entries, in the order of the sheets. */
export function ownBySheet(own: readonly OwnQuantity[]): ReadonlyMap<string, OwnCount> {
	const bySheet = new Map<string, OwnCount>();
	for (const { sheet, entered, same } of own) {
		if (entered === 0) continue;
		const before = bySheet.get(sheet) ?? { entered: 0, same: 0 };
		bySheet.set(sheet, { entered: before.entered + entered, same: before.same + same });
	}
	return bySheet;
}

/** What there is in all. */
export const ownInAll = (own: readonly OwnCount[]): OwnCount => ({
	entered: own.reduce((sum, { entered }) => sum + entered, 0),
	same: own.reduce((sum, { same }) => sum + same, 0)
});

interface Count {
	readonly sheet: string;
	readonly quantity: Quantity;
	readonly entered: number;
	readonly shipped: readonly (readonly string[])[];
}

function lineOf({ quantity, entered, shipped }: Count, template: Workbook): Line {
	const of = entered === 1 ? 'its value' : `${shipped.length} of ${entered} values`;
	const what = `${of} as in ${template.title}`;
	return {
		...{ kind: 'as_in_template', quantity, at: [], scenario: null },
		...{ what, speaksOf: template.title }
	};
}

function* counts(workbook: Workbook, template: Workbook): Generator<Count> {
	for (const { title, quantities } of workbook.sheets)
		for (const quantity of quantities) {
			if (!hasInputs(quantity) || quantity.value === undefined) continue;
			const entered = flatten(quantity.value);
			const shipped = entered.filter(({ at, value }) =>
				isTypical(workbook, template, quantity, at, value)
			);
			yield {
				...{ sheet: title, quantity, entered: entered.length },
				shipped: shipped.map(({ at }) => at)
			};
		}
}
