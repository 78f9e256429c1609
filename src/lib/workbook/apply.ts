/**
 * The only door through which a workbook changes. A command makes a new workbook and the command that
 * takes it back, or says why not; the old workbook is never touched, and the two share what stayed.
 *
 * No edit leaves a workbook that could not be saved and opened again.
 */
import { edited, refused, type Command, type CommandProblem, type Edit } from './commands/command';
import { setInputs } from './commands/inputs';
import { structuralEdits, type StructuralCommand } from './commands/structural';
import { problemLine } from './consistency/findings';
import { findQuantity } from './lookup';
import { patchBetween, patched } from './patch';
import { ownPlan, withoutStrayPlans } from './plans';
import type { Workbook } from './schema';

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
	const result =
		unsound(workbook, edit.workbook, command.kind === 'set_plans') ?? done(workbook, edit.workbook);
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
function unsound(before: Workbook, after: Workbook, ofPlansAlone = false) {
	const structural = structuralEdits();
	if (!structural) return null;
	const find = ofPlansAlone ? structural.findPlanProblems : structural.findProblems;
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
function memberEdits(commands: readonly Command[], from: number): StructuralCommand[] {
	const run: StructuralCommand[] = [];
	for (let at = from; MEMBER_EDITS.has(commands[at]?.kind); at++)
		run.push(commands[at] as StructuralCommand);
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
function applyRun(before: Workbook, run: readonly StructuralCommand[]): CommandResult {
	let after = before;
	for (const command of run) {
		const edit = editOf(after, command);
		if (!edit.ok) return edit;
		after = edit.workbook;
	}
	return unsound(before, after) ?? done(before, after);
}

/** Says what a patch would have changed, and that it is another thing by now. */
function changedSince(workbook: Workbook, path: readonly string[]): string {
	const quantity = path.map((part) => findQuantity(workbook, part)).find(Boolean);
	const what = quantity?.label ?? path.at(-1) ?? 'what it changed';
	return `${what} has been changed or removed since. Change it by hand if you still want to.`;
}

/** What leads back is applied here; the rest by what is fetched after the first numbers, and until then by nothing. */
function editOf(
	workbook: Workbook,
	command: Exclude<Command, { kind: 'set_inputs' | 'several' }>
): Edit {
	if (command.kind === 'patch') {
		const made = patched(workbook, command.patch);
		return 'workbook' in made
			? edited(made.workbook)
			: refused('changed-since', changedSince(workbook, made.changed));
	}
	return (
		structuralEdits()?.edit(workbook, command) ??
		refused(
			'still-fetching',
			'What changes more than a value is still being fetched. Try again in a moment.'
		)
	);
}

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
