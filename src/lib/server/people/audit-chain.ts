/**
 * The chain of the audit trail: each entry's digest covers what it says and the digest before it, so that a change, a
 * hole or another order shows at the first entry that it touches. Only an end that was cut off does not show by
 * itself: for that the number of entries is kept apart, and whoever noted the last digest elsewhere can hold it
 * against the trail.
 */
import { createHash } from 'node:crypto';

/** What an entry says, as the store and an export have it. */
export interface ChainEntry {
	/** From 1 on, without gaps. */
	readonly seq: number;
	readonly id: string;
	readonly at: number;
	readonly event: string;
	readonly person_id: string | null;
	readonly person_name: string;
	/** The API token by which it was done; empty for none. */
	readonly token: string;
	readonly subject: string;
	readonly subject_name: string;
	readonly detail: string;
	readonly address: string;
}

export interface Chained extends ChainEntry {
	readonly digest: string;
}

/** SHA-256 of the digest before and of all fields, as JSON. */
export function digestOf(before: string, entry: ChainEntry): string {
	const said = [
		before,
		...[entry.seq, entry.id, entry.at, entry.event, entry.person_id, entry.person_name],
		...[entry.token, entry.subject, entry.subject_name, entry.detail, entry.address]
	];
	return createHash('sha256').update(JSON.stringify(said)).digest('hex');
}

/** An entry that was noted elsewhere: its number and digest. */
export interface Anchor {
	readonly seq: number;
	readonly digest: string;
}

export type Verified =
	| { readonly ok: true; readonly entries: number; readonly digest: string }
	| { readonly ok: false; readonly why: string };

/** Walks a trail from its first entry. `end`: how many there must be, where that is kept. */
export async function verifyChain(
	entries: AsyncIterable<Chained>,
	{ end, anchor }: { readonly end?: Anchor | null; readonly anchor?: Anchor | null } = {}
): Promise<Verified> {
	let count = 0;
	let before = '';
	for await (const entry of entries) {
		count++;
		if (entry.seq !== count) return { ok: false, why: `Entry ${count} is missing.` };
		if (digestOf(before, entry) !== entry.digest)
			return {
				ok: false,
				why: `Entry ${count} is not as it was written: its digest does not fit what it says and what stands before it.`
			};
		if (anchor?.seq === count && anchor.digest !== entry.digest)
			return {
				ok: false,
				why: `Entry ${count} is not the one that was noted: the trail was written anew at or before it.`
			};
		before = entry.digest;
	}
	if (anchor && anchor.seq > count)
		return { ok: false, why: `The trail ends with ${count}; entry ${anchor.seq} was noted once.` };
	if (end && (end.seq !== count || end.digest !== before))
		return {
			ok: false,
			why: `The end is missing: ${end.seq} entries were written, ${count} stand here.`
		};
	return { ok: true, entries: count, digest: before };
}
