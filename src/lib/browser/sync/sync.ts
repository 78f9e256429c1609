/**
 * Keeps the workbook on this desk in step with the one on the server: sends what was done here, takes in what others
 * did, asks where both did something else. Whatever is done here is kept in this browser first, so a lost connection
 * costs nothing but time.
 *
 * How requests are made is said in `remote.ts`; what a person sees of it, in `ui/shared`.
 */
import { mergeWorkbooks, type Conflict, type Side } from '$lib/workbook/merge';
import { withoutFollowingPlans } from '$lib/workbook/plans';
import { saveWorkbook } from '$lib/workbook/save';
import type { Workbook } from '$lib/workbook/schema';

/** What this desk knows of the workbook on the server. */
export interface Link {
	/** The workbook's id on the server. */
	readonly id: string;
	/** The newest revision that is in the workbook here. */
	readonly number: number;
	/** That revision. What differs from it was done here and is not yet sent. */
	readonly base: Workbook;
	/** Sent from that revision and not answered: whether it arrived is to be found out. */
	readonly sent?: Workbook;
}

export type RemoteSaved =
	/** `workbook` is that revision: what was sent, with what others did meanwhile. */
	| { readonly kind: 'saved'; readonly number: number; readonly workbook: Workbook }
	| { readonly kind: 'conflict'; readonly number: number; readonly workbook: Workbook }
	/** It will not be taken, however often it is sent. */
	| { readonly kind: 'refused'; readonly message: string };

/** The server will not give or take this, however often it is asked; the message says why and what to do. */
export class Refused extends Error {
	override name = 'Refused';
}

/** The server. Rejects with `Refused`, or with anything else when it cannot be reached. */
export interface Remote {
	read(id: string): Promise<{ readonly number: number; readonly workbook: Workbook }>;
	/** An older revision. */
	revision(id: string, number: number): Promise<Workbook>;
	save(link: Link, workbook: Workbook, reason: string): Promise<RemoteSaved>;
}

/** The openDocument. */
export interface LocalDocument {
	workbook(): Workbook;
	/** Puts in its place the same with what others did. Resolves once it would survive a killed tab. */
	take(workbook: Workbook): Promise<void>;
	/** Writes the link down. Called after the workbook that belongs to it is. */
	keepLink(link: Link): Promise<void>;
}

export type SyncState =
	| { readonly is: 'in_step' | 'sending' | 'offline' }
	/** Edits that wait for a quiet moment. */
	| { readonly is: 'waiting' }
	| { readonly is: 'asking'; readonly conflicts: readonly Conflict[] }
	| { readonly is: 'refused'; readonly message: string };

/** Revisions looked through for a save that got no answer. */
const MOST_LOOKED_AT = 50;

const withoutSent = ({ id, number, base }: Link): Link => ({ id, number, base });

export class Sync {
	#link: Link;
	/** The newest revision that the server spoke of. */
	#news: number;
	#turn: Promise<void> | null = null;
	#again = false;
	#closed = false;
	/** What is asked, and what was answered: which side, of which two versions. */
	#asked: readonly Conflict[] = [];
	readonly #answers = new Map<string, { readonly side: Side; readonly of: string }>();
	/** Said with the next save. */
	reason = '';

	constructor(
		readonly remote: Remote,
		readonly openDocument: LocalDocument,
		link: Link,
		readonly onstate: (state: SyncState, link: Link) => void
	) {
		this.#link = link;
		this.#news = link.number;
	}

	get link(): Link {
		return this.#link;
	}

	/** Whether something was done here that the server does not have. */
	get ahead(): boolean {
		return this.#link.sent !== undefined || !same(this.openDocument.workbook(), this.#link.base);
	}

	/** The server has a newer revision. */
	tell(number: number): void {
		this.#news = Math.max(this.#news, number);
	}

	/** Which side stands, by the key of the conflict. Holds for the versions that were shown, and no later ones. */
	answer(answers: ReadonlyMap<string, Side>): Promise<void> {
		for (const conflict of this.#asked) {
			const side = answers.get(conflict.key);
			if (side) this.#answers.set(conflict.key, { side, of: versionsOf(conflict) });
		}
		return this.step();
	}

	close(): void {
		this.#closed = true;
	}

	/** Gets in step; one at a time. Resolves when nothing is left that could be done now. */
	step(): Promise<void> {
		this.#again = true;
		this.#turn ??= this.#run().finally(() => (this.#turn = null));
		return this.#turn;
	}

