/** What is said of decided cases. */
import { inLanguage } from '../../language';

const en = {
	case: 'Decided case',
	title: (label: string, amount: string, better: boolean) =>
		`${label}: ${amount} ${better ? 'more' : 'less'} than promised`,
	asPromised: (label: string) => `${label}: as promised`,
	noValue: (label: string, why: string) => `${label} has no value${why ? ` (${why})` : ''}`,
	noDecision: (label: string) => `${label}: the month of the decision is missing`,
	enterDecision: 'Enter the month of the decision below. What was promised is counted from it.',
	promised: (amount: string) => `The case promised a net present value of ${amount}`,
	soFar: (amount: string, month: string) =>
		month ? `booked up to ${month} it has come to ${amount}` : `so far ${amount} has come of it`,
	nothing: 'nothing is booked of it yet',
	likely: (amount: string) => `with the rest as planned it comes to ${amount}`,
	payback: (now: string, then: string) =>
		now === then ? `It still pays back in ${then}` : `It pays back in ${now}, promised was ${then}`,
	noPayback: (then: string) => `It no longer pays back; promised was ${then}`,
	years: (count: string) => `${count} years`,
	tookOff: (label: string, amount: string) => `${label} took ${amount} off`,
	added: (label: string, amount: string) => `${label} added ${amount}`,
	most: (causes: string) => `Most of the difference: ${causes}`,
	cause: 'Cause',
	value: 'Net present value',
	reads: 'Reads',
	rest: 'The rest, as planned',
	sofarRow: 'So far',
	better: 'better',
	worse: 'worse',
	none: 'No case is decided yet',
	howTo:
		'Under Scenarios, choose “Make it the base” on the one that was decided, and keep it as a decided case. Its plan is frozen then, and what comes of it is booked here, month by month.',
	toScenarios: 'To the scenarios',
	byFile:
		'By file: a table with the case, the month, and any of the figures below as columns comes in under Files in and out.',
	toFiles: 'To the files',
	noPicture: 'What became of a decided case',
	noneInWorkbook: 'This workbook follows no decided cases: none of its pictures does.'
};

export const texts = inLanguage({ en });
