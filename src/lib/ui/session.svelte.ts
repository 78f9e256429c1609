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
import { hasSameStructure, withWorkbook } from '$lib/engine/structure';
import type { FiguresAsked, OrderFigures } from '$lib/engine/quote-figures';
import type { QuoteOver } from '$lib/engine/quote-over';
import type { Trial } from '$lib/engine/trial';
import type { OwnCount } from '$lib/review/template';
import { UnitSystem } from '$lib/units/system';
import { applyCommand, type Command, type CommandProblem } from '$lib/workbook/apply';
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
import { findFrozen, isFrozenCopy } from '$lib/workbook/frozen';
import { scenarioTitle } from '$lib/workbook/lookup';
import { copyMeasuredAgainst } from '$lib/workbook/scenario';
import { patchBetween } from '$lib/workbook/patch';
import type { Frozen, Quantity, QuoteEntry, Workbook } from '$lib/workbook/schema';
import type * as FrozenColumns from './frozen-columns';
import type * as PathCells from './path/cells';
import { remapResults } from './remap-results';
import { texts } from './shell/texts';
import { Planning, type LoadSolving } from './planning.svelte';
import { fetchStructural } from './structural';
import { View } from './view.svelte';

/** A sentence at the top of the page, until it is read. */
export interface Notice {
	readonly tone: 'error' | 'caution' | 'said';
	readonly text: string;
	readonly details?: readonly string[];
	/** The scenario that it is about: what is to be entered there is a click away. */
	readonly scenario?: string;
	/** Offers to take back the edit of this revision, while it is the last; the item comes back with it. */
	readonly undo?: { readonly revision: number; readonly item: string };
}

/** What the engine has answered; a scenario's entry takes the place of the one before. */
interface Answers {
	readonly results: ReadonlyMap<string, Results>;
	readonly faults: ReadonlyMap<string, readonly QuantityFault[]>;
	readonly problems: readonly PlanProblem[] | null;
}
const NO_ANSWERS: Answers = { results: new Map(), faults: new Map(), problems: null };

const NONE_FROZEN: readonly Results[] = [];

const withCopies = (workbook: Workbook | null, held: readonly Frozen[]): Workbook | null =>
	workbook && held.length > 0
		? { ...workbook, frozen: [...(workbook.frozen ?? []), ...held] }
		: workbook;

