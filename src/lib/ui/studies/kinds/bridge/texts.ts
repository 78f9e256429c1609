/** What the study of a bridge says, its settings and its answer. */
import { inLanguage } from '../../../language';

const en = {
	// Settings
	from: 'From',
	to: 'To',
	scenarios: 'Scenarios',
	frozenCopies: 'Frozen copies',
	ordersDrawnAboveTwelveSteps: 'Orders drawn above twelve steps',
	stepsOfYourOwn: 'Steps of your own',
	stepsLine:
		'Every quantity that differs is a step of its own, unless you put it into a group here.',
	step: 'Step',
	takeOutOf: (quantity: string, step: string) => `Take ${quantity} out of ${step}`,
	takeOutWord: 'take out',
	putInto: (label: string) => `Put into ${label}`,
	aChange: 'a change …',
	addAStep: 'Add a step',

	// words
	noInput: 'no input',
	notOfInputs: (label: string, copy: string, name: string, size: string, rises: boolean) =>
		size
			? `${label}: today's model, with all inputs that ${copy} holds, makes ${size} of a difference to the ${name} that it holds, and this step ${rises ? 'raises' : 'lowers'} it by as much.`
			: `${label}: today's model, with all inputs that ${copy} holds, makes the ${name} that it holds.`,

	// View
	change: 'Change',
	whatChanges: 'what changes',
	nothingDiffersIn: (idle: string) => `Nothing differs in: ${idle}.`
};

export const texts = inLanguage({ en });
