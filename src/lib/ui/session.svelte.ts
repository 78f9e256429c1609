/**
 * The open workbook, its results and its history. Every edit goes through `apply`; results come from the
 * engines and are never computed here. What a reader has open is in `view.svelte.ts`, keeping in
 * `autosave.ts`, opening and the tabs in `open-document.svelte.ts`.
 */
/* eslint-disable svelte/prefer-svelte-reactivity -- maps and sets here are replaced whole, never changed in place */
import type { Engine, EngineEvents, StartEngine } from '$lib/browser/engine-client';
import type { QuantityFault } from '$lib/engine/faults';
import type { Answered } from '$lib/engine/shipped-values';
import { layOut, type Layout } from '$lib/engine/layout';
import type { PlanProblem } from '$lib/engine/plan';
import type { Agreement, Results, Why } from '$lib/engine/results';
import type { Trial } from '$lib/engine/trial';
import { UnitSystem } from '$lib/units/system';
import type { Command, CommandProblem } from '$lib/workbook/commands';
import { entriesBetween } from '$lib/workbook/entries-between';
import {
	doCommand,
	historyOf,
	redo,
	redoLabel,
	undo,
	undoLabel,
	withOthers,
	type History,
	type StepResult
} from '$lib/workbook/history';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { remapResults } from './remap-results';
import { View } from './view.svelte';

/** A sentence at the top of the page, until it is read. */
export interface Notice {
	readonly tone: 'error' | 'caution' | 'said';
	readonly text: string;
	readonly details?: readonly string[];
	/** Offers to take back the edit of this revision, while it is the last; the item comes back with it. */
	readonly undo?: { readonly revision: number; readonly item: string };
}

const READ_ONLY = {
	tab: 'This workbook can only be read here: another tab has it. Choose "Take over here" to change it.',
	role: 'You may read this workbook, not change it. Ask its owner, or keep a copy of your own to change.'
} as const;

/** The layout with the words and values of a workbook of the same structure. */
function withWorkbook(layout: Layout, workbook: Workbook): Layout {
	const { quantities } = layout;
	if (layout.workbook.sheets === workbook.sheets) return { ...layout, workbook };
	const current = workbook.sheets.flatMap((sheet) => sheet.quantities);
	const renewed = quantities.map((quantity) => ({
		...quantity,
		quantity: current[quantity.index] ?? quantity.quantity
	}));
	const byName = new Map(renewed.map((one) => [one.quantity.name, one]));
	return { ...layout, workbook, quantities: renewed, byName };
}

export class Session implements EngineEvents {
	#history = $state.raw<History | null>(null);
	#layout = $state.raw<Layout | null>(null);
	#results = $state.raw<ReadonlyMap<string, Results>>(new Map());
	#faults = $state.raw<ReadonlyMap<string, readonly QuantityFault[]>>(new Map());
	#problems = $state.raw<readonly PlanProblem[]>([]);
	#agreement = $state.raw<Agreement | null>(null);
	#revision = $state(0);
	#settled = $state(0);
	/** The edit at which values were put on screen that the engine has not computed yet. */
	#shippedAt = $state(-1);
	#engine: Engine | null = null;
	/** The edit that made the layout: answers to older ones fit no cell of it. */
	#layoutRevision = 0;
	readonly #startEngine: StartEngine;

	readonly view = new View();
	notice = $state.raw<Notice | null>(null);
	/** Said to screen readers, and shown beside the grid's head for a moment. */
	said = $state('');
	readOnly = $state(false);
	/** Why: another tab has it, or one's part in it on the server is to read. */
	readOnlyFor = $state<keyof typeof READ_ONLY>('tab');
	readonly locale: string;
	/** Told after every edit, so that it can be kept. */
	onedit: ((commands: readonly Command[], workbook: Workbook) => void) | null = null;

