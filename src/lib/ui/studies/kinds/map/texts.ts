/** What the study of a two-way table says, its settings and its answer. */
import { inLanguage } from '../../../language';

const en = {
	// Settings
	across: 'Across',
	down: 'Down',
	values: 'Values',

	// View
	mapOf: (title: string) => `Map of ${title}`,
	asItStandsBefore: 'as it stands:'
};

export const texts = inLanguage({ en });
