/**
 * The only door through which a workbook changes. A command makes a new workbook and the command that
 * takes it back, or says why not; the old workbook is never touched, and the two share what stayed.
 *
 * No edit leaves a workbook that could not be saved and opened again.
 */
import { findPlanProblems, findProblems } from './consistency';
import { problemLine } from './consistency/findings';
import { editCalibration } from './commands/calibrations';
import { noteChange } from './commands/change-notes';
import type { Command, CommandProblem, Edit } from './commands/command';
import { editFrozen } from './commands/frozen';
import { setInputs } from './commands/inputs';
import { editMember } from './commands/members';
import { editQuantity } from './commands/quantities';
import { shapeRefusal } from './commands/refusal';
import { edited, refused } from './commands/command';
import { editProgramme } from './commands/programmes';
import { editQuote } from './commands/quotes';
import { editScenario } from './commands/scenarios';
import { editSet } from './commands/sets';
import { editSheet } from './commands/sheets';
import { editStudy } from './commands/studies';
import { editTable } from './commands/tables';
import { setTicks } from './commands/ticks';
import { findQuantity } from './lookup';
import { patchBetween, patched } from './patch';
import { ownPlan, withoutStrayPlans } from './plans';
import { workbookSchema, type Workbook } from './schema';
import { shown } from './shown';

export type { Command, CommandProblem, InputEntry } from './commands/command';

export type CommandResult =
	| {
			readonly ok: true;
			readonly workbook: Workbook;
			/** Applied to the new workbook, it gives the old one. */
			readonly inverse: Command;
	  }
	| { readonly ok: false; readonly problem: CommandProblem };

export function applyCommand(workbook: Workbook, command: Command): CommandResult {
	if (command.kind === 'set_inputs') return setInputs(workbook, command);
	if (command.kind === 'several') return applyAll(workbook, command.commands);
	const edit = editOf(workbook, command);
	if (!edit.ok || command.kind === 'patch') return edit.ok ? done(workbook, edit.workbook) : edit;
	const find = command.kind === 'set_plans' ? findPlanProblems : findProblems;
	const result = unsound(workbook, edit.workbook, find) ?? done(workbook, edit.workbook);
	return result.ok && command.kind === 'set_plans'
		? withPlansBefore(workbook, command, result)
		: result;
}

/** Plans are made anew between a step and its undo, which a patch would not fit: what stood there is given back whole. */
function withPlansBefore(
	before: Workbook,
	{ plans }: Extract<Command, { kind: 'set_plans' }>,
	result: Extract<CommandResult, { ok: true }>
): CommandResult {
	const earlier = plans.map(({ programme, scenario }) => ownPlan(before, programme, scenario));
	// One that went would come back at another place of the list, and a first one has nothing to give back.
	if (!plans.every((plan, at) => 'values' in plan && earlier[at])) return result;
	return {
		...result,
		inverse: { kind: 'set_plans', plans: earlier.flatMap((plan) => plan ?? []) }
	};
}

/** What was wrong before must not keep anyone from mending it. */
function unsound(before: Workbook, after: Workbook, find: typeof findProblems) {
	const problems = find(after);
	const problem = problems[0];
	return problem && problems.length > find(before).length
		? refused(problem.code, sentence(problemLine(problem)))
		: null;
}

function done(before: Workbook, edited: Workbook): CommandResult {
	const after = withoutStrayPlans(edited);
	const back = patchBetween(after, before);
	if (!back) return { ok: true, workbook: before, inverse: NOTHING };
	return { ok: true, workbook: after, inverse: { kind: 'patch', patch: back } };
}

/** Its own inverse. */
const NOTHING: Command = { kind: 'several', commands: [] };

function applyAll(before: Workbook, commands: readonly Command[]): CommandResult {
	let workbook = before;
	const inverses: Command[] = [];
	for (let at = 0; at < commands.length;) {
		const run = memberEdits(commands, at);
		const result = run.length > 1 ? applyRun(workbook, run) : applyCommand(workbook, commands[at]!);
		if (!result.ok) return result;
		workbook = result.workbook;
		inverses.unshift(result.inverse);
		at += Math.max(run.length, 1);
	}
	return { ok: true, workbook, inverse: { kind: 'several', commands: inverses } };
}

