/**
 * The only module that imports HyperFormula.
 *
 * Takes sheets of cells and gives back, place by place, a number or the class of what stands instead
 * (see `cells/literals.ts`). Its addresses, error objects and settings stay in here.
 */
import { DetailedCellError, HyperFormula, type CellValue, type RawCellContent } from 'hyperformula';
import { ROWS, type Content, type Grid } from '$lib/engine/cells/grid';
import {
	ABSENT,
	CIRCULAR,
	DIVIDES_BY_ZERO,
	HITS_NOTHING,
	NO_ANSWER,
	OFF_END,
	OK,
	USES_EMPTY,
	type State
} from '$lib/engine/state';

/** Not a state of any value: the cells could not judge it. */
export const NOT_COMPARED = 255;

/** HyperFormula's parser runs out of stack at about 150 nested brackets, and takes the whole build along. */
const DEEPEST = 60;
const LONGEST = 8000;
/** Rows that are written in one go. */
const CHUNK = 1000;

export type Receive = (sheet: number, place: number, value: number, state: State) => void;

export class Cells {
	readonly #engine = HyperFormula.buildEmpty({
		licenseKey: 'gpl-v3',
		// Off, array formulas come out silently wrong; on, ten digits are all that is left of a number.
		useArrayArithmetic: true,
		smartRounding: false,
		undoLimit: 0
	});

	constructor(sheetNames: readonly string[]) {
		for (const name of sheetNames) this.addSheet(name);
	}

	addSheet(name: string): void {
		this.#engine.addSheet(name);
	}

	/** Replaces what a sheet holds, a piece at a time, and says how far it is; nothing is computed until `compute`. */
	*fill(sheet: number, grid: Grid): Generator<number> {
		this.#suspend();
		this.#engine.clearSheet(sheet);
		const height = grid.columns.reduce((most, column) => Math.max(most, column.length), 0);
		for (let row = 0; row < height; row += CHUNK) {
			const rows: RawCellContent[][] = [];
			for (let at = row; at < Math.min(row + CHUNK, height); at++)
				rows.push(grid.columns.map((column) => safe(column[at] ?? null)));
			this.#engine.setCellContents({ sheet, row, col: 0 }, rows);
			yield Math.min(1, (row + CHUNK) / height);
		}
	}

	/** Writes one cell; computed by the next `compute`. */
	set(sheet: number, place: number, content: Content): void {
		this.#suspend();
		const address = { sheet, col: Math.floor(place / ROWS), row: place % ROWS };
		this.#engine.setCellContents(address, [[safe(content)]]);
	}

	/** Computes what has been written and all that depends on it, and hands out what came out differently. */
	compute(receive: Receive): void {
		if (!this.#engine.isEvaluationSuspended()) return;
		for (const change of this.#engine.resumeEvaluation()) {
			if (!('address' in change)) continue;
			const { sheet, col, row } = change.address;
			const { value, state } = read(change.newValue);
			receive(sheet, col * ROWS + row, value, state);
		}
	}

	/** What a cell holds now. */
	read(sheet: number, place: number): { value: number; state: State } {
		return read(
			this.#engine.getCellValue({ sheet, col: Math.floor(place / ROWS), row: place % ROWS })
		);
	}

	destroy(): void {
		this.#engine.destroy();
	}

	#suspend(): void {
		if (!this.#engine.isEvaluationSuspended()) this.#engine.suspendEvaluation();
	}
}

const none = (state: State) => ({ value: NaN, state });

function read(value: CellValue): { value: number; state: State } {
	if (typeof value === 'number') return { value, state: OK };
	if (typeof value === 'boolean') return { value: value ? 1 : 0, state: OK };
	if (typeof value === 'string') return none(ABSENT);
	if (!(value instanceof DetailedCellError)) return none(HITS_NOTHING);
	switch (value.type) {
		case 'REF':
			return none(USES_EMPTY);
		case 'NA':
			// Both kinds are #N/A, so that IFNA catches them; only the message differs.
			if (value.message === '') return none(OFF_END);
			return none(value.message === 'No default option.' ? NO_ANSWER : HITS_NOTHING);
		case 'DIV_BY_ZERO':
			return none(DIVIDES_BY_ZERO);
		case 'CYCLE':
			return none(CIRCULAR);
		case 'SPILL':
			return none(NOT_COMPARED);
		default:
			return none(HITS_NOTHING);
	}
}

/** The content, unless it would bring the parser down. */
function safe(content: Content): Content {
	if (typeof content !== 'string') return content;
	if (content.length > LONGEST || depthOf(content) > DEEPEST) return '=#SPILL!';
	return content;
}

function depthOf(text: string): number {
	let depth = 0;
	let most = 0;
	for (let i = 0; i < text.length; i++) {
		const letter = text.charCodeAt(i);
		if (letter === 40) most = Math.max(most, ++depth);
		else if (letter === 41) depth--;
	}
	return most;
}
