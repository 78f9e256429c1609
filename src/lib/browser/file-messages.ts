/** What passes between the page and the worker that writes a workbook as an OOXML file. */
import type { Workbook } from '$lib/workbook/schema';

export interface FileRequest {
	readonly workbook: Workbook;
}

export type FileAnswer =
	| { readonly ok: true; readonly bytes: Uint8Array<ArrayBuffer> }
	| { readonly ok: false; readonly message: string };
