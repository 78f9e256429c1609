/** A list as its form has it, and the command that keeps it. */
import type { Command } from '$lib/workbook/commands';
import type { SetDefinition, Workbook } from '$lib/workbook/schema';
import { nameFromLabel } from '../editor/draft';
import { texts } from './texts';

export interface SetDraft {
	readonly name: string;
	readonly label: string;
	readonly plural: string;
	readonly numberUnit: string;
	readonly note: string;
	/** Its members are months, one after the other. */
	readonly isMonths: boolean;
}

export const draftOf = (set: SetDefinition | null): SetDraft => ({
	name: set?.name ?? '',
	label: set?.label ?? '',
	plural: set?.plural ?? '',
	numberUnit: set?.number_unit ?? '',
	note: set?.note ?? '',
	isMonths: set?.time !== undefined
});

/** `before`: the list as it is, null for a new one, which goes behind the others. A string says what is missing. */
export function keepSet(
	{ sets }: Workbook,
	before: SetDefinition | null,
	draft: SetDraft
): Command | string {
	const label = draft.label.trim();
	if (label === '') return texts.setLacksLabel;
	const more = {
		...(draft.plural.trim() && { plural: draft.plural.trim() }),
		...(draft.numberUnit.trim() && { number_unit: draft.numberUnit.trim() }),
		...(draft.note.trim() && { note: draft.note.trim() })
	};
	const { isMonths } = draft;
	if (before)
		return {
			...{ kind: 'describe_set', set: before.name, label, ...more },
			...(isMonths !== (before.time !== undefined) && { time: isMonths ? 'month' : null })
		};
	const name = draft.name.trim() || nameFromLabel(label);
	if (name === '') return texts.setLacksName;
	return {
		kind: 'add_set',
		index: sets.length,
		set: { name, label, ...more, ...(isMonths && { time: 'month' }), members: [] }
	};
}
