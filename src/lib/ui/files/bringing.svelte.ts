/** A table on its way in: the file, what its columns mean, what was decided, and what would change. */
import { Accepted } from './accepted.svelte';
import { SvelteMap, SvelteSet } from 'svelte/reactivity';
import type { TableClient } from '$lib/browser/table-client';
import type { HeldSheet, ShortLook } from '$lib/exchange/table/desk';
import { reuse, type Reused } from '$lib/exchange/table/kept';
import { acceptedChanges, acceptedCommands } from '$lib/exchange/table/look';
import { askedColumns, askedOfAll, lacksQuantity, type Mapping } from '$lib/exchange/table/mapping';
import { orderAsked } from '$lib/exchange/table/date-order';
import { choicesOf, type Decision } from '$lib/exchange/table/new-members';
import type { Brought } from '$lib/exchange/table/settle';
import type { Command } from '$lib/workbook/commands';
import { NONE_TYPICAL, type TypicalEntries } from '$lib/exchange/table/implausible';
import type { KeptTable, Workbook } from '$lib/workbook/schema';
import type { Session } from '../session.svelte';
import { texts } from './texts';

const labelOfAxis = (workbook: Workbook | null, of: string): string =>
	workbook?.sets.find(({ name }) => name === of)?.label ?? of;

/** The edits of a table with what follows from them. */
export type Arrange = (commands: readonly Command[]) => readonly Command[];

export type TypicalOf = (workbook: Workbook) => TypicalEntries;

export class Bringing {
	/** Place of the sheet that is brought in. */
	sheet = $state(0);
	mapping = $state.raw<Mapping>({ quantity: null, columns: [] });
	look = $state.raw<ShortLook | null>(null);
	/** The kept matches in use, and what of them did not fit; null: the program's own reading. */
	reused = $state.raw<(Reused & { readonly title: string }) | null>(null);
	/** How much of the rows is looked over; null: all. */
	share = $state<number | null>(0);
	#problem = $state('');
	/** The program's own reading of the sheet. */
	#proposed: Mapping = { quantity: null, columns: [] };
	readonly #unknown = new SvelteMap<string, Decision>();
	readonly #removed = new SvelteSet<string>();
	readonly accepted = new Accepted();
	#asked = 0;

	readonly held: HeldSheet = $derived.by(() => this.sheets[this.sheet]!);
	/** How many values go in as things stand. */
	readonly count = $derived(this.accepts().length);
	/** Why nothing can be entered yet; empty where it can. */
	readonly waitsFor = $derived.by(() => {
		if (this.held.message) return this.held.message;
		if (this.#problem) return this.#problem;
		const asked = askedColumns(this.mapping).map((at) => this.#nameOf(at));
		if (asked.length > 0) return texts.firstSay(asked);
		if (lacksQuantity(this.mapping)) return texts.firstChooseQuantity;
		const { workbook } = this.session;
		const ofAll = askedOfAll(this.mapping).map((of) => labelOfAxis(workbook, of).toLowerCase());
		if (ofAll.length > 0) return texts.firstSayOfAll(ofAll);
		const open = workbook ? orderAsked(this.mapping, this.held.openDates, workbook) : [];
		return open.length > 0 ? texts.firstSayOrder(open.map((at) => this.#nameOf(at))) : '';
	});
	readonly canEnter = $derived.by(
		() =>
			this.share === null &&
			this.waitsFor === '' &&
			!this.session.readOnly &&
			this.count + (this.look?.before.length ?? 0) > 0
	);

	constructor(
		readonly session: Session,
		readonly name: string,
		readonly sheets: readonly HeldSheet[],
		readonly client: TableClient,
		readonly arrange: Arrange = (commands) => commands,
		/** Entries of a workbook that stand as typical values. */
		readonly typicalOf: TypicalOf = () => NONE_TYPICAL
	) {
		this.sheet = Math.max(
			sheets.findIndex(({ message }) => message === null),
			0
		);
	}

	/** Reads what the columns of the chosen sheet may mean. */
	async propose(sheet = this.sheet): Promise<void> {
		const { workbook } = this.session;
		this.sheet = sheet;
		this.look = this.reused = null;
		this.mapping = { quantity: null, columns: [] };
		for (const decided of [this.#unknown, this.#removed, this.accepted.keys]) decided.clear();
		if (!workbook || this.held.message) return;
		const mapping = await this.client.propose(workbook, sheet);
		if (this.sheet === sheet) this.mapping = this.#proposed = mapping;
	}

	/** Matches the columns as they were kept. */
	use(table: KeptTable): void {
		const { workbook } = this.session;
		if (!workbook) return;
		const { head, signs } = this.held;
		const reused = reuse(table, head, signs, this.#proposed, workbook);
		this.reused = { ...reused, title: table.title };
		this.mapping = reused.mapping;
	}

	/** The kept matches in use are called otherwise from now on. */
	renamed(title: string): void {
		if (this.reused) this.reused = { ...this.reused, title };
	}

	/** Looks anew whenever the workbook, the columns or the members are another thing; the last question counts. */
	async follow(): Promise<void> {
		const { workbook } = this.session;
		const { mapping, sheet } = this;
		const choices = choicesOf(this.#unknown, this.#removed);
		if (!workbook || mapping.columns.length === 0) return;
		const typical = this.typicalOf(workbook);
		const asked = ++this.#asked;
		this.share = 0;
		try {
			const looked = await this.client.look(
				workbook,
				{ sheet, mapping, choices, typical },
				(share) => {
					if (asked === this.#asked) this.share = share;
				}
			);
			if (asked !== this.#asked) return;
			this.#problem = looked.ok ? '' : looked.message;
			if (looked.ok) this.look = looked.look;
		} catch (error) {
			if (asked === this.#asked)
				this.#problem = error instanceof Error ? error.message : String(error);
		}
		if (asked === this.#asked) this.share = null;
	}

	#nameOf = (column: number): string => this.held.head[column] || texts.columnNumber(column + 1);

	decisionOf = (key: string): Decision => this.#unknown.get(key) ?? { as: 'left_out' };
	decide(keys: readonly string[], decision: Decision): void {
		for (const key of keys)
			if (decision.as === 'left_out') this.#unknown.delete(key);
			else this.#unknown.set(key, decision);
	}

	isRemoved = (key: string): boolean => this.#removed.has(key);
	remove(key: string, removed: boolean): void {
		if (removed) this.#removed.add(key);
		else this.#removed.delete(key);
	}

	/** The values that go in as things stand. */
	accepts(): Brought[] {
		return this.look ? acceptedChanges(this.look, this.accepted.keys) : [];
	}

	/** The edit that enters them. */
	commands(): readonly Command[] {
		return this.look ? this.arrange(acceptedCommands(this.look, this.accepted.keys)) : [];
	}

	/** Enters what is accepted as one step; a sentence where it cannot be made. */
	enter(): string | null {
		return this.canEnter ? this.session.apply(...this.commands()) : this.waitsFor;
	}
}
