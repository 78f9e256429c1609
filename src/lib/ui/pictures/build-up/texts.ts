/** What the picture of a cost build-up says. */
import { inLanguage } from '../../language';

const en = {
	// AmountCell
	same: 'same',

	// BuildUp
	parts: 'Parts'
};

export const texts = inLanguage({ en });
