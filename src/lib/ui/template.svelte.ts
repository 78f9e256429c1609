/** The shipped workbook that the open one was begun from, fetched when somebody asks for what still stands as in it. */
import { fetchShipped } from '$lib/browser/shipped';
import { checkedWorkbook } from '$lib/engine/shipped-values';
import type { Workbook } from '$lib/workbook/schema';

/** The last that was asked for: whoever asks for it again gets the same, which was fetched and checked once. */
let last: { readonly name: string; readonly workbook: Promise<Workbook> } | null = null;

function shippedWorkbook(name: string): Promise<Workbook> {
	if (last?.name === name) return last.workbook;
	const workbook = fetchShipped(name).then(checkedWorkbook);
	const own = (last = { name, workbook });
	workbook.catch(() => {
		if (last === own) last = null;
	});
	return workbook;
}

export class Template {
	/** Null until it is there, and where there is none. */
	workbook = $state.raw<Workbook | null>(null);
	/** It was asked for, and did not come. */
	failed = $state(false);
	#name = '';

	/** A name that this app ships no workbook under leaves nothing to compare with. */
	async fetch(name: string | undefined): Promise<void> {
		if (name === this.#name) return;
		this.#name = name ?? '';
		this.workbook = null;
		this.failed = false;
		if (name === undefined) return;
		try {
			const workbook = await shippedWorkbook(name);
			if (this.#name === name) this.workbook = workbook;
		} catch {
			// A later one may have been asked for meanwhile.
			if (this.#name !== name) return;
			this.#name = '';
			this.failed = true;
		}
	}
}
