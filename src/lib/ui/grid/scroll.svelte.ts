/**
 * Follows the window over the grid: which rows are in it, and which sheet is at its top.
 */
import { tick } from 'svelte';
import { SvelteMap } from 'svelte/reactivity';
import type { Row } from '../rows';
import type { GridControl } from './control.svelte';
import { offsetsOf, piecesOf, rowAt } from './window';

/** Rows drawn beyond the window on each side. */
const BEYOND = 12;
const HEAD = 56;
/** Milliseconds after going to a sheet in which what is drawn on the way does not carry the reader off. */
const ARRIVING = 2000;
const MOST_PRINTED = 5000;

export class Scroll {
	readonly #control: GridControl;
	root: HTMLElement | null = null;
	/** Of messages that were drawn: their words may take several lines, and a height that is guessed lets the grid jump. */
	readonly #messages = new SvelteMap<string, number>();
	printing = $state(false);
	#goal: { readonly sheet: number; readonly until: number } | null = null;
	#from = $state(0);
	#to = $state(900);

	constructor(control: GridControl) {
		this.#control = control;
	}

	readonly offsets = $derived.by(() => offsetsOf(this.#heights()));
	readonly #first = $derived(Math.max(rowAt(this.offsets, this.#from) - BEYOND, 0));
	readonly #last = $derived(rowAt(this.offsets, this.#to) + BEYOND);
	readonly pieces = $derived.by(() =>
		this.printing
			? piecesOf(this.offsets, 0, MOST_PRINTED, null)
			: piecesOf(this.offsets, this.#first, this.#last, this.#control.activeRow)
	);
	/** The sheet whose rows are at the top of the window. */
	readonly sheet = $derived.by(() => this.#sheetAt(rowAt(this.offsets, this.#from + HEAD + 40)));

	measure(): void {
		if (!this.root) return;
		const top = this.root.getBoundingClientRect().top + HEAD;
		this.#from = Math.max(-top, 0);
		this.#to = Math.max(window.innerHeight - top, 200);
	}

	/** How high a message stands, by the key of its row. */
	messageStands(key: string, height: number): void {
		if (height <= 0 || this.#messages.get(key) === height) return;
		this.#messages.set(key, height);
		// What was only just drawn above a sheet that somebody went to has moved it.
		const goal = this.#goal;
		if (goal && performance.now() < goal.until) void tick().then(() => this.#scrollTo(goal.sheet));
	}

	toSheet(sheet: number): void {
		this.#goal = { sheet, until: performance.now() + ARRIVING };
		this.#scrollTo(sheet);
	}

	#scrollTo(sheet: number): void {
		const index = this.#control.rows.findIndex(
			(row) => row.kind === 'sheet' && row.sheet === sheet
		);
		if (!this.root || index < 0) return;
		const top = this.root.getBoundingClientRect().top + window.scrollY;
		window.scrollTo({ top: top + (this.offsets[index] ?? 0) });
	}

	#heights(): number[] {
		const { narrow, rows } = this.#control;
		const message = narrow ? 56 : 34;
		const height = (row: Row) =>
			row.kind === 'sheet'
				? 44
				: row.kind === 'message'
					? (this.#messages.get(row.key) ?? message)
					: narrow
						? 45
						: 28;
		return rows.map(height);
	}

	#sheetAt(index: number): number {
		for (let i = Math.min(index, this.#control.rows.length - 1); i >= 0; i--) {
			const row = this.#control.rows[i];
			if (row?.kind === 'sheet') return row.sheet;
		}
		return 0;
	}
}
