/** A table on its way in: the file, what its columns mean, what was decided, and what would change. */
import { decimalSigns, type ColumnSign } from '$lib/exchange/table/decimals';
import type { Grid } from '$lib/exchange/table/grid';
import {
	acceptedChanges,
	acceptedCommands,
	changeKey,
	lookOver,
	type Look,
	type Looked
} from '$lib/exchange/table/look';
import { askedColumns, lacksQuantity, type Mapping } from '$lib/exchange/table/mapping';
import { NO_CHOICES, type Decision, type MemberChoices } from '$lib/exchange/table/new-members';
import { proposeMapping } from '$lib/exchange/table/propose';
import type { Brought } from '$lib/exchange/table/settle';
import { SvelteMap, SvelteSet } from 'svelte/reactivity';
import type { Session } from '../session.svelte';
import { texts } from './texts';

export class Bringing {
	mapping = $state.raw<Mapping>({ quantity: null, columns: [] });
	readonly #unknown = new SvelteMap<string, Decision>();
	readonly #removed = new SvelteSet<string>();
	readonly #accepted = new SvelteSet<string>();
	readonly signs: readonly ColumnSign[];

	/** Nothing decided of members yet: its unknown names stay in the list once something is. */
	readonly #asItComes = $derived.by(() => this.#lookWith(NO_CHOICES));
	readonly #looked = $derived.by(() =>
		this.#unknown.size + this.#removed.size === 0
			? this.#asItComes
			: this.#lookWith({ unknown: this.#unknown, removed: this.#removed })
	);
	readonly look: Look | null = $derived(this.#looked?.ok ? this.#looked.look : null);
	readonly unknown: Look['unknown'] = $derived(
		this.#asItComes?.ok ? this.#asItComes.look.unknown : []
	);
	/** How many values go in as things stand. */
	readonly count = $derived(this.look ? acceptedChanges(this.look, this.#accepted).length : 0);
	/** Why nothing can be entered yet; empty where it can. */
	readonly waitsFor = $derived.by(() => {
		if (this.#looked && !this.#looked.ok) return this.#looked.message;
		const asked = askedColumns(this.mapping).map(
			(at) => this.grid.head[at] || texts.columnNumber(at + 1)
		);
		if (asked.length > 0) return texts.firstSay(asked);
		return lacksQuantity(this.mapping) ? texts.firstChooseQuantity : '';
	});

	constructor(
		readonly session: Session,
		readonly name: string,
		readonly grid: Grid
	) {
		this.signs = decimalSigns(grid);
		if (session.workbook) this.mapping = proposeMapping(grid, session.workbook);
	}

	#lookWith(choices: MemberChoices): Looked | null {
		const { layout } = this.session;
		return layout && lookOver(this.grid, this.mapping, choices, layout);
	}

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

	isAccepted = (change: Brought): boolean => this.#accepted.has(changeKey(change));
	accept(changes: readonly Brought[], accepted: boolean): void {
		for (const key of changes.map(changeKey))
			if (accepted) this.#accepted.add(key);
			else this.#accepted.delete(key);
	}

	/** Enters what is accepted as one step; a sentence where it cannot be made. */
	enter(): string | null {
		return this.look && !this.waitsFor
			? this.session.apply(...acceptedCommands(this.look, this.#accepted))
			: this.waitsFor;
	}
}
