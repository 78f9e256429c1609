/**
 * What is done with the text of a workbook: opened and checked, merged with what others saved, compared, packed. It runs
 * in a thread, because a text may be made to take for ever, and answers in texts, which cross to the server unread.
 */
import { compareWorkbooks } from '$lib/workbook/compare';
import type { Change } from '$lib/workbook/compare/change';
import type { ValueDifference } from '$lib/workbook/compare/values';
import { loadWorkbook, type FileProblem } from '$lib/workbook/load';
import type { Json } from '$lib/workbook/json';
import { mergeWorkbooks } from '$lib/workbook/merge';
import { same as isSame } from '$lib/workbook/merge/same';
import { withoutFollowingPlans } from '$lib/workbook/plans';
import { saveWorkbook } from '$lib/workbook/save';
import type { Workbook } from '$lib/workbook/schema';
import { pack, unpack } from '../store/packing';
import { ROWS, type ValueChange } from '../store/revisions';

export type DocumentAsk =
	| { readonly work: 'begin'; readonly text: string }
	/** A stored revision; saved by an earlier version of the app, it is brought up as a file would be. */
	| { readonly work: 'open'; readonly packed: string }
	/** Texts of what is saved, of the revision that it was made from, and of the newest. */
	| { readonly work: 'save'; readonly mine: string; readonly base: string; readonly newest: string }
	| { readonly work: 'compare'; readonly before: string; readonly after: string };

/** What is written down of a revision. */
export interface Prepared {
	readonly title: string;
	readonly document: string;
	readonly packed: string;
	readonly changes: readonly Change[];
	/** JSON lists of changed values, each as long as one statement takes. */
	readonly values: readonly string[];
}

export type DocumentAnswer =
	| { readonly kind: 'refused'; readonly problem: FileProblem }
	| { readonly kind: 'opened'; readonly document: string }
	| { readonly kind: 'unchanged' }
	/** As JSON, and how many. */
	| { readonly kind: 'conflict'; readonly conflicts: string; readonly count: number }
	| { readonly kind: 'prepared'; readonly revision: Prepared }
	/** Lines and values as JSON. */
	| { readonly kind: 'compared'; readonly json: string };

/** Lines of a change list that are kept. */
const MOST_LINES = 400;
/** Values of a comparison that are sent; the lines tell of all. */
const MOST_VALUES = 5000;

export function answerOf(ask: DocumentAsk): DocumentAnswer {
	switch (ask.work) {
		case 'begin': {
			const loaded = loadWorkbook(ask.text, 'the workbook');
			if (!loaded.ok) return { kind: 'refused', problem: loaded.problem };
			const { workbook } = loaded;
			return prepared(
				workbook,
				saveWorkbook(workbook),
				[{ kind: 'begun', title: workbook.title }],
				[]
			);
		}
		case 'open': {
			const document = saveWorkbook(opened(unpack(ask.packed)));
			return { kind: 'opened', document };
		}
		case 'save':
			return saved(ask);
		case 'compare': {
			const { lines, values } = compareWorkbooks(opened(ask.before), opened(ask.after));
			const told = { changes: lines, values: values.slice(0, MOST_VALUES) };
			return { kind: 'compared', json: JSON.stringify(told) };
		}
	}
}

function saved({ mine, base, newest }: Extract<DocumentAsk, { work: 'save' }>): DocumentAnswer {
	const loaded = loadWorkbook(mine, 'the workbook');
	if (!loaded.ok) return { kind: 'refused', problem: loaded.problem };
	const before = opened(newest);
	const merged = mergeWorkbooks({ base: opened(base), mine: loaded.workbook, theirs: before });
	const { conflicts, workbook } = merged;
	if (conflicts.length > 0)
		return { kind: 'conflict', conflicts: JSON.stringify(conflicts), count: conflicts.length };
	const document = saveWorkbook(workbook);
	if (document === newest || isSame(written(workbook), written(before)))
		return { kind: 'unchanged' };
	const { lines, values } = compareWorkbooks(before, workbook);
	const more = lines.length - MOST_LINES;
	const kept = lines.slice(0, MOST_LINES);
	const changes: readonly Change[] = more > 0 ? [...kept, { kind: 'more', count: more }] : lines;
	return prepared(workbook, document, changes, values);
}

/** What people wrote. Plans that follow from it make no revision of their own. */
const written = (workbook: Workbook) => withoutFollowingPlans(workbook) as unknown as Json;

function prepared(
	workbook: Workbook,
	document: string,
	changes: readonly Change[],
	values: readonly ValueDifference[]
): DocumentAnswer {
	remember(document, workbook);
	const lists: string[] = [];
	for (let start = 0; start < values.length; start += ROWS)
		lists.push(JSON.stringify(values.slice(start, start + ROWS).map(asChange)));
	const { title } = workbook;
	return {
		kind: 'prepared',
		revision: { title, document, packed: pack(document), changes, values: lists }
	};
}

const asChange = ({ quantity, scenario, at, was, now }: ValueDifference): ValueChange => ({
	quantity,
	scenario,
	at,
	was: was === undefined ? null : JSON.stringify(was),
	now: now === undefined ? null : JSON.stringify(now)
});

/** Characters of the texts whose workbooks stay open: a parsed one takes some ten times its text. */
const MOST_OPEN = 12 * 1024 * 1024;
const open = new Map<string, Workbook>();

/** A stored text, parsed; the latest stay open by their text, which never changes. */
function opened(text: string): Workbook {
	const known = open.get(text);
	if (known) {
		remember(text, known);
		return known;
	}
	const loaded = loadWorkbook(text, 'a stored revision');
	if (!loaded.ok) throw new Error(`A stored revision does not open: ${loaded.problem.code}`);
	remember(text, loaded.workbook);
	return loaded.workbook;
}

function remember(text: string, workbook: Workbook): void {
	open.delete(text);
	open.set(text, workbook);
	let size = 0;
	for (const key of open.keys()) size += key.length;
	for (const key of open.keys()) {
		if (size <= MOST_OPEN) break;
		open.delete(key);
		size -= key.length;
	}
}
