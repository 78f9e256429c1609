/** What the page of lists says. */
import { inLanguage } from '../language';

const en = {
	// +page
	lists: 'Lists',
	shown: 'Shown:',
	setShown: 'Set shown',
	noLists: 'This workbook has no sets: every quantity is one value.',

	// MemberFields
	renameOne: (id: string) => `Rename ${id}`,
	aLike: (kind: string, like: string) => `A ${kind} like ${like}`,
	aNew: (kind: string) => `A new ${kind}`,
	save: 'Save',
	duplicate: 'Duplicate',
	add: 'Add',
	name: 'Name',
	label: 'Label',
	numberIn: (unit: string) => `Number${unit ? `, ${unit}` : ''}`,
	note: 'Note',
	where: 'Where it stands',
	everywhere: 'in every scenario',
	onlyInNew: 'only in a new scenario',
	newScenario: 'Title of the new scenario',
	with: (id: string) => `With ${id}`,
	standsIn: (id: string, title: string) =>
		`${id} stands in the scenario “${title}” alone, which is shown now; what it costs is entered there.`,
	startsLike: (like: string) => `It starts with all values, pairs and formulas of ${like}.`,

	// MemberList
	addOne: (label: string) => `Add ${label}`,
	renameIt: 'Rename',
	up: 'Up',
	down: 'Down',
	remove: 'Remove',
	removeItAnyway: 'Remove it anyway',
	or: 'or',
	cancel: 'cancel',
	noMembersYet: 'No members yet.',
	andMore: (count: number) => `and ${count} more`,

	// PairTable
	pairOf: (first: string, second: string) => `${first} with ${second}`,
	pairsOf: (count: number, sets: string) => `${count} pairs of ${sets}.`
};

export const texts = inLanguage({ en });
