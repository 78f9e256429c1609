/** Plans written by hand, computed by both engines: what each makes of them, class by class. */
import { Book } from '$lib/engine/cells/book';
import { classOf } from '$lib/engine/cells/literals';
import type { Source } from '$lib/engine/cells/reach';
import { evaluateCells } from '$lib/engine/interpreter/evaluate';
import type { Plan } from '$lib/engine/plan';
import { OK } from '$lib/engine/state';
import { Cells } from '$lib/engine/second/hyperformula';
import { columnOf, entryAt, HandPlan, missing, type Entry } from './interpreter-hand';

/** One scenario, its inputs the entries of cells 0, 1, 2 … */
export function baseOf(entries: readonly Entry[]): Source {
	const entered = new Map(
		entries.map((entry, cell) => [
			cell,
			typeof entry === 'number' ? { value: entry, state: OK } : { value: NaN, state: entry.state }
		])
	);
	return { id: 'base', parent: -1, reference: 0, entered };
}

/** To begin an engine takes longer than most plans do: each fills its sheet anew, as the verifier does. */
let sheet: Cells | undefined;

/** Every cell as HyperFormula computes it, and the text that it computes. */
export function computed(
	plan: Plan,
	entries: readonly Entry[]
): { found: Entry[]; text: string[] } {
	const book = new Book(plan, [baseOf(entries)]);
	const cells = (sheet ??= new Cells(book.sheetNames));
	const { grid } = book.write(0);
	for (const _ of cells.fill(0, grid));
	cells.compute(() => {});
	const found = [...book.cellsOf(0)].map(({ place }) => {
		const { value, state } = cells.read(0, place);
		return state === OK ? value : missing(state);
	});
	return { found, text: grid.columns.flat().map(String) };
}

/** Every cell as the interpreter computes it. */
export function expected(plan: Plan, entries: readonly Entry[]): Entry[] {
	const columns = columnOf(plan.cells, entries);
	evaluateCells(plan, plan.order, columns, 1);
	return Array.from({ length: plan.cells }, (_, cell) => entryAt(columns, cell));
}

/** Whether two entries are the same class and, where both are numbers, the same to 1e-9. */
export function same(first: Entry, second: Entry): boolean {
	if (typeof first === 'number' && typeof second === 'number')
		return Math.abs(first - second) <= 1e-9 * Math.max(Math.abs(first), Math.abs(second));
	if (typeof first === 'number' || typeof second === 'number') return false;
	return classOf(first.state) === second.state;
}

/** The one formula that `write` builds on these operands, by both engines and as text. */
export function both(
	entries: readonly Entry[],
	write: (plan: HandPlan, operands: number[]) => number
): { first: Entry; second: Entry; text: string[] } {
	const hand = new HandPlan(entries.length + 1);
	const operands = entries.map((_, cell) => hand.cell(cell));
	hand.root(entries.length, write(hand, operands));
	const plan = hand.build();
	const { found, text } = computed(plan, entries);
	return {
		first: expected(plan, entries)[entries.length]!,
		second: found[entries.length]!,
		text
	};
}
