/** What the items of a quote say. */
import { inLanguage } from '../language';

const en = {
	title: 'Items',
	add: 'Add an item',
	copy: 'Copy',
	remove: 'Remove',
	up: 'Up',
	down: 'Down',
	row: (position: number, name: string) => `Item ${position}, ${name}`,
	noItem: 'no item chosen',
	choose: 'Choose an item',
	columns: {
		item: 'Item',
		metres: 'Metres',
		when: 'When',
		price: 'Net-net',
		invoice: 'Invoice',
		floor: 'Floor',
		target: 'Target',
		left: 'Left over floor',
		margin: 'Margin, %',
		hours: 'Hours',
		test: 'Price to test'
	},
	whole: 'The whole',
	wholeLine: (revenue: string, contribution: string, margin: string, hours: string) =>
		`The whole brings ${revenue} on the invoice and leaves ${contribution} over the floors: margin ${margin} over full cost, ${hours}.`,
	belowLine: (count: number) =>
		count === 1 ? 'One item is below its floor.' : `${count} items are below their floors.`,
	withoutLine: (count: number) =>
		count === 1
			? 'One item has no figures and is in no sum.'
			: `${count} items have no figures and are in no sum.`,
	computing: 'Figures are being computed …',
	calledOff: (count: number, from: string, to: string) =>
		count === 1 ? from : `${count} months, ${from} to ${to}`,
	callOff: 'Called off',
	callsOf: (name: string) => `When ${name} is called off`,
	callsHint:
		'A line for each month: 2028-03 20000. Empty: all of it in the month of the order. Each call-off is a run of its own, at the price of the whole.',
	callsKeep: 'Keep these months',
	callsBad: (line: string) => `“${line}” is no month with metres. Write it as 2028-03 20000.`,
	cancel: 'Cancel',
	testOf: (name: string) => `Price to test for ${name}, on the invoice`,
	take: 'Offer this price',
	listAgain: 'Back to the list price',
	byHand: 'by hand',
	gone: (names: string) =>
		`No longer in the workbook: ${names}. What was entered is kept; choose something else.`,
	noGoods: (text: string | undefined) =>
		text ? `No item is chosen for “${text}”. Choose one.` : 'No item is chosen. Choose one.',
	noLine: (what: string, why: string) =>
		`No line can be found for ${what || 'this'}, so it has no floor. ${why}`,
	noPrice: (why: string) => `It has no price: ${why}`,
	noTerms: (terms: string) =>
		`Nothing is entered for ${terms}, so it has no net-net price. Enter it among the terms below; it holds for this quote alone.`,
	notWhole: (asked: string, coil: string, count: number) =>
		`${asked} in coils of ${coil} are ${count} coils.`,
	coils: (count: number, metres: string) => `${count} coils, ${metres}`,
	past: (month: string, date: string) =>
		`${month} lies before the quote’s own day, ${date}. Call it off in a later month, or change the day of the quote.`,
	noSuchMonth: (month: string, known: readonly string[]) =>
		`The plan has no month ${month}: it runs from ${known[0]} to ${known.at(-1)}. Call it off within these.`,
	below: (short: string) => `Below its floor: ${short} short.`,
	testedNothing: 'It has no figures at that price.',
	tested: (standing: 'below' | 'under' | 'over', left: string, margin: string, hours: string) =>
		`${standing === 'below' ? 'Not to be matched' : standing === 'under' ? 'Can be matched, under target' : 'Can be matched, at target or better'}: ${left} over the floor, margin ${margin}, ${hours}.`,
	least: (metres: string) => `At this price it covers its floor from ${metres} on.`,
	noLeast: 'At this price no order covers its floor.',
	mergedTwice: (what: string) =>
		`This quote was sent by one person while another changed it. The figures below are those that were sent; changed since: ${what}. Make a new version to offer the change, or take back to what was sent.`,
	takeBack: 'Take back to what was sent',
	changed: (label: string, sent: string, now: string) => `${label}, sent with ${sent}, now ${now}`
};

export const itemsTexts = inLanguage({ en });
