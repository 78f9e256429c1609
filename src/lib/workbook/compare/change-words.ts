/** A line of a change list in words: "Resin price: 1.95 to 2.10 EUR/kg". */
import type { Change, EntryList, InnerList, Listed, PartName } from './change';
import { quantityChangeWords, type WriteNumber } from './quantity-change-words';

/** The word for one entry of a list. */
export const ENTRY_WORDS: Readonly<Record<EntryList, string>> = {
	sheets: 'sheet',
	units: 'unit',
	sets: 'set',
	relations: 'relation',
	scenarios: 'scenario',
	pictures: 'picture',
	studies: 'study',
	starts: 'starting view',
	programmes: 'programme',
	reviewed: 'line of the review list',
	tables: 'matches of the table',
	steps: 'step of the first hour',
	calibrations: 'fit',
	frozen: 'frozen copy',
	quotes: 'quote'
};
export const PART_WORDS: Readonly<Record<PartName, string>> = {
	about: 'description of the workbook',
	invented: 'whether its figures are invented',
	begun_from: 'which workbook it was begun from',
	front: 'what the first screen says',
	letterhead: 'letterhead of offers'
};
const INNER_WORDS: Readonly<Record<InnerList, string>> = { sets: 'members', relations: 'pairs' };

export function changeWords(change: Change, write: WriteNumber = String): string {
	switch (change.kind) {
		case 'quantity_added':
			return `add ${change.label} to ${change.sheet}`;
		case 'quantity_moved':
			return `${change.label}: moved to ${change.sheet}`;
		case 'quantity_removed':
			return `remove ${change.label}`;
		case 'value':
		case 'values':
		case 'quantity_renamed':
		case 'quantity_changed':
			return quantityChangeWords(change, write);
		case 'added':
			return `add ${wordOf(change)} ${change.name}`;
		case 'removed':
			return `remove ${wordOf(change)} ${change.name}`;
		case 'changed':
			return change.of === undefined
				? `${wordOf(change)} ${change.name}: changed`
				: `describe ${change.of} ${change.name}`;
		case 'renamed':
			return `${wordOf(change)} ${change.from}: renamed to ${change.to}`;
		case 'reordered':
			return `${wordOf(change)}: put in another order`;
		case 'list_changed':
			return `${wordOf(change)}: changed`;
		case 'many_changed':
			return `${change.of}: ${change.count} ${INNER_WORDS[change.list]} changed`;
		case 'title':
			return `title: ${change.was} to ${change.now}`;
		case 'part':
			return `${PART_WORDS[change.part]}: changed`;
		case 'plan':
			return `plan of ${change.scenario}: ${change.kept === null ? 'follows again' : `kept as of ${change.kept}`}`;
		case 'begun':
			return `begin ${change.title}`;
		case 'more':
			return `and ${change.count} more`;
		case 'told':
			return change.text;
	}
}

function wordOf({ list, of }: Listed): string {
	if (of === undefined) return ENTRY_WORDS[list];
	return list === 'sets' ? of : `pair of ${of}`;
}
