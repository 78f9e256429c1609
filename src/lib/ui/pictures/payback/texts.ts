/** What the picture of a payback says. */
import { inLanguage } from '../../language';

const en = {
	// +page
	noPicture: 'No picture of an investment',
	noneInWorkbook:
		'This workbook names no payback. A picture in its file says which quantities hold cumulative cash by year, payback, investment and net present value.',

	// Interactions
	interactionsLine: (unit: string) =>
		`annual value, ${unit}, which lives of any length have in common: a case of several options is held against one case for each`,
	together: 'Together',
	worth: 'Worth',
	eachAlone: 'Each alone',
	sum: 'Sum',
	beyondTheSum: 'Beyond the sum',
	togetherWord: 'together',
	beyondTheSumWord: 'beyond the sum',

	// Payback
	beingComputed: 'Being computed',
	whenOneAppears:
		'A scenario appears here once it has an investment: choose an option in it, or enter one, and its cumulative cash is drawn beside the others.',
	goToTheWorkbook: 'Go to the workbook',
	noLine: 'No line',
	cumulative: (unit: string) => `${unit}, cumulative`,
	rankedBy: 'Ranked by',
	withoutCase: (without: string) => `Without an investment, so without a case: ${without}.`,

	// PaybackKey
	simple: 'simple',
	discounted: 'discounted',
	paidBackSimpleDiscounted: 'paid back, simple and discounted',

	// PaybackParts
	whatEachNetPresentValue: 'What each net present value is made of',
	partsLine: (unit: string) => `${unit} of today at the discount rate, over the life of the case`,
	scenario: 'Scenario',
	npv: 'NPV',

	// PaybackTable
	barsHead: 'years from start; each bar ends where the investment is paid back'
};

export const texts = inLanguage({ en });
