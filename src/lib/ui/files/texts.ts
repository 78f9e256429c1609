/** What the page of files says. */
import { inLanguage } from '../language';

const some = (names: readonly string[]) =>
	quotedAll(names.slice(0, 6)) + (names.length > 6 ? ` and ${names.length - 6} more` : '');
const quotedAll = (names: readonly string[]) =>
	names.map((name) => (name ? `"${name}"` : 'a column without heading')).join(', ');

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
	decimalsOrDates: 'Decimals, dates',
	dayFirst: 'day first',
	monthFirst: 'month first',
	orderOfColumn: (name: string, count: number) =>
		`Order of the dates of ${name || `column ${count}`}`,
	isRead: 'Is read',
	notKnown: 'choose',
	aPoint: 'after a point',
	aComma: 'after a comma',
	unitOfColumn: (name: string, count: number) => `Unit of ${name || `column ${count}`}`,
	decimalsOfColumn: (name: string, count: number) => `Decimals of ${name || `column ${count}`}`,
	sampleIs: (sample: string, parts: readonly string[]) =>
		`${sample} is ${parts.filter(Boolean).join(' ')}`,

	// meanings
	chooseWhatItHolds: 'choose what it holds',
	itMayBe: 'It may be',
	leftOut: 'left out',
	namesTheThing: 'Names what a row is about',
	which: (label: string) => `which ${label}`,
	labelOfNew: 'what it is called, where it is new',
	nameOfTheQuantity: 'name of the quantity',
	membersTogether: 'members, together',
	unitOfTheRow: 'unit',
	valuesOnSheet: (title: string) => `Values: ${title}`,
	valuesOfTheRow: "Values of the row's quantity",
	valueIn: (title: string) => `value in ${title}`,
	valueOfIn: (id: string, title: string) => `value of ${id} in ${title}`,

	// bringing
	firstSay: (names: readonly string[]) =>
		`Say first what ${names.join(' and ')} ${names.length === 1 ? 'holds' : 'hold'}, or leave ${names.length === 1 ? 'it' : 'them'} out.`,
	firstSayOrder: (names: readonly string[]) =>
		`Say first of the dates of ${names.join(' and ')} whether the day or the month comes first.`,
	firstSayOfAll: (labels: readonly string[]) =>
		`Say first which ${labels.join(' and which ')} all rows are of.`,
	allRowsAreOf: (label: string) => `All rows are of one ${label}`,
	allRowsAreOfOne: 'All rows are of one',
	rowsNameIt: 'no: rows name it',
	nothingOfAll: 'nothing besides',
	firstChooseQuantity: 'Choose first which quantity the values are of.',

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

	// summary, ImportPreview, ChangeTable
	changed: (count: number) => `${count} changed`,
	fresh: (count: number) => `${count} new`,
	same: (count: number) => `${count} the same`,
	ofTheseDoubted: (count: number) => `${count} of these implausible`,
	resultsPassedOver: (count: number) =>
		`${count} ${count === 1 ? 'result' : 'results'} passed over`,
	refused: (count: number) => `${count} refused`,
	columnsLeftOut: (names: readonly string[]) =>
		`Left out: ${names.length === 1 ? 'the column' : 'the columns'} ${names.join(', ')}.`,
	rowsLeftOut: 'What cannot be taken',
	place: (line: number, column: string | null) =>
		column === null ? `Line ${line}.` : `Line ${line}, ${column}.`,
	andMore: (count: number) => `and ${count} more`,
	doubted: (count: number) => `${count} implausible ${count === 1 ? 'value' : 'values'}`,
	doubtedStay:
		'These are not entered unless you tick them. Look at the unit of the column and at the digits.',
	tickAll: (count: number) => `Tick all ${count}`,
	untickAll: 'Tick none',
	enterAllTheSame: 'Enter',
	enterDoubted: (label: string, at: readonly string[]) =>
		`Enter ${[label, ...at].join(', ')} all the same`,
	whyDoubted: 'Why it is doubted',
	valuesThatWouldChange: 'Values that would change',
	notInTheFile: (count: number, label: string) =>
		`${label}: ${count} of the workbook ${count === 1 ? 'is' : 'are'} not in the file, and ${count === 1 ? 'stays' : 'stay'} unless you tick ${count === 1 ? 'it' : 'them'}`,
	removeMember: (id: string) => `remove ${id}, with all that is entered for it`,
	lineHead: 'Line',
	quantity: 'Quantity',
	forWord: 'For',
	inWord: 'In',
	stands: 'Stands',
	comesIn: 'Comes in',
	unit: 'Unit',
	keptEnteredHere: 'kept, entered here',
	none: 'none',

	// UnknownMembers
	unknownNames: (count: number, label: string) =>
		`${count} ${count === 1 ? 'name' : 'names'} that no ${label} has`,
	whatNewOnesLack:
		'One that is added empty has only what this file gives it; what computes with the rest waits for it.',
	addAll: (count: number) => `Add all ${count}, empty`,
	leaveAllOut: 'Leave all out',
	inRows: (line: number, rows: number) =>
		rows === 1 ? `line ${line}` : `line ${line} and ${rows - 1} more`,
	whatIs: (text: string) => `What ${text} is`,
	addEmpty: 'add, empty',
	asACopy: 'Add, as a copy',
	addLike: (id: string) => `add, like ${id}`,
	aNewName: 'A new name',
	newNameOf: (id: string) => `new name of ${id}`,

	// KeptTables, kept-words
	keptMatches: 'Kept matches',
	whatKeptMatchesAre:
		'What the columns of a table mean, which of them name pairs, and how a log is summed, kept in this workbook: a file with the same headings is matched by one click.',
	matchesHold: (rows: readonly string[], labels: readonly string[], more: number) =>
		[
			...(rows.length > 0 ? [`by ${rows.join(' and ')}`] : []),
			...(labels.length > 0 ? [labels.join(', ') + (more > 0 ? ` and ${more} more` : '')] : [])
		].join(': ') || 'the quantity stands in each row',
	fits: ({ fresh, gone }: { fresh: readonly string[]; gone: readonly string[] }) =>
		[
			...(fresh.length + gone.length === 0 ? ['all headings are the same'] : []),
			...(fresh.length > 0 ? [`new in this file: ${some(fresh)}`] : []),
			...(gone.length > 0 ? [`not in this file: ${some(gone)}`] : [])
		].join('; '),
	matchAs: (title: string) => `Match as ${title}`,
	rename: 'Rename',
	remove: 'Remove',
	renameMatches: (title: string) => `Rename ${title}`,
	removeMatches: (title: string) => `Remove ${title}`,
	nameOfMatches: 'Name',
	keepName: 'Rename',

	// KeepMatches
	keepMatchesAs: 'Keep these matches for the next file, as',
	keepMatches: 'Keep matches',
	keepInPlaceOf: (title: string) => `Keep in place of ${title}`,
	matchesAreKept: (title: string) => `Kept in the workbook as ${title}.`,

	// ReusedMatches
	matchedAs: (title: string, whole: boolean) =>
		`Matched as ${title}${whole ? ': all headings are the same.' : '.'}`,
	headingsNew: (names: readonly string[]) =>
		`New in this file, taken as the list below says: ${quotedAll(names)}.`,
	headingsGone: (names: readonly string[]) =>
		`Not in this file, so nothing comes in from there: ${quotedAll(names)}.`,
	meaningsLost: (names: readonly string[]) =>
		`The workbook has no longer what ${names.length === 1 ? 'this column' : 'these columns'} held, so say it anew: ${quotedAll(names)}.`,
	writtenOtherwise: (names: readonly string[]) =>
		`Written with another decimal sign or order of dates than was kept, and read as this file writes it: ${quotedAll(names)}.`,

	// ImportTable
	valuesEntered: (count: number, name: string) =>
		`${count} ${count === 1 ? 'value' : 'values'} from ${name} entered; undo takes them back together.`,
	importATable: 'Import a table',
	whatToImport:
		'CSV or a spreadsheet file (.xlsx), with a first row that names the columns: one row for each item, line or month, one column for each quantity; or what goes with what, such as products with lines, as pairs or as marks; or a log, one row an event, that is summed. Nothing changes before you have seen what would.',
	readingTheFile: 'Reading the file',
	lookingOver: 'Looking over the rows',
	sheetToBringIn: 'Sheet to bring in',
	tableToImport: 'Table to import',
	quantityOfEveryRow: 'Quantity of every row',
	chooseOne: 'choose one',
	valuesGoInto: 'Values go into',
	enterValues: (count: number) => `Enter ${count} ${count === 1 ? 'value' : 'values'}`,
	cancel: 'Cancel'
};

export const texts = inLanguage({ en });
