/** What the choice of a starting view says. */
import { inLanguage } from '../language';

const en = {
	// StartChooser
	theGridAlone: 'The grid alone',
	showFirstFor: 'Show first, for'
};

export const texts = inLanguage({ en });
