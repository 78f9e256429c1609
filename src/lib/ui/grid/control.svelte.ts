/**
 * What the grid does when keys are pressed and cells are clicked: moving, folding, editing, clearing.
 * Drawing belongs to the components, the rows to `rows.ts`, blocks to `clipboard.ts`.
 */
/* eslint-disable svelte/prefer-svelte-reactivity -- maps and sets here are replaced whole, never changed in place */
import { tick } from 'svelte';
import type { QuantityLayout } from '$lib/engine/layout';
import { membersOf } from '$lib/engine/layout';
import type { InputEntry } from '$lib/workbook/commands';
import { findFrozen } from '$lib/workbook/frozen';
import type { Scalar } from '$lib/workbook/schema';
import { isTypedCell } from '$lib/engine/input-cell';
import { pathsOf, stepEntries } from '$lib/workbook/paths';
import type { FieldSpec } from '../entry';
import { fieldSpec } from '../field';
import { messagesOf } from '../messages';
import { partRows, type Part } from '../part-rows';
import { buildRows, keepRows, keysDownTo, pathCell, type QuantityRow, type Row } from '../rows';
import type { Session } from '../session.svelte';
import { firstToShow, windowOf } from './columns';
import { enterValues, targetsOf, type Target } from './entries';
import { texts } from './texts';

export interface Editing {
	readonly row: string;
	readonly column: number;
	/** What was typed to begin with; null: the value that stands there. */
	readonly typed: string | null;
}

const PAGE = 20;

export interface Elsewhere {
	readonly ask: (scenario: string, cell: number) => void;
	/** Goes to where the quantity that is edited is shown. */
	readonly edit: () => void;
}

export class GridControl {
	readonly session: Session;
	/** Only the scenario in hand stands beside the base. */
	narrow = $state(false);
	/** Some of the workbook's cells alone, on a page beside the first screen; null: all of it. */
	part = $state.raw<Part | null>(null);
	/** Where reasons are asked and quantities are edited, if that is not on the page of the grid itself. */
	readonly #elsewhere: Elsewhere | null;
	/** How many scenarios have room beside the base, and which of them is the first. */
	room = $state(Infinity);
	#first = $state(0);
	editing = $state.raw<Editing | null>(null);
	/** The other corner of a block; the active cell is one. */
	anchor = $state.raw<{ row: number; column: number } | null>(null);
	root: HTMLElement | null = null;

