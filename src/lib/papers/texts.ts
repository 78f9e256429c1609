/** What papers say beside the workbook's own words. */
import { inLanguage } from '$lib/ui/language';
import { listed } from '$lib/ui/figure/words';

const en = {
	investment: 'Investment paper',
	shifts: 'Shift comparison',
	standardCost: 'Standard cost list',
	comesTo: 'What it comes to',
	changes: 'What it changes',
	byYear: 'Cash by year',
	studies: 'Sensitivity and risk',
	figure: 'Figure',
	value: 'Value',
	source: 'Source',
	asOf: 'As of',
	remark: 'Remark',
	part: 'Part',
	input: 'Input',
	range: 'Moved',
	from: 'Lowest',
	to: 'Highest',
	reach: 'Reach',
	scenario: 'Scenario',
	what: 'What it is',
	builtOn: 'Built on',
	comparedWith: 'Compared with',
	reference: 'reference',
	patterns: 'Shift patterns',
	wholePlant: 'The whole plant',
	question: 'The question',
	options: 'The options',
	optionsTable: 'Options and what they are compared with',
	leftOut: 'What this paper leaves out',
	openPoints: 'Open points',
	caseTable: 'Payback, net present value and rate of return',
	discountedPayback: 'Discounted payback',
	caseNote:
		'Each figure is the difference to what the scenario is compared with. A case whose net present value is below zero does not earn its cost of capital, however soon its money is back.',
	runsTo: (unit: string) => `Cumulative cash by year, ${unit}; discounted as a broken line`,
	madeOf: 'What the net present value is made of',
	yearTick: (year: string) => `year ${year}`,
	whatItChanges: (scenario: string, from: string) => `${scenario} against ${from}, entry by entry`,
	changesNothing: (scenario: string) =>
		`${scenario} enters nothing that what it is compared with does not.`,
	values: (count: number) => `${count} values`,
	more: (count: number) => `and ${count} more`,
	nothingHere: 'None of these figures has a value in the chosen scenarios.',
	nothingIn: (caption: string) => `${caption}: no value.`,
	noSet: (set: string) => `The workbook has no set ${set}.`,
	inScenario: (title: string, scenario: string) => `${title}, ${scenario}`,
	swings: (name: string, unit: string) =>
		`${name}${unit ? `, ${unit}` : ''}, with each input moved alone; the line is the case as it stands`,
	swingTable: 'Each input moved alone',
	noStudies:
		'The workbook keeps no study of these results for the chosen scenarios. Studies: make one of sensitivity or risk, and the paper takes it in.',
	assumptions: 'Values with their source and date',
	noSource: 'Where no source stands, the workbook gives none.',
	partsOf: (figure: string, parts: readonly string[]) => `${figure}: ${listed(parts)}.`,
	neverRun: (studies: readonly string[]) =>
		`Kept in the workbook and not run: ${studies.join('; ')}.`,
	steps: (unit: string) => `From the investment to the net present value, ${unit}`,
	total: 'net present value',
	outOfDate: 'The workbook has changed since this study was run. Run it again before you decide.',
	lastRun: (name: string) => `${name}, as the study last found`,
	noValue: 'no value',
	invented: 'The figures of this workbook are invented. They are an example, not a plant.',
	madeBy: (workbook: string, day: string, author: string, revision: number | null) =>
		[
			`${workbook}, ${day}`,
			author ? `made by ${author}` : '',
			revision === null ? 'not on a server' : `revision ${revision}`
		]
			.filter(Boolean)
			.join('; '),
	foot: (workbook: string, paper: string, revision: number | null) =>
		[workbook, paper, revision === null ? '' : `revision ${revision}`].filter(Boolean).join(', '),
	titleOf: (paper: string, scenarios: readonly string[]) =>
		scenarios.length > 3
			? `${paper}: ${scenarios.length} options`
			: `${paper}: ${listed(scenarios)}`,
	earns: (title: string, npv: string, back: string | null, discounted: string | null) =>
		`${title} would earn its cost of capital and ${npv} besides${
			back === null
				? ''
				: `; its money would be back in ${back}${discounted === null ? '' : `, discounted in ${discounted}`}`
		}.`,
	loses: (title: string, npv: string, back: string | null) =>
		`${title} would not earn its cost of capital: the net present value is ${npv}${
			back === null
				? ', and its money would not come back within its life'
				: `, although its money would be back in ${back}`
		}.`,
	doubtful: (title: string, why: string) => `${title} is no case to read: ${why}.`,
	unknown: (title: string, why: string) => `${title} has no net present value: ${why}.`,
	noCase: 'No chosen scenario has an investment.',
	best: (title: string, of: string, npv: string) =>
		`Of ${of} options, ${title} would earn most beyond its cost of capital: ${npv}.`,
	noneEarns: (of: string) => `None of the ${of} options would earn its cost of capital.`,
	theseLose: (titles: string) => `Below their cost of capital: ${titles}.`,
	theseDoubtful: (titles: string) => `No case to read: ${titles}.`,
	theseUnknown: (titles: string) => `Without a net present value: ${titles}.`,
	noInvestment: (title: string) => `${title} has no investment and is left out here.`,
	choose: 'Choose at least one scenario.',
	noScenario: (id: string) => `There is no scenario "${id}".`,
	noneHasInvestment: (titles: readonly string[]) =>
		`${listed(titles)} ${titles.length === 1 ? 'has' : 'have'} no investment, so there is no case to put. Choose a scenario that puts something in, or enter what it costs.`,
	noPayback: 'The workbook has no picture of payback, so there is no case to show.',
	noPatterns: 'The workbook has no picture of shift patterns.',
	noPapers:
		'Nothing in this workbook can be made a paper: it has no picture of payback, of shift patterns or of a cost that is built up, and names no paper of its own.'
};

export const texts = inLanguage({ en });
