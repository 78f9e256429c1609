/** What passes between the page and the worker that writes a workbook as an OOXML file. */
import type { StalePlan } from '$lib/engine/stale';
import type { Workbook } from '$lib/workbook/schema';

export interface FileRequest {
	readonly workbook: Workbook;
	/** Plans that do not answer it. */
	readonly stale: readonly StalePlan[];
}

export type FileAnswer =
	| { readonly ok: true; readonly bytes: Uint8Array<ArrayBuffer> }
	| { readonly ok: false; readonly message: string };
