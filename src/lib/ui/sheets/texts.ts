/** What is said of the sheets of a workbook, where they are added, renamed, ordered and removed. */
import { inLanguage } from '../language';

const en = {
	sheets: 'Sheets',
	lead: 'A sheet holds quantities that belong together. They stand in the grid and in the contents in this order.',
	addOne: 'Add sheet',
	aNew: 'A new sheet',
	renameOne: (title: string) => `Rename ${title}`,
	save: 'Save',
	add: 'Add',
	title: 'Title',
	note: 'Note',
	figure: 'Figure beside its title in the contents',
	none: 'none',
	missing: 'A sheet needs a title. Write what its quantities are about.',
	taken: (title: string) => `There is a sheet “${title}” already. Choose another title.`,
	quantities: (count: number) =>
		count === 0 ? 'no quantities yet' : count === 1 ? '1 quantity' : `${count} quantities`,
	open: 'Open',
	rename: 'Rename',
	up: 'Up',
	down: 'Down',
	remove: 'Remove',
	removeAnyway: 'Remove it anyway',
	or: 'or',
	cancel: 'cancel',
	removesMore: (title: string, count: number) =>
		`${title} holds ${count === 1 ? '1 quantity, which goes with it' : `${count} quantities, which go with it`}.`,
	noneYet: 'No sheets yet: add one to begin.'
};

export const texts = inLanguage({ en });
