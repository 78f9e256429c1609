/**
 * Where edits of more than entered values come from: their code, with the checks of a whole workbook, is fetched after the first
 * numbers where a page is opened, and is there from the start everywhere else (`commands.ts`).
 */
import type { WorkbookProblem } from '../consistency/findings';
import type { Workbook } from '../schema';
import type { Command, Edit } from './command';

/** One edit that is checked as a whole afterwards. */
export type StructuralCommand = Exclude<Command, { kind: 'set_inputs' | 'several' | 'patch' }>;

export interface Structural {
	edit(workbook: Workbook, command: StructuralCommand): Edit;
	/** What is unsound in a workbook. */
	findProblems(workbook: Workbook): WorkbookProblem[];
	/** The same, of its plans alone. */
	findPlanProblems(workbook: Workbook): WorkbookProblem[];
}

let known: Structural | null = null;

export function provideStructural(structural: Structural | null): void {
	known = structural;
}

/** Null until it is there. */
export const structuralEdits = (): Structural | null => known;