	/** What undo would take back; null when there is nothing. */
	readonly undoable = $derived(this.#history && !this.readOnly ? undoLabel(this.#history) : null);
	readonly redoable = $derived(this.#history && !this.readOnly ? redoLabel(this.#history) : null);
	readonly units = $derived(UnitSystem.create(this.#history?.workbook.units ?? []).system);

	constructor(startEngine: StartEngine, locale: string) {
		this.#startEngine = startEngine;
		this.locale = locale;
	}

	get workbook(): Workbook | null {
		return this.#history?.workbook ?? null;
	}
	get layout(): Layout | null {
		return this.#layout;
	}
	/** By scenario id; the base comes first. */
	get results(): ReadonlyMap<string, Results> {
		return this.#results;
	}
	get faults(): ReadonlyMap<string, readonly QuantityFault[]> {
		return this.#faults;
	}
	get problems(): readonly PlanProblem[] {
		return this.#problems;
	}
	get agreement(): Agreement | null {
		return this.#agreement;
	}
	get baseId(): string {
		return this.workbook?.scenarios[0]?.id ?? 'base';
	}
	get base(): Results | undefined {
		return this.#results.get(this.baseId);
	}
	/** Whether every scenario shows the last edit. */
	get isSettled(): boolean {
		return this.#settled === this.#revision;
	}
	/** Whether some values on screen are those that came with the workbook, and the engine is still computing. */
	get showsShipped(): boolean {
		return this.#shippedAt > this.#settled;
	}
	get revision(): number {
		return this.#revision;
	}

	/** Starts the engine before there is a workbook for it, so that it is there when one comes. */
	prepare(): void {
		this.#engine ??= this.#startEngine(this);
	}

	/** Opens a workbook in place of the one that is open; history begins anew. Values that came with it are shown at once. */
	open(workbook: Workbook, keptView: unknown = null, shipped: Answered | null = null): void {
		this.#results = new Map();
		this.#faults = new Map();
		this.#problems = [];
		this.#agreement = null;
		this.notice = null;
		this.view.begin(workbook, keptView);
		this.#take(historyOf(workbook), true);
		if (shipped) this.#show(shipped);
		this.prepare();
		this.#engine?.open(workbook, this.#revision, this.#order());
	}

	#show({ problems, results, faults }: Answered): void {
		this.#problems = problems;
		this.#results = new Map(results.map((column) => [column.scenario, column]));
		this.#faults = new Map(results.map(({ scenario }, at) => [scenario, faults[at] ?? []]));
		this.#shippedAt = this.#revision;
	}

	/** One edit, of one command or of several that hold or fall together. */
	attempt(...commands: readonly Command[]): CommandProblem | null {
		const before = this.#history;
		if (!before) return { code: 'nothing-open', message: 'No workbook is open. Open one first.' };
		if (this.readOnly) return { code: 'read-only', message: READ_ONLY[this.readOnlyFor] };
		const [first, ...others] = commands;
		if (!first) return null;
		const result = doCommand(before, others.length === 0 ? first : { kind: 'several', commands });
		if (!result.ok) return result.problem;
		this.#follow(result);
		return null;
	}

	/** The same, giving a sentence if it cannot be made, else null. */
	apply(...commands: readonly Command[]): string | null {
		return this.attempt(...commands)?.message ?? null;
	}

	/** Puts what others did into the workbook: no step of one's own, and what is being typed stays. */
	takeIn(workbook: Workbook): void {
		if (!this.#history || workbook === this.#history.workbook) return;
		const entries = entriesBetween(this.#history.workbook, workbook);
		const whole: Command = { kind: 'restore_workbook', workbook, structural: true };
		this.#take(withOthers(this.#history, workbook), entries === null);
		if (entries) this.#engine?.apply(entries, this.#revision, this.#order());
		else this.#engine?.open(workbook, this.#revision, this.#order());
		this.onedit?.(entries ?? [whole], workbook);
	}

	/** Says that an item of a list was removed, and offers it back. */
	tellRemoved(item: string, name: string): void {
		const undo = { revision: this.#revision, item };
		this.notice = { tone: 'said', text: `${name} removed.`, undo };
	}

	/** Takes back what the notice speaks of. */
	undoNotice(): void {
		const offer = this.notice?.undo;
		if (!offer || offer.revision !== this.#revision) return;
		this.undo();
		this.notice = { tone: 'said', text: `${this.said}.` };
	}

	undo(): void {
		this.#step(undo, 'Undone');
	}

	redo(): void {
		this.#step(redo, 'Done again');
	}

	why(scenario: string, cell: number): Promise<Why | null> {
		return this.#engine?.why(scenario, cell) ?? Promise.resolve(null);
	}

	tryQuantity(quantity: Quantity, replaces: string | null): Promise<Trial | null> {
		return this.#engine?.tryQuantity(quantity, replaces) ?? Promise.resolve(null);
	}

	close(): void {
		this.#engine?.close();
		this.#engine = null;
	}

	#step(take: typeof undo | typeof redo, word: string): void {
		if (!this.#history || this.readOnly) return;
		const label = take === undo ? this.undoable : this.redoable;
		const taken = take(this.#history);
		if (!taken) return;
		if (!taken.ok) {
			this.#history = taken.history;
			this.notice = { tone: 'caution', text: taken.problem.message };
			return;
		}
		this.#follow(taken);
		this.said = `${word}: ${label}`;
	}

	/** Takes the step, and tells the engine and whoever keeps the work. */
	#follow({ history, command, structural }: Extract<StepResult, { ok: true }>): void {
		if (history.workbook === this.#history?.workbook) return;
		this.#take(history, structural);
		const { workbook } = history;
		if (!structural && command.kind === 'set_inputs')
			this.#engine?.apply([command], this.#revision, this.#order());
		else this.#engine?.open(workbook, this.#revision, this.#order());
		this.onedit?.([command], workbook);
	}

	#take(history: History, structural: boolean): void {
		const { workbook } = history;
		const before = this.#layout;
		this.#history = history;
		this.#revision++;
		if (structural || !before) {
			this.#layout = layOut(workbook);
			this.#layoutRevision = this.#revision;
			this.#results = before ? remapResults(before, this.#layout, this.#results) : new Map();
			this.#faults = new Map();
			this.view.why = null;
		} else this.#layout = withWorkbook(before, workbook);
		this.view.follow(workbook);
	}

	/** The base first, then what is on screen, then the rest. */
	#order(): string[] {
		const ids = this.workbook?.scenarios.map((scenario) => scenario.id) ?? [];
		return [
			...new Set([this.baseId, this.view.selectedScenario, ...this.view.shown, ...ids])
		].filter((id) => ids.includes(id));
	}

	onresults(results: Results, revision: number): void {
		if (revision < this.#layoutRevision) return;
		this.#results = new Map([...this.#results, [results.scenario, results]]);
	}
	onfaults(scenario: string, faults: readonly QuantityFault[], revision: number): void {
		if (revision >= this.#layoutRevision)
			this.#faults = new Map([...this.#faults, [scenario, faults]]);
	}
	onproblems(problems: readonly PlanProblem[], revision: number): void {
		if (revision >= this.#layoutRevision) this.#problems = problems;
	}
	onsettled(revision: number): void {
		this.#settled = revision;
	}
	onagreement(agreement: Agreement, revision: number): void {
		this.#agreement = revision === this.#revision ? agreement : { ...agreement, busy: true };
	}
	onfailed(message: string): void {
		this.notice = { tone: 'error', text: message };
	}
}
