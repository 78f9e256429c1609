/** What is said of a tender that is pasted. */
import { inLanguage } from '../language';

const en = {
	empty:
		'Nothing was pasted yet. Copy the lines of the tender here: item, metres, months, price asked.',
	headAlone: 'There is only a heading. Paste the lines below it too.',
	unknown: (text: string) =>
		`No item or pipe is called “${text}”. It is taken in under that name without goods; choose one there.`,
	twoAlike: (text: string) =>
		`Two things are called “${text}”. It is taken in under that name without goods; choose one there.`,
	noAmount: (text: string) =>
		text
			? `“${text}” is no number of metres, so it is taken in with the metres of the item before it. Enter them there.`
			: 'No metres are named. It is taken in with the metres of the item before it; enter them there.',
	asThousands: (text: string, metres: number) =>
		`“${text}” is taken as ${metres} m, as nobody orders to the millimetre. Correct it there if less is meant.`,
	noAmountOf: (month: string, text: string) =>
		`“${text}” in ${month} is no number of metres; it is left out.`,
	noMonth: (text: string) =>
		`“${text}” is no month or call-off plan; write 2028-03, Mar–May 2028, or 2028-03: 20000, 2028-05: 10000. It is taken in without one.`,
	overYear: (from: string, to: string) =>
		`No months are named, so it is spread over the twelve from ${from} to ${to}.`,
	sumDiffers: (amount: number, sum: number) =>
		`${amount} are named in all, and the months come to ${sum}: the months hold.`,
	noPrice: (text: string) => `“${text}” is no price, so none is tested.`,

	open: 'Paste a tender list',
	label: 'Lines of the tender: item, metres (in all, per month or per year), months, price asked',
	hint: 'Copied from a sheet or a CSV file, with or without a heading. A column for each month works too.',
	file: 'Or a file',
	take: (count: number) => (count === 1 ? 'Take in one item' : `Take in ${count} items`),
	replace: 'In place of the items that stand',
	cancel: 'Cancel',
	tooMany: (most: number) =>
		`A quote holds ${most} items. Take in fewer lines, or make two quotes of it.`,
	columns: {
		line: 'Line',
		item: 'Item',
		metres: 'Metres',
		when: 'Called off',
		price: 'Asked, EUR/m'
	},
	noneOf: 'not known',
	inOrdersMonth: "in the order's month",
	months: (count: number, from: string, to: string) =>
		count === 1 ? from : `${count} months, ${from} to ${to}`,
	allKnown: (count: number) => `${count} lines, all understood.`,
	someNot: (count: number, remarks: number) =>
		`${count} lines; ${remarks === 1 ? 'one needs' : `${remarks} need`} a look: nothing is lost, each says what is amiss.`
};

export const tenderListTexts = inLanguage({ en });
