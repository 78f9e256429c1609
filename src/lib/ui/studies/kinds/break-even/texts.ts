/** What the study of a break-even says, its settings and its answer. */
import { inLanguage } from '../../../language';

const en = {
	// Settings
	targetOfTheResult: 'Target of the result',
	input: 'Input',

	// View
	target: (target: string) => `target ${target}`,
	asItStands: 'as it stands',
	makeAScenarioWith: (input: string, value: string) => `Make a scenario with ${input} ${value}`
};

export const texts = inLanguage({ en });
