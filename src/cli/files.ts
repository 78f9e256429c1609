/** Reads a workbook file for a command, or says in one line which file, where and what to do. */
import { readFileSync } from 'node:fs';
import { loadWorkbook } from '$lib/workbook/load';
import type { Workbook } from '$lib/workbook/schema';

export type FileResult =
	| { readonly ok: true; readonly workbook: Workbook }
	| { readonly ok: false; readonly message: string };

const REASONS: Record<string, string> = {
	ENOENT: 'there is no such file. Check the path',
	EISDIR: 'it is a folder. Name a workbook file in it',
	EACCES: 'this user may not read it. Ask for permission or copy the file'
};

export function readWorkbookFile(path: string): FileResult {
	let text: string;
	try {
		text = readFileSync(path, 'utf8');
	} catch (problem) {
		const code = (problem as NodeJS.ErrnoException).code ?? '';
		return { ok: false, message: `${path}: ${REASONS[code] ?? `it cannot be read (${code})`}.` };
	}
	const loaded = loadWorkbook(text, path);
	if (loaded.ok) return { ok: true, workbook: loaded.workbook };
	return { ok: false, message: loaded.problem.line };
}
