/**
 * Undo and redo: a workbook with the commands that made it and those that take them back.
 *
 * A history is a value, like the workbook; every step gives a new one. What is selected or unfolded on a
 * screen is no part of it.
 */
import { applyCommand, type Command, type CommandProblem } from './apply';
import { structuralEdits } from './commands/structural';
import { problemLine } from './consistency/findings';
import { describeCommand } from './describe';
import { isOrderAlone, patchBetween } from './patch';
import type { Workbook } from './schema';

export interface Step {
	/** Brings the workbook from before to after. */
	readonly command: Command;
	/** And back. */
	readonly inverse: Command;
	/** "resin price: 1.95 to 2.10 EUR/kg" */
	readonly label: string;
	/** Others have changed the workbook since: it may no longer fit. */
	readonly isRebased?: true;
}

export interface History {
	readonly workbook: Workbook;
	/** Oldest first. */
	readonly past: readonly Step[];
	/** The next to redo first. */
	readonly future: readonly Step[];
}

/** One step taken, with what those who follow along need: the command that was in fact applied. */
export interface Taken {
	readonly ok: true;
	readonly history: History;
	readonly command: Command;
}
export type StepResult = Taken | { readonly ok: false; readonly problem: CommandProblem };

/** Steps that are kept; structure is shared, so each costs about what it changed. */
export const MOST_STEPS = 1000;

export const historyOf = (workbook: Workbook): History => ({ workbook, past: [], future: [] });

/** Does a command. What had been undone can no longer be redone. */
export function doCommand(
	history: History,
	command: Command,
	label = describeCommand(history.workbook, command)
): StepResult {
	const result = applyCommand(history.workbook, command);
	if (!result.ok) return result;
	const { workbook, inverse } = result;
	// A command that changes nothing is not worth a step.
	if (workbook === history.workbook) return { ok: true, history, command };
	const past = [...history.past, { command, inverse, label }].slice(-MOST_STEPS);
	return { ok: true, history: { workbook, past, future: [] }, command };
}

/** A step that does not fit what others made of the workbook since: it is left out, and why. */
export interface Dropped {
	readonly ok: false;
	readonly problem: CommandProblem;
	readonly history: History;
}

/** Takes the last command back; null when there is none. */
export function undo(history: History): Taken | Dropped | null {
	const step = history.past.at(-1);
	if (!step) return null;
	const past = history.past.slice(0, -1);
	const refusal = step.isRebased ? refusalToUndo(history.workbook, step) : null;
	if (refusal) return { ok: false, problem: refusal, history: { ...history, past } };
	const { workbook } = replay(history.workbook, step.inverse);
	const future = [step, ...history.future];
	return { ok: true, history: { workbook, past, future }, command: step.inverse };
}

/** Does again what was taken back last; null when there is nothing. */
export function redo(history: History): Taken | null {
	const [step, ...future] = history.future;
	if (!step) return null;
	const { workbook } = replay(history.workbook, step.command);
	const past = [...history.past, step];
	return { ok: true, history: { workbook, past, future }, command: step.command };
}

/** The workbook with what others did in it. Own steps can still be taken back where what they changed stands as they left it. */
export const withOthers = ({ past }: History, workbook: Workbook): History => ({
	workbook,
	past: past.map((step) => ({ ...step, isRebased: true })),
	future: []
});

/** What undo would take back, and redo do again; null when there is nothing. */
export const undoLabel = ({ past }: History): string | null => past.at(-1)?.label ?? null;
export const redoLabel = ({ future }: History): string | null => future[0]?.label ?? null;

/**
 * Why a step cannot be taken back any more. It fits where doing it again gives what stands now, so that
 * nobody's later value is lost, and where the workbook is as sound without it.
 */
function refusalToUndo(workbook: Workbook, step: Step): CommandProblem | null {
	const refuse = (why: string): CommandProblem => ({
		code: 'changed-since',
		message: `"${step.label}" cannot be undone: ${why}`
	});
	const back = applyCommand(workbook, step.inverse);
	if (!back.ok) return refuse(back.problem.message);
	const again = applyCommand(back.workbook, step.command);
	const between = again.ok ? patchBetween(workbook, again.workbook) : undefined;
	if (between === undefined || (between && !isOrderAlone(between)))
		return refuse('somebody has changed the same since. Change it by hand if you still want to.');
	const find = structuralEdits()?.findProblems;
	const [problem] = find?.(back.workbook) ?? [];
	if (problem && find?.(workbook).length === 0)
		return refuse(`with what others changed since, ${problemLine(problem)}`);
	return null;
}

function replay(workbook: Workbook, command: Command) {
	const result = applyCommand(workbook, command);
	// It was applied to this very workbook before.
	if (!result.ok)
		throw new Error(`A step of the history no longer applies: ${result.problem.message}`);
	return result;
}
