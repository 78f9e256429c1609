/**
 * What the reference and the editor say of each function: a sentence, and an example; beside examples that stand for
 * themselves, what they give. A test computes each of them.
 */
import type { AggregateName, ScalarName } from './functions';

export interface FunctionWords {
	readonly help: string;
	readonly example: Example;
}

export interface Example {
	readonly formula: string;
	/** In words of the language, where the formula reads nothing. */
	readonly gives?: string;
}

const said = (help: string, formula: string, gives?: string): FunctionWords => ({
	help,
	example: gives === undefined ? { formula } : { formula, gives }
});

export const FUNCTION_WORDS: Readonly<Record<AggregateName | ScalarName, FunctionWords>> = {
	SUM: said('The sum; of nothing it is 0.', 'SUM(mass over layer where thickness > 0.5[mm])'),
	MIN: said('The least value; of nothing there is none.', 'MIN(3[mm]; 2.9[mm])', '2.9 mm'),
	MAX: said('The greatest value; of nothing there is none.', 'MAX(stock over month else 0[m])'),
	AVERAGE: said('The arithmetic mean; of nothing there is none.', 'AVERAGE(thickness over layer)'),
	PRODUCT: said('All values multiplied; of nothing it is 1.', 'PRODUCT(1 - scrap over stage)'),
	COUNT: said(
		'How many members meet a condition, or how many have a value if x is a number.',
		'COUNT(stock < 0[m] over month)'
	),
	ANY: said('Yes if at least one member meets the condition.', 'ANY(stock < 0[m] over month)'),
	ALL: said(
		'Yes if every member meets the condition; of none it is yes.',
		'ALL(thickness > 0.1[mm] over layer)'
	),
	STDEV: said(
		'The sample standard deviation (n - 1); it needs two values.',
		'STDEV(stock over month)'
	),
	MEDIAN: said(
		'The middle value; of an even number of values, the mean of the two middle ones.',
		'MEDIAN(stock over month)'
	),
	PERCENTILE: said(
		'The value that a share of the values does not exceed, on a straight line between two of them: 0.5 is the median.',
		'PERCENTILE(stock over month; 95%)'
	),
	SLOPE: said(
		'How much y changes for one of x, by the straight line of least squares through the pairs of the set.',
		'SLOPE(energy; output over month)'
	),
	INTERCEPT: said(
		'What y is at x = 0, by the straight line of least squares through the pairs of the set.',
		'INTERCEPT(energy; output over month)'
	),
	NPV: said(
		'Net present value: each member is discounted by its number of periods, without numbers from 1; what is paid today stands outside.',
		'cash[y0] + NPV(8%; cash over year where year > y0)'
	),
	IRR: said(
		'The rate of return at which the present value is zero, where there is exactly one.',
		'IRR(cash over year)'
	),
	MIRR: said(
		'The rate of return with outlays financed and receipts reinvested at given rates.',
		'MIRR(cash over year; 6%; 8%)'
	),
	RANK: said(
		'The place of x among the values y, the largest first; equal values share the lower place.',
		'RANK(stock; stock[m] over m in month)'
	),
	ARGMIN: said(
		'The member with the least value; of equals, the first in set order.',
		'ARGMIN(stock over month)'
	),
	ARGMAX: said(
		'The member with the greatest value; of equals, the first in set order.',
		'ARGMAX(stock over month)'
	),
	FIRST: said(
		'The value of the first member kept: FIRST(month where stock < 0).',
		'FIRST(month where stock < 0[m])'
	),
	LAST: said(
		'The value of the last member kept: LAST(month where stock < 0).',
		'LAST(month where stock < 0[m])'
	),
	PAYBACK: said(
		'When the running total of cash first comes back to zero, on a straight line within the period.',
		'PAYBACK(cash over year)'
	),
	IF: said(
		'One value if the condition says yes, the other if it says no.',
		'IF(total > 100[m]; 100[m]; total)'
	),
	AND: said('Yes if every condition says yes.', 'AND(total > 0[m]; total < 100[m])'),
	OR: said('Yes if at least one condition says yes.', 'OR(total < 0[m]; total > 100[m])'),
	NOT: said('Yes if the condition says no.', 'NOT(total > 100[m])'),
	IFERROR: said(
		'x, or the second value where x has no value of any kind.',
		'IFERROR(total / 0; 0[m])'
	),
	TRUE: said('Yes.', 'TRUE()', 'yes'),
	FALSE: said('No.', 'FALSE()', 'no'),
	ABS: said('x without its sign.', 'ABS(2[m] - 5[m])', '3 m'),
	SQRT: said('The square root; the unit of x must have one too.', 'SQRT(9[m^2])', '3 m'),
	EXP: said('The number e to the power x, a plain number.', 'EXP(0)', '1'),
	LN: said('The natural logarithm of a plain number above zero.', 'LN(EXP(2))', '2'),
	NORMDIST: said(
		'The share of a normal distribution that lies below x; with FALSE() as the last argument its density at x.',
		'NORMDIST(3.1[mm]; 3[mm]; 0.05[mm])',
		'0.9772498681'
	),
	NORMINV: said(
		'The value below which a share of a normal distribution lies: NORMINV(95%; 0; 1) standard deviations for 95 %.',
		'NORMINV(97.5%; 3[mm]; 0.05[mm])',
		'3.097998199 mm'
	),
	PI: said('The number 3.14159…, circumference over diameter.', 'PI()', '3.141592654'),
	ROUND: said(
		'x to so many digits after the point, a half away from zero.',
		'ROUND(1.005; 2)',
		'1.01'
	),
	ROUNDUP: said('x to so many digits after the point, away from zero.', 'ROUNDUP(2.1)', '3'),
	ROUNDDOWN: said('x to so many digits after the point, towards zero.', 'ROUNDDOWN(-2.9)', '-2'),
	CEILING: said(
		'x up to the next multiple of a step, towards plus infinity: CEILING(x; 1[pallet]).',
		'CEILING(2.2[pallet]; 1[pallet])',
		'3 pallet'
	),
	FLOOR: said(
		'x down to the next multiple of a step, towards minus infinity: FLOOR(x; 1[pallet]).',
		'FLOOR(0.7[m]; 0.1[m])',
		'0.7 m'
	),
	MOD: said('What remains of x after whole divisors, with its sign.', 'MOD(-7; 3)', '2'),
	DATE: said(
		'A date: days since 30 December 1899. Month 13 is January of the next year, day 0 the day before.',
		'DATE(2027; 2; 29)',
		'2027-03-01'
	),
	YEAR: said('The year of a date, a plain number.', 'YEAR(DATE(2027; 1; 31))', '2027'),
	MONTH: said('The month of a date, 1 to 12.', 'MONTH(DATE(2027; 1; 31))', '1'),
	DAY: said('The day of the month of a date, 1 to 31.', 'DAY(DATE(2027; 3; 0))', '28'),
	WEEKDAY: said(
		'The day of the week: type 1 counts from Sunday as 1 (also without a type), 2 from Monday as 1, 3 from Monday as 0.',
		'WEEKDAY(DATE(2027; 1; 31); 2)',
		'7'
	),
	ISOWEEKNUM: said(
		'The week of a date by ISO 8601: week 1 has the first Thursday.',
		'ISOWEEKNUM(DATE(2027; 1; 1))',
		'53'
	),
	MEMBER: said(
		'The member at a place of its set, from 1: the inverse of ORD.',
		'stock[MEMBER(month; 2)]'
	),
	ORD: said(
		'The place of the member in its set, from 1, a plain number.',
		'SUM(stock over month where ORD(month) <= 2)'
	),
	NUMBER: said(
		'The number of the member, in the unit of its set.',
		'SUM(cash * (1 - 5[%/year] * NUMBER(year)) over year)'
	),
	SPAN: said(
		'What all members of the set together last: 1 year for twelve months.',
		'SUM(stock over month) / SPAN(month)'
	)
};
