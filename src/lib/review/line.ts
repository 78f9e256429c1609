/** One line of the review list: what stands in a workbook that somebody should have looked at once. */
import type { Quantity } from '$lib/workbook/schema';

export type LineKind =
	| 'as_in_template'
	| 'outside_usual'
	| 'far_from_siblings'
	| 'pasted'
	| 'entered_among_formulas'
	| 'same_entries'
	| 'not_as_named'
	| 'lone_change'
	| 'literal'
	| 'leaves_out'
	| 'copy'
	| 'twice'
	| 'unread';

export interface Line {
	readonly kind: LineKind;
	/** Null where it is about a scenario as a whole. */
	readonly quantity: Quantity | null;
	/** Members of the cell that it is about; none where it is about the quantity as a whole. */
	readonly at: readonly string[];
	/** The scenario whose own entry it is about; null for the base and for formulas. */
	readonly scenario: string | null;
	/** What stands there, in a sentence. */
	readonly what: string;
	/** What it speaks of: while this stays the same, a tick holds. */
	readonly speaksOf: string;
}

/** What names a line, so that it is known again when the workbook has changed elsewhere. */
export const lineId = ({ kind, quantity, at, scenario }: Line): string =>
	[
		kind,
		...(quantity === null ? [] : [quantity.name]),
		...at,
		...(scenario === null ? [] : [`@${scenario}`])
	].join(' ');

interface Kind {
	readonly title: string;
	readonly why: string;
	readonly remedy: string;
}

/** In the order in which a person should go through them. */
export const KINDS: Readonly<Record<LineKind, Kind>> = {
	as_in_template: {
		title: 'Entries as in the workbook that this one was begun from',
		why: 'The figures are said to be your own, and these still stand as they were shipped: invented.',
		remedy: 'Enter your own, or tick off what is the same with you.'
	},
	outside_usual: {
		title: 'Entries outside their usual range',
		why: 'A slip of a digit or a unit looks like this.',
		remedy: 'Correct the entry, or widen the usual range.'
	},
	far_from_siblings: {
		title: 'Entries far from their siblings',
		why: 'One member lies far from where the others lie.',
		remedy: 'Compare it with its source.'
	},
	pasted: {
		title: 'Entries with more digits than anyone measures',
		why: 'It may be a result that was pasted, and follows nothing any more.',
		remedy: 'Let a formula give it, or round it to what is known.'
	},
	entered_among_formulas: {
		title: 'Members entered where the others are computed',
		why: 'An exception that was meant for a day stays unseen for years.',
		remedy: 'Let the formula hold for it as well, or say in the note why not.'
	},
	same_entries: {
		title: 'Scenarios that are another one once more',
		why: 'An entry may have been lost: it shows the results of the other one under its own name.',
		remedy: 'Enter what it is about, or remove it.'
	},
	not_as_named: {
		title: 'Scenarios that do not choose what they are named after',
		why: 'The choice may have been forgotten, or entered for another member.',
		remedy: 'Choose it, or give the scenario another name.'
	},
	lone_change: {
		title: 'Members that a scenario treats apart',
		why: 'A member may have been forgotten, or another one meant.',
		remedy: 'Enter it for the others too, or take it back.'
	},
	literal: {
		title: 'Numbers standing in formulas',
		why: 'No scenario and no study reaches them, and nobody sees them changed.',
		remedy: 'Give the number a quantity of its own, with a unit and a source.'
	},
	leaves_out: {
		title: 'Sums that leave named members out',
		why: 'A member added later, or one left out by a slip, is missing without a sign.',
		remedy: 'Gather over all members, or let a yes/no quantity say which.'
	},
	copy: {
		title: 'Copies of another quantity',
		why: 'Two names for one number: one day only one of them is changed.',
		remedy: 'Use the other one where this is read, or say in the note what sets them apart.'
	},
	twice: {
		title: 'Formulas that use the same thing twice',
		why: 'One of the two was perhaps meant to be another.',
		remedy: 'Read the formula once more.'
	},
	unread: {
		title: 'Quantities that nobody reads',
		why: 'No formula, check, picture or first screen takes it: a term may be missing elsewhere.',
		remedy: 'Use it, or remove it.'
	}
};
export const KIND_NAMES = Object.keys(KINDS) as LineKind[];
