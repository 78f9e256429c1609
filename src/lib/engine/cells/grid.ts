/**
 * One sheet while it is being filled: columns of bounded length, and where in them things stand. A
 * place is one number, column × ROWS + row.
 */

/** Rows of a column. Below the 40,000 that HyperFormula takes. */
export const ROWS = 30_000;

/** A number, or text; text that starts with "=" is a formula. Null: nothing. */
export type Content = number | string | null;

export function columnName(column: number): string {
	let name = '';
	for (let rest = column + 1; rest > 0; rest = Math.floor((rest - 1) / 26))
		name = String.fromCharCode(65 + ((rest - 1) % 26)) + name;
	return name;
}

const names: string[] = [];

export function addressOf(place: number): string {
	const column = Math.floor(place / ROWS);
	return (names[column] ??= columnName(column)) + ((place % ROWS) + 1);
}

export class Grid {
	readonly columns: Content[][] = [];

	/** Room for a run of cells, one below the other in one column where it is short enough for one. */
	allot(count: number): number[] {
		const places: number[] = [];
		let column = this.columns.at(-1);
		if (!column || column.length + Math.min(count, ROWS) > ROWS) column = this.#open();
		for (let i = 0; i < count; i++) {
			if (column.length === ROWS) column = this.#open();
			places.push((this.columns.length - 1) * ROWS + column.length);
			column.push(null);
		}
		return places;
	}

	/** A fresh column, so that what follows stands apart from what came before. */
	breakColumn(): void {
		if (this.columns.at(-1)?.length) this.#open();
	}

	put(place: number, content: Content): void {
		this.columns[Math.floor(place / ROWS)]![place % ROWS] = content;
	}

	at(place: number): Content {
		return this.columns[Math.floor(place / ROWS)]?.[place % ROWS] ?? null;
	}

	#open(): Content[] {
		const column: Content[] = [];
		this.columns.push(column);
		return column;
	}
}

/** The places as ranges, each one unbroken run down a column; in the order given. */
export function runsOf(places: readonly number[]): { from: number; to: number }[] {
	const runs: { from: number; to: number }[] = [];
	for (const place of places) {
		const last = runs.at(-1);
		if (last && place === last.to + 1 && place % ROWS !== 0) last.to = place;
		else runs.push({ from: place, to: place });
	}
	return runs;
}
