/** What the list of ways to free hours says. */
import { inLanguage } from '../../language';

const en = {
	// ShortageOptions
	beingComputed: 'Being computed',
	whenOneAppears: 'A scenario appears here once it frees hours.',
	makeAScenario: 'Make a scenario',
	whatToDo: 'What to do',
	itsScenario: 'Its scenario',
	showThisScenario: 'Show this scenario',
	whatItChanges: 'What it changes',
	freeingNoHours: (others: string) => `Freeing no hours: ${others}.`
};

export const texts = inLanguage({ en });
