/**
 * One quantity being edited: the draft, what the engine says of it, keeping, removing and moving it.
 */
import type { Trial } from '$lib/engine/trial';
import type { Outcome } from '$lib/engine/results';
import { isError, OK } from '$lib/engine/state';
import type { FormulaProblem } from '$lib/formula/tree';
import type { Command, CommandProblem } from '$lib/workbook/commands';
import type { Quantity } from '$lib/workbook/schema';
import { decimalsFor, formatNumber, formatUnit } from '../format';
import type { Session } from '../session.svelte';
import { draftOf, quantityOf, type Draft } from './draft';
import { texts } from './texts';

/** How long nothing must be typed before the engine is asked. */
const QUIET = 250;
/** Values shown of what a formula gives. */
const SHOWN = 4;

/** What the workbook refuses as a whole is said by the command that is refused. */
const isOfFormula = ({ part, span }: FormulaProblem & { readonly part: string | null }) =>
	part !== null || span.end > 0;

export class Editing {
	readonly session: Session;
	/** The quantity as it stands; null for a new one. */
	readonly before: Quantity | null;
	draft: Draft = $state() as Draft;
	trial = $state.raw<Trial | null>(null);
	/** Why it was not kept. */
	problem = $state.raw<CommandProblem | null>(null);
	/** What "go ahead" would do. */
	#answerable: Command | null = null;
	#timer: ReturnType<typeof setTimeout> | null = null;
	readonly read = $derived.by(() =>
		quantityOf($state.snapshot(this.draft), this.before, this.session.locale)
	);
	/** What the engine is asked about: a formula has its messages before anybody has named what it gives. */
	readonly #tried = $derived.by(() => {
		if (this.read.ok) return this.read;
		const named = { ...$state.snapshot(this.draft), name: this.#freeName() };
		return this.draft.name.trim() ? this.read : quantityOf(named, this.before, this.session.locale);
	});
	/** The draft that the trial on screen is of. */
	#triedOf: unknown = null;

	constructor(session: Session, name: string | null, sheet: number) {
		this.session = session;
		const place = name === null ? undefined : session.layout?.byName.get(name);
		this.before = place?.quantity ?? null;
		this.draft = draftOf(this.before, place?.sheet ?? sheet, session.locale);
	}

	get unchanged(): boolean {
		const start = draftOf(this.before, this.draft.sheet, this.session.locale);
		return JSON.stringify(start) === JSON.stringify(this.draft);
	}

	/** Asks the engine about the draft, once typing rests. Returns how to take the question back. */
	ask(): () => void {
		const read = this.#tried;
		this.problem = null;
		this.#answerable = null;
		this.#timer = setTimeout(async () => {
			if (!read.ok || this.session.readOnly) return;
			const trial = await this.session.tryQuantity(read.quantity, this.before?.name ?? null);
			if (this.#tried === read) this.#show(trial, read);
		}, QUIET);
		return () => {
			if (this.#timer !== null) clearTimeout(this.#timer);
		};
	}

	#show(trial: Trial | null, read: unknown): void {
		this.trial = trial;
		this.#triedOf = read;
	}

	/** It stands in the messages of a formula, until there is a name of its own. */
	#freeName(): string {
		const taken = this.session.layout?.byName;
		let name = 'this_quantity';
		while (taken?.has(name)) name += '_';
		return name;
	}

	/** What is wrong with one of the formulas: null the one, "where", or a case's member. */
	problemOf(part: string | null): FormulaProblem | null {
		return this.trial?.problems.find((problem) => problem.part === part) ?? null;
	}

	/** "gives EUR/kg: 1.95; 3.33, in the base". */
	get outcome(): string {
		const { trial } = this;
		const tried = this.#tried;
		if (!trial || !tried.ok || trial.problems.length > 0) return '';
		const { unit, type, digits = 4 } = tried.quantity;
		const isNumber = type === undefined || type === 'number';
		const show = ({ state, value }: Outcome) => {
			if (state !== OK) return isError(state) ? 'no value' : 'nothing';
			return formatNumber(value, decimalsFor(value, digits), this.session.locale);
		};
		const some = isNumber ? trial.sample.slice(0, SHOWN).map(show) : [];
		const units = formatUnit(unit);
		const gives = trial.gives ? `gives ${formatUnit(trial.gives) || 'a plain number'}` : '';
		const values =
			some.length > 0 ? `${some.join('; ')}${units ? ` ${units}` : ''} in the base` : '';
		return [gives, values].filter(Boolean).join(': ');
	}

	/** What is allowed but may surprise. */
	get warnings(): readonly string[] {
		return this.trial?.warnings.map((warning) => warning.message) ?? [];
	}

	/** Keeps the draft, gathering written out in its formulas. True when the editor may close. */
	async keep(goAhead = false): Promise<boolean> {
		const { read } = this;
		if (!read.ok) {
			this.problem = { code: 'draft', message: read.message };
			return false;
		}
		const trial = await this.session.tryQuantity(read.quantity, this.before?.name ?? null);
		// Somebody who typed on meanwhile has not kept that yet.
		if (this.read !== read) return false;
		// A formula that holds no water may be kept, to be mended, by somebody who has read what is wrong with it.
		const isTold = goAhead || this.#triedOf === read;
		if (trial?.problems.some(isOfFormula) && !isTold) {
			this.#show(trial, read);
			this.problem = { code: 'faulty', message: texts.faultyFormula };
			return false;
		}
		const quantity = trial?.written ?? read.quantity;
		if (this.before === null) {
			const sheet = this.session.workbook?.sheets[this.draft.sheet];
			return this.#run([
				{
					kind: 'add_quantity',
					sheet: this.draft.sheet,
					index: sheet?.quantities.length ?? 0,
					quantity
				}
			]);
		}
		const replace: Command = {
			kind: 'replace_quantity',
			name: this.before.name,
			quantity,
			...(goAhead && { also: true })
		};
		const place = this.session.layout?.byName.get(this.before.name);
		const moved = place !== undefined && place.sheet !== this.draft.sheet;
		const target = this.session.workbook?.sheets[this.draft.sheet]?.quantities.length ?? 0;
		return this.#run(
			moved
				? [
						replace,
						{
							kind: 'move_quantity',
							name: quantity.name,
							sheet: this.draft.sheet,
							index: target
						}
					]
				: [replace]
		);
	}

	remove(goAhead = false): boolean {
		if (!this.before) return true;
		return this.#run([
			{ kind: 'remove_quantity', name: this.before.name, ...(goAhead && { also: true }) }
		]);
	}

	/** One place up or down within its sheet. */
	move(step: 1 | -1): void {
		const { workbook, layout } = this.session;
		const place = this.before ? layout?.byName.get(this.before.name) : undefined;
		if (!workbook || !place || !this.before) return;
		const { name } = this.before;
		const quantities = workbook.sheets[place.sheet]?.quantities ?? [];
		const index = quantities.findIndex((quantity) => quantity.name === name) + step;
		if (index < 0 || index >= quantities.length) return;
		this.#run([{ kind: 'move_quantity', name, sheet: place.sheet, index }]);
	}

	/** Whether the refusal may be answered with "go ahead", and with what. */
	get canGoAhead(): boolean {
		const { code } = this.problem ?? {};
		return code === 'in-use' || code === 'drops-values' || code === 'faulty';
	}
	async goAhead(): Promise<boolean> {
		// It is told by now; what else the workbook asks about is asked still.
		if (this.problem?.code === 'faulty') return this.keep();
		return this.#answerable?.kind === 'remove_quantity' ? this.remove(true) : this.keep(true);
	}

	#run(commands: readonly Command[]): boolean {
		this.problem = this.session.attempt(...commands);
		this.#answerable = this.problem ? (commands[0] ?? null) : null;
		return this.problem === null;
	}
}
