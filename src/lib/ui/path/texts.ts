/** What a path in time says in a cell and on a folded row. */
import { inLanguage } from '../language';

const en = {
	from: (month: string, step: string) => `from ${month} ${step}`,
	/** Beside a level that is entered for a month. */
	set: 'set',
	steps: (count: number) => `${count} steps`,
	and: (one: string, other: string) => `${one} and ${other}`,
	empties: 'Empty takes the step away: the month is as the one before.',
	untilNext: (month: string) =>
		`From ${month} until the next step. Write a value, or +3 % or -2.5 % for a change.`
};

export const texts = inLanguage({ en });
