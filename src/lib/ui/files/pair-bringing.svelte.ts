/** Pairs of a relation on their way in from a table: which columns name them, what was decided, and what would change. */
import { SvelteMap, SvelteSet } from 'svelte/reactivity';
import type { TableClient } from '$lib/browser/table-client';
import { reusePairs, type ReusedPairs } from '$lib/exchange/table/kept-pairs';
import { choicesOf, type Decision } from '$lib/exchange/table/new-members';
import { isWhole, type PairMapping } from '$lib/exchange/table/pair-mapping';
import { pairCommands, type PairLook, type PairThatGoes } from '$lib/exchange/table/pairs';
import { pairKey } from '$lib/workbook/axes';
import type { KeptTable } from '$lib/workbook/schema';
import type { Session } from '../session.svelte';
import { texts } from './pair-texts';

export class PairBringing {
	mapping = $state.raw<PairMapping | null>(null);
	look = $state.raw<PairLook | null>(null);
	/** The kept matches in use, and which headings of them differ; null: the program's own reading. */
	reused = $state.raw<(ReusedPairs & { readonly title: string }) | null>(null);
	#problem = $state('');
	#isLooking = $state(true);
	readonly #unknown = new SvelteMap<string, Decision>();
	/** Pairs for which it was said that they go, or stay, other than is offered. */
	readonly #otherwise = new SvelteSet<string>();
	#asked = 0;

	readonly going = $derived((this.look?.gone ?? []).filter((one) => this.goes(one)));
	readonly waitsFor = $derived.by(() => {
		if (this.mapping && !isWhole(this.mapping)) return texts.firstSayColumns;
		return this.#problem;
	});
	readonly canEnter = $derived.by(
		() =>
			this.look !== null &&
			!this.#isLooking &&
			this.waitsFor === '' &&
			!this.session.readOnly &&
			this.look.fresh.length + this.going.length + this.look.before.length > 0
	);

	constructor(
		readonly session: Session,
		readonly relation: string,
		readonly sheet: number,
		readonly client: TableClient
	) {}

	/** By what was kept where there is a table, else as the columns read. */
	async propose(table: KeptTable | null, head: readonly string[]): Promise<void> {
		const { workbook } = this.session;
		const reused = table && workbook ? reusePairs(table, head, workbook) : null;
		if (table && reused) {
			this.reused = { ...reused, title: table.title };
			this.mapping = reused.mapping;
		} else if (workbook)
			this.mapping = await this.client.proposePairs(workbook, this.sheet, this.relation);
	}

	/** Looks anew whenever the workbook, the columns or the members are another thing; the last question counts. */
	async follow(): Promise<void> {
		const { workbook } = this.session;
		const { mapping, sheet } = this;
		const choices = choicesOf(this.#unknown, []);
		const asked = ++this.#asked;
		this.#isLooking = true;
		if (!workbook || !mapping || !isWhole(mapping)) {
			this.look = null;
			return;
		}
		try {
			const looked = await this.client.lookPairs(workbook, { sheet, mapping, choices });
			if (asked !== this.#asked) return;
			this.#problem = looked.ok ? '' : looked.message;
			if (looked.ok) this.look = looked.look;
		} catch (error) {
			if (asked !== this.#asked) return;
			this.#problem = error instanceof Error ? error.message : String(error);
		}
		this.#isLooking = false;
	}

	decisionOf = (key: string): Decision => this.#unknown.get(key) ?? { as: 'left_out' };
	decide(keys: readonly string[], decision: Decision): void {
		for (const key of keys)
			if (decision.as === 'left_out') this.#unknown.delete(key);
			else this.#unknown.set(key, decision);
	}

	/** What the file says no to goes unless it is kept; what it only does not name stays unless it is ticked. */
	goes = ({ pair, line }: PairThatGoes): boolean =>
		(line !== null) !== this.#otherwise.has(pairKey(pair));
	letGo(pairs: readonly PairThatGoes[], goes: boolean): void {
		for (const one of pairs)
			if (goes === (one.line !== null)) this.#otherwise.delete(pairKey(one.pair));
			else this.#otherwise.add(pairKey(one.pair));
	}

	/** Enters what is accepted as one step; a sentence where it cannot be made. */
	enter(): string | null {
		return this.look && this.canEnter
			? this.session.apply(...pairCommands(this.look, this.going, this.relation))
			: this.waitsFor;
	}
}
