/**
 * The independent referee: computes every value of a workbook a second time, as cells in
 * HyperFormula, follows edits, and says how many values agree with the interpreter's.
 *
 * Its work comes in steps, so that a worker can report and take messages in between: `build` and
 * `update` are generators that must be run to their end before `compare`.
 */
import type { Workbook } from '$lib/workbook/schema';
import { Book } from '../cells/book';
import { classOf } from '../cells/literals';
import type { Source } from '../cells/reach';
import { placeOf } from '../layout';
import type { Plan } from '../plan';
import type { Agreement, Outcome, Results } from '../results';
import { OK, type State } from '../state';
import { Cells, UNJUDGED } from './hyperformula';
import { LIMIT, sampleOf, type Sample } from './sample';
import { sourcesOf } from './sources';
import { isClose, isRounding, magnitudeOf } from './tolerance';

/** An input that a scenario itself says something about from now on; null: no longer. */
export interface InputChange {
	readonly scenario: string;
	readonly cell: number;
	readonly outcome: Outcome | null;
}

/** How many disagreements are listed one by one. */
const LISTED = 100;

type OpenSource = Source & { readonly entered: Map<number, Outcome> };

/** What the cells of one scenario's sheet came out as. */
interface Found {
	readonly values: Float64Array;
	readonly states: Uint8Array;
	readonly cellAt: Map<number, number>;
	unjudged: ReadonlyMap<number, string>;
}

export class Referee {
	readonly #plan: Plan;
	readonly #sources: OpenSource[];
	readonly #sample: Sample | null;
	readonly #of: number;
	readonly #book: Book;
	readonly #cells: Cells;
	readonly #found: Found[];

