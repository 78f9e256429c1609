/**
 * What one more member of a set calls for, or what a member could be otherwise: asked in a form, and entered in the scenario in
 * which that member alone stands, or alone is so. A number of no set, as an outlay, or one of the member, as its speed; or a
 * choice, as the month from which it runs.
 */
import { cellAt, type Layout, type QuantityLayout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { OK } from '$lib/engine/state';
import type { UnitSystem } from '$lib/units/system';
import type { Command, InputEntry } from '$lib/workbook/commands';
import { baseOf } from '$lib/workbook/lookup';
import { inputAt } from '$lib/workbook/scenario';
import type { SetDefinition, Workbook } from '$lib/workbook/schema';
import { idFrom } from '../scenarios/words';
import { choiceSet } from '../cells';
import { readEntry, type FieldSpec } from '../entry';
import { fieldSpec } from '../field';
import { formatInFull } from '../format';
import { texts } from './texts';

/** The quantities that are asked for, in the set's own order. */
export const askedWith = (layout: Layout | null, set: SetDefinition): readonly QuantityLayout[] =>
	(set.comes_with ?? []).flatMap((name) => layout?.byName.get(name) ?? []);

/** Whether it is of the member itself, and so something that the member could be otherwise. */
export const isOfMember = ({ axes }: QuantityLayout): boolean => axes.length > 0;

export interface Reader {
	readonly workbook: Workbook;
	readonly layout: Layout;
	readonly units: UnitSystem;
	readonly locale: string;
	/** The values of the base, where they are there. */
	readonly results: Results | undefined;
	/** The member that it is like, or that is to be otherwise. */
	readonly like: string;
}

/** What holds while a field stays empty: what is entered, else what a formula takes in place of an empty one. */
function held({ workbook, layout, results, like }: Reader, place: QuantityLayout): number | null {
	const at = isOfMember(place) ? [like] : [];
	const { value } = inputAt(workbook, baseOf(workbook).id, place.quantity.name, at);
	if (typeof value === 'number') return value;
	if (at.length === 0 || !results) return null;
	const instead = layout.quantities.find(({ quantity, axes }) => {
		const { formula } = quantity;
		return (
			axes.length === 1 &&
			axes[0]!.set === place.axes[0]!.set &&
			quantity.unit === place.quantity.unit &&
			typeof formula === 'string' &&
			formula.startsWith(`IFERROR(${place.quantity.name};`)
		);
	});
	const ordinal = layout.ordinals.get(place.axes[0]!.set)?.get(like) ?? -1;
	const cell = instead ? cellAt(instead, [ordinal]) : -1;
	return cell >= 0 && results.states[cell] === OK ? results.values[cell]! : null;
}

/** Of a choice: what it is between. */
export const choicesFor = ({ layout }: Reader, place: QuantityLayout): readonly Choice[] => {
	const set = choiceSet(layout, place);
	return (set?.members ?? []).map(({ id, label }) => ({ id, label: label ?? id }));
};

interface Choice {
	readonly id: string;
	readonly label: string;
}

/** The same in words, empty where nothing does. */
export function standing(reader: Reader, place: QuantityLayout): string {
	const choices = choicesFor(reader, place);
	if (choices.length > 0) {
		const { workbook, like } = reader;
		const at = isOfMember(place) ? [like] : [];
		const { value } = inputAt(workbook, baseOf(workbook).id, place.quantity.name, at);
		return choices.find(({ id }) => id === value)?.label ?? '';
	}
	const value = held(reader, place);
	return value === null ? '' : formatInFull(value, reader.locale);
}

/** What its field takes, of what holds while it stays empty. */
export function askedSpec(reader: Reader, place: QuantityLayout): FieldSpec {
	const { layout, units, locale } = reader;
	return { ...fieldSpec(layout, place, units, locale), stands: held(reader, place) };
}

/** The entry of all that was typed for a member, or a sentence on the first that cannot be read. An empty field enters nothing. */
export function enterWith(
	reader: Reader,
	where: { readonly scenario: string; readonly member: string },
	asked: readonly QuantityLayout[],
	typed: Readonly<Record<string, string>>
): Command[] | string {
	const entries: InputEntry[] = [];
	for (const place of asked) {
		const text = typed[place.quantity.name]?.trim() ?? '';
		if (text === '') continue;
		const entry = readEntry(text, askedSpec(reader, place));
		if (!entry.ok) return texts.unread(place.quantity.label, entry.message);
		const at = isOfMember(place) ? [where.member] : [];
		entries.push({ quantity: place.quantity.name, at, value: entry.value });
	}
	return entries.length === 0 ? [] : [{ kind: 'set_inputs', scenario: where.scenario, entries }];
}

/** A new scenario in which a member is otherwise, and nothing else is; or a sentence. `scenario` is the one to show. */
export function otherwise(
	reader: Reader,
	title: string,
	asked: readonly QuantityLayout[],
	typed: Readonly<Record<string, string>>
): { readonly scenario: string; readonly commands: readonly Command[] } | string {
	const { workbook, like } = reader;
	const ids = new Set(workbook.scenarios.map(({ id }) => id));
	const scenario = idFrom(title, ids, 'scenario');
	const entries = enterWith(reader, { scenario, member: like }, asked, typed);
	if (typeof entries === 'string') return entries;
	if (entries.length === 0) return texts.nothingOtherwise(like);
	const parent = baseOf(workbook).id;
	const made: Command = {
		...{ kind: 'add_scenario', index: workbook.scenarios.length },
		scenario: { id: scenario, title, parent, changes: [] }
	};
	return { scenario, commands: [made, ...entries] };
}
