/** What a starting view says. */
import { inLanguage } from '../language';

const en = {
	// Figures
	in: (scenario: string) => `in ${scenario}`,
	beside: (scenario: string) => `beside ${scenario}`,
	against: (scenario: string) => `against ${scenario}`,
	askWhyOf: (value: string) => `${value}: ask why`,
	same: 'same',
	bySet: (title: string, set: string) => `${title}, by ${set}`,
	askWhy: 'Ask why',

	// StartPicture
	couldNotBeDrawn: (title: string) =>
		`${title} could not be drawn, because a part of the program was not fetched. Check the connection and load the page again.`,

	// StartView
	forWhom: (title: string) => `For ${title}`,
	allSheets: 'All sheets'
};

export const texts = inLanguage({ en });
