/**
 * Finds quantities by label, name and other names: what begins with the words comes before what holds them, in sheet
 * order otherwise. Last come those whose note alone holds a word, as a line is "closed" or "lost" in other words than its label's.
 */
import type { Layout, QuantityLayout } from '$lib/engine/layout';

export interface Found {
	readonly quantity: QuantityLayout;
	readonly sheet: string;
	/** The other name by which it was found. */
	readonly also?: string;
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

/** What an entry of a list is found by. */
export interface Findable {
	readonly name: string;
	readonly label: string;
	/** What else people call it. */
	readonly other_names?: readonly string[] | undefined;
	/** Its words count last, and from their beginning. */
	readonly note?: string | undefined;
}

export interface Place {
	/** 0 is best. */
	readonly rank: number;
	/** The other name that tells why it was found, where label and name do not. */
	readonly also?: string;
}

/** Null: does not match. Every word typed must occur. What it is called comes before what else it is called. */
export function placeOf(
	words: readonly string[],
	{ name, label, other_names = [], note }: Findable
): Place | null {
	const whole = words.join(' ');
	const own = [plain(label), plain(name)];
	const others = other_names.map(plain);
	const holdsAll = (texts: readonly string[]) =>
		words.every((word) => texts.some((text) => text.includes(word)));
	const isSaid = holdsAll(own);
	const also = isSaid ? undefined : alsoOf(words, own, others, other_names);
	const told = (rank: number): Place => ({ rank, ...(also !== undefined && { also }) });
	const steps: ((text: string) => boolean)[] = [
		(text) => text === whole,
		(text) => text.startsWith(whole),
		(text) => text.includes(` ${whole}`)
	];
	for (const [i, fits] of steps.entries()) {
		if (own.some(fits)) return told(2 * i);
		if (others.some(fits)) return told(2 * i + 1);
	}
	if (isSaid) return told(6);
	if (holdsAll([...own, ...others])) return told(7);
	if (note === undefined) return null;
	const noted = ` ${plain(note)}`;
	const texts = [...own, ...others];
	const isMet = (word: string) =>
		texts.some((text) => text.includes(word)) || noted.includes(` ${word}`);
	return words.every(isMet) ? told(8) : null;
}

/** Of the other names, the one that holds most of what is typed, above all of what nothing else says. */
function alsoOf(
	words: readonly string[],
	own: readonly string[],
	others: readonly string[],
	written: readonly string[]
): string | undefined {
	const worth = (word: string) => (own.some((text) => text.includes(word)) ? 1 : word.length);
	const held = others.map((text) =>
		words.reduce((sum, word) => sum + (text.includes(word) ? worth(word) : 0), 0)
	);
	const most = Math.max(0, ...held);
	return most > 0 ? written[held.indexOf(most)] : undefined;
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
	const found: (Place & { readonly quantity: QuantityLayout })[] = [];
	for (const quantity of layout.quantities) {
		const place = placeOf(words, quantity.quantity);
		if (place === null) continue;
		const isAwaited = awaited.has(quantity.quantity.name);
		found.push({ quantity, ...place, ...(isAwaited && { rank: -1 }) });
	}
	found.sort((a, b) => a.rank - b.rank || a.quantity.index - b.quantity.index);
	return found.slice(0, most).map(({ quantity, also }) => ({
		quantity,
		sheet: layout.workbook.sheets[quantity.sheet]?.title ?? '',
		...(also !== undefined && { also })
	}));
}
