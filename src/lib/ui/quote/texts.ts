/** What the page of a quote says. */
import { inLanguage } from '../language';

const en = {
	// +page
	noQuote: 'No quote',
	noneInWorkbook:
		'This workbook names no quote. A picture in its file says which quantities hold floor, target, list and net-net price, the ladder by size and the steps of the price.',

	// HourValues
	free: 'free',

	// LengthsAndExtras
	byLength: 'By length of the coil',
	byLengthLine: (unit: string) => `packaging and rewinding change with it, ${unit}`,
	coil: 'Coil',
	floor: 'Floor',
	target: 'Target',
	extras: 'Extras, each with its price',
	extrasLine: (unit: string) => `charged where wanted, ${unit}`,
	makeOrBuy: (make: string, buy: string, buyIsLess: boolean) =>
		`Making it costs ${make} with the value of its hours, buying it ${buy}: ${buyIsLess ? 'on price alone, bought pipe would cost less in this month.' : 'on price alone, making it costs less.'}`,

	// OnInvoice
	onInvoice: 'On the invoice',
	onInvoiceLine: 'what the customer reads, before rebate, commission and terms',

	// PushesOut
	lookedInto: 'What it pushes out is being looked into …',
	placeOfHours: (line: string, month: string) => (month ? `${line} in ${month}` : line),
	ofPlace: (place: string) => `of ${place}`,
	lessOf: (amount: string, what: string) => `${amount} of ${what}`,
	others: (count: number) => (count === 1 ? 'one more' : `${count} more`),
	notSoManyHours: (hours: string) =>
		`The plan cannot give this order ${hours}: what the plan must keep, such as least quantities and stocks, would not be kept.`,
	pushesNothingOut: (hours: string) =>
		`The ${hours} push nothing out: the plan made again around them brings as much.`,
	movesOthers: (hours: string, cost: string) =>
		`The ${hours} push out nothing that is sold; other work moves to where it costs more: ${cost}.`,
	pushesOut: (hours: string, what: string, cost: string) =>
		`The ${hours} push out ${what}. With the plan made again around them that costs ${cost}.`,

	chargedAlike: 'The floor charges as much for them.',
	charged: (charged: string, gap: string, isLess: boolean) =>
		`The floor charges ${charged} for them, ${gap} ${isLess ? 'less' : 'more'}: it reckons from the plan as it stands and does not make it again, so what the plan loses is the figure to go by.`,
	floorByPlan: (byPlan: string, floor: string) =>
		`With it the floor would be ${byPlan} instead of ${floor}.`,

	// Quote
	marginOfPrice: (margin: string) => `margin ${margin} of price`,
	lowestSensible: 'lowest sensible',
	byHourValues: 'by hour values',
	planFloor: 'Plan’s floor',
	planMadeAgain: 'plan made again',
	list: 'List',
	invoice: 'Invoice',
	thisQuote: 'This quote',
	printHint: 'Opens the browser’s print window',
	print: 'Print, or save as PDF there',
	keepAsQuote: 'Keep as a quote',
	bySize: 'By size of the order',
	ladderLine: (unit: string, sizeUnit: string) =>
		`price ladder, ${unit} net-net${sizeUnit ? `, by order in ${sizeUnit}` : ''}; the ring is this quote`,
	ladder: 'Price ladder by size of the order',
	noLadder: 'No ladder',
	waterfall: 'From list to what is left',
	waterfallLine: (unit: string) => `price waterfall, ${unit}`,
	worthOfAnHour: (line: string) => `What an hour ${line ? `of ${line} ` : ''}is worth`,

	// QuoteField
	inTheBase: (before: string) => `base ${before}`,

	// QuoteFields
	whatIsQuoted: 'What is quoted',
	quotesStandOn: 'Quotes stand on',
	entriesGoThere:
		', whatever scenario is shown; entries go there. Each is an ordinary input of the workbook.',
	notTheBase: (title: string, base: string) =>
		`This quote stands on ${title}, not on ${base}: on a plant that may not be there.`,

	cameAlong: (label: string, value: string, member: string, before: string) =>
		`${label} is now ${value}, as ${member} has it; it was ${before}.`,
	leftBehind: (label: string, before: string) =>
		`${label} is now open: ${before} is another length or product.`,
	noneChosen: 'none',
	asItWas: 'Leave it as it was',
	notEntered: 'not entered',

	// Validity
	priceByTheClause: 'Price by the clause',
	price: 'price',
	offered: 'offered',
	movesBelowNotCharged: (least: string) => `Moves below ${least} are not charged.`,
	movesOverReopenPrice: (most: string) => `Moves over ${most} reopen the price.`,
	thePriceStandsFor: (validity: string) => `The price stands for ${validity}.`,

	// WaterfallRows
	step: 'Step',
	ofList: 'of list'
};

export const texts = inLanguage({ en });
