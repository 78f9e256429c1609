/** What the page of one's own figures says. */
import { inLanguage } from '../language';

const en = {
	title: 'Your own figures',
	lead: (template: string) =>
		`This workbook was begun from ${template}. What stands as it did there is an example, not a figure of yours: replace it, or tick it off on the Review page where it is the same with you. Nothing has to be done in one go.`,
	noTemplate:
		'This workbook was not begun from one that is shipped with Metrewright, so nothing here is an example’s figure.',
	invented:
		'Its figures are called invented. Give it a title of your own and take that off, and every sheet says how many figures are yours.',
	about: 'Title and “invented” …',
	fetching: 'The shipped workbook is being fetched …',
	notFetched:
		'The shipped workbook could not be fetched. Check the connection and open this page again.',
	inAll: (own: string, of: string) => `${own} of ${of} figures are yours`,
	done: 'Every figure is yours.',
	mattersMost: 'Replace these first',
	mattersLead: (what: string) =>
		`Figures that still stand as shipped, by how far each may move ${what}, the plan held as it is: what ten per cent of it does, times how far it may lie off. That is its own spread where one is entered, else a quarter of its usual range.`,
	resultToLookAt: 'Result',
	lookedInto: 'Every figure is being tried …',
	lookAgain: 'Try again with the figures as they are now',
	nothingMatters: 'Nothing that this result stands on is the example’s any more.',
	onlyThePlan:
		'With the plan held as it is no figure moves this result: it rests on the plan, which follows from all of them.',
	figure: 'Figure',
	asShipped: 'As shipped',
	moves: 'Ten per cent moves it by',
	mayLieOff: 'It may lie off by',
	soMoves: 'So it may move it by',
	perCent: (share: string) => `${share}\u00a0%`,
	noValue: (reason: string) => `Nothing can be said of it yet: ${reason}`,
	bySheet: 'Sheet by sheet',
	sheet: 'Sheet',
	yours: 'Yours',
	of: 'Of',
	ofOwn: (own: string, of: string) => `${own} of ${of} yours`,
	next: 'Next to replace',
	all: 'all yours',
	otherFigures: (count: number) => (count === 1 ? 'and 1 more' : `and ${count} more`)
};

export const texts = inLanguage({ en });
