/** What one more member of a set calls for beside itself: asked with its copy, and entered where that copy alone stands. */
import type { Layout, QuantityLayout } from '$lib/engine/layout';
import type { UnitSystem } from '$lib/units/system';
import type { Command, InputEntry } from '$lib/workbook/commands';
import { baseOf } from '$lib/workbook/lookup';
import { inputAt } from '$lib/workbook/scenario';
import type { SetDefinition, Workbook } from '$lib/workbook/schema';
import { readEntry, type FieldSpec } from '../entry';
import { fieldSpec } from '../field';
import { formatInFull } from '../format';
import { texts } from './texts';

/** The quantities that are asked for, in the set's own order. */
export const askedWith = (layout: Layout | null, set: SetDefinition): readonly QuantityLayout[] =>
	(set.comes_with ?? []).flatMap((name) => layout?.byName.get(name) ?? []);

/** What holds while a field stays empty: the scenario starts from the base. */
export function standing(workbook: Workbook, { quantity }: QuantityLayout, locale: string): string {
	const { value } = inputAt(workbook, baseOf(workbook).id, quantity.name, []);
	return typeof value === 'number' ? formatInFull(value, locale) : '';
}

export interface Reader {
	readonly workbook: Workbook;
	readonly layout: Layout;
	readonly units: UnitSystem;
	readonly locale: string;
}

/** What its field takes, of what holds while it stays empty. */
export function askedSpec(
	{ workbook, layout, units, locale }: Reader,
	quantity: QuantityLayout
): FieldSpec {
	const { value } = inputAt(workbook, baseOf(workbook).id, quantity.quantity.name, []);
	return {
		...fieldSpec(layout, quantity, units, locale),
		stands: typeof value === 'number' ? value : null
	};
}

/** The entry of all that was typed, or a sentence on the first that cannot be read. An empty field enters nothing. */
export function enterWith(
	reader: Reader,
	scenario: string,
	asked: readonly QuantityLayout[],
	typed: Readonly<Record<string, string>>
): Command[] | string {
	const entries: InputEntry[] = [];
	for (const quantity of asked) {
		const text = typed[quantity.quantity.name]?.trim() ?? '';
		if (text === '') continue;
		const entry = readEntry(text, askedSpec(reader, quantity));
		if (!entry.ok) return texts.unread(quantity.quantity.label, entry.message);
		entries.push({ quantity: quantity.quantity.name, at: [], value: entry.value });
	}
	return entries.length === 0 ? [] : [{ kind: 'set_inputs', scenario, entries }];
}
