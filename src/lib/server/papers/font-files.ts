/** The app's font as its package brings it: files by ranges of signs, the most used first. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { FontFiles } from '$lib/papers/pdf/letters';

const RANGES = ['latin', 'latin-ext', 'math', 'greek', 'cyrillic', 'vietnamese', 'symbols'];
const PACKAGE = '@fontsource/ysabeau-office';

export function readFontFiles(): FontFiles {
	const { resolve } = createRequire(import.meta.url);
	const weight = (number: 400 | 600) =>
		RANGES.map((range) =>
			readFileSync(resolve(`${PACKAGE}/files/ysabeau-office-${range}-${number}-normal.woff`))
		);
	return { regular: weight(400), strong: weight(600) };
}
