/** A kept workbook with the commands that came after it, made again. */
import type { Kept } from '$lib/browser/store';
import { applyCommand } from '$lib/workbook/apply';
import { VERSION, type Workbook } from '$lib/workbook/schema';
import { fetchStructural } from './structural';

export interface Replayed {
	readonly workbook: Workbook;
	/** The last number given to a command, refused ones included: none to come may be written over what is kept. */
	readonly upTo: number;
	readonly savedAt: number;
	/** Why the first command that could not be made again could not; null where all could. */
	readonly refused: string | null;
}

/** Kept by an earlier version of the app, it is brought up as a file would be. */
export async function replay({
	document,
	commands
}: Kept): Promise<Replayed | { readonly problem: string }> {
	let { workbook, upTo, savedAt } = document;
	if (workbook.version !== VERSION) {
		const { loadWorkbook } = await import('$lib/workbook/load');
		const loaded = loadWorkbook(JSON.stringify(workbook), document.title);
		if (!loaded.ok) return { problem: loaded.problem.line };
		workbook = loaded.workbook;
	}
	let refused: string | null = null;
	if (commands.length > 0) await fetchStructural();
	for (const { command, number, savedAt: at } of commands) {
		const result = applyCommand(workbook, command);
		upTo = number;
		if (!result.ok) {
			refused ??= result.problem.message;
			continue;
		}
		workbook = result.workbook;
		savedAt = at;
	}
	return { workbook, upTo, savedAt, refused };
}
