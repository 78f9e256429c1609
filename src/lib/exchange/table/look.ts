/**
 * The look before anything is entered: what a file would change, with what is doubted, what is unknown and what is
 * left out, once the members are as a person decided.
 */
import { layOut, type Layout } from '$lib/engine/layout';
import { applyCommand, type Command } from '$lib/workbook/commands';
import { axesOf } from '$lib/workbook/axes';
import { findSet } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import type { Grid } from './grid';
import { importTable, type ImportTable, type UnknownMember } from './import-table';
import { doubts, type TypicalEntries } from './implausible';
import type { Mapping } from './mapping';
import { memberCommands, unknownKey, type MemberChoices } from './new-members';
import { commandsOf, keyOf, type Brought } from './settle';

export interface Look extends ImportTable {
	/** Why a change is doubted: it is entered only if a person says so. */
	readonly doubted: ReadonlyMap<Brought, string>;
	/** Members that the file names none of its rows for, of sets that have a column. */
	readonly missing: readonly { readonly set: string; readonly ids: readonly string[] }[];
	/** Headings of columns that are not taken. */
	readonly leftOut: readonly string[];
	/** Makes the members as decided; first of all that is done. */
	readonly before: readonly Command[];
}

export type Looked =
	{ readonly ok: true; readonly look: Look } | { readonly ok: false; readonly message: string };

/** `unknown` are the names that no member had before anything was decided, where an earlier look found them. */
export function lookOver(
	grid: Grid,
	mapping: Mapping,
	choices: MemberChoices,
	layout: Layout,
	told?: (share: number) => void,
	unknown?: readonly UnknownMember[],
	typical?: TypicalEntries
): Looked {
	const before = memberCommands(choices, layout.workbook);
	let laid = layout;
	if (before.length > 0) {
		const made = applyCommand(layout.workbook, { kind: 'several', commands: before });
		if (!made.ok) return { ok: false, message: made.problem.message };
		laid = layOut(made.workbook);
	}
	const table = importTable(grid, mapping, laid, told);
	return {
		ok: true,
		look: {
			...table,
			// One that is decided of stays in the list, so that it can be decided otherwise.
			unknown:
				before.length > 0
					? (unknown ?? importTable(grid, mapping, layout, told).unknown)
					: table.unknown,
			doubted: doubts(table.changes, laid.workbook, typical, copiedIn(before)),
			missing: missingMembers(mapping, table, choices, layout.workbook),
			leftOut: leftOut(grid, mapping, laid),
			before
		}
	};
}

/** Whether a value stands only because its member begins with those of another. */
function copiedIn(commands: readonly Command[]): (change: Brought) => boolean {
	const copies = new Set(
		commands.flatMap((one) =>
			one.kind === 'add_member' && one.like !== undefined
				? [unknownKey(one.set, one.member.id)]
				: []
		)
	);
	return ({ quantity, at }) =>
		axesOf(quantity).some(({ set }, axis) => copies.has(unknownKey(set, at[axis] ?? '')));
}

/** Columns that hold nothing to enter, and those that name members of no quantity that comes in. */
function leftOut({ head }: Grid, { quantity, columns }: Mapping, { byName }: Layout): string[] {
	// What a column that is still asked about holds may be of the members that another names.
	const named = columns.some(({ meaning }) => meaning.is === 'quantity' || meaning.is === 'asked');
	const axes = columns.flatMap(({ meaning }) =>
		meaning.is === 'value' ? (byName.get(meaning.quantity ?? quantity ?? '')?.axes ?? []) : []
	);
	const isUsed = (of: string) => axes.some(({ name, set }) => name === of || set === of);
	return columns.flatMap(({ meaning }, column) => {
		const is =
			meaning.is === 'nothing' || (meaning.is === 'member' && !named && !isUsed(meaning.of));
		return is && head[column] ? [head[column]] : [];
	});
}

/** Those that are chosen to go are among them, so that they can be chosen to stay. */
function missingMembers(
	{ columns }: Mapping,
	{ named }: ImportTable,
	{ unknown }: MemberChoices,
	workbook: Workbook
) {
	const renamed = new Set(
		[...unknown.values()].flatMap((decision) => (decision.as === 'renamed' ? [decision.from] : []))
	);
	return columns.flatMap(({ meaning }) => {
		const set = meaning.is === 'member' ? findSet(workbook, meaning.of) : undefined;
		const known = set && named.get(set.name);
		if (!set || !known) return [];
		const ids = set.members.flatMap(({ id }) => (known.has(id) || renamed.has(id) ? [] : [id]));
		return ids.length > 0 ? [{ set: set.name, ids }] : [];
	});
}

/** A change as a person ticks it, whatever else is decided meanwhile. */
export const changeKey = ({ scenario, quantity, at }: Brought) =>
	keyOf(scenario, quantity.name, at);

/** All that is not doubted, and what of it is accepted. */
export const acceptedChanges = (
	{ changes, doubted }: Pick<Look, 'changes' | 'doubted'>,
	accepted: ReadonlySet<string>
) => changes.filter((change) => !doubted.has(change) || accepted.has(changeKey(change)));

/** What is entered, as one edit: members first, then their values. */
export const acceptedCommands = (look: Look, accepted: ReadonlySet<string>): Command[] => [
	...look.before,
	...commandsOf(acceptedChanges(look, accepted))
];
