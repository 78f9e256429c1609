/** What the page of fits says. */
import { inLanguage } from '../language';

const some = (count: number, one: string, more: string) => `${count} ${count === 1 ? one : more}`;

const en = {
	title: 'Entered beside measured',
	lead: 'What last year’s metres, kilograms, meters, hours and logs say of figures that are entered: each fit with its points, its spread, and what stands beside it. Nothing is taken over unless you say so.',
	none: 'This workbook names no fits. They stand in its file, in the list “calibrations”: which line or mean is laid through which points, and whose place its figures could take.',
	fitOf: 'Fit',
	pointsCount: (count: number) => (count === 0 ? 'no points yet' : some(count, 'point', 'points')),
	forms: {
		line: 'A line through the points',
		proportion: 'A proportion: y is as many times x',
		ratio: 'The sum of one over the sum of the other',
		mean: 'The mean of the points',
		deviation: 'The standard deviation of the points',
		shares: 'Shares that add up to 100 %'
	},

	// Fit
	forWhich: (label: string) => `${label} shown`,
	withPoints: (id: string, count: number) => (count === 0 ? id : `${id} (${count})`),
	parameters: {
		intercept: 'Where x is 0',
		slope: 'For each of x',
		ratio: 'Ratio',
		mean: 'Mean',
		deviation: 'Standard deviation',
		share: 'Share'
	},
	figuresOf: (title: string) => `${title}: entered and fitted`,
	figureHead: 'Figure',
	standsHead: 'Entered',
	fittedHead: 'Fitted',
	errorHead: 'Std. error',
	intervalHead: '95 % between',
	differenceHead: 'Difference',
	unitHead: 'Unit',
	useHead: 'Use',
	notEntered: 'none',
	isInUse: 'in use',
	inErrors: (times: string) => `${times} std. errors`,
	use: 'Use this value',
	useFor: (label: string, at: readonly string[]) =>
		`Use this value for ${[label, ...at].join(', ')}`,
	useAll: 'Use these shares',
	used: (label: string) => `${label} is entered as fitted; undo takes it back.`,
	spreadIs: (spread: string, unit: string) => `The points lie about it with ${spread} ${unit}.`,
	explains: (share: string) => `The line explains ${share} of their scatter (R²).`,
	strays: (names: readonly string[]) =>
		`Points of ${names.join(', ')}, which the workbook has no more, are kept and not used.`,
	noPoints: 'There are no points yet. Bring some in below.',

	// Warnings
	few: (points: number) =>
		`Only ${some(points, 'point', 'points')}: the interval is wide, and a slip in one of them moves it far. Eight or more are better (common practice, no source).`,
	outOfReach: (today: string, low: string, high: string, unit: string) =>
		`Today x is ${today} ${unit}, and the points reach from ${low} to ${high}: the fit says nothing of there. Add points nearer to today.`,
	negative: (parameter: string) =>
		`${parameter} comes out below 0, which can hardly be. Look for a slip, or for something else that changed along x.`,
	mayBeNought: (parameter: string) =>
		`${parameter}: the interval holds 0, so these points do not tell it from nothing.`,
	farFromNought: (low: string, unit: string) =>
		`The points begin at ${low} ${unit}, far from 0: the value at 0 is reckoned beyond them, and stands on the line being straight.`,
	explainsLittle: (share: string) =>
		`The line explains ${share} of the scatter: something else moves y more than x does.`,
	oneGroup: 'All points are of one year: how much shares differ from year to year cannot be told.',
	far: (points: number) =>
		`${some(points, 'point lies', 'points lie')} further off than chance would put one in a hundred such fits; marked in the picture and the list. Look whether it is a slip.`,

	// FitPicture
	pictureOf: (title: string) => `${title}: points and fit`,
	summary: (points: number, x: string, y: string) =>
		`${some(points, 'point', 'points')}, ${y}${x ? ` over ${x}` : ''}.`,
	fitLine: 'Fit',
	pointsName: 'Points',
	farName: 'Far off',

	// PointList
	pointsList: 'The points',
	remove: 'Remove',
	removeBatch: (source: string) => `Remove the points of ${source}`,
	removePoint: (place: number) => `Remove point ${place}`,
	group: 'Group',
	farOff: 'far off',
	andMore: (count: number) => `and ${count} more`,

	// AddPoints
	addPoints: 'Bring points in',
	howToPaste: 'Paste rows with a first row of headings, or choose a file (CSV or .xlsx).',
	pasted: 'Rows, pasted',
	readPasted: 'Read these rows',
	file: 'File',
	pastedName: 'pasted rows',
	sourceOfPoints: 'Where they come from',
	isColumn: (label: string) => `${label} is`,
	unitOf: (label: string) => `Unit of ${label}`,
	choose: 'choose',
	noColumn: 'none',
	groupLabel: 'What belongs together (a year)',
	sheet: 'Sheet',
	sourceLine: (name: string, digest: string) => `${name}, SHA-256 ${digest}`,
	left: (rows: number) => `${some(rows, 'row is', 'rows are')} left out:`,
	leftLine: (line: number) => `Line ${line}.`,
	add: (count: number) => `Add ${some(count, 'point', 'points')}`,
	added: (count: number) => `${some(count, 'point', 'points')} added; undo takes them back.`,
	cancel: 'Cancel',
	sayWhere: 'Say where the points come from.'
};

export const texts = inLanguage({ en });
