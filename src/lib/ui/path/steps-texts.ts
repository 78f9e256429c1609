/** What the steps of a path say beside its reasons. */
import { inLanguage } from '../language';

const en = {
	title: 'Steps in time',
	none: (start: string) => (start ? `${start} in every month` : 'No step is entered.'),
	inScenario: (words: string, scenario: string) => `${scenario}: ${words}`,
	ofReference: (words: string, scenario: string) => `${scenario}: ${words}`,
	month: 'From',
	step: 'Step',
	add: 'Add step',
	keep: 'Keep',
	remove: 'Take away',
	removeStep: (month: string) => `Take away the step from ${month}`,
	monthOf: (month: string) => `Month of the step from ${month}`,
	stepOf: (month: string) => `Step from ${month}`,
	newMonth: 'Month of a new step',
	newStep: 'New step, a value or a change such as +3 %',
	example: 'value, or +3 %',
	nothingWritten: 'Write a value, or a change such as +3 %.',
	taken: (month: string) => `A step begins in ${month} already. Change that one.`,
	stair: (words: string) => `Stair of the months: ${words}`,
	goTo: (month: string, value: string) => `${month}: ${value}`,
	readOnly: 'This workbook can only be read here.'
};

export const texts = inLanguage({ en });
