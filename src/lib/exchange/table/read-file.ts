/** A file with tables, whatever it is: separated values in any encoding, or a spreadsheet file. */
import { readCsv } from '../csv/rows';
import type { GridRead } from './grid';
import { textOfBytes } from './text-of-bytes';

export interface TableSheet {
	/** Empty for a text, which has but one. */
	readonly name: string;
	readonly grid: GridRead;
	readonly remarks: readonly string[];
}

export type TablesRead =
	| { readonly ok: true; readonly sheets: readonly TableSheet[] }
	| { readonly ok: false; readonly message: string };

/** The mark that packed files begin with, and that of the binary spreadsheet files before them. */
const PACKED = [0x50, 0x4b, 0x03, 0x04];
const BINARY = [0xd0, 0xcf, 0x11, 0xe0];
const begins = (bytes: Uint8Array, mark: readonly number[]) =>
	mark.every((byte, at) => bytes[at] === byte);

/** `told` hears how much of a text is read, from 0 to 1. */
export async function readTables(
	bytes: Uint8Array,
	name: string,
	told?: (share: number) => void
): Promise<TablesRead> {
	if (begins(bytes, BINARY))
		return {
			ok: false,
			message: `"${name}" is locked by a password, or a spreadsheet file of an older, binary kind. Save it as .xlsx without a password, or as CSV, then choose it again.`
		};
	if (begins(bytes, PACKED)) {
		// Fetched for such files alone.
		const { readOoxml } = await import('../ooxml/read');
		return readOoxml(bytes, name);
	}
	const { text, encoding } = textOfBytes(bytes);
	const grid = readCsv(text, name, told);
	const remarks = encoding === 'UTF-8' ? [] : [`Its letters are read as ${encoding}.`];
	return { ok: true, sheets: [{ name: '', grid, remarks }] };
}
