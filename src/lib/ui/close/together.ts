/** The files of a month as one edit: one step to undo, and one computation. */
import { changeKey } from '$lib/exchange/table/look';
import type { Brought } from '$lib/exchange/table/settle';
import { applyCommand, type Command, type InputEntry } from '$lib/workbook/apply';
import type { Workbook } from '$lib/workbook/schema';
import { texts } from './texts';

export interface Enters {
	readonly name: string;
	/** What of it goes in. */
	readonly changes: readonly Brought[];
	/** Whether its edit brings along what is said of quantities' sources, and so rests on what stands there. */
	readonly isLog: boolean;
	/** Its edit, made from a workbook. */
	readonly commands: (workbook: Workbook) => readonly Command[];
}

export type Together =
	| { readonly ok: true; readonly commands: readonly Command[] }
	| { readonly ok: false; readonly message: string };

export function together(files: readonly Enters[], workbook: Workbook): Together {
	const twice = givenTwice(files);
	if (twice) return { ok: false, message: twice };
	const commands: Command[] = [];
	let before = workbook;
	// A log brings its quantities whole: it goes first, and each on what the one before left.
	const logs = files.filter(({ isLog }) => isLog);
	for (const log of logs) {
		const own = log.commands(before);
		commands.push(...own);
		if (log === logs.at(-1)) break;
		const made = applyCommand(before, { kind: 'several', commands: own });
		if (!made.ok) return { ok: false, message: made.problem.message };
		before = made.workbook;
	}
	for (const file of files) if (!file.isLog) commands.push(...file.commands(workbook));
	return { ok: true, commands: entriesJoined(commands) };
}

/** One value of two files that say another thing of it: nobody knows which of them is meant. */
function givenTwice(files: readonly Enters[]): string | null {
	const given = new Map<string, { readonly name: string; readonly change: Brought }>();
	for (const { name, changes } of files)
		for (const change of changes) {
			const key = changeKey(change);
			const before = given.get(key);
			if (before && before.change.after !== change.after)
				return texts.givenTwice(
					[change.quantity.label, ...change.at].join(', '),
					before.name,
					name
				);
			given.set(key, { name, change });
		}
	return null;
}

/** Values that follow one another in a scenario are one command. */
function entriesJoined(commands: readonly Command[]): Command[] {
	const joined: Command[] = [];
	for (const command of commands) {
		const last = joined.at(-1);
		if (
			command.kind === 'set_inputs' &&
			last?.kind === 'set_inputs' &&
			last.scenario === command.scenario
		)
			joined[joined.length - 1] = {
				...last,
				entries: lastSaid([...last.entries, ...command.entries])
			};
		else joined.push(command);
	}
	return joined;
}

/** A file that is taken twice says everything twice. */
const lastSaid = (entries: readonly InputEntry[]): InputEntry[] => [
	...new Map(
		entries.map((entry) => [JSON.stringify([entry.quantity, ...entry.at]), entry])
	).values()
];
