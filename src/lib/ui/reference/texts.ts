/** What the reference of functions and units says. */
import { inLanguage } from '../language';

const many = (count: number, one: string) => `${count} ${one}${count === 1 ? '' : 's'}`;

const en = {
	title: 'Functions and units',
	lead: 'What a formula may call, and the units that a quantity or a number may have. Arguments are parted by semicolons; a number takes its unit in brackets, as in 5[kg/m].',
	search: 'Search functions and units',
	found: (functions: number, units: number) =>
		functions + units === 0
			? 'Nothing found. Fewer letters find more.'
			: `${many(functions, 'function')}, ${many(units, 'unit')}`,
	gathering: 'Functions that gather members of sets',
	others: 'Functions that take values as they stand',
	notStandard: 'Not in OpenFormula.',
	example: 'For example:',
	gives: (value: string) => `gives ${value}`,
	units: 'Units that every workbook knows',
	unit: 'Unit',
	name: 'Name',
	measures: 'Measures',
	oneIs: 'One of it is',
	alsoWritten: 'Also written',
	own: 'Units of this workbook',
	itself: 'a base of its own'
};

export const texts = inLanguage({ en });
