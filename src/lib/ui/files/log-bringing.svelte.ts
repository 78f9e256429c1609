/** A log on its way in: what its columns are, how its rows are summed, and what would be entered. */
import { Accepted } from './accepted.svelte';
import type { TableClient } from '$lib/browser/table-client';
import { askedOf } from '$lib/exchange/log/asked';
import { reuseLog, type ReusedLog } from '$lib/exchange/log/kept-log';
import type { Log } from '$lib/exchange/log/log';
import type { LogLook } from '$lib/exchange/log/look';
import type { LogProposed } from '$lib/exchange/log/propose-log';
import { logCommands, sourceChanges, type SourceChange } from '$lib/exchange/log/source';
import type { HeldSheet } from '$lib/exchange/table/desk';
import { acceptedChanges } from '$lib/exchange/table/look';
import type { Command } from '$lib/workbook/commands';
import type { KeptTable, Workbook } from '$lib/workbook/schema';
import type { Session } from '../session.svelte';
import type { Bringing } from './bringing.svelte';
import { withWaysOfDates } from './log-options';

export class LogBringing {
	proposed = $state.raw<LogProposed | null>(null);
	log = $state.raw<Log | null>(null);
	look = $state.raw<(LogLook & { readonly digest: string }) | null>(null);
	/** The kept sums in use, and what of them did not fit; null: none. */
	reused = $state.raw<(ReusedLog & { readonly title: string }) | null>(null);
	/** How much of the rows is summed; null: all. */
	share = $state<number | null>(null);
	#problem = $state('');
	readonly accepted = new Accepted();
	#asked = 0;
	readonly session: Session;
	readonly name: string;
	/** The sheet that was chosen: another one is a log of its own. */
	readonly held: HeldSheet;
	readonly sheet: number;
	readonly client: TableClient;

	/** What has to be said first; empty where nothing has. */
	readonly waitsFor = $derived.by(() => {
		const { workbook } = this.session;
		if (!this.log || !this.proposed || !workbook) return '';
		const file = { head: this.held.head, ...this.proposed };
		return askedOf(this.log, file, workbook) ?? this.#problem;
	});
	readonly changes = $derived(this.look ? acceptedChanges(this.look, this.accepted.keys) : []);
	/** What the quantities would say of their source. */
	readonly sources = $derived.by(() => {
		const { workbook } = this.session;
		return workbook ? this.#sourcesIn(workbook) : [];
	});
	readonly canEnter = $derived.by(
		() =>
			this.look !== null &&
			this.share === null &&
			this.waitsFor === '' &&
			!this.session.readOnly &&
			this.changes.length > 0
	);

	constructor(
		readonly file: Bringing,
		/** Quantities whose totals are asked for. */
		readonly wanted: readonly string[]
	) {
		this.session = file.session;
		this.name = file.name;
		this.held = file.held;
		this.sheet = file.sheet;
		this.client = file.client;
	}

	async propose(table: KeptTable | null): Promise<void> {
		const { workbook } = this.session;
		if (!workbook) return;
		this.proposed = await this.client.proposeLog(workbook, this.sheet, this.wanted);
		if (table) this.use(table);
		else this.log = withWaysOfDates(this.proposed.log, workbook);
	}

	/** Sums the rows as it was kept. */
	use(table: KeptTable): void {
		const { workbook } = this.session;
		if (!workbook || !this.proposed || !table.log) return;
		const { head, signs } = this.held;
		const own = signs.map((sign) => sign.own);
		const reused = reuseLog(table, head, this.proposed.log, own, workbook);
		this.reused = { ...reused, title: table.title };
		this.log = reused.log;
	}

	/** Sums anew whenever the workbook or what is said is another thing; the last question counts. */
	async follow(): Promise<void> {
		const { workbook } = this.session;
		const { log, sheet, proposed } = this;
		const asked = ++this.#asked;
		this.#problem = '';
		if (!workbook || !log || !proposed) return;
		if (askedOf(log, { head: this.held.head, ...proposed }, workbook) !== null) {
			this.look = this.share = null;
			return;
		}
		this.share = 0;
		try {
			const typical = this.file.typicalOf(workbook);
			const look = await this.client.lookLog(workbook, { sheet, log, typical }, (share) => {
				if (asked === this.#asked) this.share = share;
			});
			if (asked === this.#asked) this.look = look;
		} catch (error) {
			if (asked === this.#asked)
				this.#problem = error instanceof Error ? error.message : String(error);
		}
		if (asked === this.#asked) this.share = null;
	}

	#sourcesIn(workbook: Workbook): SourceChange[] {
		const { layout } = this.session;
		if (!this.look) return [];
		return sourceChanges(
			{ file: this.name, digest: this.look.digest },
			this.look,
			this.changes,
			(name) => layout?.byName.get(name)?.count ?? 0,
			workbook
		);
	}

	/** The edit that enters what is accepted, made from a workbook. */
	commands(workbook: Workbook): readonly Command[] {
		if (!this.look) return [];
		const sources = this.#sourcesIn(workbook);
		return this.file.arrange(logCommands(this.changes, sources, this.look, workbook));
	}

	/** Enters what is accepted as one step; a sentence where it cannot be made. */
	enter(): string | null {
		const { workbook } = this.session;
		return workbook && this.canEnter
			? this.session.apply(...this.commands(workbook))
			: this.waitsFor;
	}
}
