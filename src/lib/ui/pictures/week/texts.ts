/** What the page of the week says. */
import { inLanguage } from '../../language';

const en = {
	// +page
	noWeekToPaint: 'No week to paint',
	workbookNamesNoWeekShift:
		'This workbook names no week of shift patterns. A picture in its file says which quantities hold the hours worked, premiums and prices.',

	// WeekDays
	day: 'Day',
	costPerHour: 'Cost per hour',
	least: 'least',
	most: 'most',

	// WeekFigure
	pattern: 'Pattern',
	nothingToChange: 'These hours are so already.',
	paintedIn: 'Painted in',
	scenarioThatIsPainted: 'Scenario that is painted',
	addOrRemovePatterns: 'Add or remove patterns',
	howToPaint:
		'Drag over hours to paint them. By keyboard: arrows move, with Shift they mark a block, Space paints it, Escape lets it go.',
	readOnly: 'This workbook can only be read here.',
	computedHours: 'The hours of this workbook are computed and cannot be painted.',
	noWeek: 'No week',
	wrongSets: 'its sets are not seven weekdays and 168 hours',

	// WeekKey
	paintWith: 'Paint with',
	night: 'night',
	premiumByHeight: 'premium, by height',
	energyPriceByHeight: 'energy price, by height',

	// WeekPainter
	hoursOfTheWeek: (patternLabel: string) => `Hours of the week, ${patternLabel}`
};

export const texts = inLanguage({ en });
