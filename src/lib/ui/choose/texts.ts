/** What a list that is searched says. */
import { inLanguage } from '../language';

const en = {
	choices: 'Choices',
	also: (name: string) => `also: ${name}`,
	nothingFound: 'Nothing in this list has these words.',
	found: (count: number) => (count === 1 ? '1 found' : `${count} found`)
};

export const texts = inLanguage({ en });
