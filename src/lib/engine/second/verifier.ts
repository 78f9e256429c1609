/**
 * The independent verifier: computes every value of a workbook a second time, as cells in
 * HyperFormula, follows edits, and says how many values agree with the interpreter's.
 *
 * Its work comes in steps, so that a worker can report and take messages in between: `build` and
 * `update` are generators that must be run to their end before `compare`.
 */
import type { Workbook } from '$lib/workbook/schema';
import { Book } from '$lib/engine/cells/book';
import { parentsFirst, type Source } from '$lib/engine/cells/reach';
import type { Plan } from '$lib/engine/plan';
import type { Agreement, Outcome, Results } from '$lib/engine/results';
import { conditionsOf, hideAbsent, type Conditions } from '$lib/engine/presence';
import type { State } from '$lib/engine/state';
import { compareColumns, NOT_CHECKED, type Column } from './agreement';
import { Cells, NOT_COMPARED } from './hyperformula';
import { LIMIT, sampleOf, type Sample } from './sample';
import { FREE, slotsAfter } from './slots';
import { sourcesOf } from './sources';

/** An input that a scenario itself says something about from now on; null: no longer. */
export interface InputChange {
	readonly scenario: string;
	readonly cell: number;
	readonly outcome: Outcome | null;
}

type OpenSource = Source & { readonly entered: Map<number, Outcome> };

/** What the cells of one scenario's sheet came out as. */
interface Found {
	readonly values: Float64Array;
	readonly states: Uint8Array;
	readonly cellAt: Map<number, number>;
	notCompared: ReadonlyMap<number, string>;
}

export class Verifier {
	readonly #plan: Plan;
	/** By sheet. */
	readonly #sources: OpenSource[];
	readonly #sample: Sample | null;
	/** Values of all scenarios, checked or not. */
	#of: number;
	readonly #book: Book;
	readonly #cells: Cells;
	readonly #found: Found[];
	readonly #conditions: Conditions;

