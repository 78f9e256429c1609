/**
 * Finds quantities by name or label: what begins with the words comes before what holds them, in sheet
 * order otherwise. Last come those whose note alone holds a word, as a line is "closed" or "lost" in other words than its label's.
 */
import type { Layout, QuantityLayout } from '$lib/engine/layout';
import type { Quantity } from '$lib/workbook/schema';

export interface Found {
	readonly quantity: QuantityLayout;
	readonly sheet: string;
}

const plain = (text: string) =>
	text
		.toLowerCase()
		.normalize('NFKD')
		.replace(/\p{M}/gu, '')
		.replace(/[_\s]+/g, ' ')
		.trim();

/** What is typed, as words without marks and capitals. */
export const plainWords = (typed: string): string[] => plain(typed).split(' ').filter(Boolean);

/** 0 is best; null: does not match. Every word typed must occur; in a note, at the beginning of a word. */
function rank(words: readonly string[], { name, label, note }: Quantity): number | null {
	const texts = [plain(label), plain(name)];
	const whole = words.join(' ');
	const said = (word: string) => texts.some((text) => text.includes(word));
	if (!words.every(said)) {
		if (note === undefined) return null;
		const noted = ` ${plain(note)}`;
		return words.every((word) => said(word) || noted.includes(` ${word}`)) ? 4 : null;
	}
	if (texts.includes(whole)) return 0;
	if (texts.some((text) => text.startsWith(whole))) return 1;
	if (texts.some((text) => text.includes(` ${whole}`))) return 2;
	return 3;
}

/** `awaited`: inputs that the scenario in hand lacks; what is looked for is most likely one of them. */
export function findQuantities(
	layout: Layout,
	typed: string,
	awaited: ReadonlySet<string> = new Set(),
	most = 12
): Found[] {
	const words = plainWords(typed);
	if (words.length === 0) return [];
	const found: { rank: number; quantity: QuantityLayout }[] = [];
	for (const quantity of layout.quantities) {
		const place = rank(words, quantity.quantity);
		if (place === null) continue;
		found.push({ rank: awaited.has(quantity.quantity.name) ? -1 : place, quantity });
	}
	found.sort((a, b) => a.rank - b.rank || a.quantity.index - b.quantity.index);
	return found.slice(0, most).map(({ quantity }) => ({
		quantity,
		sheet: layout.workbook.sheets[quantity.sheet]?.title ?? ''
	}));
}
