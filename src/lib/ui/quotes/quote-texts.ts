/** What the page of a kept quote says. */
import { inLanguage } from '../language';

const en = {
	gone: 'This quote is not in the workbook.',
	toAll: 'All quotes',
	heading: (name: string, state: string) => `Quote ${name}, ${state}`,
	states: { asked: 'asked for', sent: 'sent', won: 'won', lost: 'lost' },
	filed: 'put away',
	twice: (number: string) =>
		`Another quote bears the number ${number} as well: two people counted with one sign. Give this one another.`,
	nextFree: 'Give it the next free number',
	forCustomer: 'Offer for the customer',
	internal: 'Internal sheet for the file',
	internalHint: 'Prints this page with all its figures: for the house alone',
	newVersion: 'New version',
	duplicate: 'Same for another customer',
	putAway: 'Put away',
	bringBack: 'Bring back',
	state: 'State',
	reason: 'Why it was lost',
	date: 'Date',
	validUntil: 'Valid until',
	number: 'Number',
	by: 'Made by',
	to: 'To, as on the offer',
	terms: 'On the offer besides',
	note: 'Note for the house',
	head: 'Of the quote',
	asked: (standing: string) =>
		`Figures follow ${standing} until it is sent; then they stand. What is entered here is of this quote alone.`,
	stands: (date: string, of: string, revision: number | undefined) =>
		`Figures as they stood on ${date}, on ${of}${revision === undefined ? '' : `, revision ${revision}`}. To change it, make a new version.`,
	lostMembers: (names: string) =>
		`No longer in the workbook: ${names}. The quote keeps its figures; choose something else in a new version.`,
	cannotCompute:
		'Its figures could not be computed. Nothing of the quote is lost; look at it again once the workbook shows its own.',
	computing: 'Its figures are being computed …',
	waits: 'It is sent once its figures and the plan with it are there …',
	notYet: 'Its figures are not there yet. Try again in a moment.',
	noFigures: 'It has no price yet, so it cannot be sent: see below for what is missing.',
	noFiguresOf: (position: number, name: string) =>
		`Item ${position}, ${name}, has no price yet, so the quote cannot be sent: see beside it for what is missing.`,
	ofItem: (position: number, name: string) => `Item ${position}: ${name}`,
	lineOf: (line: number) => `Line ${line} of the tender`,
	lostGoods: (names: string) =>
		`It names what the workbook has no more (${names}), so it cannot be sent. Choose something else.`,
	badDate: (text: string) => `“${text}” is no date. Write it as 2028-03-14.`,
	endBeforeDate: 'It would end before its own date. Choose a later day.',
	keepHint:
		'Makes a quote of this order, with a number of its own: what is entered there changes nothing here',
	yourName: 'Made by',
	since: 'What it would be today',
	figure: 'Figure',
	then: 'As it stands',
	today: 'Today',
	difference: 'Difference',
	sameToday: 'Today it would be the same, to the digit.',
	why: 'Inputs that changed since, largest first',
	input: 'Input',
	was: 'Was',
	is: 'Is now',
	onPrice: 'On the price',
	onFloor: 'On the floor',
	rest: 'Together, and what is not kept with the quote: plans, formulas, tables',
	more: (count: number) => `${count} more changed that were not looked into.`,
	lookingInto: 'What each of them does is being looked into …',
	noInputs: 'No input that is kept with it has changed: plan, formulas or tables did.',
	noTodays: (why: string) => `What it would be today cannot be said: ${why}.`
};

export const quoteTexts = inLanguage({ en });
