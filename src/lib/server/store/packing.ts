/**
 * Saved workbooks as the store keeps them: compressed, as text that both databases hold alike. A workbook
 * of 185 kB takes about 40 kB so, and each revision is a whole one.
 */
import { deflateSync, inflateSync } from 'node:zlib';

export const pack = (text: string): string => deflateSync(text, { level: 6 }).toString('base64');

export const unpack = (packed: string): string =>
	inflateSync(Buffer.from(packed, 'base64')).toString('utf8');
