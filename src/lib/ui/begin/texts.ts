/** What the page of the first hour says. */
import { inLanguage } from '../language';

const en = {
	title: 'Begin your own plant',
	howItBegins:
		'What is open now stays kept in this browser. Nothing has to be done in one go: the page can be left and comes back as it was.',
	fromStructure: 'Begin from the plant’s structure',
	aboutStructure:
		'Sheets, formulas, checks and pictures of the shipped plant without its items, lines and customers. Every other figure stands as a typical value, and says so, until you replace it.',
	fromShop: 'Begin from the small shop',
	aboutShop: 'One line, a handful of sheets: the quickest to overlook, and to grow from.',
	empty: 'Begin empty',
	aboutEmpty:
		'A workbook with one sheet and nothing in it. Sheets and lists are added on the Lists page, quantities and formulas in the grid.',
	newTitle: 'Our plant',
	firstSheet: 'First sheet',
	base: 'Base',
	beginning: 'The shipped workbook is being fetched …',
	notFetched: (why: string) =>
		`The shipped workbook could not be fetched: ${why} Check the connection and try again.`,

	notCompared:
		'The shipped workbook could not be fetched, so nothing says yet what is typical. Check the connection and open this page again.',

	hour: 'Your first hour',
	lead: (template: string) =>
		`Each step asks for what you know or have in a list. What stands there already is a typical value of ${template}: type over it, or take it as yours where it is right. Leave out what you do not have; come back at any time.`,
	inAll: (own: string, of: string) => `${own} of ${of} asked for are yours`,
	ofOwn: (own: string, of: string) => `${own} of ${of} yours`,
	inWorkbook: (own: string, of: string) => `${own} of all ${of} figures of the workbook are yours.`,
	allFigures: 'Sheet by sheet',
	step: (at: number, title: string) => `${at}. ${title}`,
	still: (labels: readonly string[]) => `Still typical: ${labels.join(', ')}`,
	stepDone: 'All of it is yours.',
	typical: 'typical',
	missing: 'missing',
	mine: 'mine',
	takeAsMine: (label: string) => `${label} is mine as it stands`,
	takeAll: 'All of this step is mine as it stands',
	nothingEntered: 'not entered',
	code: 'Code',
	codeOf: (id: string) => `Code of ${id}`,
	more: (label: string) => `Code of one more ${label.toLowerCase()}`,
	add: 'Add',
	placeholder: (label: string) => `add a ${label.toLowerCase()}`,
	remove: (id: string) => `Remove ${id}`,
	noCode: 'Give it a code first.',
	bringList: (step: string) => `${step}: bring in a list as a file`,
	bringListOrLog: (step: string) => `${step}: bring in a list or a log as a file`,
	closeList: 'Put the file aside',
	howToPaste:
		'A block copied from a table can be pasted into any field; it fills to the right and down.',
	pasted: (count: number) => (count === 1 ? '1 figure pasted.' : `${count} figures pasted.`),
	tooWide:
		'The block is wider or longer than the table from here on. Paste it further up or left, or add what is missing first.',
	at: (label: string, members: readonly string[]) => [label, ...members].join(', '),

	result: 'What it comes to',
	leftOut: (labels: string) => `Without metres, and so in no sum: ${labels}.`,
	cardWaits: (item: string, labels: readonly string[]) =>
		`The cost card of ${item} stands here once these are yours: ${labels.join(', ')}.`,
	card: (item: string) => `Cost card of ${item}`,
	restsOn: (count: string) => `${count} typical values of the workbook are still in it.`,
	beside: 'Beside the books',
	notYet: '…'
};

export const texts = inLanguage({ en });
