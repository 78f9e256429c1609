/**
 * Plans that follow the edits: once all scenarios show an edit, what no longer answers its programme is solved anew, and
 * the plans are put into the workbook. For a workbook without a programme nothing is fetched and nothing is done.
 */
/* eslint-disable svelte/prefer-svelte-reactivity -- what rests on plans is replaced whole, never changed in place */
import type { PlanReport } from '$lib/browser/solver-messages';
import type { Solving, StartSolving } from '$lib/browser/solving';
import type { Resting } from '$lib/engine/resting';
import type { StaleCells } from '$lib/engine/stale';
import type { AnswerTo, Question } from '$lib/programmes/inquiry/questions';
import type { Command } from '$lib/workbook/commands';
import { activeProgrammes } from '$lib/workbook/plans';
import type { Workbook } from '$lib/workbook/schema';
import type { Marking } from './programmes/marking';

/** Milliseconds within which a plan is there before anybody wonders. */
const SOON = 250;

const OF_WORDS: ReadonlySet<Command['kind']> = new Set([
	...(['set_ticks', 'set_title', 'set_about', 'set_invented'] as const),
	...(['rename_sheet', 'move_sheet', 'put_study', 'remove_study', 'set_ran', 'quote_on'] as const)
]);

/** Whether no plan can follow it: signatures, titles, studies. */
const isOfWords = (command: Command): boolean =>
	command.kind === 'several' ? command.commands.every(isOfWords) : OF_WORDS.has(command.kind);

/** Fetches what starts the solver's worker. */
export type LoadSolving = () => Promise<{
	readonly start: StartSolving;
	readonly marking: Marking;
}>;

const NOT_FETCHED =
	'The solver could not be fetched, so plans do not follow. Load the page again once there is a connection; the work is kept.';

interface Host {
	/** Has the engine give its plan of cells to whoever listens at the other end of the port. */
	lend(port: MessagePort): void;
	/** Puts plans into the workbook. */
	take(command: Command): void;
	fail(message: string): void;
}

export class Planning {
	readonly #load: LoadSolving;
	readonly #host: Host;
	#starting: Promise<void> | null = null;
	#solving: Solving | null = null;
	/** Whether the solver's worker has the workbook and follows its edits. */
	#isOpen = false;
	/** The edit with which the workbook was opened: what was planned before is another's. */
	#openedAt = 0;
	#asked = 0;
	/** Whether its plans are known to answer it, though nobody has looked at them here: it came with its values, and is as it came. */
	#stands = false;
	/** Whether anything that a plan can follow was edited since plans were last asked for. */
	#matters = true;

	/** Whether plans are being made for the last edit. */
	busy = $state(false);
	/** Whether that takes so long that a reader sees the figures of before. */
	isSlow = $state(false);
	#slowly: ReturnType<typeof setTimeout> | undefined;
	/** What came of the last planning; null where there was none. */
	report = $state.raw<PlanReport | null>(null);
	/** Which cells of the layout rest on plans; empty until it is known of this layout. */
	resting = $state.raw<Resting>(new Map());
	#laidOutAt = 0;
	/** What marks figures that are out of date; null until it is fetched. */
	marking = $state.raw<Marking | null>(null);

	constructor(load: LoadSolving, host: Host) {
		this.#load = load;
		this.#host = host;
	}

	/** Another workbook is open. `stands`: its plans were proven where it was made. */
	opened(revision: number, stands = false): void {
		this.#isOpen = false;
		this.#openedAt = revision;
		this.#stands = stands;
		this.#matters = true;
		this.#be(false);
		this.report = null;
	}

	/** The cells have other numbers from this edit on. */
	laidOut(revision: number): void {
		this.#laidOutAt = revision;
		this.resting = new Map();
	}

	/** Which figures rest on a plan that does not answer the workbook; null where none does. */
	stale(workbook: Workbook): StaleCells | null {
		return this.marking?.staleCells(workbook, this) ?? null;
	}

	/**
	 * An edit that the engine has been told: until all scenarios show it, nobody
	 * knows which plans it leaves as they are. `isFollowed`: whether plans will be made for it.
	 */
	edited(command: Command, isFollowed: boolean): void {
		if (this.#isOpen) this.#solving?.apply(command);
		if (isOfWords(command)) return;
		this.#matters = true;
		if (command.kind !== 'set_plans') this.#stands = false;
		if (isFollowed && this.report !== null) this.#be(true);
	}

	/** All scenarios show the edit of this revision. */
	settled(workbook: Workbook, revision: number): void {
		if (activeProgrammes(workbook).length === 0) {
			this.#be(false);
			this.report = null;
			return;
		}
		// Plans that stand are out of date by no word. Those being made were halted, and are asked for again.
		if (!this.#matters && !this.busy && this.report !== null) return;
		this.#matters = false;
		this.#be(true);
		this.#asked = revision;
		if (this.#solving) this.#ask();
		else if (!this.#starting) this.#starting = this.#start();
	}

	/** What a reader asks about a plan of the workbook as it is now. */
	async ask<K extends Question['kind']>(
		question: Extract<Question, { kind: K }>
	): Promise<AnswerTo<K>> {
		if (!this.#solving) await (this.#starting ??= this.#start());
		const solving = this.#solving;
		if (!solving) return { ok: false, problems: [NOT_FETCHED] };
		this.#open();
		return solving.ask<K>(question);
	}

	close(): void {
		clearTimeout(this.#slowly);
		this.#solving?.close();
		this.#solving = null;
	}

	async #start(): Promise<void> {
		try {
			const { start, marking } = await this.#load();
			this.marking = marking;
			this.#solving = start({
				onplanned: (command, report, revision) => this.#hear(command, report, revision),
				onresting: (resting, revision) => {
					if (revision >= this.#laidOutAt) this.resting = resting;
				},
				onfailed: (message) => this.#fail(message)
			});
			if (this.busy) this.#ask();
		} catch {
			this.#fail(NOT_FETCHED);
		} finally {
			this.#starting = null;
		}
	}

	#ask(): void {
		this.#open();
		this.#solving?.plan(this.#asked);
	}

	#open(): void {
		if (!this.#isOpen) this.#solving?.open((port) => this.#host.lend(port));
		this.#isOpen = true;
	}

	#hear(command: Command | null, report: PlanReport, revision: number): void {
		if (revision < this.#openedAt) return;
		this.report = report;
		if (command) this.#host.take(command);
		else if (revision === this.#asked) this.#be(false);
	}

	#be(busy: boolean): void {
		this.busy = busy;
		if (!busy) {
			clearTimeout(this.#slowly);
			this.#slowly = undefined;
			this.isSlow = false;
		} else if (!this.#stands) this.#slowly ??= setTimeout(() => (this.isSlow = true), SOON);
	}

	/** The next edit begins anew. */
	#fail(message: string): void {
		this.#isOpen = false;
		this.#matters = true;
		this.#be(false);
		this.#host.fail(message);
	}
}
