/** What the author of a formula is told: the words at fault, and the sentence. */
import { describe, expect, it } from 'vitest';
import { parseFormula } from '$lib/formula/parse';

/** The formula, the stretch of it that is marked, and the message. */
type Mistake = readonly [typed: string, marked: string, message: string, suggestion?: string];

const NO_CELLS = (words: string) =>
	`There are no cells here, so ${words} points at nothing: gather with SUM(x over set) or SUM(x where …), choose with x[choice].`;
const CHOICE =
	'There are no cells here: write x[choice], where choice is a member or a quantity that holds one.';

function tell(mistakes: readonly Mistake[]): void {
	for (const [typed, marked, message, suggestion] of mistakes)
		it(typed || 'nothing at all', () => {
			const result = parseFormula(typed);
			if (result.ok) throw new Error(`${typed} was read`);
			const { span, message: told, suggestion: offered } = result.problem;
			expect(told).toBe(message);
			expect(typed.slice(span.start, span.end)).toBe(marked);
			if (suggestion !== undefined) expect(offered).toBe(suggestion);
		});
}

describe('a unit stands in brackets right after its number', () => {
	tell([
		[
			'5 kg',
			'5 kg',
			'A unit follows its number in brackets: 5[kg]; a quantity is multiplied: 5 * kg.',
			'5[kg]'
		],
		[
			'1 + 5 EUR/kg',
			'5 EUR/kg',
			'A unit follows its number in brackets: 5[EUR/kg]; a quantity is multiplied: 5 * EUR.',
			'5[EUR/kg]'
		],
		[
			'x = 5x24',
			'5x24',
			"A unit follows its number in brackets: 5[x24]; a member is quoted: '5x24'."
		],
		['3 [h]', '3 [h]', 'A unit follows its number without a space: 3[h].', '3[h]'],
		[
			'(a + b)[kg]',
			'[',
			'Square brackets follow a number (its unit, 5[kg]) or a name (its member, price[steel]). To give a unit to a plain number, multiply: (…) * 1[kg].'
		],
		[
			'5[]',
			'5[]',
			'No unit stands in the brackets after 5: write one, as in 5[kg], or leave the brackets out.',
			'5'
		],
		['2 * 5[kg', '[', 'The [ at character 6 is not closed: a unit ends with ], as in 5[kg].']
	]);
});

describe('there are no cells', () => {
	tell([
		['SUM(A1:B3)', 'A1:B3', NO_CELLS('A1:B3')],
		['a : b', ':', NO_CELLS(':')],
		['2 * $A$1', '$A$1', NO_CELLS('$A$1')],
		['Plan!B2', 'Plan!B2', NO_CELLS('Plan!B2')],
		[
			'SUMIF(a; b)',
			'SUMIF',
			'There is no function SUMIF. There are no cells here: write SUM(x where …).'
		],
		[
			'sumifs(a; b)',
			'sumifs',
			'There is no function sumifs. There are no cells here: write SUM(x where …).'
		],
		[
			'COUNTIF(a; b)',
			'COUNTIF',
			'There is no function COUNTIF. There are no cells here: write COUNT(condition over set).'
		],
		...['VLOOKUP', 'INDEX', 'MATCH', 'LOOKUP', 'XLOOKUP'].map((name): Mistake => [
			`1 + ${name}(a)`,
			name,
			`There is no function ${name}. ${CHOICE}`
		])
	]);
});

describe('a function that is not there', () => {
	tell([
		['SUMM(x)', 'SUMM', 'There is no function SUMM. Did you mean SUM?', 'SUM'],
		['averge(x)', 'averge', 'There is no function averge. Did you mean AVERAGE?', 'AVERAGE'],
		[
			'price(steel)',
			'price',
			'There is no function price. A quantity takes its member in square brackets, x[L2], not in round ones.'
		],
		['POWER(x; 2)', 'POWER', 'There is no function POWER. Write x^n.'],
		['ERF(x)', 'ERF', 'There is no function ERF. Write 2 * NORMDIST(x * SQRT(2); 0; 1) - 1.'],
		[
			'HYPGEOM(x)',
			'HYPGEOM',
			'There is no function HYPGEOM. The page “Functions and units” and "metrewright functions" list those that there are.'
		],
		[
			'PMT(rate; n; loan)',
			'PMT',
			'There is no function PMT. Write loan * rate / (1 - (1 + rate)^(-n)): what each of n payments is.'
		],
		['__proto__(1)', '_', '_ has no meaning in a formula: take it out.'],
		[
			'constructor(1)',
			'constructor',
			'There is no function constructor. A quantity takes its member in square brackets, x[L2], not in round ones.'
		],
		['over(x)', 'over', 'over is a word of the language, not a function.']
	]);
});

