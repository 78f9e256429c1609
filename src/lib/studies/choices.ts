/**
 * Options, their alternatives, and what a choice among them changes: what a page shows of the study of combinations. Computing
 * them is for `optimise.ts`.
 */
import type { Change, Scalar } from '$lib/workbook/schema';
import type { StudyOf } from '$lib/workbook/study-schema';
import type { Target } from '$lib/workbook/study-shapes';
import { withValues, type ValueEntry } from '$lib/workbook/values';
import type { State } from '$lib/engine/state';
import { entriesOf } from './cell-entries';
import type { FirstDraw } from './first-draw';

export type OptimiseStudy = StudyOf<'optimise'>;

export const MOST_COMBINATIONS = 10_000;

export interface Combination {
	/** Place of the chosen alternative, by option. */
	readonly choice: readonly number[];
	readonly value: number;
	readonly state: State;
	/** What each limit's quantity comes to; NaN where it has no answer. */
	readonly limits: readonly number[];
	readonly isWithin: boolean;
}

export interface OptimiseResult {
	readonly kind: 'optimise';
	/** Those within all limits and with an answer, the best first. */
	readonly ranked: readonly Combination[];
	readonly combinations: number;
	readonly beyondLimits: number;
	readonly withoutAnswer: number;
	/** The result of the scenario as it stands. */
	readonly asItIs: { readonly value: number; readonly state: State };
	/** Null until the second engine has looked at the first draw. */
	readonly check: FirstDraw | null;
}

/** How many combinations the options give. */
export const combinationsOf = ({ options }: Pick<OptimiseStudy, 'options'>): number =>
	options.reduce((product, { alternatives }) => product * alternatives.length, 1);

/** A value without an answer keeps no limit. */
export const keeps = (bound: Target, value: number): boolean =>
	'at_least' in bound ? value >= bound.at_least : value <= bound.at_most;

/** What a combination changes, as the changes of a scenario. */
export function changesOfChoice(study: OptimiseStudy, choice: readonly number[]): Change[] {
	const entries = new Map<string, ValueEntry[]>();
	choice.forEach((alternative, option) => {
		for (const { quantity, at, value } of (
			study.options[option]?.alternatives[alternative]?.changes ?? []
		).flatMap(entriesOf))
			entries.set(quantity, [...(entries.get(quantity) ?? []), { at, value: value as Scalar }]);
	});
	return [...entries].flatMap(([quantity, own]) => {
		const value = withValues(undefined, own);
		return value === undefined ? [] : [{ quantity, value }];
	});
}

/** The options in which two combinations differ, with the label of each one's alternative. */
export function apart(
	study: OptimiseStudy,
	one: readonly number[],
	other: readonly number[]
): { readonly option: string; readonly one: string; readonly other: string }[] {
	return study.options.flatMap(({ label, alternatives }, i) =>
		one[i] === other[i]
			? []
			: [
					{
						option: label,
						one: alternatives[one[i]!]?.label ?? '',
						other: alternatives[other[i]!]?.label ?? ''
					}
				]
	);
}
