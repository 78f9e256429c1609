/**
 * The sentences that say why a value is missing: what happened, why (with the value and the name at fault), and
 * what to do. Which of them holds is found in `reason.ts`.
 */
import type { Range } from '$lib/workbook/schema';
import { listed, rangeText } from './number-words';
import {
	ABSENT,
	BAD_ARGUMENT,
	BAD_FORMULA,
	CIRCULAR,
	DIVIDES_BY_ZERO,
	HITS_NOTHING,
	NO_ANSWER,
	NOT_A_REAL,
	NOT_ENTERED,
	OFF_END,
	OUT_OF_RANGE,
	TOO_LARGE,
	USES_EMPTY,
	type State
} from './state';

/** What is said of a state where nothing more is known. */
const PLAIN: Readonly<Record<State, string>> = {
	[ABSENT]: 'There is no such value in this scenario.',
	[NOT_ENTERED]: 'No value entered. Enter one.',
	[OFF_END]: 'It reads past the end of a set. Write after else what holds there.',
	[NO_ANSWER]: 'The question has no answer here.',
	[DIVIDES_BY_ZERO]: 'It divides by zero. Change the divisor, or test for zero with IF.',
	[NOT_A_REAL]: 'No real number answers it: check the root, logarithm or power.',
	[TOO_LARGE]: 'It grows beyond what a number can hold. Check what it is computed from.',
	[HITS_NOTHING]: 'It looks up a value that does not exist.',
	[USES_EMPTY]: 'An input that it uses is empty. Enter a value.',
	[OUT_OF_RANGE]: 'It is outside its permitted range.',
	[CIRCULAR]: 'It depends on itself. Break the loop.',
	[BAD_FORMULA]: 'Its formula cannot be read. Mend the formula.',
	[BAD_ARGUMENT]: 'A function was given what it cannot take.'
};

export const reasonText = (state: State): string => PLAIN[state] ?? '';

/** A value that is at fault: its name, what it is, and whether it is entered or computed. */
export interface Named {
	readonly name: string;
	readonly value: string;
	readonly isInput: boolean;
}

const remedyFor = ({ isInput }: Named, entered: string, computed: string) =>
	isInput ? entered : computed;

export const notEntered = (name: string) => `No value entered for ${name}. Enter one.`;

/** "outside its permitted range (above 0 and at most 100 m/min)". */
export function outOfRange(fault: Named, range: Range, unit: string): string {
	const remedy = remedyFor(
		fault,
		'Enter a value within it, or change the range.',
		'Check what it is computed from, or change the range.'
	);
	return `${fault.name} is ${fault.value}, outside its permitted range (${rangeText(range, unit)}). ${remedy}`;
}

export function dividesByZero(subject: string, zeros: readonly Named[], divisor: string): string {
	if (zeros.length === 0)
		return `${subject} divides by zero: ${divisor} comes to 0. Change what it is computed from, or test for zero with IF.`;
	const [first] = zeros;
	const verb = zeros.length === 1 ? 'is' : 'are';
	const remedy = remedyFor(
		first!,
		'Enter another value, or test for zero with IF.',
		'Change what it is computed from, or test for zero with IF.'
	);
	return `${subject} divides by zero: ${listed(zeros.map(({ name }) => name))} ${verb} ${first!.value}. ${remedy}`;
}

/** What was asked of which number: "the square root of", "the logarithm of". */
export function notReal(subject: string, asked: string, of: string, needs: string): string {
	return `${subject} takes ${asked} ${of}, which is no real number. It needs ${needs}: check what it is computed from.`;
}

export const tooLarge = (subject: string) =>
	`${subject} grows beyond what a number can hold (about 1.8e308). Check the size and the unit of what it is computed from.`;

export const pairMissing = (subject: string, choice: string, looked: string) =>
	`${subject} looks up ${looked} by ${choice}, and there is no such value. Choose another member, or give it a value.`;

/** A pair that no relation holds, read at the result's own members. */
export const notRelated = (subject: string, looked: string, relations: readonly string[]) =>
	`${subject} reads ${looked}, which has no value there: ${listed(relations)} ${relations.length === 1 ? 'does' : 'do'} not hold that pair. Add the pair, or keep the formula to the same relation.`;

/** A value that a scenario looks up in the frozen copy that it is measured against. */
export const notInCopy = (name: string, copy: string, because: string) =>
	because
		? `${name} had no value in the frozen copy ${copy}: ${because}`
		: `There is no value of ${name} in the frozen copy ${copy}: it was not there on that day, or meant another thing. Leave it out with where, or measure against something else.`;

/** A value that is left out because a condition says no. */
export const absent = (name: string, because: string) =>
	`${name} is absent in this scenario: ${because}.`;

export const useOfAbsent = (subject: string, name: string, because: string) =>
	`${subject} uses ${name}, which is absent in this scenario: ${because}. Leave it out with where, or test for it with IF.`;

export const offEnd = (subject: string, read: string, member: string, isBefore: boolean) =>
	`${subject} reads ${read}, but there is no ${isBefore ? 'member before' : 'member after'} ${member}. Write after else what holds there.`;

export const circular = (subject: string) =>
	`${subject} depends on itself. Break the loop: let one of its formulas use an input instead.`;

export const circularScenarios = (scenario: string) =>
	`${scenario} is measured against a scenario that is built on it. Measure it against another.`;

export const badArgument = (subject: string, what: string) => `${subject} ${what}.`;

export const noAnswer = (subject: string, why: string) => `${subject} has no answer: ${why}.`;