	readonly #beside = $derived.by(() => {
		const { view, baseId } = this.session;
		const beside = this.narrow ? [view.selectedScenario] : view.shown;
		return beside.filter((id) => id !== baseId);
	});
	readonly window = $derived(windowOf(this.#beside, this.room, this.#first));

	readonly columns = $derived.by(() => this.#columns());
	/** Rows that have not changed stay the same objects. */
	#kept: readonly Row[] = [];
	readonly rows = $derived.by(() => (this.#kept = keepRows(this.#kept, this.#rows())));
	readonly places = $derived(new Map(this.rows.map((row, i) => [row.key, i])));

	constructor(session: Session, elsewhere: Elsewhere | null = null) {
		this.session = session;
		this.#elsewhere = elsewhere;
	}

	#columns(): string[] {
		return [this.session.baseId, ...this.window.shown];
	}

	/** Other scenarios come into the window; the active column stays where it stands. */
	turn(steps: number): void {
		this.#first = Math.max(0, this.window.before + steps);
	}

	/** A scenario that has a column comes into the window. */
	#bring(scenario: string): void {
		const at = this.#beside.indexOf(scenario);
		this.#first = firstToShow(at, this.room, this.window.before);
	}

	#rows(): Row[] {
		const { layout, results, faults, problems, view } = this.session;
		if (!layout) return [];
		const shown = this.columns.flatMap((id) => results.get(id) ?? []);
		const messages = messagesOf({ layout, results: shown, faults, problems });
		const input = { layout, open: view.open, results: shown, messages };
		return this.part ? partRows(input, this.part) : buildRows({ ...input, only: null });
	}

	/** The place of the active row; the first value's where none is. */
	get activeRow(): number {
		const { active } = this.session.view;
		const place = active ? this.places.get(active.row) : undefined;
		return place ?? this.rows.findIndex((row) => row.kind === 'quantity');
	}
	get activeColumn(): number {
		return Math.min(this.session.view.active?.column ?? 1, this.columns.length);
	}

	/** What is explained follows the active cell, unless `follows` says that it is set apart. */
	async activate(index: number, column: number, keepAnchor = false, follows = true): Promise<void> {
		const row = this.rows[index];
		if (row?.kind !== 'quantity') return;
		if (!keepAnchor) this.anchor = null;
		this.session.view.active = { row: row.key, column };
		const { view } = this.session;
		const scenario = this.columns[column - 1];
		if (follows && view.why && scenario !== undefined && row.open === null)
			view.why = { scenario, cell: row.from };
		await tick();
		this.focus();
	}

	focus(): void {
		const cell = this.root?.querySelector<HTMLElement>('[data-active="true"]');
		cell?.focus({ preventScroll: true });
		cell?.scrollIntoView({ block: 'nearest' });
	}

	/** Goes on to a cell from the reasons of another: it is explained, be its scenario on screen or not. */
	async explain(cell: number, scenario: string): Promise<void> {
		this.session.view.why = { scenario, cell };
		await this.goTo(cell, scenario, true);
	}

	/** Unfolds down to a cell and focuses it; the first of a quantity only where it is meant by itself. */
	async goTo(cell: number, scenario: string, byItself = false): Promise<void> {
		const { layout, view } = this.session;
		if (!layout) return;
		const quantity = layout.quantities[layout.quantityOfCell[cell] ?? -1];
		// The inputs of a path in time have no rows of their own: its own cells stand for them.
		const stands = quantity && pathCell(layout, quantity, cell);
		if (stands !== undefined && stands !== cell) return this.goTo(stands, scenario, byItself);
		const keys = keysDownTo(layout, cell);
		this.#bring(scenario);
		if (quantity && (byItself || cell !== quantity.base)) view.unfold(keys);
		await tick();
		const isCell = (row: Row) =>
			row.kind === 'quantity' && row.from <= cell && cell < row.to && row.open !== true;
		const index = this.rows.findIndex(isCell);
		const column = Math.max(this.columns.indexOf(scenario), 0) + 1;
		await this.activate(index, column, false, !byItself);
		this.root?.querySelector('[data-active="true"]')?.scrollIntoView({ block: 'center' });
	}

	specOf(quantity: QuantityLayout): FieldSpec {
		const { layout, units, locale } = this.session;
		if (!layout) throw new Error('A field was asked for while no workbook is open.');
		return fieldSpec(layout, quantity, units, locale);
	}

	/** Why a cell takes no entry; empty where it does. */
	refusal(row: QuantityRow, column: number): string {
		const { layout, readOnly, baseId } = this.session;
		const label = row.quantity.quantity.label;
		if (!layout || column < 1) return '';
		const copy = findFrozen(layout.workbook, this.columns[column - 1] ?? '');
		if (copy) return texts.isFrozen(copy.title);
		if (row.open !== null) return `${label} has several values here. Unfold it first.`;
		if (!isTypedCell(layout.workbook, row.quantity, row.from))
			return `${label} is a result: it follows its formula. Enter asks why; "Edit quantity" changes the formula.`;
		if (readOnly) return 'This workbook can only be read here.';
		if (row.quantity.quantity.fixed && this.columns[column - 1] !== baseId)
			return `${label} is the same in all scenarios: only the base can change it.`;
		return '';
	}

	edit(typed: string | null): void {
		const row = this.rows[this.activeRow];
		if (row?.kind !== 'quantity' || this.activeColumn < 1) return;
		// What is typed on a folded row is for all of its values; there is none to begin from.
		const isForAll = row.open !== null && typed !== null;
		const refusal =
			isForAll && this.targets(row, this.activeColumn).length > 0
				? ''
				: this.refusal(row, this.activeColumn);
		if (refusal) this.session.said = refusal;
		else this.editing = { row: row.key, column: this.activeColumn, typed };
	}

	/** Leaves the field; the focus goes back to the cell. */
	async leave(step: 0 | 1 | -1 = 0, sideways = false): Promise<void> {
		this.editing = null;
		if (step === 0) {
			await tick();
			this.focus();
		} else if (sideways) await this.move(0, step);
		else await this.move(step, 0);
	}

	/** The cells that an entry here is for: what is marked, all of a folded row, or the one itself. */
	targets(row: QuantityRow, column: number): Target[] {
		const [low, high, left, right] = this.block;
		const isMarked = this.anchor !== null && (low < high || left < right);
		if (!isMarked) return this.#targetsIn(row, column);
		const found: Target[] = [];
		for (let at = Math.max(left, 1); at <= right; at++)
			for (const one of this.rows.slice(low, high + 1))
				if (one.kind === 'quantity') found.push(...this.#targetsIn(one, at));
		return found;
	}

	#targetsIn(row: QuantityRow, column: number): Target[] {
		const scenario = this.columns[column - 1];
		return scenario === undefined ? [] : targetsOf(this.session, row, scenario);
	}

	/** Writes one value; undefined follows the parent again. Gives a sentence if it cannot be. */
	enter(row: QuantityRow, column: number, value: Scalar | undefined): string | null {
		const { layout } = this.session;
		const scenario = this.columns[column - 1];
		if (!layout || scenario === undefined) return null;
		const at = membersOf(layout, row.from);
		return enterValues(this.session, [{ quantity: row.quantity, scenario, at }], [value]);
	}

	/** Empties a field of the base; a scenario's follows its parent again. */
	clear(): void {
		const [low, high, left, right] = this.block;
		const { layout, baseId } = this.session;
		if (!layout) return;
		const refusals: string[] = [];
		const commands = [];
		for (let column = Math.max(left, 1); column <= right; column++) {
			const scenario = this.columns[column - 1];
			if (scenario === undefined) continue;
			const entries: InputEntry[] = [];
			for (let i = low; i <= high; i++) {
				const row = this.rows[i];
				if (row?.kind !== 'quantity') continue;
				const refusal = this.refusal(row, column);
				if (refusal) refusals.push(refusal);
				else if (row.quantity.quantity.path) entries.push(...this.#withoutStep(row, scenario));
				else
					entries.push({
						quantity: row.quantity.quantity.name,
						at: membersOf(layout, row.from),
						value: scenario === baseId ? null : undefined
					});
			}
			if (entries.length > 0) commands.push({ kind: 'set_inputs' as const, scenario, entries });
		}
		if (commands.length > 0) this.session.said = this.session.apply(...commands) ?? 'Cleared';
		else this.session.said = refusals[0] ?? '';
	}

	/** A step is taken away, and with it one that the scenario has from its parent. */
	#withoutStep(row: QuantityRow, scenario: string): InputEntry[] {
		const { layout, workbook } = this.session;
		const path = workbook && pathsOf(workbook).byPath.get(row.quantity.quantity.name);
		if (!layout || !path) return [];
		const at = membersOf(layout, row.from);
		return stepEntries(workbook, scenario, path, at, { set: null, moved: null });
	}

	/** First and last row, first and last column of what is marked. */
	get block(): [number, number, number, number] {
		const row = this.activeRow;
		const column = this.activeColumn;
		const anchor = this.anchor ?? { row, column };
		return [
			Math.min(row, anchor.row),
			Math.max(row, anchor.row),
			Math.min(column, anchor.column),
			Math.max(column, anchor.column)
		];
	}

	async move(rows: number, columns: number, extend = false): Promise<void> {
		if (extend) this.anchor ??= { row: this.activeRow, column: this.activeColumn };
		const beyond = this.activeColumn + columns;
		// Past the last column, or back before the first scenario, those that have no room come in.
		if (columns === 1 && beyond > this.columns.length && this.window.after > 0) this.turn(1);
		else if (columns === -1 && beyond === 1 && this.window.before > 0) {
			this.turn(-1);
			return this.activate(this.activeRow, this.activeColumn, extend);
		}
		const column = Math.max(0, Math.min(this.columns.length, this.activeColumn + columns));
		await this.activate(this.#valueRow(this.activeRow, rows), column, extend);
	}

	/** The row so many value rows further, or the last on the way. */
	#valueRow(from: number, steps: number): number {
		let at = from;
		let left = Math.abs(steps);
		const direction = Math.sign(steps);
		for (let i = from + direction; left > 0 && i >= 0 && i < this.rows.length; i += direction) {
			if (this.rows[i]?.kind !== 'quantity') continue;
			at = i;
			left--;
		}
		return at;
	}

	toggle(row: QuantityRow): void {
		if (row.open !== null) this.session.view.fold(row.key, !row.open);
	}

	/** Enter or a double click: edit an input, unfold a group, ask a result why. */
	use(): void {
		const row = this.rows[this.activeRow];
		if (row?.kind !== 'quantity') return;
		if (row.open !== null) this.toggle(row);
		else if (this.activeColumn === 0) this.editQuantity(row);
		else if (this.refusal(row, this.activeColumn)) this.ask(row);
		else this.edit(null);
	}

	/** Asked once more, the focus goes into the reasons. */
	ask(row: QuantityRow, column = this.activeColumn): void {
		const scenario = this.columns[Math.max(column, 1) - 1];
		if (row.open !== null || scenario === undefined) return;
		const { view } = this.session;
		const isAsked = view.why?.cell === row.from && view.why.scenario === scenario;
		if (this.#elsewhere) this.#elsewhere.ask(scenario, row.from);
		else if (isAsked) document.querySelector<HTMLElement>('[data-reasons]')?.focus();
		else view.why = { scenario, cell: row.from };
	}

	editQuantity(row: QuantityRow): void {
		const { quantity } = row.quantity;
		this.#elsewhere?.edit();
		this.session.view.editing = { quantity: quantity.name, sheet: row.quantity.sheet };
	}

	/** Space on a yes/no turns it over. */
	#turnOver(row: QuantityRow): boolean {
		if (row.quantity.quantity.type !== 'yes_no' || row.open !== null) return false;
		if (this.activeColumn < 1 || this.refusal(row, this.activeColumn)) return false;
		const results = this.session.results.get(this.columns[this.activeColumn - 1] ?? '');
		const problem = this.enter(row, this.activeColumn, results?.values[row.from] !== 1);
		if (problem) this.session.said = problem;
		return true;
	}

	onkeydown(event: KeyboardEvent): void {
		if (this.editing || event.defaultPrevented) return;
		const target = event.target as HTMLElement;
		if (target.dataset.active !== 'true') return;
		if (this.#key(event)) event.preventDefault();
	}

	#key(event: KeyboardEvent): boolean {
		const row = this.rows[this.activeRow];
		if (row?.kind !== 'quantity') return false;
		const { key, shiftKey } = event;
		const control = event.ctrlKey || event.metaKey;
		const atLabel = this.activeColumn === 0;
		const last = this.columns.length;
		if (key === 'ArrowDown') void this.move(control ? this.rows.length : 1, 0, shiftKey);
		else if (key === 'ArrowUp') void this.move(control ? -this.rows.length : -1, 0, shiftKey);
		else if (key === 'ArrowRight' && atLabel && row.open === false) this.toggle(row);
		else if (key === 'ArrowLeft' && atLabel && row.open === true) this.toggle(row);
		else if (key === 'ArrowRight') void this.move(0, control ? last : 1, shiftKey);
		else if (key === 'ArrowLeft') void this.move(0, control ? -last : -1, shiftKey);
		else if (key === 'PageDown') void this.move(PAGE, 0, shiftKey);
		else if (key === 'PageUp') void this.move(-PAGE, 0, shiftKey);
		else if (key === 'Home') void this.#toEdge(-1, control);
		else if (key === 'End') void this.#toEdge(1, control);
		else if (key === 'Enter' && event.altKey) this.ask(row);
		else if (key === 'Enter' && !control) this.use();
		else if (key === 'F2') {
			if (atLabel) this.editQuantity(row);
			else this.edit(null);
		} else if (key === '?') this.ask(row);
		else if ((key === 'Delete' || key === 'Backspace') && !atLabel) this.clear();
		else if (key === 'Escape') return this.#escape();
		else if (key === ' ') {
			if (atLabel) this.toggle(row);
			else if (!this.#turnOver(row)) this.use();
		} else if (key.length === 1 && !control && !event.altKey && !atLabel && key !== '/')
			this.edit(key);
		else return false;
		return true;
	}

	/** The first or last column; with Control also the first or last row. */
	async #toEdge(direction: 1 | -1, rows: boolean): Promise<void> {
		const far = direction * this.rows.length;
		const index = rows ? this.#valueRow(this.activeRow, far) : this.activeRow;
		await this.activate(index, direction < 0 ? 0 : this.columns.length);
	}

	#escape(): boolean {
		const { view } = this.session;
		if (this.anchor) this.anchor = null;
		else if (view.why) view.why = null;
		else return false;
		return true;
	}
}
