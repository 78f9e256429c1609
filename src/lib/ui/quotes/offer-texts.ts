/** What an offer says, and what is said beside it to whoever makes one. */
import { inLanguage } from '../language';

const en = {
	offer: (name: string) => `Offer ${name}`,
	draft: 'Draft, not sent',
	number: 'Offer',
	date: 'Date',
	validUntil: 'Valid until',
	contact: 'Contact',
	article: 'Article',
	items: 'What is offered',
	goods: (label: string, id: string) => (label === id ? id : `${label} (${id})`),
	ofItem: (position: number, text: string) => `${position}. ${text}`,
	call: (month: string, metres: string) => `${month} ${metres}`,
	total: 'Total',
	terms: 'Terms',
	clause: 'Price clause',
	shares: (shares: string) => `Shares of the price: ${shares}.`,
	toKnow: 'Please note',
	whole: (asked: string, offered: string) =>
		`${asked} were asked for; in whole coils that is ${offered}, which are offered.`,
	rounding: 'Amounts are rounded for reading; totals are worked out from the full price per metre.',

	lacks: (title: string) => `There is no figure for “${title}”. Look at the quote below for why.`,
	noGoods: 'Nothing is chosen to be offered. Choose an item or a product in the quote.',
	noWords: (title: string, member: string) =>
		`“${title}” is left out: the workbook has no words for the customer for “${member}”.`,
	noTerm: (title: string, customer: string | undefined) =>
		`“${title}” is left out: nothing is entered for ${customer ?? 'this customer'}. Enter it in the quote.`,
	noLetterhead: 'There is no letterhead yet. Enter the name and address of the firm.',
	noCustomer: 'Nobody is named to whom this is offered. Choose a customer or enter an address.'
};

export const offerTexts = inLanguage({ en });
