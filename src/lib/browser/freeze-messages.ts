/** What passes between the page and the worker that computes a workbook to freeze it. */
import type { FrozenHead } from '$lib/engine/frozen';
import type { Frozen, Workbook } from '$lib/workbook/schema';

export interface FreezeRequest {
	readonly workbook: Workbook;
	readonly head: Omit<FrozenHead, 'of'>;
	/** Of which scenario; of the base where it has none of this id. */
	readonly scenario?: string;
}

/** Null: nothing in it has a value. */
export type FreezeAnswer =
	| { readonly ok: true; readonly frozen: Frozen | null }
	| { readonly ok: false; readonly message: string };
