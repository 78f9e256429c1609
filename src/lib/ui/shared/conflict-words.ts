/** A conflict as a person reads it: what it is about, what stood there, and what each made of it. */
import { findQuantity, findScenario } from '$lib/workbook/lookup';
import type { Json } from '$lib/workbook/json';
import type { Conflict } from '$lib/workbook/merge';
import { FIELD_WORDS } from '$lib/workbook/quantity-words';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { enteredWords } from './entered-words';

export interface ConflictView {
	readonly key: string;
	/** "Resin price, PX15B, in Faster lines" */
	readonly title: string;
	/** Why it is asked, where two values do not say it. */
	readonly why: string;
	readonly base: string;
	readonly mine: string;
	readonly theirs: string;
}

const WHY: Readonly<Record<Conflict['reason'], string>> = {
	both_changed: '',
	removed_and_changed: 'One took it away, the other changed it.',
	order: 'Both put the same entries in another order.',
	meaning: 'One changed what its values mean, the other its values: they only hold together.',
	unsound: 'Each change fits, both together do not.'
};

const FIELDS: ReadonlyMap<string, string> = new Map(
	Object.entries({
		...FIELD_WORDS,
		title: 'title',
		parent: 'what it is built on',
		changes: 'changes',
		members: 'members',
		order: 'order'
	})
);
/** A field by its word; names of any kind stand for themselves. */
const fieldWord = (field: string) => FIELDS.get(field) ?? field;

/** What the names stand for is looked up in the first of the workbooks that knows them. */
export function conflictView(
	conflict: Conflict,
	workbooks: readonly Workbook[],
	locale: string
): ConflictView {
	const { key, reason, path, message } = conflict;
	const about = subjectOf(path, workbooks);
	const text = (node: Json | undefined, none: string) =>
		node === undefined ? none : textOf(node, about.quantity, workbooks, locale);
	const gone = reason === 'removed_and_changed' ? 'taken away' : 'nothing entered';
	return {
		key,
		title: about.title,
		why: message ?? WHY[reason],
		base: text(conflict.base, 'nothing'),
		mine: reason === 'unsound' ? 'as you have it' : text(conflict.mine, gone),
		theirs: reason === 'unsound' ? 'as it is on the server' : text(conflict.theirs, gone)
	};
}

interface Subject {
	readonly title: string;
	/** Where the values are its entered ones. */
	readonly quantity: Quantity | null;
}

function subjectOf(path: readonly string[], workbooks: readonly Workbook[]): Subject {
	const [list, name = '', field, ...rest] = path;
	const first = <T>(find: (workbook: Workbook) => T | undefined): T | undefined => {
		for (const workbook of workbooks) {
			const found = find(workbook);
			if (found !== undefined) return found;
		}
		return undefined;
	};
	const quantityOf = (id: string) => first((workbook) => findQuantity(workbook, id));
	const joined = (...parts: (string | undefined)[]) => parts.filter(Boolean).join(', ');
	if (list === 'quantities') {
		const quantity = quantityOf(name) ?? null;
		const label = quantity?.label || name;
		if (field === 'value') return { title: joined(label, ...rest), quantity };
		return {
			title: field === undefined ? label : joined(`${label}: ${fieldWord(field)}`, ...rest),
			quantity: null
		};
	}
	if (list === 'scenarios' && path.length > 1) {
		const title = first((workbook) => findScenario(workbook, name))?.title ?? name;
		const [changed, what, ...at] = rest;
		if (field === 'changes' && changed !== undefined) {
			const quantity = quantityOf(changed) ?? null;
			const label = quantity?.label || changed;
			const detail = what === undefined || what === 'value' ? '' : `: ${fieldWord(what)}`;
			return {
				title: joined(`${label}${detail}`, ...at, `in ${title}`),
				quantity: what === 'value' ? quantity : null
			};
		}
		return {
			title: field === undefined ? `Scenario ${title}` : `Scenario ${title}: ${fieldWord(field)}`,
			quantity: null
		};
	}
	if (list === 'sheet_of')
		return { title: `${quantityOf(name)?.label || name}: its sheet`, quantity: null };
	if (list === 'scenarios') return { title: 'Which scenario is the base', quantity: null };
	if (list === 'workbook') return { title: 'The workbook as a whole', quantity: null };
	const kind = KINDS.get(list ?? '');
	const words = [name === 'order' ? 'order' : name, field && fieldWord(field), ...rest];
	return { title: joined(kind ?? list, ...words), quantity: null };
}

const KINDS: ReadonlyMap<string, string> = new Map(
	Object.entries({
		sheets: 'Sheet',
		sets: 'Set',
		relations: 'Pairs',
		units: 'Unit',
		studies: 'Study',
		pictures: 'Picture',
		front: 'First page',
		starts: 'Starting view'
	})
);

const LONGEST = 160;

function textOf(
	node: Json,
	quantity: Quantity | null,
	workbooks: readonly Workbook[],
	locale: string
): string {
	if (node === null || typeof node !== 'object')
		return enteredWords(node, quantity, workbooks, locale);
	if (Array.isArray(node) && node.every((json) => typeof json === 'string')) return node.join(', ');
	const text = inWords(node);
	return text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text;
}

/** "unit: t, formula: a + b": nested parts in parentheses. */
function inWords(node: Json): string {
	if (node === null) return 'not entered';
	if (Array.isArray(node)) return node.map(inWords).join(', ');
	if (typeof node !== 'object') return String(node);
	return Object.entries(node)
		.map(([field, value]) => {
			const nested = typeof value === 'object' && value !== null;
			const words = inWords(value);
			return `${fieldWord(field)}: ${nested ? `(${words})` : words}`;
		})
		.join(', ');
}
