/** What stands in the margins of printed pages. */
import { inLanguage } from '../language';

const en = {
	printedOf: (scenarios: readonly string[]) =>
		scenarios.length > 1
			? `${scenarios[0]}; scenario shown: ${scenarios[1]}`
			: (scenarios[0] ?? ''),
	revision: (number: number) => `revision ${number}`,
	page: 'Page',
	of: 'of'
};

export const texts = inLanguage({ en });