	async #run(): Promise<void> {
		while (this.#again && !this.#closed) {
			this.#again = false;
			try {
				await this.#once();
			} catch (error) {
				this.#say(
					error instanceof Refused ? { is: 'refused', message: error.message } : { is: 'offline' }
				);
				return;
			}
		}
	}

	async #once(): Promise<void> {
		const { sent } = this.#link;
		if (sent) return this.#findOut(sent);
		const mine = this.openDocument.workbook();
		if (same(mine, this.#link.base)) {
			if (this.#news > this.#link.number) {
				this.#say({ is: 'sending' });
				const { number, workbook } = await this.remote.read(this.#link.id);
				await this.#takeIn(number, workbook);
			} else this.#say({ is: 'in_step' });
			return;
		}
		this.#say({ is: 'sending' });
		const { reason } = this;
		// If the answer is lost, what was sent must not be taken for somebody else's.
		await this.#keep({ ...this.#link, sent: mine });
		const answer = await this.remote.save(this.#link, mine, reason);
		if (this.#closed) return;
		if (answer.kind === 'refused') {
			await this.#keep(withoutSent(this.#link));
			this.#say({ is: 'refused', message: answer.message });
			return;
		}
		if (answer.kind === 'saved') {
			if (this.reason === reason) this.reason = '';
			// What is on the server holds all that was sent: what differs here from that was done since.
			this.#link = { ...withoutSent(this.#link), base: mine };
		} else this.#link = withoutSent(this.#link);
		await this.#takeIn(answer.number, answer.workbook);
	}

	/** A save got no answer: it arrived if one of the revisions since is what it would have become. */
	async #findOut(sent: Workbook): Promise<void> {
		this.#say({ is: 'sending' });
		const { id, number, base } = this.#link;
		const newest = await this.remote.read(id);
		this.tell(newest.number);
		let before = base;
		for (let at = number + 1; at <= Math.min(newest.number, number + MOST_LOOKED_AT); at++) {
			const after = at === newest.number ? newest.workbook : await this.remote.revision(id, at);
			const { workbook, conflicts } = mergeWorkbooks({ base, mine: sent, theirs: before });
			if (conflicts.length === 0 && same(workbook, after)) {
				this.#link = { ...withoutSent(this.#link), base: sent };
				return this.#takeIn(at, after);
			}
			before = after;
		}
		await this.#keep(withoutSent(this.#link));
		this.#again = true;
	}

	/** Puts another revision under what was done here since the last. */
	async #takeIn(number: number, theirs: Workbook): Promise<void> {
		// Another workbook may lie on the desk by now.
		if (this.#closed) return;
		this.tell(number);
		const here = this.openDocument.workbook();
		const three = { base: this.#link.base, mine: here, theirs };
		const { workbook, conflicts } = mergeWorkbooks(three, (conflict) => {
			const answer = this.#answers.get(conflict.key);
			return answer?.of === versionsOf(conflict) ? answer.side : undefined;
		});
		if (conflicts.length > 0) {
			this.#asked = conflicts;
			this.#say({ is: 'asking', conflicts });
			return;
		}
		this.#asked = [];
		this.#answers.clear();
		// First the workbook, then the link: after a crash in between, the merge is made again and gives the same.
		if (!same(workbook, here)) await this.openDocument.take(workbook);
		await this.#keep({ ...this.#link, number, base: theirs });
		this.#again = true;
	}

	async #keep(link: Link): Promise<void> {
		if (this.#closed) return;
		this.#link = link;
		await this.openDocument.keepLink(link);
	}

	#say(state: SyncState): void {
		if (!this.#closed) this.onstate(state, this.#link);
	}
}

const versionsOf = ({ mine, theirs, message }: Conflict) =>
	JSON.stringify([mine ?? null, theirs ?? null, message ?? null]);

const texts = new WeakMap<Workbook, string>();

/** What people wrote: a plan that follows from it is nothing to send of its own. */
function textOf(workbook: Workbook): string {
	let text = texts.get(workbook);
	if (text === undefined)
		texts.set(workbook, (text = saveWorkbook(withoutFollowingPlans(workbook))));
	return text;
}

const same = (one: Workbook, other: Workbook) => one === other || textOf(one) === textOf(other);
