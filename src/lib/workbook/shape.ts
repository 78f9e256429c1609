/**
 * Checks a document, or a part of one, against its schema, and says in our words what does not fit.
 */
import { shown } from './shown';
import { childAt } from './place';
import { put } from './values';
import { z } from './zod';

export interface ShapeProblem {
	readonly path: readonly PropertyKey[];
	/** What is wrong with what stands there: "should be a number, not the text "1,95"". */
	readonly message: string;
	readonly remedy: string;
}

/** zod passes over the name "__proto__" in records; under this stand-in it is checked like any other. */
const STAND_IN = '__proto__\u{E000}';
const NAME = 'a letter first, then letters, digits or underscores';

/** What does not fit, in the order of the document; none when all does. */
export function shapeProblems(schema: z.core.$ZodType, value: unknown): ShapeProblem[] {
	const result = z.safeParse(schema, renamed(value));
	if (result.success) return [];
	const problems = new Map<string, ShapeProblem>();
	for (const issue of result.error.issues) {
		const problem = inWords(deepest(issue), value);
		const key = JSON.stringify([problem.path.map(String), problem.message]);
		if (!problems.has(key)) problems.set(key, problem);
	}
	return [...problems.values()];
}

/** The same value with "__proto__" called otherwise; itself where the name does not occur. */
function renamed(value: unknown): unknown {
	if (!hasProto(value)) return value;
	if (Array.isArray(value)) return value.map(renamed);
	const copy: Record<string, unknown> = {};
	for (const [name, entry] of Object.entries(value))
		put(copy, name === '__proto__' ? STAND_IN : name, renamed(entry));
	return copy;
}

/** Whether the name occurs, however deep: hardly ever. */
function hasProto(value: unknown): value is object {
	if (typeof value !== 'object' || value === null) return false;
	if (Array.isArray(value)) return value.some(hasProto);
	const entries = value as Readonly<Record<string, unknown>>;
	return Object.keys(value).some((name) => name === '__proto__' || hasProto(entries[name]));
}

interface Found {
	readonly issue: z.core.$ZodIssue;
	readonly path: readonly PropertyKey[];
}

/** Of the ways in which no alternative fits, the one that came furthest: it names the true place. */
function deepest(issue: z.core.$ZodIssue, before: readonly PropertyKey[] = []): Found {
	const path = [...before, ...issue.path];
	let best: Found = { issue, path };
	if (issue.code === 'invalid_union')
		for (const found of issue.errors.flat().map((inner) => deepest(inner, path)))
			if (found.path.length > best.path.length || isSharper(found, best)) best = found;
	return best;
}

/** At the same place, an alternative of the right kind that breaks a rule says more than "none fits". */
const isSharper = (found: Found, best: Found): boolean =>
	found.path.length === best.path.length &&
	best.issue.code === 'invalid_union' &&
	(found.issue.code === 'too_big' || found.issue.code === 'unrecognized_keys');

