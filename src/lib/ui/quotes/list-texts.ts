/** What the page of all quotes says. */
import { inLanguage } from '../language';

const en = {
	title: 'Quotes',
	none: 'No quote is kept yet. Begin one from the order that is tried, or with the button above.',
	noPicture:
		'This workbook names no quote: a picture in its file says which quantities hold its prices.',
	begin: 'New quote',
	tryOne: 'Try an order',
	search: 'Search',
	searchHint: 'number, customer, article, note',
	show: 'Show',
	shown: {
		open: 'open',
		asked: 'asked for',
		sent: 'sent',
		expired: 'run out',
		won: 'won',
		lost: 'lost',
		all: 'all',
		filed: 'put away'
	},
	states: { asked: 'asked for', sent: 'sent', won: 'won', lost: 'lost' },
	runOut: 'run out',
	columns: {
		quote: 'Quote',
		state: 'State',
		customer: 'Customer',
		goods: 'Article',
		date: 'Date',
		until: 'Valid until',
		value: 'Value',
		margin: 'Margin, %',
		hours: 'Hours',
		month: 'Month'
	},
	nothingFound: 'No quote is like that. Show all, or search for less.',
	of: (shown: number, all: number) =>
		shown === all ? `${all} quotes` : `${shown} of ${all} quotes`,
	more: (count: number) => `Show ${count} more`,
	openValue: (value: string, count: number) =>
		`Open: ${value} in ${count === 1 ? 'one quote' : `${count} quotes`}.`,
	without: (count: number) =>
		count === 1 ? 'One more has no value yet.' : `${count} more have no value yet.`,
	hits: 'Hit rate by margin',
	hitsLine: 'won out of won and lost, the last version of each',
	margin: 'Margin',
	won: 'Won',
	lost: 'Lost',
	rate: 'Rate',
	band: (from: number | null, to: number | null) =>
		from === null ? `below ${to} %` : to === null ? `${from} % and more` : `${from} to ${to} %`,
	noneDecided: 'None is won or lost yet.',
	hours: 'Hours by month',
	hoursLine: 'that open quotes would take, and those that are won',
	open: 'Open',
	noHours: 'No open or won quote takes hours.',
	live: 'Figures of quotes that are asked for follow the workbook; those of the others stand.'
};

export const listTexts = inLanguage({ en });
