/** What the dialogs say. */
import { inLanguage } from '../language';

const en = {
	// OpenDialog
	noLongerKept: 'That workbook is no longer kept in this browser.',
	openAWorkbook: 'Open a workbook',
	openStaysKept: 'What is open now stays kept in this browser.',
	chooseAFile: 'Choose a file',
	orDrop: 'or drop it on the page',
	shippedWithMetrewright: 'Shipped with Metrewright',
	startAgain: 'Start again from the shipped plant',
	openTheSmallShop: 'Open the small shop',
	beginYourOwn: 'Begin your own plant',
	aboutBeginning: 'A plant of your own, from a structure, a small shop or nothing',
	keptInThisBrowser: 'Kept in this browser',
	savedFrom: (at: string, from: string) => `saved ${at}, from ${from}`,
	open: 'Open',
	delete: 'Delete',
	nothingIsKeptYet: 'Nothing is kept yet.',
	close: 'Close',

	// AboutDialog
	aboutTheWorkbook: 'About this workbook',
	title: 'Title',
	about: 'What it is about',
	figuresAreInvented: 'Its figures are invented: every screen and file says so',
	asInTemplate: (own: string, entered: string, template: string) =>
		`${own} of ${entered} entered values are other than in ${template}`,
	sheet: 'Sheet',
	own: 'Other',
	entered: 'Entered',
	reviewTellsWhich: 'The review list tells which still stand as they were shipped.',
	save: 'Save',

	// FormDialog
	cancel: 'Cancel',

	// AgreementDialog
	everyNumberComputedTwice: 'Every number is computed twice',
	twoEngines: (agreement: string) =>
		`Two engines that share no arithmetic compute every value after every edit. ${agreement}.`,
	tooLargeToFollow: (cells: number, all: number, scenarios: string) =>
		`The workbook is too large for the second engine to follow whole: it checks ${cells} of ${all} values, in ${scenarios}.`,
	notJudged: (count: number, reason: string) => `${count} not judged: ${reason}`,
	value: 'Value',
	scenario: 'Scenario',
	first: 'First',
	second: 'Second'
};

export const texts = inLanguage({ en });
