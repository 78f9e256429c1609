/** A scenario that is made the base: what the others rest on then, and how one of them keeps its figures. */
import { baseOf, changesOf } from './lookup';
import { inputAt, referenceOf, scenarioChain } from './scenario';
import type { Change, Scenario, Workbook } from './schema';
import { flatten, withValues, type ValueEntry } from './values';

export interface Followed {
	readonly scenario: Scenario;
	/** What it takes from the base and the base would have otherwise: as it stands today, by quantity. */
	readonly entries: ReadonlyMap<string, readonly ValueEntry[]>;
	/** How many values that are. */
	readonly count: number;
	/** Whether it is compared with the base, and so with other values then. */
	readonly isMeasured: boolean;
}

/** Every other scenario, in the order of the workbook. */
export function followedBy(workbook: Workbook, decided: string): Followed[] {
	const base = baseOf(workbook);
	const moved = cellsMoved(workbook, decided);
	return workbook.scenarios
		.filter((scenario) => scenario !== base && scenario.id !== decided)
		.map((scenario) => {
			const entries = new Map<string, ValueEntry[]>();
			let count = 0;
			for (const [quantity, cells] of moved)
				for (const at of cells) {
					const { value, from } = inputAt(workbook, scenario.id, quantity, at);
					if (from !== base.id) continue;
					const own = entries.get(quantity) ?? [];
					entries.set(quantity, own);
					own.push({ at, value });
					count++;
				}
			const isMeasured = referenceOf(workbook, scenario.id).id === base.id;
			return { scenario, entries, count, isMeasured };
		});
}

/** The cells in which the scenario has another value than the base. */
function cellsMoved(workbook: Workbook, decided: string): Map<string, string[][]> {
	const base = baseOf(workbook).id;
	const moved = new Map<string, Map<string, string[]>>();
	for (const { changes } of scenarioChain(workbook, decided))
		for (const { quantity, value } of changes)
			for (const { at } of flatten(value)) {
				const [was, is] = [base, decided].map((id) => inputAt(workbook, id, quantity, at).value);
				if (was === is) continue;
				const cells = moved.get(quantity) ?? new Map<string, string[]>();
				moved.set(quantity, cells.set(JSON.stringify(at), at));
			}
	return new Map([...moved].map(([quantity, cells]) => [quantity, [...cells.values()]]));
}

/** The scenario with what it took from the base written in as changes; `against` is what it is compared with in place of the base. */
export function holding(
	{ scenario, entries, isMeasured }: Followed,
	note: string,
	against: string | undefined
): Scenario {
	const own = changesOf(scenario);
	const value = (name: string, change?: Change) => withValues(change?.value, entries.get(name)!)!;
	const changes = [
		...scenario.changes.map((change) =>
			entries.has(change.quantity) ? { ...change, value: value(change.quantity, change) } : change
		),
		...[...entries.keys()]
			.filter((quantity) => !own.has(quantity))
			.map((quantity) => ({ quantity, value: value(quantity), note }))
	];
	return { ...scenario, ...(isMeasured && against !== undefined && { against }), changes };
}