describe('what two people read in two ways', () => {
	tell([
		['-x^2', '-x^2', '-x^2 has two readings: (-x)^2 or -(x^2). Write the brackets.'],
		[
			'3 * -(a + b)^n',
			'-(a + b)^n',
			'-(a + b)^n has two readings: (-(a + b))^n or -((a + b)^n). Write the brackets.'
		],
		['2^3^2', '2^3^2', '2^3^2 has two readings: (2^3)^2 or 2^(3^2). Write the brackets.'],
		['1<2<3', '1<2<3', 'Comparisons do not chain: write AND(1 < 2; 2 < 3).', 'AND(1 < 2; 2 < 3)'],
		[
			'a = b+1 = c',
			'a = b+1 = c',
			'Comparisons do not chain: write AND(a = b+1; b+1 = c).',
			'AND(a = b+1; b+1 = c)'
		],
		[
			'MIN(1,5)',
			'1,5',
			'1,5 has two readings: the number 1.5 or the two arguments 1; 5. Numbers take a point, arguments are separated by ; here.'
		],
		[
			'1,500',
			'1,500',
			'1,500 has three readings: the number 1.500, the number 1500 or the two arguments 1; 500. Numbers take a point, arguments are separated by ; here.'
		],
		['1e9,1', '1e9,1', 'Arguments are separated by ; here: 1e9; 1.', '1e9; 1'],
		[
			'1,234.5',
			'1,234.5',
			'1,234.5 can be a list or one number with grouped digits: separate arguments by ; and write a number without grouping, as in 1234567.8.'
		],
		[
			'1,234,567.8',
			'1,234,567.8',
			'1,234,567.8 can be a list or one number with grouped digits: separate arguments by ; and write a number without grouping, as in 1234567.8.'
		]
	]);
});

describe('separators', () => {
	tell([
		['MIN(1, 5)', ',', 'Arguments are separated by ; here, and numbers take a decimal point.', ';'],
		['MIN(L1,5)', ',', 'Arguments are separated by ; here, and numbers take a decimal point.', ';'],
		['x[a, b]', ',', 'Members are separated by ; here: x[a; b].', ';'],
		[
			'SUM(x over a, b)',
			',',
			'Sets in a list after over are joined by ×, or * as you type: over product × line.',
			' × '
		],
		[
			'SUM(x over a b)',
			'b',
			'Sets in a list after over are joined by ×, or * as you type: over product × line.'
		],
		[
			'SUM(x over a and b)',
			'and',
			'Sets in a list after over are joined by ×, or * as you type: over product × line.'
		],
		[
			'a; b',
			';',
			'A ; separates the arguments of a function or the members of x[a; b]; neither is open here.'
		],
		['IF(a;; b)', ';', 'An argument of IF is missing here: IF(condition; if_yes; if_no).'],
		['SUM(a;)', ')', 'An argument of SUM is missing here: SUM(x over set) or SUM(a; b; …).']
	]);
});

