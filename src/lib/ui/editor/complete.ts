/**
 * Help while a formula is written: which names and functions the word at the caret may become, and the
 * signature of the call that the caret is in.
 */
import { FUNCTIONS, type FunctionSpec } from '$lib/formula/functions';
import { quoteIfNeeded } from '$lib/formula/names';
import type { Workbook } from '$lib/workbook/schema';
import { formatUnit } from '../format';

export interface Completion {
	/** What takes the place of the word. */
	readonly insert: string;
	readonly label: string;
	/** A unit, a signature, the set of a member. */
	readonly detail: string;
	readonly kind: 'quantity' | 'set' | 'member' | 'function' | 'word';
}

export interface Completions {
	readonly from: number;
	readonly to: number;
	readonly items: readonly Completion[];
}

const MOST = 9;
const KEYWORDS = ['over', 'where', 'in', 'else', 'base', 'reference'];

/** The word that ends at the caret. */
function wordAt(text: string, caret: number): { from: number; word: string } {
	const found = /[\p{L}_][\p{L}\p{N}_]*$/u.exec(text.slice(0, caret));
	return found ? { from: found.index, word: found[0] } : { from: caret, word: '' };
}

function candidates(workbook: Workbook): Completion[] {
	const all: Completion[] = [];
	for (const sheet of workbook.sheets)
		for (const { name, label, unit, per } of sheet.quantities) {
			const by = per?.length ? `per ${per.join(', ')}` : '';
			const detail = [formatUnit(unit), by].filter(Boolean).join(', ');
			all.push({ insert: name, label, detail, kind: 'quantity' });
		}
	for (const { name, label } of workbook.sets)
		all.push({ insert: name, label, detail: 'set', kind: 'set' });
	for (const { name, signature } of FUNCTIONS.values())
		all.push({ insert: `${name}(`, label: signature, detail: '', kind: 'function' });
	for (const set of workbook.sets)
		if (set.members.length <= 400)
			for (const { id, label } of set.members)
				all.push({
					insert: quoteIfNeeded(id),
					label: label ?? id,
					detail: `of ${set.label.toLowerCase()}`,
					kind: 'member'
				});
	for (const word of KEYWORDS) all.push({ insert: word, label: '', detail: '', kind: 'word' });
	return all;
}

const kept = new WeakMap<Workbook, Completion[]>();

export function completionsAt(workbook: Workbook, text: string, caret: number): Completions {
	const { from, word } = wordAt(text, caret);
	if (word === '') return { from, to: caret, items: [] };
	const all = kept.get(workbook) ?? candidates(workbook);
	kept.set(workbook, all);
	const wanted = word.toLowerCase();
	const rank = ({ insert, label }: Completion) => {
		const name = insert.toLowerCase();
		if (name === wanted) return 0;
		if (name.startsWith(wanted)) return 1;
		if (label.toLowerCase().startsWith(wanted)) return 2;
		if (name.includes(`_${wanted}`)) return 3;
		return wanted.length >= 3 && (name.includes(wanted) || label.toLowerCase().includes(wanted))
			? 4
			: 9;
	};
	const items = all
		.map((item, place) => ({ item, place, rank: rank(item) }))
		.filter((one) => one.rank < 9)
		.sort((a, b) => a.rank - b.rank || a.place - b.place)
		.slice(0, MOST)
		.map((one) => one.item);
	// The word as it stands needs no help.
	if (items.length === 1 && items[0]?.insert === word) return { from, to: caret, items: [] };
	return { from, to: caret, items };
}

/** The function whose brackets the caret is in. */
export function callAt(text: string, caret: number): FunctionSpec | null {
	let depth = 0;
	for (let i = caret - 1; i >= 0; i--) {
		if (text[i] === ')') depth++;
		else if (text[i] === '(') {
			if (depth-- > 0) continue;
			const name = /[\p{L}_]+$/u.exec(text.slice(0, i))?.[0];
			const found = name ? FUNCTIONS.get(name.toUpperCase()) : undefined;
			if (found) return found;
			depth = 0;
		}
	}
	return null;
}

/** The text with the word at the caret replaced, and where the caret then stands. */
export function complete(text: string, { from, to }: Completions, item: Completion) {
	const rest = item.kind === 'function' && text[to] === '(' ? text.slice(to + 1) : text.slice(to);
	return { text: text.slice(0, from) + item.insert + rest, caret: from + item.insert.length };
}
