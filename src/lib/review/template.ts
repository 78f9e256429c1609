/**
 * Entries that still stand as in the workbook that this one was begun from. As long as its figures are said to be
 * invented nothing is asked; once somebody says that they are the plant's own, each of these is a claim.
 */
import type { Workbook } from '$lib/workbook/schema';
import { hasInputs } from '$lib/workbook/cells';
import { flatten, valueAt } from '$lib/workbook/values';
import type { Line } from './line';

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
	for (const { quantity, same, entered } of counts(workbook, template)) {
		if (same === 0) continue;
		const of = entered === 1 ? 'its value' : `${same} of ${entered} values`;
		const what = `${of} as in ${template.title}`;
		yield [
			{ kind: 'as_in_template', quantity, at: [], scenario: null, what, speaksOf: template.title }
		];
	}
}

/** By the title of each sheet with entries, in the order of the sheets. */
export function ownBySheet(workbook: Workbook, template: Workbook): ReadonlyMap<string, OwnCount> {
	const bySheet = new Map<string, OwnCount>();
	for (const { sheet, entered, same } of counts(workbook, template)) {
		const before = bySheet.get(sheet) ?? { entered: 0, same: 0 };
		bySheet.set(sheet, { entered: before.entered + entered, same: before.same + same });
	}
	return bySheet;
}

function* counts(workbook: Workbook, template: Workbook) {
	const known = new Map(
		template.sheets.flatMap(({ quantities }) => quantities.map((each) => [each.name, each]))
	);
	for (const { title, quantities } of workbook.sheets)
		for (const quantity of quantities) {
			if (!hasInputs(quantity) || quantity.value === undefined) continue;
			const entered = flatten(quantity.value);
			const shipped = known.get(quantity.name)?.value;
			const same = entered.filter(({ at, value }) => valueAt(shipped, at) === value).length;
			yield { sheet: title, quantity, entered: entered.length, same };
		}
}
