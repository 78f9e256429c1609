/** What the list of prices says. */
import { inLanguage } from '../language';

const en = {
	title: 'Price list',
	lacks: {
		quote:
			'This workbook names no quote: a picture of kind “quote” in its file says which quantities hold its prices, and its “price_list” what a list is made of.',
		price_list:
			'The quote of this workbook names no price list: “price_list” in its picture says which quantities hold prices by size of an order at the wanted margin, net, on the invoice and on the list.'
	},
	line: (standing: string) =>
		`Prices at the wanted margin over full cost, as the Quote sheet works them out on ${standing}. Nothing here changes the plant.`,
	by: 'Of',
	items: 'every item',
	pipes: 'every pipe by coil length',
	customer: 'On the terms of',
	margin: 'Margin, %',
	badMargin: (text: string) => `“${text}” is no margin. Enter percent below 100, as 8.`,
	price: 'Price',
	prices: { on_list: 'list price', on_invoice: 'invoice price', net_net: 'net-net price' },
	per: 'For',
	pers: { metre: 'a metre', hundred: '100 m', coil: 'a coil' },
	way: 'Rounded',
	ways: {
		half_larger: 'to the nearest, midway to the larger',
		half_even: 'to the nearest, midway to the even',
		up: 'up to the next'
	},
	step: 'Step',
	rule: (way: 'half_larger' | 'half_even' | 'up', step: string) =>
		`Each price is counted in full and rounded once to a multiple of ${step}: ${
			way === 'up'
				? 'up to the next multiple'
				: way === 'half_even'
					? 'to the nearest, and midway between two to the even multiple (ISO 80000-1, annex B, rule A)'
					: 'to the nearest, and midway between two to the larger multiple (ISO 80000-1, annex B, rule B)'
		}.`,
	computing: (done: number, all: number) => `${done} of ${all} are priced …`,
	failed: 'The prices could not be computed. Look at it again once the workbook shows its own.',
	goods: 'Article',
	coil: 'Coil, m',
	today: 'Today’s list',
	caption: (price: string, per: string, unit: string) =>
		`By size of the order: ${price} for ${per}, ${unit}`,
	facts: {
		terms: (customer: string) => `On the terms of ${customer}.`,
		margin: (margin: string) => `Margin of ${margin} over full cost.`
	},
	without: (names: string, why: string) => `No price for ${names}: ${why}`,
	csv: 'Save as CSV',
	ooxml: 'Save as OOXML',
	print: 'Print, or save as PDF there',
	against: 'Against an earlier list, by cause',
	copy: 'Worked out from',
	noCopy:
		'There is no frozen copy to hold it against. Freeze the base on the page Scenarios when a list is released; next year’s list is then explained against it.',
	atSize: 'At orders of',
	work: 'Work out the change',
	working: (share: number) => `${Math.round(share * 100)} % …`,
	then: 'Then',
	now: 'Now',
	adds: (title: string) =>
		`Both ends are worked out by today’s formulas: then, with the inputs of “${title}”; now, with today’s. Causes come one after the other in this order and add up; what no cause names stands as it is today at both ends.`,
	unmoved: 'No input of a cause is another today.'
};

export const priceTexts = inLanguage({ en });
