/** What the picture of the loads says. */
import { inLanguage } from '../../language';

const en = {
	// +page
	noPicture: 'No picture of the capacity',
	noneInWorkbook:
		'This workbook names no loads by month. A picture in its file says which quantities hold the load of each resource in each month, and what each scenario frees and earns.',

	// Capacity
	loadsCannotBeShown: 'Loads cannot be shown',
	line: (note: string) =>
		`Load on the hours on offer, in %${note ? `, ${note}` : ''}; the dotted line is 100`,
	loadsIn: 'Loads in',
	scenarioWhoseLoadsShown: 'Scenario whose loads are shown',
	noLoad: 'No load',

	// CapacityKey
	limitsTheMonth: 'limits the month',
	aboveHoursOffer: 'above the hours on offer',
	whereTheBaseStands: 'where the base stands',

	// CapacityLoads
	resource: 'Resource',
	year: 'Year',
	short: (shortUnit: string) => `${shortUnit} short`,
	goToItsRows: 'Go to its rows in the workbook',
	askWhy: 'Ask why',
	loadMarks: (isAbove: boolean, isFullest: boolean) =>
		`${isAbove ? ' above the hours on offer' : ''}${isFullest ? ', fullest of the month' : ''}`,
	none: 'none'
};

export const texts = inLanguage({ en });