describe('operators of other notations', () => {
	tell([
		['a == b', '==', 'Equality is written with one =.', '='],
		['a != b', '!=', 'Not equal is written <>.', '<>'],
		['a && b', '&&', 'Both conditions at once are written AND(a; b).'],
		['a || b', '||', 'One condition or the other is written OR(a; b).'],
		['a =< b', '=<', 'Less or equal is written <=.', '<='],
		[
			'a & b',
			'&',
			'There is no text arithmetic here, so & joins nothing. Two conditions are written AND(a; b).'
		],
		['a AND b', 'AND', 'AND stands before its conditions: AND(a; b).'],
		['x > 5 or y', 'or', 'OR stands before its conditions: OR(a; b).'],
		['NOT a', 'NOT', 'NOT takes its condition in brackets: NOT(a).'],
		['a ** 2', '**', 'A power is written x^n.', '^'],
		['5²', '²', 'A square is written x^2.', '^2'],
		[
			'17 % 5',
			'% 5',
			'An operator is missing after %, which makes hundredths of what stands before it. For a remainder write MOD(a; b).'
		],
		['a ? b : c', '?', 'A choice between two values is written IF(condition; if_yes; if_no).'],
		['a § b', '§', '§ has no meaning in a formula: take it out.'],
		['a\u200bb', '\u200b', 'U+200B has no meaning in a formula: take it out.']
	]);
});

describe('text is for labels', () => {
	tell([
		[
			'pattern = "5x24"',
			'"5x24"',
			"There is no text in formulas. A member's name stands bare or in single quotes: '5x24'.",
			"'5x24'"
		],
		[
			'x[“L2”]',
			'“L2”',
			"There is no text in formulas. A member's name stands bare or in single quotes: L2.",
			'L2'
		],
		[
			'a = "b',
			'"',
			"There is no text in formulas. A member's name stands bare or in single quotes: '5x24'."
		],
		['x[‘L2’]', '‘', "A member in quotes takes the straight single quote: '5x24'.", "'"],
		[
			"x['5x24]",
			"'",
			"The quote at character 3 is not closed: a member in quotes ends with ', as in '5x24'."
		],
		["x['']", "''", "Nothing stands between the quotes: write a member there, as in '5x24'."],
		["x[' a']", "' a'", "A member has no space at either end: write 'a'.", "'a'"]
	]);
});

describe('a bracket says which one it is', () => {
	tell([
		['SUM((a + b)', '(', 'The ( at character 4 is not closed: add ).'],
		['2 * (a + x[b', '[', 'The [ at character 11 is not closed: add ].'],
		['(a + b))', ')', 'No bracket is open for this ): take it out.'],
		['((a]', ']', 'The ( at character 2 is closed by ]: write ).', ')'],
		['x[a)', ')', 'The [ at character 2 is closed by ): write ].', ']'],
		['()', '()', 'A number, a name or a bracket is missing between ( and ).'],
		['(a - b)[base]', '[', '[base] follows one name: write a[base] - b[base], not (a - b)[base].'],
		[
			'x[a][b]',
			'[',
			'One pair of square brackets is enough: two members stand in it with ; between, x[a; b].'
		]
	]);
});

describe('the words of the language have their places', () => {
	tell([
		[
			'x over layer',
			'over',
			'over does not belong here. It belongs inside an aggregate: SUM(x over set).'
		],
		[
			'ABS(x over layer)',
			'over',
			'ABS gathers nothing, so over does not belong here. It belongs inside an aggregate: SUM(x over set).'
		],
		[
			'AND(x over layer)',
			'over',
			'AND takes conditions one by one. For all members of a set write ALL(condition over set).'
		],
		[
			'NPV(rate over year; cash)',
			'over',
			'This argument of NPV gathers nothing, so over does not belong here: NPV(rate; cash over set).'
		],
		[
			'x where y',
			'where',
			'where does not belong here. It belongs inside an aggregate: SUM(x over set where condition).'
		],
		[
			'SUM(x where y over z)',
			'over',
			'This over comes too late: an aggregate is written with each word once, in this order: SUM(x over set where condition else y).'
		],
		['SUM(x over a WHERE b)', 'WHERE', 'where is written in small letters.', 'where'],
		['SUM(x OVER layer)', 'OVER', 'over is written in small letters.', 'over'],
		['SUM(x over)', ')', 'A set is missing after over: over layer, or over l in layer.'],
		['SUM(x over a ×)', ')', 'A set is missing after ×: over layer, or over l in layer.'],
		[
			'2 * base',
			'base',
			'base is a word of the language: x[base] is the value of x in the base scenario.'
		],
		[
			'stage.else',
			'else',
			"else is a word of the language and cannot be a name here. A member so named stands in quotes: 'else'."
		],
		[
			'installed = yes',
			'yes',
			"yes is no value of its own here: compare, or write TRUE(). A member so named stands in quotes: 'yes'."
		]
	]);
});

