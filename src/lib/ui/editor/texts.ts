/** What the editor of quantities says. */
import { inLanguage } from '../language';

const en = {
	// FormulaField
	namesAndFunctions: 'Names and functions',
	reference: 'Functions and units, in a new tab',
	write: (suggestion: string) => `Write ${suggestion}`,

	// QuantityEditor
	faultyFormula:
		'A formula has a fault, said where it stands. Mend it, or go ahead and keep it: then the quantity has no value until it is mended.',
	notSavedYet: 'Your changes are not kept yet. Choose "Save" or "Cancel".',
	aNewQuantity: 'A new quantity',
	goAhead: 'Go ahead',
	save: 'Save',
	addQuantity: 'Add quantity',
	close: 'Close',
	cancel: 'Cancel',
	moveUp: 'Move up',
	moveDown: 'Move down',
	remove: 'Remove',

	// QuantityFields
	label: 'Label',
	nameInFormulas: 'Name in formulas',
	sheet: 'Sheet',
	otherNames: 'Other names, with commas between: it is found by these words too',
	otherNamesExample: 'none',
	holds: 'Holds',
	aNumber: 'a number',
	yesOrNo: 'yes or no',
	aChoice: (label: string) => `a choice: ${label}`,
	unit: 'Unit',
	none: 'none',
	readAs: (text: string) => `read as ${text}`,
	oneValueForEach: (per: string) => `One value for each ${per}`,
	oneValueInAll: 'One value in all',
	alsoPer: (named: string) => `Also per ${named}.`,
	onlyPairsExist: 'Only the pairs that exist in',
	note: 'Note',
	source: 'Source',
	date: 'Date',
	notConfidential:
		'not confidential: viewers without confidential values see it, not what it comes from',
	rangeAndDigits: (unit: string) => `Permitted range${unit ? `, ${unit}` : ''}, and digits`,
	atLeast: 'At least',
	above: 'Above',
	atMost: 'At most',
	below: 'Below',
	digits: 'Digits',
	usualFrom: 'Usually from',
	usualTo: 'to (outside is taken, with a caution)',
	takeSuggested: (range: string) => `Take what stands, ÷ 3 to × 3: ${range}`,

	// QuantityFormula
	itsValuesAre: 'Its values are',
	entered: 'entered',
	computedByOneFormula: 'computed by one formula',
	computedFormulaEachMember: 'computed by a formula for each member',
	sameInAllScenarios: 'same in all scenarios: no scenario changes it',
	formula: 'Formula',
	by: 'By',
	allOthers: 'all others',
	takeOut: 'Take out',
	formulaForAllOthers: (isForOthers: boolean, member: string) =>
		`Formula for ${isForOthers ? 'all others' : member}`,
	addAFormulaFor: 'Add a formula for',
	chooseAMember: 'choose a member',
	inputTakesEntered: '“input” as a formula takes the entered value.',
	pathInTime: 'Path in time',
	setBy: 'A level from a month on is entered in',
	movedBy: 'A change by a share from a month on is entered in',
	noPath: 'no input',
	aboutPaths:
		'With both, steps are typed in its own cells: a value sets a level from a month on, +3 % moves it. Its formula reads both inputs and repeats the month before.',
	onlyWhere: 'Only where',
	checkAndCaution: 'Check and caution',
	isCheck: 'It is a check that must be yes (or zero), and says if it does not hold',
	isCaution: 'It gives a caution where it says yes'
};

export const texts = inLanguage({ en });
