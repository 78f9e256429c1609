/** The revisions to choose from: those with a name first, then all that are listed. */
import type { Revision } from '$lib/protocol/answers';

type Entry = Pick<Revision, 'number' | 'name' | 'reason'>;

export function revisionOptions(
	list: readonly Entry[],
	named: readonly Entry[]
): { readonly value: string; readonly text: string }[] {
	const marked = new Set(named.map(({ number }) => number));
	const others = list.filter(({ number }) => !marked.has(number));
	return [
		...named.map(({ number, name }) => ({
			value: String(number),
			text: `${name} (revision ${number})`
		})),
		...others.map(({ number, reason }, i) => ({
			value: String(number),
			text: `revision ${number}${i === 0 && number === list[0]?.number ? ', the newest' : reason ? `, ${reason}` : ''}`
		}))
	];
}
