/** What is said where a scenario is made the base. */
import { inLanguage } from '../language';

const en = {
	decide: (title: string) => `Make ${title} the base`,
	takesOver: (title: string) =>
		`The base takes over all values of ${title}. An investment in it then counts in the base too: remove it there if it is spent. Undo brings everything back.`,
	makeItTheBase: 'Make it the base',
	keepAsCopy: (base: string) => `Keep ${base} as it stands as a frozen copy`,
	before: (base: string, decided: string) => `${base} before ${decided}`,
	keepCase: (decided: string, page: string) =>
		page
			? `Freeze ${decided} as it was decided, and follow it under ${page}`
			: `Keep ${decided} as it was decided as a frozen copy too`,
	titleOfCase: 'Title of the decided case',
	asDecided: (decided: string) => `${decided}, as decided`,
	caseNote: (decided: string) => `What ${decided} promised on the day that it was made the base.`,
	titleOfCopy: 'Title of the copy',
	date: 'Date',
	noOthers: 'No other scenario follows the base.',
	others: 'What the other scenarios then rest on',
	follows: (count: number, shown: string, isMeasured: boolean, decided: string) => {
		const values =
			count === 0
				? 'Takes nothing from the base that changes'
				: `Follows the base: ${shown} ${count === 1 ? 'value becomes' : 'values become'} as in ${decided}`;
		return `${values}${isMeasured ? '; compared with the base, which is then another' : ''}.`;
	},
	held: (count: number, shown: string, copy: string) => {
		const values =
			count === 0
				? ''
				: `: ${shown} ${count === 1 ? 'value of the base as it stands is written in as a change' : 'values of the base as it stands are written in as changes'} of its own`;
		return `Keeps its figures${values}${copy ? `; compared with ${copy}` : ''}.`;
	},
	standsOn: (held: string, isMeasured: boolean) =>
		`Stands on ${held}, which keeps its figures${isMeasured ? '; compared with the base, which is then another' : ''}.`,
	keepFigures: 'Keep its figures as they are'
};

export const texts = inLanguage({ en });
