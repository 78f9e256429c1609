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
	changedOne: 'changed',
	changedMany: (changed: number) => `${changed} changed`,

	// WhyPanel
	whyThisNumber: 'Why this number',
	escCloses: 'Esc closes',
	close: 'Close',
	goTo: (label: string) => `Go to ${label}`
};

export const texts = inLanguage({ en });
