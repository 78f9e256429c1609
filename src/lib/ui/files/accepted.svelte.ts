/** The doubted changes of a look that a person accepts, one by one or all of them. */
import { SvelteSet } from 'svelte/reactivity';
import { changeKey } from '$lib/exchange/table/look';
import type { Brought } from '$lib/exchange/table/settle';

export class Accepted {
	readonly keys = new SvelteSet<string>();

	has(change: Brought): boolean {
		return this.keys.has(changeKey(change));
	}

	put(changes: readonly Brought[], accepted: boolean): void {
		for (const key of changes.map(changeKey))
			if (accepted) this.keys.add(key);
			else this.keys.delete(key);
	}
}
