/** A line of a change list in words: "Resin price: 1.95 to 2.10 EUR/kg". */
import { listed } from '../commands/lists';
import { FIELD_WORDS } from '../quantity-words';
import type { Scalar } from '../schema';
import type { Change, EntryList, InnerList, Listed, PartName } from './change';

/** How a number is written; its quantity may have it read as a date or a year. */
export type WriteNumber = (value: number, shown?: 'date' | 'year') => string;

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
	programmes: 'programme'
};
export const PART_WORDS: Readonly<Record<PartName, string>> = {
	about: 'description of the workbook',
	invented: 'whether its figures are invented',
	front: 'what the first screen says'
};
const INNER_WORDS: Readonly<Record<InnerList, string>> = { sets: 'members', relations: 'pairs' };

export function changeWords(change: Change, write: WriteNumber = String): string {
	switch (change.kind) {
		case 'value':
			return valueWords(change, write);
		case 'values':
			return `${listed(change.labels)}: ${change.count} values${inScenario(change)}`;
		case 'quantity_added':
			return `add ${change.label} to ${change.sheet}`;
		case 'quantity_moved':
			return `${change.label}: moved to ${change.sheet}`;
		case 'quantity_removed':
			return `remove ${change.label}`;
		case 'quantity_renamed':
			return `${change.from}: renamed to ${change.to}`;
		case 'quantity_changed':
			return change.fields.length === 0
				? `describe ${change.label}`
				: `${change.label}: ${listed(change.fields.map((field) => FIELD_WORDS[field]))} changed`;
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

const inScenario = ({ scenario }: { scenario?: string }) =>
	scenario === undefined ? '' : ` (${scenario})`;

function valueWords(change: Extract<Change, { kind: 'value' }>, write: WriteNumber): string {
	const { label, at, was, now, unit, shown } = change;
	const words = (value: Scalar) => scalarWords(value, (number) => write(number, shown));
	const place = at.length > 0 ? ` of ${at.join(', ')}` : '';
	const head = `${label}${place}${inScenario(change)}`;
	if (change.inherits) return `${head}: ${words(was)} back to that of the parent`;
	const withUnit = (text: string) =>
		unit === undefined || shown !== undefined ? text : `${text} ${unit}`;
	// The unit stands once: with the new number, else with the old one.
	if (typeof now === 'number') return `${head}: ${words(was)} to ${withUnit(words(now))}`;
	const from = typeof was === 'number' ? withUnit(words(was)) : words(was);
	return `${head}: ${from} to ${words(now)}`;
}

function scalarWords(value: Scalar, write: (value: number) => string): string {
	if (value === null) return 'nothing entered';
	if (typeof value === 'boolean') return value ? 'yes' : 'no';
	return typeof value === 'number' ? write(value) : value;
}
