/**
 * Names in a file that the workbook has not, and members that the file leaves out: what a person decides of each,
 * as commands. Nothing is decided here.
 */
import type { Command } from '$lib/workbook/commands';
import { findSet } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';

export type Decision =
	| { readonly as: 'left_out' }
	/** Empty, or with the values and pairs of another one; called in words as the file does. */
	| { readonly as: 'new'; readonly like: string | null; readonly label?: string }
	/** A member's new name. */
	| { readonly as: 'renamed'; readonly from: string };

export interface MemberChoices {
	/** By `unknownKey`; those that are not among them are left out. */
	readonly unknown: ReadonlyMap<string, Decision>;
	/** Members that go with everything that is entered for them, by `unknownKey` too. */
	readonly removed: ReadonlySet<string>;
}

export const NO_CHOICES: MemberChoices = { unknown: new Map(), removed: new Set() };

/** As they are at this moment. */
export const choicesOf = (
	unknown: Iterable<readonly [string, Decision]>,
	removed: Iterable<string>
): MemberChoices => ({ unknown: new Map(unknown), removed: new Set(removed) });

export const unknownKey = (set: string, text: string) => `${set}\u0001${text}`;
const parted = (key: string): [set: string, text: string] => {
	const at = key.indexOf('\u0001');
	return [key.slice(0, at), key.slice(at + 1)];
};

/** In this order: a name may be free only once a member has lost it, and who begins like one that is renamed begins like it under its new name. */
export function memberCommands({ unknown, removed }: MemberChoices, workbook: Workbook): Command[] {
	const commands: Command[] = [];
	const each = [...unknown].map(([key, decision]) => [...parted(key), decision] as const);
	for (const [set, id, decision] of each) {
		if (decision.as !== 'renamed') continue;
		const member = findSet(workbook, set)?.members.find((one) => one.id === decision.from);
		if (member)
			commands.push({ kind: 'replace_member', set, id: member.id, member: { ...member, id } });
	}
	const renamed = (set: string, from: string) =>
		each.find(([of, , one]) => of === set && one.as === 'renamed' && one.from === from)?.[1] ??
		from;
	for (const [set, id, decision] of each) {
		if (decision.as !== 'new') continue;
		const index = findSet(workbook, set)?.members.length ?? 0;
		commands.push({
			kind: 'add_member',
			set,
			index: index + commands.length,
			member: { id, ...(decision.label && { label: decision.label }) },
			...(decision.like !== null && { like: renamed(set, decision.like) })
		});
	}
	for (const key of removed) {
		const [set, id] = parted(key);
		commands.push({ kind: 'remove_member', set, id, also: true });
	}
	return commands;
}
