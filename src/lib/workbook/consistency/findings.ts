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

	/** A remedy that must be looked for is looked for when somebody reads it: most are only counted. */
	add(
		path: readonly PropertyKey[],
		code: string,
		message: string,
		remedy: string | (() => string)
	): void {
		if (this.isFull) return;
		const place = placeOf(this.workbook, path);
		const problem = { code, place, path: pathText(path), message };
		if (typeof remedy === 'string') this.problems.push({ ...problem, remedy });
		else this.problems.push(new Searched(problem, remedy));
	}

	get isFull(): boolean {
		return this.problems.length >= MOST;
	}
}

class Searched implements WorkbookProblem {
	readonly code: string;
	readonly place: string;
	readonly path: string;
	readonly message: string;
	#found: string | undefined;
	readonly #search: () => string;

	constructor(problem: Omit<WorkbookProblem, 'remedy'>, search: () => string) {
		this.code = problem.code;
		this.place = problem.place;
		this.path = problem.path;
		this.message = problem.message;
		this.#search = search;
	}

	get remedy(): string {
		return (this.#found ??= this.#search());
	}
}

/** "sheet Pipe, quantity wall: there is no set named layer. Add the set, or correct the name." */
export function problemLine({ place, message, remedy }: WorkbookProblem): string {
	return `${place}: ${message}. ${remedy}`;
}
