/**
 * What others did, as the commands that would have done it: a page then follows as it follows its own edits, without
 * making its plan anew.
 */
import { applyCommand, type Command, type InputEntry } from './commands';
import { compareWorkbooks } from './compare';
import { saveWorkbook } from './save';
import type { Workbook } from './schema';

/** Entries that make one workbook the other; null where more differs than values that can be entered. */
export function entriesBetween(before: Workbook, after: Workbook): Command[] | null {
	const byScenario = new Map<string, InputEntry[]>();
	for (const { scenario, quantity, at, now } of compareWorkbooks(before, after).values) {
		const entries = byScenario.get(scenario) ?? [];
		entries.push({ quantity, at: [...at], value: now });
		byScenario.set(scenario, entries);
	}
	const commands: Command[] = [];
	let here = before;
	for (const [scenario, entries] of byScenario) {
		const command: Command = { kind: 'set_inputs', scenario, entries };
		const result = applyCommand(here, command);
		if (!result.ok || result.structural) return null;
		commands.push(command);
		here = result.workbook;
	}
	return saveWorkbook(here) === saveWorkbook(after) ? commands : null;
}