/** Edits of members and pairs that follow each other. */
function memberEdits(commands: readonly Command[], from: number): SingleEdit[] {
	const run: SingleEdit[] = [];
	for (let at = from; MEMBER_EDITS.has(commands[at]?.kind); at++)
		run.push(commands[at] as SingleEdit);
	return run;
}

const MEMBER_EDITS: ReadonlySet<Command['kind'] | undefined> = new Set([
	'add_member',
	'remove_member',
	'replace_member',
	'move_member',
	'set_relation_pair'
]);

/** Hundreds of members or pairs at once are checked once. */
function applyRun(before: Workbook, run: readonly SingleEdit[]): CommandResult {
	let after = before;
	for (const command of run) {
		const edit = editOf(after, command);
		if (!edit.ok) return edit;
		after = edit.workbook;
	}
	return unsound(before, after, findProblems) ?? done(before, after);
}

/** One edit, checked as a whole afterwards. */
type SingleEdit = Exclude<Command, { kind: 'set_inputs' | 'several' }>;

function editOf(workbook: Workbook, command: SingleEdit): Edit {
	switch (command.kind) {
		case 'add_quantity':
		case 'replace_quantity':
		case 'remove_quantity':
		case 'move_quantity':
			return editQuantity(workbook, command);
		case 'add_sheet':
		case 'rename_sheet':
		case 'remove_sheet':
		case 'move_sheet':
			return editSheet(workbook, command);
		case 'add_set':
		case 'describe_set':
		case 'remove_set':
			return editSet(workbook, command);
		case 'add_member':
		case 'remove_member':
		case 'replace_member':
		case 'move_member':
		case 'set_relation_pair':
			return editMember(workbook, command);
		case 'add_scenario':
		case 'replace_scenario':
		case 'remove_scenario':
		case 'move_scenario':
		case 'promote_scenario':
		case 'quote_on':
			return editScenario(workbook, command);
		case 'put_study':
		case 'remove_study':
		case 'set_ran':
			return editStudy(workbook, command);
		case 'put_programme':
		case 'remove_programme':
		case 'set_plans':
			return editProgramme(workbook, command);
		case 'put_table':
		case 'remove_table':
			return editTable(workbook, command);
		case 'put_calibration':
		case 'remove_calibration':
			return editCalibration(workbook, command);
		case 'add_frozen':
		case 'describe_frozen':
		case 'remove_frozen':
			return editFrozen(workbook, command);
		case 'put_quote':
		case 'remove_quote':
		case 'set_letterhead':
			return editQuote(workbook, command);
		case 'note_change':
			return noteChange(workbook, command);
		case 'set_ticks':
			return setTicks(workbook, command);
		case 'set_title': {
			const { title } = command;
			const bad = shapeRefusal(workbookSchema.shape.title, title, "The workbook's title");
			return bad ?? edited({ ...workbook, title });
		}
		case 'set_about': {
			const { about: _about, ...rest } = workbook;
			const bad = shapeRefusal(workbookSchema.shape.about, command.about, 'The description');
			if (bad) return bad;
			return edited(command.about === undefined ? rest : { ...workbook, about: command.about });
		}
		case 'set_invented': {
			const { invented, ...rest } = workbook;
			if ((invented ?? false) === command.invented) return edited(workbook);
			return edited(command.invented ? { ...workbook, invented: true } : rest);
		}
		case 'patch': {
			const made = patched(workbook, command.patch);
			return 'workbook' in made
				? edited(made.workbook)
				: refused('changed-since', changedSince(workbook, made.changed));
		}
		default:
			return unknownCommand(command);
	}
}

/** Says what a patch would have changed, and that it is another thing by now. */
function changedSince(workbook: Workbook, path: readonly string[]): string {
	const quantity = path.map((part) => findQuantity(workbook, part)).find(Boolean);
	const what = quantity?.label ?? path.at(-1) ?? 'what it changed';
	return `${what} has been changed or removed since. Change it by hand if you still want to.`;
}

/** What a browser kept may come from a newer version, with commands that this one does not know. */
function unknownCommand(command: never): Edit {
	const { kind } = command as { readonly kind?: unknown };
	const named = kind === undefined ? '' : ` of the kind "${shown(String(kind))}"`;
	return refused(
		'unknown-command',
		`There is no edit${named} in this version. Update the app, then try again.`
	);
}

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
