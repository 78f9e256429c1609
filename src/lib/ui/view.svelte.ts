/**
 * What a reader has open: unfolded rows, the scenarios on screen, the one in hand, the subject, the
 * cell with the focus, the value that is explained. It is no part of the workbook and never undone.
 */
/* eslint-disable svelte/prefer-svelte-reactivity -- maps and sets here are replaced whole, never changed in place */
import { columnsOf } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import { colouringFrom, type Colouring } from './figure/scenario-colours';

/** One cell of the grid: a row's key, and 0 for its label, 1 for the base, 2 and up for scenarios. */
export interface GridPlace {
	readonly row: string;
	readonly column: number;
}

export interface WhyTarget {
	readonly scenario: string;
	readonly cell: number;
}

/** As kept in the browser between two visits. */
export interface KeptView {
	readonly shown: readonly string[];
	readonly selectedScenario: string;
	readonly subject: string | null;
	readonly open: readonly string[];
	readonly start: string | null;
	readonly colours: Colouring;
	/** Columns of comparing tables that are left out, as "table column". */
	readonly leftOut: readonly string[];
}

const isTextList = (value: unknown): value is readonly string[] =>
	Array.isArray(value) && value.every((one) => typeof one === 'string');

/** How many scenarios stand beside the base until the reader says otherwise. */
const FIRST_SHOWN = 2;

export class View {
	#base = 'base';
	/** Frozen copies, which have columns and are never in hand. */
	#copies: readonly string[] = [];
	/** Ids of the scenarios and frozen copies that have a column, the base not among them. */
	shown = $state.raw<readonly string[]>([]);
	selectedScenario = $state('base');
	subject = $state<string | null>(null);
	/** The starting view above the grid; null for the grid alone. */
	start = $state<string | null>(null);
	/** Of scenarios in charts. */
	colours = $state.raw<Colouring>({});
	open = $state.raw<ReadonlySet<string>>(new Set());
	leftOut = $state.raw<ReadonlySet<string>>(new Set());
	active = $state.raw<GridPlace | null>(null);
	why = $state.raw<WhyTarget | null>(null);
	/** The quantity whose editor is open; "" for a new one on the sheet. */
	editing = $state.raw<{ readonly quantity: string | null; readonly sheet: number } | null>(null);
	/** The sheet at the top of the window. */
	sheet = $state(0);
	/** A sheet that the grid shall scroll to, once. */
	sheetGoal = $state<number | null>(null);
	/** A cell that the grid shall show and focus, once. */
	goal = $state.raw<{ readonly cell: number; readonly scenario: string } | null>(null);

	/** Starts from what was kept, as far as the workbook still has it. */
	begin(workbook: Workbook, kept: unknown): void {
		this.#base = workbook.scenarios[0]?.id ?? 'base';
		this.#copies = (workbook.frozen ?? []).map(({ id }) => id);
		const ids = workbook.scenarios.slice(1).map((scenario) => scenario.id);
		const columns = columnsOf(workbook).map(({ id }) => id);
		const known = (kept ?? {}) as Partial<Record<keyof KeptView, unknown>>;
		const shown = isTextList(known.shown) ? known.shown.filter((id) => columns.includes(id)) : null;
		this.shown = shown ?? ids.slice(0, FIRST_SHOWN);
		this.selectedScenario =
			workbook.scenarios.find(({ id }) => id === known.selectedScenario)?.id ??
			this.shown.findLast((id) => ids.includes(id)) ??
			ids[0] ??
			this.#base;
		const subjects = workbook.sets.find((set) => set.name === workbook.front?.subject)?.members;
		const isSubject = (id: unknown) => subjects?.some((member) => member.id === id) ?? false;
		this.subject = isSubject(known.subject)
			? (known.subject as string)
			: (workbook.front?.first_subject ?? subjects?.[0]?.id ?? null);
		this.open = new Set(isTextList(known.open) ? known.open : []);
		this.start = workbook.starts?.find(({ id }) => id === known.start)?.id ?? null;
		this.colours = colouringFrom(known.colours);
		this.leftOut = new Set(isTextList(known.leftOut) ? known.leftOut : []);
		this.active = null;
		this.why = null;
		this.editing = null;
	}

	/** Lets go of what an edit took away. */
	follow(workbook: Workbook): void {
		const ids = workbook.scenarios.map((scenario) => scenario.id);
		const columns = columnsOf(workbook).map(({ id }) => id);
		this.#base = ids[0] ?? 'base';
		this.#copies = (workbook.frozen ?? []).map(({ id }) => id);
		this.shown = this.shown.filter((id) => id !== this.#base && columns.includes(id));
		if (!ids.includes(this.selectedScenario))
			this.selectedScenario = this.shown.find((id) => ids.includes(id)) ?? this.#base;
		const subjects = workbook.sets.find((set) => set.name === workbook.front?.subject)?.members;
		if (!subjects?.some((member) => member.id === this.subject))
			this.subject = subjects?.[0]?.id ?? null;
		if (!workbook.starts?.some(({ id }) => id === this.start)) this.start = null;
	}

	get kept(): KeptView {
		return {
			shown: this.shown,
			selectedScenario: this.selectedScenario,
			subject: this.subject,
			open: [...this.open].slice(0, 2000),
			start: this.start,
			colours: this.colours,
			leftOut: [...this.leftOut].slice(0, 500)
		};
	}

	goToSheet(sheet: number): void {
		this.sheetGoal = sheet;
	}

	fold(key: string, open: boolean): void {
		const next = new Set(this.open);
		if (open) next.add(key);
		else next.delete(key);
		this.open = next;
	}

	unfold(keys: readonly string[]): void {
		if (keys.some((key) => !this.open.has(key))) this.open = new Set([...this.open, ...keys]);
	}

	/** Takes a scenario in hand, and gives it a column; the base has one. */
	selectScenario(id: string): void {
		this.selectedScenario = id;
		if (id !== this.#base && !this.shown.includes(id))
			this.shown = [...this.shown.slice(0, Math.max(FIRST_SHOWN - 1, 0)), id];
	}

	/** A cell in the column of its scenario, which gets one where it has none. */
	goTo(scenario: string, cell: number): void {
		if (this.#copies.includes(scenario)) this.show(scenario, true);
		else if (scenario !== this.#base) this.selectScenario(scenario);
		this.goal = { cell, scenario };
	}

	/** Whether a table of comparisons leaves a column out. */
	leaves(table: string, column: string): boolean {
		return this.leftOut.has(`${table} ${column}`);
	}

	leaveOut(table: string, column: string, isOut: boolean): void {
		const key = `${table} ${column}`;
		const others = [...this.leftOut].filter((one) => one !== key);
		this.leftOut = new Set(isOut ? [...others, key] : others);
	}

	show(id: string, shown: boolean): void {
		const without = this.shown.filter((name) => name !== id);
		this.shown = shown ? [...without, id] : without;
	}
}
