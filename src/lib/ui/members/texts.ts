/** What the page of lists says. */
import { listed, midSentence } from '../figure/words';
import { formatNumber } from '../format';
import { inLanguage } from '../language';

const whole = (count: number, locale: string) => formatNumber(count, 0, locale);

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
	numberIsIn: (unit: string) =>
		unit ? `This is in ${unit}.` : 'This is a plain number, without a unit.',
	note: 'Note',
	where: 'Where it stands',
	everywhere: 'in every scenario',
	onlyInNew: 'only in a new scenario',
	newScenario: 'Title of the new scenario',
	with: (id: string) => `With ${id}`,
	onlyIn: (title: string) => `only in ${title}`,
	/** What keeping the form will do to scenarios that there are. */
	changesNone: (title: string, base: string, others: number) =>
		`“${title}” is a new scenario that starts from ${base} and alone has it; ${others === 1 ? 'the one that there is stays as it is' : `the ${others} that there are stay as they are`}.`,
	changes: (titles: readonly string[], others: number, mustAll: boolean) => {
		if (titles.length === 0) return 'It stands in none of the scenarios that there are.';
		const changed =
			others === 0
				? titles.length === 1
					? 'The only scenario changes'
					: `All ${titles.length} scenarios change: ${listed(titles)}`
				: `${listed(titles)} ${titles.length === 1 ? 'changes' : 'change'}`;
		const rest =
			others === 0
				? ''
				: others === 1
					? '; the other one stays as it is'
					: `; the other ${others} stay as they are`;
		const why = mustAll ? ' No input of this list says in which scenario a member is there.' : '';
		return `${changed}${rest}.${why}`;
	},
	standsIn: (id: string, titles: readonly string[], isCosted: boolean) => {
		const where =
			titles.length === 1
				? `${id} stands in the scenario “${titles[0]}” alone, which is shown now`
				: `${id} stands in ${listed(titles.map((title) => `“${title}”`))} alone; “${titles[0]}” is shown now`;
		return isCosted ? `${where}, with what it costs.` : `${where}; what it costs is entered there.`;
	},
	costsIn: (id: string) => `What ${id} is and costs in that scenario`,
	/** In a field that may stay empty. */
	asItStands: (value: string) => (value ? `${value}, as it stands` : 'as it stands'),
	unread: (label: string, message: string) => `${label}: ${message}`,
	takesAlong: (labels: readonly string[]) =>
		`Take these along as well: ${listed(labels.map(midSentence))}`,
	startsLike: (like: string, isWithout: boolean) =>
		`It starts with all${isWithout ? ' other' : ''} values, pairs and formulas of ${like}.${isWithout ? ' Those named above begin at 0.' : ''}`,

	// Otherwise
	otherwise: 'Otherwise',
	otherwiseHead: (id: string) => `${id} otherwise, in a scenario`,
	otherwiseAbout: (id: string, base: string) =>
		`A new scenario that starts from ${base}, in which only ${id} is otherwise: worn and slower, or repaired and faster, with what that costs. Write a figure, or a change such as *0.92. What stays empty stays as it is.`,
	otherwiseTitle: (id: string) => `${id} otherwise`,
	otherwiseFields: (id: string) => `How ${id} is then`,
	addScenario: 'Add scenario',
	nothingOtherwise: (id: string) =>
		`Nothing is otherwise yet. Write what changes of ${id}, or leave the form.`,
	isOtherwise: (id: string, title: string) =>
		`${id} is otherwise in the scenario “${title}”, which is shown now.`,

	// Lists themselves
	addList: 'Add list',
	aNewList: 'A new list',
	describeList: (list: string) => `Describe ${list}`,
	describeIt: 'Describe',
	removeList: 'Remove list',
	listRemoved: (list: string) => `The list ${list}`,
	oneIsCalled: 'One of them is called',
	manyAreCalled: 'Several are called',
	nameInFormulas: 'Name in formulas',
	nameStays: (name: string) => `Formulas know it as ${name}, which stays.`,
	rollForward: 'Roll forward by a month',
	leftMonth: (month: string) =>
		`What ${month} held when the months moved on: its plan and what came.`,
	rolled: (left: string, come: string) =>
		`${left} is now a frozen copy, and ${come} stands at the end.`,
	membersAreMonths: 'Its members are months, written 2027-04, one after the other',
	unitOfNumbers: 'Unit of their numbers, if they have any',
	setLacksLabel: 'A list needs to say what one of its members is called, such as Colour.',
	setLacksName:
		'Write the name by which formulas know the list: a letter first, then letters, digits or underscores.',

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
	findIn: (list: string) => `Find in ${midSentence(list)}`,
	found: (found: number, all: number, locale: string) =>
		found === all ? '' : `${whole(found, locale)} of ${whole(all, locale)}`,
	noneFound: 'None has these words.',
	showMore: (next: number, left: number, locale: string) =>
		next === left
			? `Show the other ${whole(left, locale)}`
			: `Show ${whole(next, locale)} more of the other ${whole(left, locale)}`,

	// PairTable
	howToTick:
		'Arrow keys move, the space bar ticks. A block of x, 1 or yes and 0, no or nothing can be pasted from the pair in hand to the right and down, and copied.',
	pairsHidden: (count: number, locale: string) =>
		`${whole(count, locale)} pairs are not shown: find their rows or columns by name, or`,
	showAll: 'show all',
	pairOf: (first: string, second: string) => `${first} with ${second}`,
	pairsOf: (count: number, sets: string) => `${count} pairs of ${sets}.`
};

export const texts = inLanguage({ en });
