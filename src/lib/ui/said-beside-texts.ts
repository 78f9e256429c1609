/** What is said beside a figure that misleads without it. */
import { inLanguage } from './language';

/** As many members are named. */
const MOST = 3;

const en = {
	of: (label: string, whom: readonly string[], isAll: boolean) => {
		if (whom.length === 0 || (isAll && whom.length > MOST)) return label;
		const more = whom.length - MOST;
		return `${label}: ${whom.slice(0, MOST).join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
	},
	inScenario: (scenario: string, said: string, message: string) =>
		`${scenario}: ${said}. ${message}`,
	sentence: (said: string) => `${said}.`,
	enter: 'Enter it:',
	enterIn: (input: string, scenario: string) => `${input}, in ${scenario}`
};

export const texts = inLanguage({ en });
