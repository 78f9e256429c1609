/**
 * The plan as sheets of cells, one sheet a scenario. HyperFormula computes them for the verifier;
 * the OOXML export writes the same.
 *
 * Inputs are numbers, formulas are formulas whose references are cell references, and nothing in a sheet
 * needs a name. Where values stand is fixed for a sheet before its formulas are written; what they need
 * besides (helper cells) follows in columns of its own.
 */
import type { Plan } from '$lib/engine/plan';
import type { Outcome } from '$lib/engine/results';
import { NOT_ENTERED, OK } from '$lib/engine/state';
import { factsOf, type Facts } from './facts';
import { addressOf, Grid, type Content } from './grid';
import { EXACT, literalOf, type Literals } from './literals';
import { ownersOf, type Owners, type Source } from './reach';
import { Writer } from './writer';

export interface Sheet {
	readonly grid: Grid;
	/** Why cells of it may turn out not to be judged, by plan cell. */
	readonly notCompared: ReadonlyMap<number, string>;
}

const EMPTY: Outcome = { value: NaN, state: NOT_ENTERED };

/** How a sheet is arranged for whoever reads it; without one, values stand as close as they can. */
export interface Arrangement {
	/** Rows to be left free above the values of a quantity, given by its place in the layout. */
	readonly rowsAbove: (quantity: number) => number;
	/** The address of a place; the first `valueColumns` columns hold values, the rest what they need besides. */
	readonly address: (place: number, valueColumns: number) => string;
}

const CLOSE: Arrangement = { rowsAbove: () => 0, address: addressOf };

export interface BookOptions {
	/** The cells that are written at all; null: every one. */
	readonly included?: Uint8Array | null;
	readonly literals?: Literals;
	/** As they are written in references, quotes included where they need some. */
	readonly sheetNames?: readonly string[];
	readonly arrangement?: Arrangement;
}

export class Book {
	readonly #facts: Facts;
	#owners: Owners;
	/** By scenario: where each cell that its sheet holds stands, −1 for the rest. */
	readonly #places: Int32Array[];

	/** By scenario: how many columns of its sheet hold values. */
	readonly #valueColumns: number[] = [];
	readonly #included: Uint8Array | null;
	readonly #literals: Literals;
	readonly #arrangement: Arrangement;
	readonly #named: readonly string[] | null;

	constructor(
		readonly plan: Plan,
		readonly sources: readonly Source[],
		options: BookOptions = {}
	) {
		this.#included = options.included ?? null;
		this.#literals = options.literals ?? EXACT;
		this.#arrangement = options.arrangement ?? CLOSE;
		this.#named = options.sheetNames ?? null;
		this.#facts = factsOf(plan, sources, this.#included);
		this.#owners = ownersOf(plan, sources, this.#included);
		this.#places = sources.map((_, i) => this.#layOut(i).at);
	}

	get sheetNames(): readonly string[] {
		return this.#named ?? this.sources.map((_, i) => `s${i}`);
	}

	/** The address of a place on a scenario's sheet, without the sheet's name. */
	addressOn(scenario: number, place: number): string {
		return this.#arrangement.address(place, this.#valueColumns[scenario]!);
	}

	/** How many columns of a scenario's sheet hold values; helper cells stand in those after. */
	valueColumnsOf(scenario: number): number {
		return this.#valueColumns[scenario]!;
	}

	/** Where the value of a cell stands for a scenario; null where no sheet holds it. */
	locate(scenario: number, cell: number): { sheet: number; place: number } | null {
		const sheet = this.#owners[scenario]![cell]!;
		return sheet < 0 ? null : { sheet, place: this.#places[sheet]![cell]! };
	}

	/** The cells that a scenario's sheet holds, and where. */
	*cellsOf(scenario: number): Generator<{ cell: number; place: number }> {
		const at = this.#places[scenario]!;
		for (let cell = 0; cell < at.length; cell++)
			if (at[cell]! >= 0) yield { cell, place: at[cell]! };
	}

	/**
	 * Lays everything out anew after the sources have changed, those named as such included; returns the sheets whose
	 * text may differ.
	 */
	refresh(rearranged: readonly number[] = []): number[] {
		const before = this.#owners;
		this.#owners = ownersOf(this.plan, this.sources, this.#included);
		const moved = new Set(rearranged);
		this.sources.forEach((_, i) => {
			if (this.#owners[i]!.some((owner, cell) => owner !== before[i]?.[cell])) moved.add(i);
		});
		// Whoever reads from a sheet that is laid out anew must be written anew as well.
		for (let size = -1; size !== moved.size;) {
			size = moved.size;
			this.sources.forEach((source, i) => {
				const reads = this.#owners[i]!.some((owner) => owner !== i && moved.has(owner));
				if (reads || (i !== this.#base && moved.has(source.reference))) moved.add(i);
			});
		}
		for (const sheet of moved) this.#places[sheet] = this.#layOut(sheet).at;
		return [...moved];
	}

	/** The cells of one scenario's sheet. */
	write(scenario: number): Sheet {
		const { at, grid: room } = this.#layOut(scenario);
		const base = this.#base;
		const { reference, copy } = this.sources[scenario]!;
		const locate = (cell: number, which: number) => {
			const from = which === 0 ? scenario : which === 1 ? reference : base;
			if (from < 0) return copy ? { value: copy.values[cell]!, state: copy.states[cell]! } : null;
			const place = this.locate(from, cell);
			if (!place) throw new RangeError(`Cell ${cell} is read, but stands on no sheet.`);
			return place;
		};
		const writer = new Writer(
			this.plan,
			this.#facts,
			this.#literals,
			scenario,
			room,
			locate,
			(sheet, place) => this.addressOn(sheet, place),
			this.sheetNames
		);
		room.breakColumn();
		for (let cell = 0; cell < at.length; cell++) {
			if (at[cell]! < 0) continue;
			const root = this.plan.roots[cell]!;
			room.put(
				at[cell]!,
				root < 0 ? this.inputContent(scenario, cell) : writer.content(cell, root)
			);
		}
		return { grid: room, notCompared: writer.notCompared };
	}

	/** What an input's cell holds: the number, or what stands for none. */
	inputContent(scenario: number, cell: number): Content {
		const { value, state } = this.sources[scenario]!.entered.get(cell) ?? EMPTY;
		return state === OK ? value : `=${literalOf(this.#literals, state)}`;
	}

	get #base(): number {
		return this.sources.findIndex((source) => source.parent < 0);
	}

	/** A quantity's cells stand one below the other, so that what gathers them can name a range. */
	#layOut(scenario: number): { at: Int32Array; grid: Grid } {
		const { plan } = this;
		const grid = new Grid();
		const at = new Int32Array(plan.cells).fill(-1);
		const quantityOf = (cell: number) =>
			cell < plan.layout.cells
				? plan.layout.quantityOfCell[cell]!
				: -1 - plan.liftedFrom[cell - plan.layout.cells]!;
		let run: number[] = [];
		const flush = () => {
			if (run.length === 0) return;
			const above = this.#arrangement.rowsAbove(quantityOf(run[0]!));
			const places = grid.allot(above + run.length).slice(above);
			places.forEach((place, i) => (at[run[i]!] = place));
			run = [];
		};
		for (let cell = 0; cell < plan.cells; cell++) {
			if (this.#owners[scenario]![cell] !== scenario) continue;
			if (run.length > 0 && quantityOf(run[0]!) !== quantityOf(cell)) flush();
			run.push(cell);
		}
		flush();
		this.#valueColumns[scenario] = grid.columns.length;
		return { at, grid };
	}
}