	private constructor(workbook: Workbook, plan: Plan, limit: number) {
		this.#plan = plan;
		const all = sourcesOf(workbook, plan);
		this.#sample = sampleOf(plan, all, limit);
		this.#of = all.length * plan.layout.cells;
		this.#sources = this.#ofSample(all);
		this.#book = new Book(plan, this.#sources, this.#sample?.included ?? null);
		this.#cells = new Cells(this.#book.sheetNames);
		this.#found = this.#sources.map(() => ({
			values: new Float64Array(plan.cells),
			states: new Uint8Array(plan.cells),
			cellAt: new Map(),
			unjudged: new Map()
		}));
	}

	/** Nothing is computed yet: run `build`. `limit` is how many cells it takes on before it checks a sample. */
	static open(workbook: Workbook, plan: Plan, limit = LIMIT): Referee {
		return new Referee(workbook, plan, limit);
	}

	/** Writes and computes everything. */
	*build(): Generator<void> {
		yield* this.#rewrite(this.#sources.map((_, i) => i));
	}

	/** Takes up edits of inputs; a scenario that changes another input than before costs a new sheet. */
	*apply(changes: Iterable<InputChange>): Generator<void> {
		let moved = false;
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
		const sheets = moved ? this.#book.refresh() : [];
		for (const { scenario, cell } of written) {
			if (sheets.includes(scenario)) continue;
			const at = this.#book.locate(scenario, cell);
			if (at) this.#cells.set(at.sheet, at.place, this.#book.inputContent(scenario, cell));
		}
		yield* this.#rewrite(sheets);
	}

	/** Takes up a workbook that differs in entered values alone; what differs is found here. */
	*update(workbook: Workbook): Generator<void> {
		const changes: InputChange[] = [];
		this.#ofSample(sourcesOf(workbook, this.#plan)).forEach((source, i) => {
			const scenario = source.id;
			const before = this.#sources[i]!.entered;
			for (const [cell, outcome] of source.entered) {
				const was = before.get(cell);
				const same = was?.state === outcome.state && Object.is(was.value, outcome.value);
				if (!same) changes.push({ scenario, cell, outcome });
			}
			for (const cell of before.keys())
				if (!source.entered.has(cell)) changes.push({ scenario, cell, outcome: null });
		});
		yield* this.apply(changes);
	}

	/** What the second engine has for a value; null where it is outside the sample. */
	outcome(scenario: string, cell: number): Outcome | null {
		const place = this.#sources.findIndex(({ id }) => id === scenario);
		return place < 0 ? null : this.#at(place, cell);
	}

	compare(results: readonly Results[]): Agreement {
		const placeOfId = new Map(this.#sources.map(({ id }, place) => [id, place]));
		const columns: (Results | undefined)[] = [];
		for (const one of results) {
			const place = placeOfId.get(one.scenario);
			if (place !== undefined) columns[place] = one;
		}
		let compared = 0;
		let agreeing = 0;
		const unjudged = new Map<string, number>();
		const disagreements: Agreement['disagreements'][number][] = [];
		columns.forEach((column, scenario) => {
			if (!column) return;
			for (let cell = 0; cell < this.#plan.layout.cells; cell++) {
				const second = this.#at(scenario, cell);
				if (!second) continue;
				const first = { value: column.values[cell]!, state: column.states[cell]! };
				if (this.#agree(scenario, cell, first, second, columns)) {
					compared++;
					agreeing++;
					continue;
				}
				const reason = this.#whyUnjudged(cell);
				if (reason !== null) {
					unjudged.set(reason, (unjudged.get(reason) ?? 0) + 1);
					continue;
				}
				compared++;
				if (disagreements.length >= LISTED) continue;
				const place = placeOf(this.#plan.layout, cell);
				disagreements.push({ ...place, scenario: column.scenario, first, second });
			}
		});
		return {
			compared,
			agreeing,
			unjudged: [...unjudged].map(([reason, count]) => ({ reason, count })),
			sample: this.#sample && {
				scenarios: this.#sources.map(({ id }) => id),
				cells: this.#countSample(),
				of: this.#of
			},
			disagreements,
			busy: false
		};
	}

	/** Ends the engine; nothing can be asked of it any more. */
	destroy(): void {
		this.#cells.destroy();
	}

	/** Writes these sheets anew, computes, and takes in what came out, edits of other sheets included. */
	*#rewrite(sheets: readonly number[]): Generator<void> {
		for (const sheet of sheets) {
			const { grid, unjudged } = this.#book.write(sheet);
			const found = this.#found[sheet]!;
			found.unjudged = unjudged;
			found.cellAt.clear();
			for (const { cell, place } of this.#book.cellsOf(sheet)) found.cellAt.set(place, cell);
			yield* this.#cells.fill(sheet, grid);
		}
		this.#cells.compute((sheet, place, value, state) => {
			const found = this.#found[sheet]!;
			const cell = found.cellAt.get(place);
			if (cell !== undefined) put(found, cell, value, state);
		});
		// What stands elsewhere now is not reported where it happens to be equal.
		for (const sheet of sheets)
			for (const { cell, place } of this.#book.cellsOf(sheet)) {
				const { value, state } = this.#cells.read(sheet, place);
				put(this.#found[sheet]!, cell, value, state);
			}
		yield;
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

	#at(scenario: number, cell: number): Outcome | null {
		const at = this.#book.locate(scenario, cell);
		if (!at) return null;
		const { values, states } = this.#found[at.sheet]!;
		return { value: values[cell]!, state: states[cell]! };
	}

	#agree(
		scenario: number,
		cell: number,
		first: Outcome,
		second: Outcome,
		columns: readonly (Results | undefined)[]
	): boolean {
		if (classOf(first.state) !== second.state) return false;
		if (first.state !== OK || isClose(first.value, second.value)) return true;
		const root = this.#plan.roots[cell]!;
		if (root < 0) return false;
		const base = this.#sources.findIndex(({ parent }) => parent < 0);
		const magnitude = magnitudeOf(this.#plan, root, (read, which) => {
			const from = which === 0 ? scenario : which === 1 ? this.#sources[scenario]!.reference : base;
			if (read < this.#plan.layout.cells) return columns[from]?.values[read] ?? 0;
			return from < 0 ? 0 : (this.#at(from, read)?.value ?? 0);
		});
		return isRounding(first.value, second.value, magnitude);
	}

	/** Why a value was not judged: it could not be, or what it is computed from could not. */
	#whyUnjudged(cell: number): string | null {
		if (!this.#found.some(({ states }) => states.includes(UNJUDGED))) return null;
		const { starts, targets } = this.#plan.precedents;
		const seen = new Set<number>();
		const stack = [cell];
		for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
			if (seen.has(at)) continue;
			seen.add(at);
			for (const { states, unjudged } of this.#found)
				if (states[at] === UNJUDGED) {
					const reason = unjudged.get(at);
					if (reason) return reason;
				}
			for (let i = starts[at]!; i < starts[at + 1]!; i++) stack.push(targets[i]!);
		}
		return null;
	}

	#countSample(): number {
		const included = this.#sample?.included;
		if (!included) return this.#sources.length * this.#plan.layout.cells;
		return included.subarray(0, this.#plan.layout.cells).reduce((sum, one) => sum + one, 0);
	}
}

function put(found: Found, cell: number, value: number, state: State): void {
	found.values[cell] = value;
	found.states[cell] = state;
}
