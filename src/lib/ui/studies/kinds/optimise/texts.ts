/** What the study of the best combination says, its settings and its answer. */
import { inLanguage } from '../../../language';

const en = {
	// Settings
	aScenario: 'a scenario …',
	option: 'Option',
	asItIs: 'as it is',
	bestIs: 'Best is',
	theHighest: 'the highest',
	theLowest: 'the lowest',
	combinations: (count: string) => `${count} combinations`,
	options: 'Options',
	optionsLine:
		'An alternative is a list of changes. Make it from a scenario that holds them; the scenario may then go.',
	addAnAlternativeFrom: 'Add an alternative from',
	takeOutOne: (label: string) => `Take out ${label}`,
	alternative: 'Alternative',
	takeOutOf: (quantity: string, step: string) => `Take ${quantity} out of ${step}`,
	takeOut: 'Take out',
	addAnOption: 'Add an option',
	limits: 'Limits',
	limitOf: 'Limit of',
	bound: 'Bound',
	atLeast: 'at least',
	atMost: 'at most',
	valueHead: 'Value',
	takeOutThisLimit: 'Take out this limit',
	addALimit: 'Add a limit',

	// View
	combinationsTheBestFirst: 'Combinations, the best first',
	rank: 'Rank',
	differenceFromTheBest: 'difference from the best',
	same: 'same',
	moreKeepLimits: (count: number) => `${count} more keep the limits; the table holds them.`,
	nextBest: (next: string) => `The next best is ${next}.`,
	makeScenarioOfBest: 'Make a scenario of the best',
	loosenALimit: (beyondLimits: number, withoutAnswer: number) =>
		`Loosen a limit, or give the options other alternatives. ${beyondLimits} combinations are beyond the limits; ${withoutAnswer} have no answer.`
};

export const texts = inLanguage({ en });
