/**
 * Which cells a quantity has, which of them take an entered value, and what may be entered there.
 *
 * Answers from the structure alone; it reads no formula beyond the word "input" as a case.
 */
import { axesOf, pairKey, relationAxes, type NamedAxis } from './axes';
import { findRelation, findSet, memberPlaces, pairsOf } from './lookup';
import type { Quantity, Scalar, Values, Workbook } from './schema';
import { branch, isTree } from './values';

/** The case that takes the entered value, and the case for all members that have none of their own. */
export const INPUT = 'input';
export const OTHERS = '*';

export interface CellProblem {
	readonly code: string;
	/** Follows the name of the place: "has no member PX99 in the set product". */
	readonly message: string;
	readonly remedy: string;
}

interface Restriction {
	readonly name: string;
	readonly axes: readonly number[];
	readonly pairs: ReadonlySet<string>;
}

export interface CellGuide {
	readonly quantity: Quantity;
	readonly axes: readonly NamedAxis[];
	readonly members: readonly ReadonlyMap<string, number>[];
	readonly restrictions: readonly Restriction[];
	/** Members that a choice may hold; null where the quantity is no choice. */
	readonly choices: ReadonlyMap<string, number> | null;
	/** Axis that the formulas go by, −1 for none. */
	readonly caseAxis: number;
}

/** Null while a set or relation of the quantity is missing: then nothing can be said about its cells. */
export function cellGuide(workbook: Workbook, quantity: Quantity): CellGuide | null {
	const axes = axesOf(quantity);
	const members: ReadonlyMap<string, number>[] = [];
	for (const axis of axes) {
		const set = findSet(workbook, axis.set);
		if (!set) return null;
		members.push(memberPlaces(set));
	}
	const restrictions: Restriction[] = [];
	for (const name of quantity.in ?? []) {
		const relation = findRelation(workbook, name);
		const places = relation && relationAxes(axes, relation);
		if (!relation || !places) return null;
		restrictions.push({ name, axes: places, pairs: pairsOf(relation) });
	}
	let choices: ReadonlyMap<string, number> | null = null;
	if (typeof quantity.type === 'object') {
		const set = findSet(workbook, quantity.type.member_of);
		if (!set) return null;
		choices = memberPlaces(set);
	}
	const { formula } = quantity;
	const by = typeof formula === 'object' ? formula.by : null;
	const caseAxis = axes.findIndex((axis) => axis.name === by);
	return { quantity, axes, members, restrictions, choices, caseAxis };
}

/** The formula of the case that these members fall under; undefined where none is given. */
export function caseOf(quantity: Quantity, member: string): string | undefined {
	if (typeof quantity.formula !== 'object') return quantity.formula;
	const { cases } = quantity.formula;
	if (Object.hasOwn(cases, member)) return cases[member];
	return Object.hasOwn(cases, OTHERS) ? cases[OTHERS] : undefined;
}

/** Whether the cell takes an entered value. */
export const isInput = (guide: CellGuide, at: readonly string[]): boolean =>
	takesEntry(guide.quantity, at[guide.caseAxis] ?? '');

/** The same by the one member that decides: that of the axis by which the quantity's formulas go. */
export function takesEntry(quantity: Quantity, member: string): boolean {
	if (quantity.formula === undefined) return true;
	return typeof quantity.formula === 'object' && caseOf(quantity, member)?.trim() === INPUT;
}

/** Whether any cell takes an entered value. */
export function hasInputs(quantity: Quantity): boolean {
	const { formula } = quantity;
	if (formula === undefined) return true;
	return (
		typeof formula === 'object' &&
		Object.values(formula.cases).some((text) => text.trim() === INPUT)
	);
}