	private constructor(workbook: Workbook, plan: Plan, limit: number | Uint8Array) {
		this.#plan = plan;
		const all = sourcesOf(workbook, plan);
		this.#conditions = conditionsOf(plan);
		this.#sample =
			typeof limit === 'number'
				? sampleOf(plan, all, this.#conditions, limit)
				: { scenarios: all.map((_, i) => i), included: limit };
		this.#of = all.length * plan.layout.cells;
		this.#sources = this.#ofSample(all);
		this.#book = new Book(plan, this.#sources, {
			included: this.#sample?.included ?? null
		});
		this.#cells = new Cells(this.#book.sheetNames);
		this.#found = this.#sources.map(() => emptyFound(plan.cells));
	}

	/** Nothing is computed yet: run `build`. `limit` is how many cells it takes on before it checks a sample. */
	static open(workbook: Workbook, plan: Plan, limit = LIMIT): Verifier {
		return new Verifier(workbook, plan, limit);
	}

	/** The same for some cells alone, in every scenario: those marked 1, among them all that they are computed from. */
	static ofCells(workbook: Workbook, plan: Plan, included: Uint8Array): Verifier {
		return new Verifier(workbook, plan, included);
	}

	/** Writes and computes everything. */
	*build(): Generator<number> {
		yield* this.#rewrite(this.#sources.map((_, i) => i));
	}

	/** Takes up edits of inputs; a scenario that changes another input than before costs a new sheet. */
	*apply(changes: Iterable<InputChange>): Generator<number> {
		yield* this.#take(changes, []);
	}

	/** Takes up a workbook with other entered values or other scenarios; what differs is found here. */
	*update(workbook: Workbook): Generator<number> {
		const all = sourcesOf(workbook, this.#plan);
		const { sources, moved } = slotsAfter(this.#sources, this.#ofSample(all));
		const changes: InputChange[] = [];
		sources.forEach((source, slot) => {
			const known = this.#sources[slot];
			if (known && !moved.includes(slot)) changes.push(...changesBetween(known, source));
			else this.#sources[slot] = { ...source, entered: new Map(source.entered) };
			if (!known) this.#addSheet(slot);
		});
		this.#of = all.length * this.#plan.layout.cells;
		yield* this.#take(changes, moved);
	}

	compare(results: readonly Results[]): Agreement {
		const taken = this.#sources.flatMap(({ id }, slot) => (id === FREE ? [] : [slot]));
		const columns = taken.map((slot) => ({
			id: this.#sources[slot]!.id,
			reference: taken.indexOf(this.#sources[slot]!.reference),
			copy: this.#sources[slot]!.copy,
			first: results.find((result) => result.scenario === this.#sources[slot]!.id) ?? null,
			second: this.#column(slot)
		}));
		const base = taken.findIndex((slot) => this.#sources[slot]!.parent < 0);
		const found = compareColumns(this.#plan, columns, base, (cell) => this.#reasonAt(cell));
		const sample = this.#sample && {
			scenarios: columns.map(({ id }) => id),
			cells: this.#countSample(),
			of: this.#of
		};
		return { ...found, sample, busy: false };
	}

	/** Ends the engine; nothing can be asked of it any more. */
	destroy(): void {
		this.#cells.destroy();
	}

	/** Enters these values, and lays out anew where that moves cells or their scenario did. */
	*#take(changes: Iterable<InputChange>, rearranged: readonly number[]): Generator<number> {
		let moved = rearranged.length > 0;
		const written: { scenario: number; cell: number }[] = [];
		for (const { scenario, cell, outcome } of changes) {
			const place = this.#sources.findIndex(({ id }) => id === scenario);
			const source = this.#sources[place];
			if (!source) continue;
			const had = source.entered.has(cell);
			if (outcome) source.entered.set(cell, outcome);
			else source.entered.delete(cell);
			if (source.parent >= 0 && had !== (outcome !== null)) moved = true;
			else written.push({ scenario: place, cell });
		}
		const sheets = moved ? this.#book.refresh(rearranged) : [];
		for (const { scenario, cell } of written) {
			if (sheets.includes(scenario)) continue;
			const at = this.#book.locate(scenario, cell);
			if (at) this.#cells.set(at.sheet, at.place, this.#book.inputContent(scenario, cell));
		}
		yield* this.#rewrite(sheets);
	}

	#addSheet(slot: number): void {
		this.#found[slot] = emptyFound(this.#plan.cells);
		this.#cells.addSheet(this.#book.sheetNames[slot]!);
	}

	/** Writes these sheets anew, computes, and takes in what came out, edits of other sheets included. Says how far it is, 0 to 1. */
	*#rewrite(sheets: readonly number[]): Generator<number> {
		const sizes = new Map(sheets.map((sheet) => [sheet, [...this.#book.cellsOf(sheet)].length]));
		const all = [...sizes.values()].reduce((sum, size) => sum + size, 1);
		let done = 0;
		// Parents first, and each computed before the next is written: no step is then much longer than the rest.
		for (const sheet of parentsFirst(this.#sources).filter((one) => sheets.includes(one))) {
			const size = sizes.get(sheet)!;
			const { grid, notCompared } = this.#book.write(sheet);
			const found = this.#found[sheet]!;
			found.notCompared = notCompared;
			found.cellAt.clear();
			for (const { cell, place } of this.#book.cellsOf(sheet)) found.cellAt.set(place, cell);
			for (const share of this.#cells.fill(sheet, grid)) yield (done + share * size) / all;
			this.#compute();
			yield (done += size) / all;
		}
		this.#compute();
		// What stands elsewhere now is not reported where it happens to be equal.
		for (const sheet of sheets)
			for (const { cell, place } of this.#book.cellsOf(sheet)) {
				const { value, state } = this.#cells.read(sheet, place);
				put(this.#found[sheet]!, cell, value, state);
			}
		yield 1;
	}

	/** Computes what was written, and takes in what came out differently. */
	#compute(): void {
		this.#cells.compute((sheet, place, value, state) => {
			const found = this.#found[sheet]!;
			const cell = found.cellAt.get(place);
			if (cell !== undefined) put(found, cell, value, state);
		});
	}

	#ofSample(sources: readonly Source[]): OpenSource[] {
		const wanted = this.#sample?.scenarios ?? sources.map((_, i) => i);
		return wanted.map((place) => {
			const source = sources[place]!;
			const placed = (other: number) => (other < 0 ? -1 : wanted.indexOf(other));
			return {
				...source,
				parent: placed(source.parent),
				reference: placed(source.reference),
				entered: new Map(source.entered)
			};
		});
	}

	/** All values of a scenario, inputs that nobody sees taken out. */
	#column(scenario: number): Column {
		const values = new Float64Array(this.#plan.cells);
		const states = new Uint8Array(this.#plan.cells).fill(NOT_CHECKED);
		for (let cell = 0; cell < values.length; cell++) {
			const at = this.#book.locate(scenario, cell);
			if (!at) continue;
			values[cell] = this.#found[at.sheet]!.values[cell]!;
			states[cell] = this.#found[at.sheet]!.states[cell]!;
		}
		const checked = states.map((state) => (state === NOT_CHECKED ? 1 : 0));
		hideAbsent(this.#conditions, { values, states });
		checked.forEach((outside, cell) => outside && (states[cell] = NOT_CHECKED));
		return { values, states };
	}

	/** Why no sheet could judge a cell ("" where that is not known); null where all did. */
	#reasonAt(cell: number): string | null {
		for (const { states, notCompared } of this.#found)
			if (states[cell] === NOT_COMPARED) return notCompared.get(cell) ?? '';
		return null;
	}

	#countSample(): number {
		const included = this.#sample?.included;
		if (!included) return this.#sources.length * this.#plan.layout.cells;
		return included.subarray(0, this.#plan.layout.cells).reduce((sum, one) => sum + one, 0);
	}
}

/** What a source enters otherwise than before. */
function changesBetween(before: Source, after: Source): InputChange[] {
	const scenario = after.id;
	const changes: InputChange[] = [];
	for (const [cell, outcome] of after.entered) {
		const was = before.entered.get(cell);
		const same = was?.state === outcome.state && Object.is(was.value, outcome.value);
		if (!same) changes.push({ scenario, cell, outcome });
	}
	for (const cell of before.entered.keys())
		if (!after.entered.has(cell)) changes.push({ scenario, cell, outcome: null });
	return changes;
}

const emptyFound = (cells: number): Found => ({
	values: new Float64Array(cells),
	states: new Uint8Array(cells),
	cellAt: new Map(),
	notCompared: new Map()
});

function put(found: Found, cell: number, value: number, state: State): void {
	found.values[cell] = value;
	found.states[cell] = state;
}
