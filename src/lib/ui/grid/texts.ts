/** What the grid says. */
import { inLanguage } from '../language';

const en = {
	// CellField
	noChoiceBeginsWith: (letters: string) => `No choice begins with "${letters}".`,
	severalBeginWith: (letters: string, count: number) =>
		`${count} choices begin with "${letters}". Type on, or choose with the arrow keys.`,
	notKept: (message: string) => `Not kept: ${message}`,
	notEntered: 'not entered',
	forMany: (count: number) => `Enter keeps it in all ${count} values.`,
	firstBecomes: (becomes: string) => `first ${becomes}`,

	// GridControl
	isFrozen: (title: string) =>
		`${title} is a frozen copy, which no edit changes. Enter asks what it holds.`,

	// Grid
	quantitiesAndScenarios: (title: string) => `${title}: quantities and scenarios`,

	// GridHead
	arrowKeysMoveEnterAsks: 'Arrow keys move, Enter asks why',
	arrowKeysMoveTypeChange: 'Arrow keys move, type to change, Enter keeps',
	/** Where the workbook decides something by itself. */
	keysToWhyNotBetter: '; Ctrl+Enter: why not better',
	quantity: 'Quantity',
	/** Where not all scenarios with a column have room. */
	columnsOf: (shown: number, before: number, after: number) =>
		`Scenarios ${before + 1}${shown > 1 ? ` to ${before + shown}` : ''} of ${before + shown + after}`,
	/** Beside the values of a scenario that is compared with a frozen copy; plus is more in the scenario. */
	against: (copy: string) => `+ is more than in ${copy}`,
	/** Beside the values of a frozen copy. */
	handAgainstIt: (scenario: string) => `+ is more in ${scenario}`,
	earlierScenarios: 'Earlier scenarios',
	laterScenarios: 'Later scenarios',

	// MessageLine
	error: 'Error',
	caution: 'Caution',
	check: 'Check',
	formula: 'Formula',
	values: (count: number) => `(${count} values)`,
	or: '\u00a0or\u00a0',

	// RowLine
	read: 'Read',
	editQuantity: 'Edit quantity',

	// SheetLine
	ownOf: (own: number, of: number) => `${own} of ${of} yours`,
	addQuantity: 'Add quantity',

	// ValueCell
	same: 'same',
	errorOf: (cause: string) => `error of ${cause}`,
	whyThisNumber: 'Why this number',
	why: 'why'
};

export const texts = inLanguage({ en });
