import type { Workbook } from './schema';
export interface WorkbookProblem {
	readonly code: string;
	readonly place: string;
	readonly path: string;
	readonly message: string;
	readonly remedy: string;
}
export function findProblems(_workbook: Workbook): WorkbookProblem[] {
	return [];
}
