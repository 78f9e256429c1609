/** What stands around every page. */
import { inLanguage } from '../language';

const en = {
	// +layout
	pageTitle: (title: string) => `${title}, Metrewright`,
	goToThePage: 'Go to the page',
	openingTheWorkbook: 'Opening the workbook',

	// +error
	noSuchPage: 'There is no such page',
	pageNotShown: 'This page could not be shown',
	goToTheWorkbook: 'Go to the workbook',

	// Checks
	checksThatHold: 'Checks that hold',
	goToOneThatFails: 'Go to one that does not hold',
	heldOf: (held: number, all: number) => `${held} of ${all}`,
	errors: (count: number) => (count === 1 ? '1 error' : `${count} errors`),
	cautions: (count: number) => (count === 1 ? '1 caution' : `${count} cautions`),

	// Contents
	contents: 'Contents',
	picturesAndStudies: 'Pictures and studies',
	theWorkbook: 'The workbook',
	sheetsWith: (product: string) => `Sheets${product ? `, with ${product} in base` : ''}`,
	sheetOf: (sheet: string, scenario: string) => `${sheet}, ${scenario}`,
	noValue: 'no value',

	// Drop
	dropOpenWorkbook: 'Drop to open this workbook',

	// FindBox
	findAQuantity: 'Find a quantity',
	quantitiesFound: 'Quantities found',
	nothingFound: 'No quantity has these words in its name, its label or its other names.',
	also: (name: string) => `also: ${name}`,

	// Header
	invented: '(invented)',
	aboutTheWorkbook: 'Title, description, whose figures',
	menu: 'Menu',
	workbook: 'Workbook',
	undo: 'Undo',
	redo: 'Redo',
	open: 'Open',
	saveACopy: 'Save a copy',
	print: 'Print',

	// Later
	partNotFetched:
		'A part of the page was not fetched. Check the connection and load the page again; the work is kept.',

	// Nothing
	noWorkbookIsOpen: 'No workbook is open',
	tryShippedPlantAgain: 'Try the shipped plant again',
	openAFile: 'Open a file',

	// Notices
	readOnlyHere: 'Read only here.',
	openInAnotherTab:
		'This workbook is open in another tab, and two tabs would overwrite each other’s work.',
	takeOverHere: 'Take over here',
	noConnection: 'No connection.',
	worksOffline: 'Everything here keeps working; your work is kept in this browser.',
	closeThisNote: 'Close this note',

	// SheetChooser
	goTo: 'Go to',
	quotes: 'Quotes',
	prices: 'Price list',
	sheets: 'Sheets',
	pages: 'Pages',
	asSheet: (title: string) => `${title} (sheet)`,

	// SummaryBar
	atAGlance: 'At a glance',
	scenarioShownBefore: 'Scenario shown:\u00a0',
	scenarioShown: 'Scenario shown',
	comparedWith: (copy: string) => `compared with ${copy}`,
	productShown: 'Product shown',
	askWhyOf: (value: string) => `${value}: ask why`
};

export const texts = inLanguage({ en });
