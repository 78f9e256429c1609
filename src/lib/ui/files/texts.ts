/** What the page of files says. */
import { inLanguage } from '../language';

const en = {
	// +page
	filesInAndOut: 'Files in and out',

	// ColumnMeanings
	whatTheColumnsMean: 'What the columns mean',
	column: 'Column',
	holds: 'Holds',
	isTakenAs: 'Is taken as',
	columnNumber: (count: number) => `column ${count}`,
	columnIsTakenAs: (name: string, count: number) => `${name || `column ${count}`} is taken as`,

	// ExportMenu
	allSheets: 'all sheets',
	partNotFetched:
		'A part of the program was not fetched. Check the connection and try again; do not close the page.',
	writingTheFile: 'Writing the file.',
	ooxmlWritten: (name: string) => `${name} is written, with the numbers that stand here.`,
	couldNotWrite: (message: string) =>
		`The file could not be written: ${message}. Try again, or take a copy.`,
	notAllComputed: 'Not every scenario is computed yet. Wait a moment, then take the table again.',
	csvWritten: (name: string, count: number) => `${name}.csv holds ${count} rows.`,
	exportWord: 'Export',
	theWorkbookWhole: 'The workbook, whole',
	whatJsonHolds:
		'JSON: everything that is entered, with formulas, scenarios and studies. Opens here again.',
	saveACopy: 'Save a copy',
	withLiveFormulas: 'With live formulas',
	whatOoxmlHolds:
		'OOXML (ISO/IEC 29500, .xlsx): one sheet a scenario, boxed inputs, every result as a formula that recalculates, units, notes and the formulas in words.',
	takeWithFormulas: 'Take with formulas',
	valuesAsATable: 'Values as a table',
	csvOf: 'CSV of',
	sheetToTake: 'Sheet to take',
	whatCsvHolds:
		', a column for each scenario, all digits. What is changed in it can be brought in below.',
	exportValues: 'Export values',

	// ImportPreview
	valueWouldChange: 'value would change',
	valuesWouldChange: 'values would change',
	isTheSame: 'is the same',
	areTheSame: 'are the same',
	rowResultPassedOver: 'row is a result and is passed over',
	rowsResultsPassedOver: 'rows are results and are passed over',
	rowCannotBeTaken: 'row cannot be taken',
	rowsCannotBeTaken: 'rows cannot be taken',
	rowsLeftOut: 'Rows that cannot be taken',
	line: (line: number) => `Line ${line}.`,
	andMore: (count: number) => `and ${count} more`,
	valuesThatWouldChange: 'Values that would change',
	lineHead: 'Line',
	quantity: 'Quantity',
	forWord: 'For',
	inWord: 'In',
	stands: 'Stands',
	comesIn: 'Comes in',
	unit: 'Unit',
	keptEnteredHere: 'kept, entered here',

	// ImportTable
	valuesEntered: (count: number, name: string) =>
		`${count} ${count === 1 ? 'value' : 'values'} from ${name} entered; undo takes them back together.`,
	importATable: 'Import a table',
	whatToImport:
		'CSV, with a first row that names the columns. Nothing changes before you have seen what would.',
	tableToImport: 'Table to import',
	quantityOfEveryRow: 'Quantity of every row',
	chooseOne: 'choose one',
	decimalsAreWrittenWith: 'Decimals are written with',
	aPoint: 'a point',
	aComma: 'a comma',
	enterValues: (count: number) => `Enter ${count} ${count === 1 ? 'value' : 'values'}`,
	cancel: 'Cancel'
};

export const texts = inLanguage({ en });
