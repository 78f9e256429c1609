/**
 * Files in and out of the page: a picked or dropped file as text, a text as a download.
 */
import { MOST_BYTES, sizeWords } from '$lib/workbook/file-size';

export interface ReadFile {
	readonly name: string;
	readonly text: string;
}

/** The text of a file, or a sentence that says why it cannot be had. */
export async function readTextFile(file: File): Promise<ReadFile | { readonly problem: string }> {
	// Refused before it is read.
	if (file.size > MOST_BYTES)
		return {
			problem: `"${file.name}" holds ${sizeWords(file.size)}; a workbook has at most ${sizeWords(MOST_BYTES)}. Choose the workbook's JSON file.`
		};
	try {
		return { name: file.name, text: await file.text() };
	} catch {
		return { problem: cannotBeRead(file.name) };
	}
}

/** Tables are read whole: far above what one of a year holds. */
const MOST_TABLE_BYTES = 64 * 2 ** 20;

/** The bytes of a table's file, or a sentence that says why they cannot be had. */
export async function readTableFile(
	file: File
): Promise<
	{ readonly name: string; readonly bytes: Uint8Array<ArrayBuffer> } | { readonly problem: string }
> {
	if (file.size > MOST_TABLE_BYTES)
		return {
			problem: `"${file.name}" holds ${sizeWords(file.size)}; a table has at most ${sizeWords(MOST_TABLE_BYTES)}. Part it, and bring the parts in one by one.`
		};
	try {
		return { name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) };
	} catch {
		return { problem: cannotBeRead(file.name) };
	}
}

const cannotBeRead = (name: string) =>
	`"${name}" could not be read: it was moved, or this page may not open it. Choose it again.`;

/** A name for a file from a title: "Marram Coil Works" gives "marram-coil-works". */
export const fileNameOf = (title: string) =>
	title
		.toLowerCase()
		.normalize('NFKD')
		.replace(/\p{M}/gu, '')
		.replace(/[^\p{L}\p{N}]+/gu, '-')
		.replace(/^-|-$/g, '')
		.slice(0, 80) || 'workbook';

/** Hands a text or bytes to the browser's downloads. */
export function download(
	name: string,
	content: string | Uint8Array<ArrayBuffer>,
	type = 'application/json'
): void {
	const url = URL.createObjectURL(new Blob([content], { type }));
	const link = document.createElement('a');
	link.href = url;
	link.download = name;
	link.click();
	setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
