/** What the study of a risk says, its settings and its answer. */
import { inLanguage } from '../../../language';

const en = {
	// Correlations
	movingTogether: 'Moving together',
	correlationsLine:
		'Rank correlation from −1 to +1: resin and energy prices tend to rise together, say.',
	one: 'One',
	other: 'Other',
	rankCorrelation: 'Rank correlation',
	takeOutCorrelation: (one: string, other: string) =>
		`Take out the correlation of ${one} and ${other}`,
	takeOut: 'Take out',
	addACorrelation: 'Add a correlation',

	// DistributionFields
	mustBeNumbers: 'Write numbers, parted by spaces or line ends.',
	shape: 'Shape',
	valueNumber: (count: number) => `Value ${count}`,
	weightNumber: (count: number) => `Weight ${count}`,
	addAValue: 'Add a value',
	takeOutLastValue: 'Take out the last value',
	valuesLabel: 'Values, parted by spaces or line ends',

	// RiskDrawing
	chanceOfAtMost: 'chance of at most',
	chanceOfAtLeast: 'chance of at least',
	meetTheTarget: (share: string) => `${share} meet the target`,
	noDrawHasAValue: 'No draw has a value, so there is nothing to count.',

	// RiskTables
	whatDrivesTheSpread: 'What drives the spread',
	input: 'Input',
	shareOfTheVariance: 'Share of the variance',
	varianceTogether: (together: string, draws: string) =>
		`${together} of the variance comes from inputs acting together, or from what ${draws} draws cannot tell.`,
	howTheFiguresSettled: 'How the figures settled',
	afterDraws: 'After draws',
	lieBelow: '5 % lie below',
	middle: 'Middle',
	lieAbove: '5 % lie above',

	// Settings
	comparedWith: 'Compared with',
	noOtherScenario: 'no other scenario',
	target: 'Target',
	atLeast: 'at least',
	atMost: 'at most',
	valueOfTheTarget: 'Value of the target',
	draws: 'Draws',
	seed: 'Seed',
	uncertainInputs: 'Uncertain inputs',
	name: 'Name',
	whereSpreadComes: 'Where the spread comes from',
	takeOutOne: (label: string) => `Take out ${label}`,
	addAnInput: 'Add an input',

	// replanning-words
	worthOfReplanning: (
		worth: string,
		anew: string,
		kept: string,
		anewBelow: string,
		keptBelow: string
	) =>
		`Being able to plan anew is worth ${worth} on average over the same draws: the mean is ${anew} with the plan that follows and ${kept} with the plan as it stands; 5 % of results lie below ${anewBelow} and ${keptBelow}.`,

	// View
	caution: 'Caution.',
	withoutSource: (guessed: number, inputs: number, guesses: string) =>
		`The spreads of ${guessed} of ${inputs} inputs are guesses without a source: ${guesses}.`,
	comparedOnSameDraws: (
		other: string,
		chance: string,
		middle: string,
		gap: string,
		least: string,
		most: string
	) =>
		`On the same draws ${other} is the higher one in ${chance} of them. It has the middle ${middle}; draw by draw it differs by ${gap} in the middle, from ${least} to ${most} nine times in ten.`
};

export const texts = inLanguage({ en });
