/** An entry of the first hour: what is typed is one's own, even where it is the typical value. */
import { applyCommand, type Command } from '$lib/workbook/commands';
import { arranged } from '$lib/workbook/begin/arrange';
import { isTypical } from '$lib/workbook/begin/typical';
import { settled } from '$lib/workbook/begin/settle';
import { axesOf } from '$lib/workbook/axes';
import { baseOf, findQuantity, findSet } from '$lib/workbook/lookup';
import type { Quantity, Scalar, Workbook } from '$lib/workbook/schema';
import { valueAt } from '$lib/workbook/values';
import { mineTick } from '$lib/review/template';

export interface OwnEntry {
	readonly quantity: string;
	readonly at: readonly string[];
	readonly value: Scalar;
}

/** One step of undo: the entries, what says that they are one's own, and typical values of whatever is nearer now. */
export function ownEntryCommands(
	workbook: Workbook,
	template: Workbook,
	entries: readonly OwnEntry[]
): Command[] {
	const scenario = baseOf(workbook).id;
	const changed = entries.filter(
		({ quantity, at, value }) => valueAt(findQuantity(workbook, quantity)?.value, at) !== value
	);
	const commands: Command[] =
		changed.length > 0 ? [{ kind: 'set_inputs', scenario, entries: changed }] : [];
	const applied = applyCommand(workbook, { kind: 'several', commands });
	// Refused in the words of the entry itself.
	if (!applied.ok) return commands;
	const after = applied.workbook;
	const ticks = ticksOf(after, template, entries);
	if (ticks.length > 0) commands.push({ kind: 'set_ticks', ticks });
	let now = after;
	for (const { set, id } of toSettle(after, changed)) {
		const more = settled(now, template, { set, id, isMine: isTicked(template, now, ticks) });
		const next = applyCommand(now, { kind: 'several', commands: more });
		if (!next.ok) continue;
		now = next.workbook;
		commands.push(...more);
	}
	return commands;
}

/** A list that comes in, with what follows from it: what it gives is one's own, even where it is the typical value. */
export function broughtIn(
	workbook: Workbook,
	template: Workbook,
	commands: readonly Command[]
): readonly Command[] {
	const all = arranged(workbook, template, commands);
	const applied = applyCommand(workbook, { kind: 'several', commands: all });
	if (!applied.ok) return all;
	const given = commands.flatMap((command) =>
		command.kind === 'set_inputs' ? command.entries : []
	);
	const ticks = ticksOf(
		applied.workbook,
		template,
		given.map(({ quantity, at, value = null }) => ({ quantity, at, value }))
	);
	return ticks.length > 0 ? [...all, { kind: 'set_ticks', ticks }] : all;
}

/** Of entries that would otherwise be taken for typical values. */
const ticksOf = (workbook: Workbook, template: Workbook, entries: readonly OwnEntry[]) =>
	entries.flatMap(({ quantity: name, at, value }) => {
		const quantity = findQuantity(workbook, name);
		return quantity && value !== null && isTypical(workbook, template, quantity, at, value)
			? [mineTick(quantity, at, template)]
			: [];
	});

/** What says of entries that they are right as they stand: one step, however many. */
export function mineCommand(
	workbook: Workbook,
	template: Workbook,
	entries: readonly Pick<OwnEntry, 'quantity' | 'at'>[]
): Command[] {
	const ticks = entries.flatMap(({ quantity: name, at }) => {
		const quantity = findQuantity(workbook, name);
		return quantity ? [mineTick(quantity, at, template)] : [];
	});
	return ticks.length > 0 ? [{ kind: 'set_ticks', ticks }] : [];
}

/** Members whose nearest shipped one may be another now. */
function toSettle(workbook: Workbook, entries: readonly OwnEntry[]) {
	const found = new Map<string, { set: string; id: string }>();
	for (const { quantity: name, at } of entries)
		axesOf(findQuantity(workbook, name) ?? { name, label: name }).forEach(({ set }, i) => {
			const id = at[i] ?? '';
			if (findSet(workbook, set)?.own?.near?.includes(name)) found.set(`${set} ${id}`, { set, id });
		});
	return found.values();
}

function isTicked(
	template: Workbook,
	workbook: Workbook,
	more: readonly { id: string; of: string }[]
) {
	const ticks = new Set([...(workbook.reviewed ?? []), ...more].map(({ id, of }) => `${id} ${of}`));
	return (quantity: Quantity, at: readonly string[]): boolean => {
		const { id, of } = mineTick(quantity, at, template);
		return ticks.has(`${id} ${of}`);
	};
}
