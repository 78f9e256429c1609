/** What closing a month says. */
import { inLanguage } from '../language';

const en = {
	// +page
	noPicture: 'No months to close',
	noneInWorkbook:
		'This workbook closes no months. A picture of the kind "waterfall" in its file names a set of dated months, what says that one is closed, and the two results with what lies between them.',

	title: 'Close a month',
	month: 'Month to close',
	computing: 'The months are being computed: which of them are closed is not known yet.',
	closedOne: (label: string) => `${label}, closed`,
	isClosed: (label: string) => `${label} is closed.`,
	whatItIs:
		'Drop the files of the month together, or choose them. Each is matched by its headings as it was kept; nothing is entered before you say so.',
	filesOfTheMonth: 'Files of the month',
	dropHere: 'Drop files here',
	orChoose: 'or choose them:',

	reading: 'is being read',
	matchedAs: (title: string) => `as ${title}`,
	notKept: 'headings that are not kept yet',
	willEnter: (count: number) => (count === 1 ? '1 value to enter' : `${count} values to enter`),
	nothingNew: 'nothing that does not stand already',
	enteredCount: (count: number) => (count === 1 ? '1 value entered' : `${count} values entered`),
	doubted: (count: number) => `${count} implausible: look closer`,
	refused: (count: number) => (count === 1 ? '1 row left out' : `${count} rows left out`),
	otherMonths: (labels: readonly string[]) =>
		`holds ${labels.join(' and ')} as well: look closer before you enter it`,
	notOfMonth: (labels: readonly string[], month: string) =>
		`holds ${labels.join(' and ')}, and nothing of ${month}: look closer before you enter it`,
	lookCloser: (name: string) => `Look closer at ${name}`,
	putAside: 'Put aside',
	putAsideOne: (name: string) => `Put ${name} aside`,
	enterAll: (count: number) => (count === 1 ? 'Enter 1 file' : `Enter ${count} files`),
	entersAll: 'All of them are one step, which Undo takes back.',
	filesEntered: (count: number) => (count === 1 ? '1 file entered.' : `${count} files entered.`),
	givenTwice: (value: string, first: string, second: string) =>
		`${first} and ${second} say different things of "${value}". Nothing is entered. Put one of the two aside, or look closer at what they hold.`,
	notRead: (name: string, message: string) => `"${name}" is not taken: ${message}`,

	whatIsIn: 'What of it is entered',
	kind: 'What came',
	entered: 'Entered',
	missing: 'Missing',
	comesBy: 'Comes by',
	ofCells: (entered: number, cells: number) => `${entered} of ${cells}`,
	allOfIt: '',
	noneOfIt: 'nothing yet',
	andMore: (names: readonly string[], more: number) =>
		names.join(', ') + (more > 0 ? ` and ${more} more` : ''),
	byHand: 'in the sheet',
	enterIn: (label: string) => `Enter ${label} in the sheet`,

	close: (label: string) => `Close ${label}`,
	nothingEntered: (label: string) =>
		`Nothing of ${label} is entered yet. Bring its files in, or enter it in the sheet.`,
	closeWithout: (count: number) =>
		`${count === 1 ? 'One kind of figure has' : `${count} kinds of figures have`} nothing entered: where the month needs it, the standard stands in its place, and a caution says so.`,
	openAgain: (label: string) => `Open ${label} again`,
	openQuestion: (label: string) => `Open ${label} again?`,
	whatOpening: (label: string) =>
		`Its result and its variances go from every sheet, picture and year to date until it is closed again. What was entered of ${label} stays.`,
	closedSaid: (label: string) => `${label} is closed.`,
	openedSaid: (label: string) => `${label} is open again.`
};

export const texts = inLanguage({ en });
