/** One of the files that a month is closed with: read, matched as a kept table where it has its headings, and entered. */
import { readTableFile } from '$lib/browser/files';
import { TableClient } from '$lib/browser/table-client';
import type { TableRoom } from '$lib/browser/table-room';
import { withOfAll } from '$lib/exchange/table/mapping';
import type { KeptTable } from '$lib/workbook/schema';
import { Bringing } from '../files/bringing.svelte';
import { LogBringing } from '../files/log-bringing.svelte';
import type { Session } from '../session.svelte';
import { keptFor, monthsIn } from './close';
import { texts } from './texts';
import type { Enters } from './together';

export class ClosingFile {
	bringing = $state.raw<Bringing | null>(null);
	log = $state.raw<LogBringing | null>(null);
	/** What it is matched as; null: nothing that is kept has its headings. */
	kept = $state.raw<KeptTable | null>(null);
	problem = $state('');
	/** How many values went in; null: none yet. */
	entered = $state<number | null>(null);
	readonly #client: TableClient;

	readonly count = $derived(this.log ? this.log.changes.length : (this.bringing?.count ?? 0));
	readonly waitsFor = $derived(this.log ? this.log.waitsFor : (this.bringing?.waitsFor ?? ''));
	/** Values that are doubted and nobody has ticked. */
	readonly doubted = $derived(
		this.log ? (this.log.look?.doubted.size ?? 0) : (this.bringing?.look?.doubted.size ?? 0)
	);
	readonly refused = $derived(
		this.log
			? (this.log.look?.left.reduce((sum, { rows }) => sum + rows, 0) ?? 0) +
					(this.log.look?.refused.length ?? 0)
			: (this.bringing?.look?.refused ?? 0)
	);
	/** Whether what it would change is known. */
	readonly isLooked = $derived(
		this.log
			? this.log.share === null && this.log.look !== null
			: this.bringing?.share === null && this.bringing.look !== null
	);
	get months(): string[] {
		return monthsIn((this.log?.look ?? this.bringing?.look)?.changes ?? [], this.set);
	}
	readonly canEnter = $derived(
		this.entered === null && (this.log ? this.log.canEnter : (this.bringing?.canEnter ?? false))
	);

	constructor(
		readonly session: Session,
		readonly file: File,
		/** The set of months, and the one that is closed. */
		readonly set: string,
		readonly month: string,
		/** Where the other files of the month are read. */
		room: TableRoom
	) {
		this.#client = new TableClient(room);
	}

	async take(): Promise<void> {
		const { session } = this;
		const given = await readTableFile(this.file);
		if ('problem' in given) {
			this.problem = given.problem;
			return;
		}
		try {
			const held = await this.#client.read(given.bytes, given.name, () => undefined);
			if (!held.ok) throw new Error(held.message);
			const bringing = new Bringing(session, given.name, held.sheets, this.#client);
			if (bringing.held.message) throw new Error(bringing.held.message);
			await bringing.propose();
			this.kept = session.workbook ? keptFor(bringing.held.head, session.workbook) : null;
			if (this.kept?.log) {
				const log = new LogBringing(bringing, []);
				await log.propose(this.kept);
				this.log = log;
			} else {
				if (this.kept) bringing.use(this.kept);
				if (bringing.mapping.all?.some(({ of }) => of === this.set))
					bringing.mapping = withOfAll(bringing.mapping, this.set, this.month);
			}
			this.bringing = bringing;
		} catch (error) {
			this.problem = texts.notRead(
				this.file.name,
				error instanceof Error ? error.message : String(error)
			);
		}
	}

	/** Looks anew whenever the workbook or what the columns mean is another thing. */
	async follow(): Promise<void> {
		if (this.entered !== null) return;
		await (this.log ?? this.bringing)?.follow();
	}

	/** What of it goes in, to be entered together with other files. */
	enters(): Enters {
		const { log, bringing } = this;
		return {
			name: this.file.name,
			isLog: log !== null,
			changes: log ? log.changes : (bringing?.accepts() ?? []),
			commands: (workbook) => (log ? log.commands(workbook) : (bringing?.commands() ?? []))
		};
	}

	stop(): void {
		this.#client.stop();
	}
}
