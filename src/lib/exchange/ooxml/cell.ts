/** A cell of a file, before any library is asked to write it; `write.ts` alone knows one. */
import type { StaleCells } from '$lib/engine/stale';

/** What a cell looks like, by what it is. */
export type Look =
	| 'title'
	| 'words'
	| 'head'
	| 'part'
	| 'label'
	| 'input'
	| 'changed'
	| 'result'
	| 'unit'
	| 'helper'
	/** A result that is out of date. */
	| 'stale';

/** Why a cell of a scenario is out of date; null where it is not. */
export type StaleMarks = Pick<StaleCells, 'of' | 'inScenario'>;

export interface FileCell {
	readonly value?: number | string | null;
	/** Text without "=". With it, `value` is what it last came to. */
	readonly formula?: string;
	readonly look: Look;
	/** How a number is shown: 1 and 0 as yes and no. */
	readonly yesNo?: boolean;
}

export interface FileSheet {
	readonly name: string;
	/** Widths of columns in characters; the rest as the program likes. */
	readonly widths: readonly number[];
	/** Columns that are folded away, from and up to. */
	readonly folded?: readonly [number, number];
	readonly frozenRows: number;
	readonly cells: Map<string, FileCell>;
}

export const at = (row: number, column: number): string => `${row},${column}`;
