/**
 * What a person reads about a unit that cannot be taken: what is wrong, why, and what to write instead.
 */
import { LARGEST_EXPONENT } from './algebra';

export const LONGEST_TEXT = 80;
export const DEEPEST_BRACKETS = 12;

const FORM = 'A unit is symbols joined with * and /, as in EUR/kg or EUR/(person*h).';

/** What a person who writes these needs to hear besides the symbol to write. */
const REASONS: ReadonlyMap<string, string> = new Map([
	['K', 'Temperatures are differences here, and a difference of 1 °C is 1 K.'],
	['day', 'A day is a count of its own, so that hours never turn into days by themselves.'],
	['year', 'A year is a count of its own, so that hours never turn into years by themselves.']
]);
const CURRENCY_SIGNS: ReadonlyMap<string, string> = new Map([
	['$', 'The sign $ stands for several currencies: write which one, as in USD.'],
	['¥', 'The sign ¥ stands for several currencies: write which one, as in JPY.'],
	['kr', 'kr stands for several currencies: write SEK, NOK or DKK.']
]);

export function unknownUnit(symbol: string, nearest: string | undefined): string {
	const sign = CURRENCY_SIGNS.get(symbol);
	if (sign !== undefined) return sign;
	if (nearest === undefined)
		return `Unknown unit "${symbol}". Choose one from the list of units, or add "${symbol}" to the workbook's own units.`;
	const reason = REASONS.get(nearest);
	return `Unknown unit "${symbol}". Write ${nearest}${reason === undefined ? '' : `. ${reason.replace(/\.$/, '')}`}.`;
}

export function brokenUnit(symbol: string): string {
	return `The workbook's own unit "${symbol}" cannot be used: its definition has a fault. Mend it in the list of units.`;
}

export function tooLong(length: number): string {
	return `This unit has ${length} characters; the most is ${LONGEST_TEXT}. Add a short symbol for it to the workbook's own units.`;
}

export function tooDeep(): string {
	return `Brackets inside brackets go ${DEEPEST_BRACKETS} deep at most. Leave out those that are not needed.`;
}

export function exponentTooLarge(exponent: string): string {
	return `The exponent ${exponent} is too large: a unit's exponents go from -${LARGEST_EXPONENT} to ${LARGEST_EXPONENT}. Write a smaller whole number.`;
}

export function unitTooLarge(): string {
	return `Multiplied out, this unit has an exponent beyond ${LARGEST_EXPONENT} or is too large or small to compute with. Write a simpler unit.`;
}

export function exponentNotWhole(exponent: string): string {
	return `The exponent ${exponent} is not a whole number. Write a whole one, as in m^2.`;
}

export function exponentMissing(): string {
	return 'A whole number is missing after ^. Write one, as in m^2, or leave out the ^.';
}

export function twoExponents(): string {
	return 'Two exponents on one symbol have two readings. Write one, as in m^6.';
}

export function twoReadings(typed: string, below: string, above: string): string {
	return `${typed} has two readings. Write ${below} or ${above}.`;
}

export function symbolMissing(after: string): string {
	return after === ''
		? `A symbol is missing here. ${FORM}`
		: `A symbol is missing after ${after}. Add it, or leave out the ${after}.`;
}

export function bracketOpen(): string {
	return 'The bracket ( is never closed. Add ) where the group ends.';
}

export function bracketUnopened(): string {
	return 'There is a ) without a ( before it. Leave it out, or add the (.';
}

export function numberInUnit(number: string): string {
	if (number.includes(','))
		return `The number ${number} has a comma. Write a point: ${number.replace(',', '.')}.`;
	return `A unit holds no number such as ${number}. For a multiple, add a unit of its own to the workbook, such as one that equals ${number} of another.`;
}

export function wordPer(): string {
	return 'Write / for "per", as in EUR/kg.';
}

export function operatorMissing(before: string, after: string): string {
	return `Between ${before} and ${after} stands no * or /. Write ${before}*${after} or ${before}/${after}.`;
}

export function strangeCharacter(character: string): string {
	return character === '-' || character === '.'
		? `The sign ${character} joins no units. Write * for times and / for per.`
		: `The sign ${character} has no meaning in a unit. ${FORM}`;
}

export function amountNotPositive(number: string): string {
	return `${number} cannot stand before a unit here: it must be above 0, with at most 40 digits before and behind the point. Write a number such as 1000 or 0.5.`;
}

export function badSymbol(symbol: string): string {
	return `"${symbol}" cannot be a unit's symbol. Begin with a letter or _ and go on with letters, digits or _.`;
}

export function builtIn(symbol: string): string {
	return `The unit "${symbol}" is built in and cannot be defined again. Choose another symbol, or leave the definition out.`;
}

export function definedTwice(symbol: string): string {
	return `The unit "${symbol}" is defined twice in this workbook. Keep one of the definitions.`;
}

export function definedInCircle(symbols: readonly string[]): string {
	const loop = [...symbols, symbols[0] ?? ''].map((symbol) => `"${symbol}"`).join(' by ');
	return `it is defined in a circle: ${loop}. Give one of them as a number of another unit, or as a unit of its own.`;
}

export function inDefinition(symbol: string, message: string): string {
	return `The definition of the unit "${symbol}" cannot be read: ${message}`;
}

export function multipleOutOfReach(symbol: string): string {
	return `The unit "${symbol}" is too large or small, or has too many digits, to compute with. Define it with a shorter number.`;
}
