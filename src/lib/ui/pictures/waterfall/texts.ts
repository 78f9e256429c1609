/** What the waterfall from one result to the other says. */
import { inLanguage } from '../../language';

const en = {
	month: 'Month',
	span: 'Of',
	ofTheMonth: 'the month',
	toDate: 'the year to date',
	open: (label: string) => `${label}, open`,

	title: (label: string, amount: string, verdict: string) => `${label}: ${amount} ${verdict}`,
	spanOf: (label: string, toDate: boolean) => (toDate ? `Year to date, ${label}` : label),
	asMeant: (label: string) => `${label}: as budgeted`,
	isOpen: (label: string) => `${label} is open`,
	openLine: 'An open month has no result. Close it above once what came of it is entered.',
	noValue: (label: string, why: string) => `${label} has no value${why ? ` (${why})` : ''}`,
	fromTo: (from: string, to: string) => `${from}, ${to}`,
	favourable: 'favourable',
	adverse: 'adverse',

	tookOff: (label: string, amount: string) => `${label} took ${amount} off the result`,
	added: (label: string, amount: string) => `${label} added ${amount} to the result`,
	cause: (of: string, came: string, meant: string) => `${of} at ${came} instead of ${meant}`,
	mostIn: (month: string, amount: string) => `the largest part in ${month}, ${amount}`,

	together: (count: number) => `${count} small ones together`,
	without: (count: number) =>
		count === 1 ? 'One has no value and is left out:' : `${count} have no value and are left out:`,
	reads: 'Reads',
	step: 'Variance',
	runs: 'Result after it',
	why: 'What lies behind the largest'
};

export const texts = inLanguage({ en });
