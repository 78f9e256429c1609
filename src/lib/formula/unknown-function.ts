/**
 * What to write instead of a function that is not there: functions that read cells, those with another
 * spelling or operator here, and the nearest name for the rest.
 */
import { FUNCTIONS } from './functions';
import { nearest } from './names';

const noCells = (instead: string) => `There are no cells here: write ${instead}.`;
const filtered = (aggregate: string) => noCells(`${aggregate}(x where …)`);
const choice = noCells('x[choice], where choice is a member or a quantity that holds one');
const noText = 'There is no text arithmetic here: labels belong to sets and quantities.';
const noClock =
	'A workbook has no clock, or its results would change overnight: enter the date as an input, or write DATE(2027; 1; 31).';

const instead: ReadonlyMap<string, string> = new Map([
	['SUMIF', filtered('SUM')],
	['SUMIFS', filtered('SUM')],
	['COUNTIF', noCells('COUNT(condition over set)')],
	['COUNTIFS', noCells('COUNT(condition over set)')],
	['COUNTA', 'Write COUNT(x over set): it counts the members that have a value.'],
	['AVERAGEIF', filtered('AVERAGE')],
	['AVERAGEIFS', filtered('AVERAGE')],
	['MINIFS', filtered('MIN')],
	['MAXIFS', filtered('MAX')],
	['SUMPRODUCT', noCells('SUM(x * y over set)')],
	['VLOOKUP', choice],
	['HLOOKUP', choice],
	['XLOOKUP', choice],
	['LOOKUP', choice],
	['INDEX', choice],
	['MATCH', choice],
	['CHOOSE', choice],
	['INDIRECT', choice],
	['OFFSET', noCells('x[set - 1] for a neighbour')],
	['ROW', noCells('ORD(set) for the place of a member')],
	['COLUMN', noCells('ORD(set) for the place of a member')],
	['IFS', 'Write one IF inside another, or give the quantity a formula for each member.'],
	['SWITCH', 'Write one IF inside another, or give the quantity a formula for each member.'],
	['ISERROR', 'Write IFERROR(x; instead).'],
	['IFNA', 'Write IFERROR(x; instead).'],
	['XOR', 'Write a <> b.'],
	['POWER', 'Write x^n.'],
	['SUMSQ', 'Write SUM(x^2 over set).'],
	['MEAN', 'Write AVERAGE(x over set).'],
	['AVG', 'Write AVERAGE(x over set).'],
	['LOG', 'Write LN(x) / LN(10) for the logarithm to base 10.'],
	['LOG10', 'Write LN(x) / LN(10).'],
	['INT', 'Write FLOOR(x; 1).'],
	['TRUNC', 'Write ROUNDDOWN(x).'],
	['LARGE', 'Write RANK(x; y over set) and take the member whose place you want.'],
	['SMALL', 'Write RANK(x; y over set) and take the member whose place you want.'],
	['NORMSDIST', 'Write NORMDIST(z; 0; 1).'],
	['NORMSINV', 'Write NORMINV(share; 0; 1).'],
	['ERF', 'Write 2 * NORMDIST(x * SQRT(2); 0; 1) - 1.'],
	['PMT', 'Write loan * rate / (1 - (1 + rate)^(-n)): what each of n payments is.'],
	['PV', 'Write payment * (1 - (1 + rate)^(-n)) / rate: what n payments are worth today.'],
	['FV', 'Write payment * ((1 + rate)^n - 1) / rate: what n payments grow to.'],
	['CONCATENATE', noText],
	['CONCAT', noText],
	['TEXT', noText],
	['LEFT', noText],
	['RIGHT', noText],
	['MID', noText],
	['TODAY', noClock],
	['NOW', noClock],
	['EOMONTH', 'Write DATE(year; month + 1; 0): the day before the first of the next month.'],
	['EDATE', 'Write DATE(YEAR(date); MONTH(date) + n; DAY(date)).'],
	['DAYS', 'Write one date less the other.'],
	['WEEKNUM', 'Write ISOWEEKNUM(date).'],
	['DATEVALUE', 'Write DATE(2027; 1; 31).']
]);

export interface FunctionAdvice {
	/** A sentence or more that says what to write. */
	readonly message: string;
	/** A function name that may replace the one written. */
	readonly suggestion?: string | undefined;
}

/** Advice on a function name that is not in the table. */
export function adviseOnFunction(name: string): FunctionAdvice {
	const known = instead.get(name.toUpperCase());
	if (known !== undefined) return { message: known };
	const near = nearest(name, FUNCTIONS.keys());
	if (near !== undefined) return { message: `Did you mean ${near}?`, suggestion: near };
	// Functions are written in capitals: who writes so means one, and no quantity.
	if (/^\p{Lu}[\p{Lu}\d]+$/u.test(name))
		return {
			message:
				'The page “Functions and units” and "metrewright functions" list those that there are.'
		};
	return { message: 'A quantity takes its member in square brackets, x[L2], not in round ones.' };
}
