/** What the panel says that explains a number. */
import { inLanguage } from '../language';

const en = {
	// FeedGraph
	whatFeedsIt: 'What feeds it',
	nothingFeedsEntered: 'nothing feeds it: it is entered',
	whatItFeeds: 'What it feeds',
	itFeedsNothingFurther: 'it feeds nothing further',
	moreAreNotListed: (more: number) => `${more} more are not listed`,
	moreOnly: (more: number) => `${more} more`,
	fewer: 'fewer',
	several: (count: number) => `${count} values`,

	// FormulaLines
	inNames: 'in names',
	inNamesUnit: (unit: string) => `in names${unit ? `, ${unit}` : ''}`,
	here: 'here',
	same: 'same',
	isAnEnteredValue: 'is an entered value',
	inReference: (value: string, reference: string) => `${value} in ${reference}`,

	// InputNotes
	aboutIt: 'About it',
	otherNames: (names: string) => `Also called ${names}.`,
	sourceOf: (name: string) => `Source: ${name}`,
	inputsBehindIt: (isCut: boolean, shown: number, all: number) =>
		`Inputs behind it${isCut ? `, ${shown} of ${all}` : ''}`,
	allInputs: (all: number) => `All ${all} inputs`,
	changedOne: 'changed',
	changedMany: (changed: number) => `${changed} changed`,

	// InputList
	findInput: 'Find among the inputs, by name or member',
	noInput: (typed: string) => `No input behind it is called "${typed}".`,
	moreValues: (more: number) => `${more} more: type the name of one to find it`,

	// WhyPanel
	whyThisNumber: 'Why this number',
	wayHere: 'The way here',
	escCloses: 'Esc closes, ? goes into it',
	close: 'Close',
	goTo: (label: string) => `Go to ${label}`
};

export const texts = inLanguage({ en });
