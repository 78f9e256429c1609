/**
 * Gathers what the checks find, each with its place as a person would name it.
 */
import { pathText, placeOf } from '../place';
import type { Workbook } from '../schema';

export interface WorkbookProblem {
	/** What to decide on; the words below are for reading. */
	readonly code: string;
	/** "sheet Pipe, quantity wall_minimum, range" */
	readonly place: string;
	/** "sheets[0].quantities[3].range" */
	readonly path: string;
	/** Follows the place: "there is no set named layer". */
	readonly message: string;
	readonly remedy: string;
}

/** More would say nothing new, and a set renamed by hand can break a value in every cell. */
const MOST = 200;

export class Findings {
	readonly problems: WorkbookProblem[] = [];

	constructor(readonly workbook: Workbook) {}

	add(path: readonly PropertyKey[], code: string, message: string, remedy: string): void {
		if (this.isFull) return;
		const place = placeOf(this.workbook, path);
		this.problems.push({ code, place, path: pathText(path), message, remedy });
	}

	get isFull(): boolean {
		return this.problems.length >= MOST;
	}
}

/** "sheet Pipe, quantity wall: there is no set named layer. Add the set, or correct the name." */
export function problemLine({ place, message, remedy }: WorkbookProblem): string {
	return `${place}: ${message}. ${remedy}`;
}
