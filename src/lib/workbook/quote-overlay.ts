/**
 * A quote over a workbook: its entries as the changes of one more scenario, which stands on the one that quotes stand
 * on and is never in the workbook itself. So no entry on a quote can reach the plant or what a customer has, every rule
 * of inputs and scenarios holds for quotes as it is, and the engine computes what the entries reach and nothing else.
 */
import { axesOf } from './axes';
import { findQuantity, findScenario, findSet, memberPlaces, quotesStandOn } from './lookup';
import type { QuoteEntry } from './quote-list-schema';
import type { Change, Values, Workbook } from './schema';
import { withValues, type ValueEntry } from './values';

export interface Overlaid {
	readonly workbook: Workbook;
	/** Of the scenario that is only here. */
	readonly id: string;
	/** What the entries name and the workbook has no more: a quantity, or a member. */
	readonly gone: readonly string[];
}

export function overlaid(
	workbook: Workbook,
	entries: readonly QuoteEntry[],
	parent = quotesStandOn(workbook),
	title = 'Quote'
): Overlaid {
	let id = 'quoted';
	while (findScenario(workbook, id)) id += '_';
	const gone = new Set<string>();
	const found = new Map<string, ValueEntry[]>();
	for (const entry of entries) {
		const lost = lostOf(workbook, entry);
		if (lost !== null) {
			gone.add(lost);
			continue;
		}
		const list = found.get(entry.quantity) ?? [];
		found.set(entry.quantity, [...list, { at: entry.at ?? [], value: entry.value }]);
	}
	const changes = [...found].flatMap(([quantity, list]): Change[] => {
		const value: Values | undefined = withValues(undefined, list);
		return value === undefined ? [] : [{ quantity, value }];
	});
	const against = findScenario(workbook, parent)?.against;
	const scenario = { id, title, parent, ...(against !== undefined && { against }), changes };
	return {
		...{ id, gone: [...gone] },
		workbook: { ...workbook, scenarios: [...workbook.scenarios, scenario] }
	};
}

/** The name that the workbook has no more; null where everything is there. */
function lostOf(workbook: Workbook, { quantity: name, at = [], value }: QuoteEntry): string | null {
	const quantity = findQuantity(workbook, name);
	if (!quantity || quantity.fixed) return quantity?.label ?? name;
	const axes = axesOf(quantity);
	if (axes.length !== at.length) return quantity.label;
	const has = (set: string | undefined, id: string) => {
		const found = set === undefined ? undefined : findSet(workbook, set);
		return found !== undefined && memberPlaces(found).has(id);
	};
	const lost = at.find((id, i) => !has(axes[i]?.set, id));
	if (lost !== undefined) return lost;
	const { type } = quantity;
	if (value === null) return null;
	if (typeof type === 'object')
		return typeof value === 'string' && has(type.member_of, value) ? null : String(value);
	return typeof value === (type === 'yes_no' ? 'boolean' : 'number') ? null : quantity.label;
}

/** The entries with one more, in place of the one that stood at its cell. */
export function withEntries(
	entries: readonly QuoteEntry[],
	more: readonly QuoteEntry[]
): QuoteEntry[] {
	const placeOf = ({ quantity, at = [] }: QuoteEntry) => JSON.stringify([quantity, ...at]);
	const next = new Map(entries.map((entry) => [placeOf(entry), entry]));
	for (const entry of more) next.set(placeOf(entry), entry);
	return [...next.values()];
}