const READ_ONLY = {
	tab: 'This workbook can only be read here: another tab has it. Choose "Take over here" to change it.',
	role: 'You may read this workbook, not change it. Ask its owner, or keep a copy of your own to change.'
} as const;

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
	/** Until all scenarios of a workbook just opened are answered, each is shown as it comes. */
	#isOpening = false;
	#copies = $state.raw<typeof FrozenColumns | null>(null);
	/** Copies that are read in this page alone, and are no part of the workbook. */
	#held = $state.raw<readonly Frozen[]>([]);
	#paths = $state.raw<typeof PathCells | null>(null);
	/** Answers to an edit, held back until all are there: old and new figures never stand side by side. */
	#incoming: Answers = NO_ANSWERS;
	readonly #startEngine: StartEngine;

	/** Has the plans follow; null where nobody plans. */
	readonly planning: Planning | null;
	readonly view = new View();
	notice = $state.raw<Notice | null>(null);
	/** Said to screen readers, and shown beside the grid's head for a moment. */
	said = $state('');
	/** The last step taken here, in words, and how many there were; plans and what others do are none. */
	lastStep = $state('');
	step = $state(0);
	/** What the last step did to the headline results, in words; empty until it is known. */
	moved = $state('');
	/** By the title of a sheet, once the figures are said to be one's own: how many are. */
	own = $state.raw<ReadonlyMap<string, OwnCount> | null>(null);
	readOnly = $state(false);
	/** Why: another tab has it, or one's part in it on the server is to read. */
	readOnlyFor = $state<keyof typeof READ_ONLY>('tab');
	readonly locale: string;
	/** Told after every edit, so that it can be kept. */
	onedit: ((commands: readonly Command[], workbook: Workbook) => void) | null = null;

	/** What undo would take back; null when there is nothing. */
	readonly undoable = $derived(this.#history && !this.readOnly ? undoLabel(this.#history) : null);
	readonly redoable = $derived(this.#history && !this.readOnly ? redoLabel(this.#history) : null);
	/** Which figures on screen rest on a plan that does not answer the workbook. */
	readonly stale = $derived.by(() =>
		this.#history && this.planning ? this.planning.stale(this.#history.workbook) : null
	);
	readonly #reading = $derived.by(() => withCopies(this.#history?.workbook ?? null, this.#held));
	readonly #laid = $derived(
		this.#layout && this.#reading && this.#held.length > 0
			? withWorkbook(this.#layout, this.#reading)
			: this.#layout
	);
	/** Columns of the frozen copies, once what reads them is fetched. */
	readonly #frozen = $derived(
		this.layout && this.#copies ? this.#copies.frozenColumns(this.layout) : NONE_FROZEN
	);
	readonly #all = $derived(
		this.#frozen.length === 0
			? this.#results
			: new Map([
					...this.#results,
					...this.#frozen.map((column) => [column.scenario, column] as const)
				])
	);
	readonly units = $derived(UnitSystem.create(this.#history?.workbook.units ?? []).system);

	/** `loadSolving` fetches the solver where the workbook has a programme; left out, plans stay as they are. */
	constructor(startEngine: StartEngine, locale: string, loadSolving: LoadSolving | null = null) {
		this.#startEngine = startEngine;
		this.planning =
			loadSolving &&
			new Planning(loadSolving, {
				lend: (port) => this.#engine?.lend(port),
				take: (command) => this.takePlans(command),
				fail: (message) => this.onfailed(message)
			});
		this.locale = locale;
	}

	get workbook(): Workbook | null {
		return this.#history?.workbook ?? null;
	}
	get layout(): Layout | null {
		return this.#laid;
	}
	/** The workbook with the copies that are read in this page alone: to be shown and compared, never kept. */
	get reading(): Workbook | null {
		return this.#reading;
	}
	/** Copies that go when the page is left. */
	get held(): readonly Frozen[] {
		return this.#held;
	}
	/** By id of a scenario or a frozen copy; the base comes first. */
	get results(): ReadonlyMap<string, Results> {
		return this.#all;
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
	/** What a scenario or a frozen copy is called. */
	titleOf(id: string): string {
		return this.reading ? scenarioTitle(this.reading, id) : id;
	}
	/** What cells of paths in time say; null until it is fetched, and where there are none. */
	get paths(): typeof PathCells | null {
		return this.#paths;
	}
	/** What shows columns of frozen copies, and of scenarios that are measured against one; null until it is fetched, and where there are none. */
	get copies(): typeof FrozenColumns | null {
		return this.#copies;
	}
	/** Whether it is a frozen copy, not a scenario, that has this id. */
	isCopy(id: string): boolean {
		return this.reading?.frozen ? isFrozenCopy(this.reading, id) : false;
	}
	/** What the differences of a scenario are told against: the base, or the frozen copy that it is compared with. */
	toldAgainst(id: string): string {
		const copy = this.workbook?.frozen && copyMeasuredAgainst(this.workbook, id);
		return copy ? copy.id : this.baseId;
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
		this.lastStep = '';
		this.moved = '';
		this.own = null;
		this.#held = [];
		this.view.begin(workbook, keptView);
		this.#layout = null;
		this.#take(historyOf(workbook));
		if (shipped) this.#showShipped(shipped);
		this.prepare();
		this.#openEngine(shipped !== null);
	}

	#showShipped({ problems, results, faults }: Answered): void {
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
		if (!result.ok) {
			if (result.problem.code === 'still-fetching') void fetchStructural().catch(() => undefined);
			return result.problem;
		}
		if (result.history.workbook !== before.workbook) this.#count(undoLabel(result.history) ?? '');
		this.#follow(result);
		return null;
	}

	/** The same, giving a sentence if it cannot be made, else null. */
	apply(...commands: readonly Command[]): string | null {
		return this.attempt(...commands)?.message ?? null;
	}

	/** Sets a copy beside the workbook in this page alone, or takes it away again. */
	hold(copy: Frozen): void {
		this.#held = [...this.#held.filter(({ id }) => id !== copy.id), copy];
		this.#followHeld();
		this.view.show(copy.id, true);
	}
	letGo(id: string): void {
		this.#held = this.#held.filter((one) => one.id !== id);
		this.#followHeld();
	}
	#followHeld(): void {
		if (this.reading) this.view.follow(this.reading);
		if (!this.#copies) void this.#fetchFrozen();
	}

	/** Puts what others did into the workbook: no step of one's own, and what is being typed stays. */
	takeIn(workbook: Workbook): void {
		if (!this.#history || workbook === this.#history.workbook) return;
		const patch = patchBetween(this.#history.workbook, workbook);
		if (!patch) return;
		this.#take(withOthers(this.#history, workbook));
		this.#tell({ kind: 'patch', patch });
	}

	/** Puts plans into the workbook: they follow from it, and are no step of anyone's. */
	takePlans(command: Command): void {
		const history = this.readOnly ? null : this.#history;
		const result = history && applyCommand(history.workbook, command);
		if (!result?.ok || result.workbook === history?.workbook) return;
		this.#take({ ...history!, workbook: result.workbook });
		this.#tell(command);
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
		this.#step(redo, 'Redone');
	}

	/** Null for a frozen copy: nobody knows how its values came about but by what it holds itself. */
	why(scenario: string, cell: number, from: number | null = null): Promise<Why | null> {
		if (this.reading && findFrozen(this.reading, scenario)) return Promise.resolve(null);
		return this.#engine?.why(scenario, cell, from) ?? Promise.resolve(null);
	}

	tryQuantity(quantity: Quantity, replaces: string | null): Promise<Trial | null> {
		return this.#engine?.tryQuantity(quantity, replaces) ?? Promise.resolve(null);
	}

	/** A quote over the workbook as it is; null where nobody can compute it. */
	quote(entries: readonly QuoteEntry[], keep = false): Promise<QuoteOver | null> {
		return this.#engine?.quote?.(entries, keep) ?? Promise.resolve(null);
	}

	/** Figures of several orders over the workbook as it is; null where nobody can compute them. */
	figures(asked: FiguresAsked): Promise<readonly OrderFigures[] | null> {
		return this.#engine?.figures?.(asked) ?? Promise.resolve(null);
	}

	/** Gives the plan of the workbook as it is now to whoever listens at the other end of a port. */
	lend(port: MessagePort): void {
		this.#engine?.lend(port);
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
		this.#count(this.said);
	}

	#count(words: string): void {
		this.lastStep = words;
		this.step++;
	}

	#follow({ history, command }: Extract<StepResult, { ok: true }>): void {
		// A step of plans that were made anew since changes nothing any more, and is taken all the same.
		if (history.workbook === this.#history?.workbook) {
			this.#history = history;
			return;
		}
		this.#take(history);
		this.#tell(command);
	}

	/** Tells the engine, and whoever keeps the work, of the edit that has just been taken. */
	#tell(command: Command): void {
		if (!this.workbook) return;
		this.#engine?.apply(command, this.#revision, this.#order());
		this.planning?.edited(command, command.kind !== 'set_plans' && !this.readOnly);
		this.onedit?.([command], this.workbook);
	}

	#openEngine(plansStand = false): void {
		if (!this.workbook) return;
		this.planning?.opened(this.#revision, plansStand);
		this.#isOpening = true;
		this.#engine?.open(this.workbook, this.#revision, this.#order());
	}

	#take(history: History): void {
		const { workbook } = history;
		const before = this.#layout;
		this.#history = history;
		this.#revision++;
		if (before && hasSameStructure(before.workbook, workbook))
			this.#layout = withWorkbook(before, workbook);
		else {
			this.#layout = layOut(workbook);
			this.#layoutRevision = this.#revision;
			this.#results = before ? remapResults(before, this.#layout, this.#results) : new Map();
			this.#faults = new Map();
			this.#incoming = NO_ANSWERS;
			this.view.why = null;
			this.planning?.laidOut(this.#revision);
		}
		this.view.follow(withCopies(workbook, this.#held) ?? workbook);
		if (workbook.frozen && !this.#copies) void this.#fetchFrozen();
		if (!this.#paths && workbook.sets.some(({ time }) => time)) void this.#fetchPaths();
	}

	async #fetchPaths(): Promise<void> {
		try {
			this.#paths = await import('./path/cells');
		} catch {
			this.onfailed(texts.partNotFetched);
		}
	}

	async #fetchFrozen(): Promise<void> {
		try {
			this.#copies = await import('./frozen-columns');
		} catch {
			this.onfailed(texts.partNotFetched);
		}
	}

	/** The base first, then what is on screen, then the rest. */
	#order(): string[] {
		const ids = this.workbook?.scenarios.map((scenario) => scenario.id) ?? [];
		return [
			...new Set([this.baseId, this.view.selectedScenario, ...this.view.shown, ...ids])
		].filter((id) => ids.includes(id));
	}

	onresults(results: Results, revision: number): void {
		this.#hold({ results: new Map([[results.scenario, results]]) }, revision);
	}
	onfaults(scenario: string, faults: readonly QuantityFault[], revision: number): void {
		this.#hold({ faults: new Map([[scenario, faults]]) }, revision);
	}
	onproblems(problems: readonly PlanProblem[], revision: number): void {
		this.#hold({ problems }, revision);
	}
	onsettled(revision: number): void {
		this.#show();
		if (revision === this.#revision) this.#isOpening = false;
		this.#settled = revision;
		if (revision === this.#revision && this.workbook && !this.readOnly)
			this.planning?.settled(this.workbook, revision);
	}
	/** The engine cannot follow by commands any more. */
	onlost(): void {
		this.#openEngine();
	}

	#hold(answers: Partial<Answers>, revision: number): void {
		if (revision < this.#layoutRevision) return;
		const { results, faults, problems } = this.#incoming;
		this.#incoming = {
			results: new Map([...results, ...(answers.results ?? [])]),
			faults: new Map([...faults, ...(answers.faults ?? [])]),
			problems: answers.problems ?? problems
		};
		if (this.#isOpening) this.#show();
	}

	#show(): void {
		const { results, faults, problems } = this.#incoming;
		this.#incoming = NO_ANSWERS;
		if (results.size > 0) this.#results = new Map([...this.#results, ...results]);
		if (faults.size > 0) this.#faults = new Map([...this.#faults, ...faults]);
		if (problems) this.#problems = problems;
	}

	onagreement(agreement: Agreement, revision: number): void {
		this.#agreement = revision === this.#revision ? agreement : { ...agreement, busy: true };
	}
	onfailed(message: string): void {
		this.notice = { tone: 'error', text: message };
	}
}
