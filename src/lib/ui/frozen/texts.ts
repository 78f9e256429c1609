/** What is said of frozen copies. */
import { inLanguage } from '../language';

const en = {
	// FrozenList
	frozenCopies: 'Frozen copies',
	whatTheyAre:
		'A standard, a budget, a decided case: every value as it stood on a day. No edit changes a copy; it can stand in a column, be compared and be read by formulas.',
	freeze: 'Freeze a copy',
	none: 'There is none yet.',
	copy: 'Copy',
	column: 'Column',
	actions: 'Actions',
	showAColumnFor: (title: string) => `Show a column for ${title}`,
	made: (date: string, of: string, by: string, revision: string) =>
		`Frozen ${date}, of ${of}${by ? `, by ${by}` : ''}${revision ? `, revision ${revision}` : ''}`,
	holds: (count: string, id: string, example: string) =>
		`${count} quantities. In formulas: ${example}[${id}]`,
	gone: (count: number) =>
		count === 1
			? 'One of them is not in the workbook any more, or means another thing'
			: `${count} of them are not in the workbook any more, or mean another thing`,
	describe: 'Describe',
	exportValues: 'Export values',
	exported: (name: string, rows: string) => `${name}: ${rows} values.`,
	/** Of a copy that is no part of the workbook. */
	inThisPage: 'Only in this page, to read: it is not kept.',
	takeAway: 'Take away',
	remove: 'Delete',
	removes: (title: string, readers: string, measured: string) =>
		`${title} and all values that it holds go.${readers ? ` The formula of ${readers} reads it and would show the missing name.` : ''}${measured ? ` ${measured}: compared with it so far, then with the base.` : ''} Undo brings it back.`,
	removeIt: 'Delete the copy',
	cancel: 'Cancel',

	// FrozenFields
	aNewCopy: 'A frozen copy',
	describeOne: (title: string) => `Describe ${title}`,
	title: 'Title',
	of: 'Of the scenario',
	date: 'Date',
	by: 'By (may be left out)',
	note: 'What it is for (may be left out)',
	save: 'Save',
	standardOf: (year: number) => `Standard ${year}`,
	notSettled: 'Figures are still being computed. Wait a moment, then freeze them.',
	outOfDate: (title: string) =>
		`Some figures of ${title} rest on a plan that does not answer the workbook any more. Wait until it is made anew, or make it anew on the page of the plan, then freeze them.`,
	nothing: (title: string) => `Nothing in ${title} has a value yet. Enter some first.`,

	// FreezeRevision
	revisionTitle: (number: number) => `Revision ${number}`,
	titleOfRevision: (number: number) => `Title of the frozen copy of revision ${number}`,
	computing: (number: number) => `Revision ${number} is fetched and computed.`,
	standsBeside: (title: string) =>
		`${title} stands beside the workbook: as a column, in comparisons and bridges.`,
	onlyHere: 'Put beside in this page only',
	standsHere: (title: string) =>
		`${title} stands beside the workbook in this page: as a column, in comparisons and bridges. Nothing is kept; it goes when the page is left.`,
	toScenarios: 'To the scenarios',
	notComputed: (number: number, why: string) =>
		`Revision ${number} could not be frozen: ${why}. Try again, or compare its entries instead.`,
	close: 'Close',

	// columns of copies
	notInIt: (count: string) => `${count} not in it`,
	isNow: (value: string) => `now ${value}`,
	handIs: (scenario: string, value: string) => `${scenario}: ${value}`,

	// FrozenWhy
	whatWasFrozen: 'What was frozen',
	inCopy: (label: string, title: string) => `${label} in ${title}`,
	then: 'then',
	today: (base: string) => `today, in ${base}`,
	formulaThen: 'formula then',
	formulaToday: 'formula today',
	sameFormula: 'the same today',
	entered: 'entered',
	notHeld: (title: string) =>
		`${title} holds no value here: there was none on that day, or it meant another thing.`,

	// tables
	columns: ['name', 'quantity', 'for', 'unit', 'formula', 'value']
};

export const texts = inLanguage({ en });
