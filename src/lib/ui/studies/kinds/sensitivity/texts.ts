/** What the study of a sensitivity says, its settings and its answer. */
import { inLanguage } from '../../../language';

const en = {
	// Settings
	inputs: 'Inputs',
	eachOverOwnRange: 'each over its own range',
	everyNumberOnePercentage: 'every number, by one percentage',
	eitherWay: 'Either way',
	from: 'From',
	to: 'To',
	takeOutOne: (label: string) => `Take out ${label}`,
	takeOut: 'Take out',
	addAnInput: 'Add an input',
	cases: 'Cases',
	casesLine: 'Several inputs moved at once, with a name: a downside, an upside.',
	case: 'Case',
	addAnInputTo: (label: string) => `Add an input to ${label}`,
	takeOutCase: (label: string) => `Take out ${label}`,
	movedTo: 'Moved to',
	takeOutOf: (quantity: string, step: string) => `Take ${quantity} out of ${step}`,
	downside: 'Downside',
	addACase: 'Add a case',

	// View
	input: 'Input',
	rangeLowerToHigher: 'range, lower to higher',
	reach: 'Reach',
	noAnswerAsItStands: (name: string) =>
		`${name} has no answer as it stands, so nothing can be measured against it.`,
	moreMoveItLess: (count: number) => `${count} more inputs move it less; all stand in the table.`,
	asItStandsHead: 'As it stands',
	onePerCentMoreOf: 'One per cent more of',
	movesItBy: 'moves it by',
	withoutAnyEffect: (idle: string) => `Without any effect: ${idle}.`
};

export const texts = inLanguage({ en });
