/** The word for each field of a quantity, wherever one is told: change lists, what undo takes back, conflicts. */
import type { Quantity } from './schema';

/** In the order in which changed fields are told. */
export const FIELD_WORDS: Readonly<Record<keyof Quantity, string>> = {
	name: 'name',
	label: 'name in words',
	other_names: 'other names',
	formula: 'formula',
	path: 'where its steps are entered',
	where: 'where it holds',
	value: 'value',
	unit: 'unit',
	range: 'range',
	usual: 'usual range',
	note: 'note',
	source: 'source',
	date: 'date of the source',
	spread: 'spread',
	type: 'kind',
	per: 'sets',
	in: 'pairs that exist',
	fixed: 'whether it is fixed with the structure',
	whole: 'whether it is in whole steps',
	check: 'check',
	caution: 'caution',
	shown: 'how it is shown',
	digits: 'digits',
	open: 'who may see it'
};
export const QUANTITY_FIELDS = Object.keys(FIELD_WORDS) as (keyof Quantity)[];