describe('square brackets hold members', () => {
	tell([
		[
			'x[3]',
			'3',
			"Members are chosen by name, not by place: a member called 3 stands in quotes, '3'."
		],
		[
			'x[]',
			'[]',
			'A member is missing in the square brackets: write one (L2), a choice (pattern_of_line) or a neighbour (month - 1).'
		],
		[
			'x[-a]',
			'-a',
			'-a is no member: write one (L2), a choice (pattern_of_line) or a neighbour (month - 1).'
		],
		[
			'x[month - 1.5]',
			'month - 1.5',
			'A neighbour is a set, a sign and a whole number, as in month - 1, and nothing more.'
		],
		[
			'x[month - 1 + 2]',
			'month - 1',
			'A neighbour is a set, a sign and a whole number, as in month - 1, and nothing more.'
		],
		[
			'x[month - 0]',
			'month - 0',
			'month - 0 is month itself: leave the number out, or write month - 1 for its neighbour.',
			'month'
		],
		[
			'x[month + 1001]',
			'month + 1001',
			'month + 1001 is too far: a neighbour is at most 1000 places away.'
		],
		[
			'x[base; reference]',
			'reference',
			'A value is taken from one scenario: write base or reference, not two of them.'
		],
		[
			'stage.5x24',
			'stage.5',
			"After stage. comes one of its members; one that does not begin with a letter stands in quotes: stage.'5x24'."
		],
		["'a'.b", "'a'", 'A set stands without quotes before its member: a.member.'],
		[
			'a.b.c',
			'.',
			'A point stands between a set and its member, as in stage.line, and nowhere else.'
		]
	]);
});

describe('something is missing', () => {
	tell([
		['', '', 'This formula is empty: write a number, a name or a sum.'],
		[' = ', ' = ', 'This formula is empty: write a number, a name or a sum.'],
		['a +', '+', 'The formula stops after +: a number, a name or a bracket is missing.'],
		['* 3', '*', 'Something is missing before *.'],
		['a + * b', '+ *', 'A number, a name or a bracket is missing between + and *.'],
		[
			'cost price',
			'cost price',
			'An operator is missing between cost and price. If they are one name, it has no space: cost_price.'
		],
		['(a)(b)', ')(', 'An operator is missing between ) and (.'],
		['ROUND x', 'ROUND x', 'ROUND takes its arguments in brackets: ROUND(x; digits).'],
		['1 234', '1 234', 'A number has no space in it: write 1234, or an operator between 1 and 234.']
	]);
});

describe('numbers', () => {
	tell([
		['1.2.3', '1.2.3', '1.2.3 has more than one decimal point: a number has one, as in 1.5.'],
		['5. + 1', '5.', 'Write 5: a point needs a digit after it.', '5'],
		['1e400', '1e400', '1e400 is larger than a number can be.'],
		['1e-400', '1e-400', '1e-400 is smaller than a number can be: write 0.', '0']
	]);
});

describe('functions take so many arguments', () => {
	tell([
		['IF(a; b)', 'IF(a; b)', 'IF takes 3 arguments, not 2: IF(condition; if_yes; if_no).'],
		['PI(3)', 'PI(3)', 'PI takes no arguments, not 1: PI().'],
		['ROUND()', 'ROUND()', 'ROUND takes 1 or 2 arguments, not none: ROUND(x; digits).'],
		[
			'1 + SUM()',
			'SUM()',
			'SUM takes at least 1 argument, not none: SUM(x over set) or SUM(a; b; …).'
		],
		['IRR(a; b)', 'IRR(a; b)', 'IRR takes 1 argument, not 2: IRR(cash over set).']
	]);
});

describe('the first mistake is the one that is told', () => {
	it('even where a later one could not be cut into tokens', () => {
		const result = parseFormula('a b + "text');
		expect(result).toMatchObject({ ok: false, problem: { code: 'missing-operator' } });
	});
});
