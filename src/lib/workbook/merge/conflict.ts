/**
 * What two people changed differently, and which of the two is to stand. A merge gathers conflicts; it never
 * decides one by itself.
 */
import type { Json } from '../json';
import type { Node } from './same';

export type Side = 'mine' | 'theirs';

export type ConflictReason =
	/** Both changed it, each to something else. */
	| 'both_changed'
	/** One took away what the other changed. */
	| 'removed_and_changed'
	/** Both put the same entries in another order. */
	| 'order'
	/** One changed what a quantity's values mean (its unit, kind or sets), the other its values. */
	| 'meaning'
	/** Each change fits the workbook, both together do not. */
	| 'unsound';

export interface Conflict {
	/** The same for the same place and reason, so that an answer can be given by it. */
	readonly key: string;
	readonly reason: ConflictReason;
	/** ['quantities', 'resin_price', 'value', 'PX15B'], ['scenarios', 'line_3', 'changes', …] */
	readonly path: readonly string[];
	/** What stood there, and what each made of it; left out where there is nothing. */
	readonly base?: Json;
	readonly mine?: Json;
	readonly theirs?: Json;
	/** For `unsound`: what does not fit. */
	readonly message?: string;
}

/** Which side stands, by the key of the conflict; undefined: nobody has said yet. */
export type Choose = (conflict: Conflict) => Side | undefined;

export class Conflicts {
	readonly open: Conflict[] = [];

	constructor(readonly choose: Choose) {}

	/** Asks; what nobody has answered is noted, and theirs stands meanwhile. */
	ask(
		reason: ConflictReason,
		path: readonly string[],
		versions: { readonly base?: Node; readonly mine?: Node; readonly theirs?: Node },
		message?: string
	): Side {
		const { base, mine, theirs } = versions;
		const conflict: Conflict = {
			key: JSON.stringify([reason, ...path]),
			reason,
			path,
			...(base !== undefined && { base }),
			...(mine !== undefined && { mine }),
			...(theirs !== undefined && { theirs }),
			...(message !== undefined && { message })
		};
		const side = this.choose(conflict);
		if (side === undefined) this.open.push(conflict);
		return side ?? 'theirs';
	}
}
