/** What the page of scenarios says. */
import { inLanguage } from '../language';

const en = {
	// Compare
	whatWasEntered: (size: number) => `What was entered (${size})`,
	allThatFollows: (size: number) => `All that follows (${size})`,
	firstScenario: 'First scenario',
	comparedWith: 'compared with',
	secondScenario: 'Second scenario',
	noDifference: 'They do not differ in any value.',
	differencesListed: 'Differences listed',
	othersAreSame: 'quantities; all others are the same',
	quantity: 'Quantity',
	unit: 'Unit',
	difference: 'Difference',
	onlyFirstRows: (most: number) => `Only the first ${most} rows are listed; fold some to see more.`,

	// ScenarioFields
	varied: (title: string) => `${title}, varied`,
	newScenario: 'New scenario',
	renameOne: (title: string) => `Rename ${title}`,
	aNewScenario: 'A new scenario',
	save: 'Save',
	addScenario: 'Add scenario',
	title: 'Title',
	note: 'Note',
	builtOn: 'Built on',
	comparedWithLabel: 'Compared with',
	theBase: 'the base',
	frozenCopies: 'Frozen copies',

	// ScenarioList
	scenarios: 'Scenarios',
	scenario: 'Scenario',
	column: 'Column',
	shown: 'Shown',
	actions: 'Actions',
	showAColumnFor: (title: string) => `Show a column for ${title}`,
	showOne: (title: string) => `Show ${title}`,
	isComparedWith: (title: string) => `, compared with ${title}`,
	newFromIt: 'New from it',
	rename: 'Rename',
	up: 'Up',
	down: 'Down',
	makeItTheBase: 'Make it the base',
	deleteWord: 'Delete',
	/** Of the base, and of a scenario that follows it. */
	isSince: (decided: string, date: string, before: string) =>
		`${decided} since ${date}; what stood here before is kept as ${before}.`,
	restsOn: (decided: string, date: string) => `Its base is ${decided} since ${date}.`,
	whatFollows: (title: string) =>
		`${title} goes, and scenarios that stand on it take its changes over. Undo brings it back.`,
	deleteScenario: 'Delete scenario',
	cancel: 'Cancel'
};

export const texts = inLanguage({ en });
