/** What the picture of the year by month says. */
import { inLanguage } from '../../language';

const en = {
	// +page
	noPicture: 'No months',
	noneInWorkbook:
		'This workbook draws no months. A picture of the kind "months" in its file names numbers per a set that is marked as months.',

	shown: 'Shown',
	closedMonth: 'month closed',
	openMonth: 'month open',
	month: 'Month',
	closed: 'Closed',
	yes: 'yes',
	no: 'no',
	yearBefore: 'Year before',
	difference: 'Difference',
	nothing: (label: string) => `${label}: no month has a value`,
	onClose: (first: string, last: string, next: string) =>
		`${first === last ? first : `${first} to ${last}`} as closed, ${next} onward planned on the stock at the end of ${last}`,
	toDate: (month: string, amount: string) => `Year to date, ${month}: ${amount}`,
	fullYear: (year: string, amount: string) => `Full year ${year}: ${amount}`,
	compared: (amount: string, difference: string, title: string) =>
		`${amount}, ${difference} against ${title}`,
	asIn: (amount: string, title: string) => `${amount}, as in ${title}`,
	lowestAndHighest: (low: string, lowMonth: string, high: string, highMonth: string) =>
		`Between ${low} in ${lowMonth} and ${high} in ${highMonth}`,
	row: (month: string, amount: string) => `${month}: ${amount}.`,
	failed: (months: string) => `Without a value: ${months}`,
	tip: (month: string, isClosed: boolean) => (isClosed ? `${month}, closed` : month),
	others: (count: number) => `, and ${count} more`
};

export const texts = inLanguage({ en });