function inWords({ issue, path }: Found, document: unknown): ShapeProblem {
	const real = path.map((key) => (key === STAND_IN ? '__proto__' : key));
	const value = childAt(document, real);
	const field = String(real.at(-1) ?? 'the document');
	const say = (message: string, remedy: string): ShapeProblem => ({ path: real, message, remedy });
	const missing = value === undefined && real.length > 0;
	switch (issue.code) {
		case 'invalid_type':
			if (missing) return say('is missing', `Add "${shown(field)}": ${kindOf(issue.expected)}.`);
			return say(
				`should be ${kindOf(issue.expected)}, not ${described(value)}`,
				`Write ${kindOf(issue.expected)}.`
			);
		case 'unrecognized_keys': {
			const keys = issue.keys.map((key) => shown(key === STAND_IN ? '__proto__' : key));
			const names = keys.slice(0, 3).map((key) => `"${key}"`);
			return say(
				`has ${names.join(', ')}, which no workbook of this version has here`,
				'Correct the spelling, or take it out.'
			);
		}
		case 'too_big':
		case 'too_small':
			return say(...tooBigOrSmall(issue));
		case 'invalid_format':
			return say(...badText(issue, value));
		case 'invalid_key':
			return say(
				`is not a member's id: ${shown(JSON.stringify(field))}`,
				'A member id has 1 to 64 characters, no quotes, and no space at either end.'
			);
		case 'invalid_value':
		case 'invalid_union': {
			const allowed = allowedBy(issue)
				.map((entry) => JSON.stringify(entry))
				.join(', ');
			if (missing) return say('is missing', `Add "${shown(field)}"${allowed && `: ${allowed}`}.`);
			return issue.code === 'invalid_value'
				? say(`is ${described(value)}`, `Write ${allowed}.`)
				: say(
						`cannot be ${described(value)} here`,
						allowed ? `Write one of ${allowed}.` : remedyForUnion(field)
					);
		}
		default:
			return say(`cannot be ${described(value)}`, 'Compare it with the format description.');
	}
}

function tooBigOrSmall(
	issue: z.core.$ZodIssueTooBig | z.core.$ZodIssueTooSmall
): [message: string, remedy: string] {
	const limit = Number(issue.code === 'too_big' ? issue.maximum : issue.minimum);
	const much = issue.code === 'too_big' ? 'more' : 'less';
	if (issue.origin === 'string')
		return limit === 1 && much === 'less'
			? ['is an empty text', 'Write something, or take the entry out.']
			: [`is longer than ${limit} characters`, 'Shorten it.'];
	if (issue.origin === 'array')
		return much === 'less'
			? [`needs at least ${limit === 1 ? 'one entry' : `${limit} entries`}`, 'Add what is missing.']
			: [`has more than ${limit} entries`, 'Take some out.'];
	return [`is ${much} than ${limit}`, `Write ${limit} or ${much === 'more' ? 'less' : 'more'}.`];
}

function badText(
	issue: z.core.$ZodIssueInvalidStringFormat,
	value: unknown
): [message: string, remedy: string] {
	const text = described(value);
	if (issue.format === 'date')
		return [`is ${text}, which is no day of the calendar`, 'Write it like "2026-11-24".'];
	if (issue.pattern?.includes('[^,'))
		return [
			`is ${text}, which cannot be another name`,
			'Leave out commas, and the space at either end.'
		];
	if (issue.pattern?.includes('\\p{Cc}'))
		return [`is ${text}, which cannot name a member`, 'Use no quotes, and no space at either end.'];
	return [`is ${text}, which cannot be a name`, `A name has ${NAME}.`];
}

/** The values that there are; of a union, the kinds that decide what else belongs. */
const allowedBy = (issue: z.core.$ZodIssueInvalidValue | z.core.$ZodIssueInvalidUnion) =>
	(issue.code === 'invalid_value' ? issue.values : 'options' in issue && issue.options) || [];

function remedyForUnion(field: string): string {
	if (field === 'type') return 'Write "number", "yes_no", or {"member_of": a set}.';
	if (field === 'formula') return 'Write a formula as text, or {"by": an axis, "cases": {…}}.';
	return "Write a number, true, false, a member's id, null, or an object by member.";
}

function kindOf(expected: string): string {
	if (expected === 'string') return 'a text in double quotes';
	if (expected === 'number') return 'a number';
	if (expected === 'int') return 'a whole number';
	if (expected === 'boolean') return 'true or false';
	if (expected === 'array') return 'a list in [ ]';
	return 'an object in { }';
}

/** A value as a sentence may name it: 'the text "1,95"', 'a list'. */
function described(value: unknown): string {
	if (typeof value === 'string') return `the text "${shown(value)}"`;
	if (Array.isArray(value)) return 'a list';
	if (typeof value === 'object' && value !== null) return 'an object';
	return value === undefined ? 'nothing' : String(value);
}
