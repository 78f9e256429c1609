/**
 * One draw of a study as a workbook: its values stand where the varied ones were entered, so that everything
 * that asks about a workbook (the second engine, the reasons) can be asked about a draw.
 */
import { membersOf, quantityOf } from '$lib/engine/layout';
import type { Plan } from '$lib/engine/plan';
import { baseOf } from '$lib/workbook/lookup';
import { inputAt } from '$lib/workbook/scenario';
import type { Quantity, Scalar, Scenario, Values, Workbook } from '$lib/workbook/schema';
import { withValues, type ValueEntry } from '$lib/workbook/values';
import type { Columns } from './columns/columns';

/** Entries by scenario, by quantity. */
type Entries = Map<string, Map<string, ValueEntry[]>>;

export function drawnWorkbook(
	columns: Columns,
	draws: readonly ArrayLike<number>[],
	draw: number
): Workbook {
	const { workbook, plan } = columns;
	const base = baseOf(workbook).id;
	const values = columns.valuesOf(draws, draw);
	const entries: Entries = new Map();
	columns.driven.forEach(({ cell, id }, i) => {
		if (id !== columns.scenario) return;
		const quantity = quantityOf(plan.layout, cell)!.quantity.name;
		const at = membersOf(plan.layout, cell);
		// A scenario that is varied alone says so itself, so that none above it follows.
		const into = columns.alone ? id : inputAt(workbook, id, quantity, at).from;
		const scenario = entries.get(into) ?? new Map<string, ValueEntry[]>();
		entries.set(into, scenario);
		const own = scenario.get(quantity) ?? [];
		scenario.set(quantity, own);
		own.push({ at, value: scalarOf(plan, cell, values[i]!) });
	});
	const changed = entries.get(base);
	return {
		...workbook,
		sheets: changed
			? workbook.sheets.map((sheet) => ({
					...sheet,
					quantities: sheet.quantities.map((quantity) =>
						withEntries(quantity, changed.get(quantity.name))
					)
				}))
			: workbook.sheets,
		scenarios: workbook.scenarios.map((scenario) => {
			const own = scenario.id === base ? undefined : entries.get(scenario.id);
			return own ? changedScenario(scenario, own) : scenario;
		})
	};
}

/** A number as the engines carry it, as it is entered. */
export function scalarOf(plan: Plan, cell: number, value: number): Scalar {
	if (!Number.isFinite(value)) return null;
	const type = quantityOf(plan.layout, cell)?.quantity.type;
	if (type === 'yes_no') return value !== 0;
	if (typeof type === 'object')
		return plan.layout.sets.get(type.member_of)?.members[value]?.id ?? null;
	return value;
}

function withEntries(quantity: Quantity, entries: readonly ValueEntry[] | undefined): Quantity {
	if (!entries) return quantity;
	const { value: before, ...rest } = quantity;
	const value = withValues(before, entries);
	return value === undefined ? rest : { ...rest, value };
}

function changedScenario(
	scenario: Scenario,
	entries: ReadonlyMap<string, readonly ValueEntry[]>
): Scenario {
	const before = new Map(scenario.changes.map((change) => [change.quantity, change]));
	for (const [quantity, own] of entries) {
		const value: Values = withValues(before.get(quantity)?.value, own) ?? null;
		before.set(quantity, { ...before.get(quantity), quantity, value });
	}
	return { ...scenario, changes: [...before.values()] };
}