/** Why there is no such cell, or none that takes a value; null where all is well. */
export function placeProblem(guide: CellGuide, at: readonly string[]): CellProblem | null {
	const { axes, members } = guide;
	if (at.length !== axes.length)
		return {
			code: 'wrong-nesting',
			message:
				axes.length === 0
					? 'is not per anything, so it takes one value'
					: `is per ${axes.map((axis) => axis.name).join(' and ')}, so it takes a value for each, nested in this order`,
			remedy:
				axes.length === 0
					? 'Write the one value.'
					: `Write an object by ${axes.map((axis) => axis.set).join(', within it by ')}.`
		};
	for (let i = 0; i < axes.length; i++)
		if (!members[i]?.has(at[i] ?? ''))
			return {
				code: 'unknown-member',
				message: `${axes[i]?.set} has no member "${at[i]}"`,
				remedy: 'Add the member, or take the value out.'
			};
	for (const { name, axes: bound, pairs } of guide.restrictions) {
		const pair = bound.map((axis) => at[axis] ?? '');
		if (!pairs.has(pairKey(pair)))
			return {
				code: 'no-such-pair',
				message: `the pair ${pair.join(', ')} does not exist in the relation ${name}`,
				remedy: `Add the pair to ${name}, or take the value out.`
			};
	}
	if (!isInput(guide, at))
		return {
			code: 'value-beside-formula',
			message: 'this value follows a formula, so none can be entered',
			remedy: 'Take the value out, or make it an input.'
		};
	return null;
}

/** Why this quantity cannot hold the scalar; null where it can. Null, nobody's entry, fits everywhere. */
export function scalarProblem(guide: CellGuide, value: Scalar): CellProblem | null {
	const { quantity, choices } = guide;
	if (value === null) return null;
	if (choices) {
		if (typeof value === 'string' && choices.has(value)) return null;
		const set = typeof quantity.type === 'object' ? quantity.type.member_of : '';
		return {
			code: 'wrong-type',
			message: `${JSON.stringify(value)} is not a member of ${set}`,
			remedy: `Choose a member of ${set}.`
		};
	}
	if (quantity.type === 'yes_no')
		return typeof value === 'boolean'
			? null
			: {
					code: 'wrong-type',
					message: `it takes yes or no, not ${JSON.stringify(value)}`,
					remedy: 'Write true or false.'
				};
	const kind = quantity.shown === 'date' ? 'date like "2024-02-29"' : 'number';
	return typeof value === 'number' && Number.isFinite(value)
		? null
		: {
				code: 'wrong-type',
				message: `it takes a ${kind}, not ${typeof value === 'number' ? String(value) : JSON.stringify(value)}`,
				remedy: `Write a ${kind}, or null where nobody entered one.`
			};
}

/** Every entered value that does not belong where it stands, with its members. */
export function* misplaced(
	guide: CellGuide,
	values: Values,
	at: readonly string[] = []
): Generator<{ at: readonly string[]; problem: CellProblem }> {
	if (isTree(values) && at.length < guide.axes.length) {
		for (const member of Object.keys(values))
			yield* misplaced(guide, branch(values, member) ?? null, [...at, member]);
		return;
	}
	// An object where a scalar should stand is one level too deep.
	const problem = isTree(values)
		? placeProblem(guide, [...at, ''])
		: (placeProblem(guide, at) ?? scalarProblem(guide, values));
	if (problem) yield { at, problem };
}

/**
 * The values without those that do not belong, or only without those that do not for the one reason
 * given; undefined when none is left.
 */
export function fitting(
	guide: CellGuide,
	values: Values | undefined,
	onlyFor?: string
): Values | undefined {
	if (values === undefined) return undefined;
	const keep = (here: Values, at: readonly string[]): Values | undefined => {
		if (isTree(here) && at.length < guide.axes.length) {
			const members = Object.keys(here);
			const kept = members.flatMap((member) => {
				const value = keep(branch(here, member) ?? null, [...at, member]);
				return value === undefined ? [] : [[member, value] as const];
			});
			if (kept.length === 0) return undefined;
			const same = ([member, value]: readonly [string, Values]) => branch(here, member) === value;
			// `fromEntries` makes own properties of every name, "__proto__" as well.
			return kept.length === members.length && kept.every(same) ? here : Object.fromEntries(kept);
		}
		const problem = isTree(here)
			? placeProblem(guide, [...at, ''])
			: (placeProblem(guide, at) ?? scalarProblem(guide, here));
		return problem && (onlyFor === undefined || problem.code === onlyFor) ? undefined : here;
	};
	return keep(values, []);
}
