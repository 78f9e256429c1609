/** What each field of a study is: a part of `schema-words.ts`. */
export const STUDY_WORDS: Readonly<Record<string, string>> = {
	studies: 'Questions asked of the workbook: settings, and the headline of what was found last.',
	'studies.name': 'Its name in files and on the command line.',
	'studies.title': 'What it is called on screen.',
	'studies.plans':
		'Whether programmes are planned anew for whatever the study puts in; left out they are, but not in draws of risk.',
	'studies.quantity': 'The result that it asks about.',
	'studies.members': 'Of which members the result is, axis by axis.',
	'studies.scenario': 'The scenario in which it asks.',
	'studies.ran': 'The last run.',
	'ran.stood_on': 'A mark of the inputs, formulas and settings that it stood on.',
	'ran.headline': 'What it found: a few figures.',
	'headline.label': 'What the figure is.',
	'headline.value': 'The figure; null where the result had no answer.',
	'headline.unit': 'Its unit.',

	'studies(bridge).from': 'The scenario that the difference begins with.',
	'studies(bridge).to': 'The scenario that it ends with.',
	'studies(bridge).groups': 'Changes that go as one step; all others go by quantity.',
	'groups.label': 'What the step is called.',
	'groups.changes': 'The inputs that change in it.',
	'groups.changes.quantity': 'The input.',
	'changes.members': 'Which of its members, axis by axis: null for every one; all when left out.',
	'studies(bridge).samples':
		'How many orders are drawn where there are too many groups to take them all.',
	'studies.seed': 'Where the random numbers begin: the same seed draws the same.',

	'studies(sensitivity).inputs': 'Inputs to swing, each over its own range.',
	'studies(sensitivity).all': 'Every number that the result stands on is swung instead.',
	'all.percent': 'By how many per cent, either way.',
	'studies(sensitivity).cases': 'Several inputs moved at once: a downside, an upside.',
	'cases.label': 'What the case is called.',
	'cases.moves': 'The inputs that it moves.',
	'moves.value': 'The value, the factor or the amount, as the mode says.',
	'inputs.low': 'One end: a value, a factor or an amount, as the mode says.',
	'inputs.high': 'The other end.',

	'studies(map).across': 'The input that runs from left to right.',
	'studies(map).down': 'The input that runs from top to bottom.',
	'studies(break_even).input': 'The input whose value is sought.',
	'studies(break_even).target': 'What the result shall come to, in its own unit.',

	'studies(risk).compare': 'Another scenario, on the same draws.',
	'studies(risk).inputs': 'The inputs that are not known for sure.',
	'studies(risk).inputs.label': 'What correlations call it.',
	'studies(risk).inputs.note': 'Where the spread comes from; a guess says so.',
	'inputs.distribution': 'How the input is spread.',
	'distribution.min': 'The least value.',
	'distribution.likely': 'The likeliest value.',
	'distribution.max': 'The greatest value.',
	'distribution.mean': 'The mean.',
	'distribution.sd': 'The standard deviation.',
	'distribution.median': 'The value that half of all lie below.',
	'distribution.sd_log': 'The standard deviation of the natural logarithm.',
	'studies(risk).inputs.distribution(discrete).values': 'The values, and how often each comes.',
	'studies(risk).inputs.distribution(data).values':
		'Measured values, each as likely as the others.',
	'distribution.values.value': 'One of the values.',
	'distribution.values.weight': 'How often it comes, beside the others.',
	'studies(risk).correlations': 'Inputs that go together.',
	'correlations.between': 'The two inputs, by their labels.',
	'correlations.rank': 'Their rank correlation, -1 to 1.',
	'studies(risk).draws': 'How many draws.',
	'studies(risk).target': 'What the result shall reach: the share of draws that do is told.',
	'target.at_least': 'The least that it may be.',
	'target.at_most': 'The most that it may be.',

	'studies(optimise).direction': 'Whether the highest or the lowest result is sought.',
	'studies(optimise).options': 'What can be chosen; every combination is tried.',
	'options.label': 'What is decided.',
	'options.alternatives': 'What can be chosen there, the one that stands among them.',
	'alternatives.label': 'What the alternative is called.',
	'alternatives.changes': 'What it enters.',
	'studies(optimise).limits': 'Results that a combination must not pass.',
	'limits.quantity': 'The result that is limited.',
	'limits.members': 'Of which members, axis by axis.',
	'limits.label': 'What the limit is called.',
	'limits.bound': 'What the result must keep to.',
	'bound.at_least': 'The least that it may be.',
	'bound.at_most': 'The most that it may be.',

	...ofInput('inputs'),
	...ofInput('moves'),
	...ofInput('input'),
	...ofInput('across'),
	...ofInput('down')
};

/** What every input of a study has, and those with a range. */
function ofInput(field: string): Record<string, string> {
	return {
		[`${field}.quantity`]: 'The input.',
		[`${field}.members`]:
			'Which of its members, axis by axis: null for every one; all when left out.',
		[`${field}.label`]: 'What it is called in the answer.',
		[`${field}.mode`]: 'Put in place of the entered value, multiplied with it, or added to it.',
		[`${field}.from`]: 'Where the range begins: a value, a factor or an amount, as the mode says.',
		[`${field}.to`]: 'Where the range ends.',
		[`${field}.steps`]: 'How many values, both ends included.'
	};
}
