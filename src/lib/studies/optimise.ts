/**
 * The best of all combinations of alternatives, one for each option, within limits: every combination is
 * computed, so nothing is missed, and beyond 10,000 of them the study says so instead of guessing.
 */
import { findScenario } from '$lib/workbook/lookup';
import { inputAt, referenceOf } from '$lib/workbook/scenario';
import type { Workbook } from '$lib/workbook/schema';
import type { Plan } from '$lib/engine/plan';
import { OK } from '$lib/engine/state';
import { withTemporaryScenario } from './temporary-scenario';
import { carriedValue, cellKey, entriesOf, type Cell } from './cell-entries';
import { openFollowing, type Replanning } from './following';
import { verifyFirstDraw, type CheckFirst } from './first-draw';
import {
	combinationsOf,
	keeps,
	MOST_COMBINATIONS,
	type Combination,
	type OptimiseResult,
	type OptimiseStudy
} from './choices';
import { answer, refuse, type Answer } from './problem';
import { columnsOf, figure, outcomeOrNull, type Told } from './told';

export function runOptimise(
	workbook: Workbook,
	study: OptimiseStudy,
	plan?: Plan,
	checkFirst: CheckFirst = verifyFirstDraw,
	replanning?: Replanning
): Answer<OptimiseResult> {
	const { scenario, options, limits = [] } = study;
	const count = combinationsOf(study);
	if (!findScenario(workbook, scenario))
		return refuse(
			'no-such-scenario',
			`The study starts from the scenario ${scenario}, but there is none of that name: it was deleted or renamed. Choose another in the study.`
		);
	if (options.length === 0)
		return refuse('nothing-asked', 'The study has no options to choose among. Add one.');
	if (count > MOST_COMBINATIONS)
		return refuse(
			'too-many',
			`The options give ${count.toLocaleString('en')} combinations, and a study computes at most ${MOST_COMBINATIONS.toLocaleString('en')}. Take out an option, or alternatives that are out of the question.`
		);
	const temporary = withTemporaryScenario(workbook, scenario, referenceOf(workbook, scenario).id);
	const cells = cellsOf(study);
	const columns = openFollowing(
		{
			workbook: temporary.workbook,
			plan,
			scenario: temporary.id,
			vary: cells.map(({ quantity, at }) => ({ quantity, members: at, mode: 'set' })),
			ask: [study, ...limits].map(({ quantity, members }) => ({ quantity, members })),
			alone: true
		},
		study,
		replanning
	);
	if (!columns.ok) return columns;
	const { results } = columns.value;
	if (results.length !== 1 + limits.length)
		return refuse(
			'no-such-member',
			'A result or a limit of the study has several values. Say for which members it is meant.'
		);
	const choices = Array.from({ length: count }, (_, number) => choiceOf(options, number));
	const draws = drawsOf(workbook, study, cells, choices);
	const check = checkFirst(columns.value, draws);
	if (!check.ok) return check;
	const out = columns.value.run(draws, 0, count);
	const all = choices.map((choice, i): Combination => {
		const bounds = limits.map((_, k) => out.values[1 + k]![i]!);
		return {
			choice,
			value: out.values[0]![i]!,
			state: out.states[0]![i]!,
			limits: bounds,
			isWithin: limits.every(({ bound }, k) => keeps(bound, bounds[k]!))
		};
	});
	const within = all.filter(({ isWithin }) => isWithin);
	const sign = study.direction === 'highest' ? -1 : 1;
	return answer({
		kind: 'optimise',
		// A stable sort: of equals, the one with the earlier alternatives comes first.
		ranked: within.filter(({ state }) => state === OK).sort((a, b) => sign * (a.value - b.value)),
		combinations: count,
		beyondLimits: count - within.length,
		withoutAnswer: within.filter(({ state }) => state !== OK).length,
		asItIs: results[0]!.base,
		check: check.value
	});
}

/** The first option's alternatives change slowest. */
function choiceOf(options: OptimiseStudy['options'], number: number): number[] {
	const choice: number[] = [];
	let rest = number;
	for (const { alternatives } of [...options].reverse()) {
		choice.unshift(rest % alternatives.length);
		rest = Math.floor(rest / alternatives.length);
	}
	return choice;
}

/** Every cell that some alternative changes. */
function cellsOf({ options }: OptimiseStudy): Cell[] {
	const cells = new Map<string, Cell>();
	for (const { alternatives } of options)
		for (const { changes } of alternatives)
			for (const entry of changes.flatMap(entriesOf)) cells.set(cellKey(entry), entry);
	return [...cells.values()];
}

/** By cell, what it holds in each combination; of two alternatives that change it, the later option's counts. */
function drawsOf(
	workbook: Workbook,
	{ scenario, options }: OptimiseStudy,
	cells: readonly Cell[],
	choices: readonly (readonly number[])[]
): Float64Array[] {
	const carried = options.map(({ alternatives }) =>
		alternatives.map(
			({ changes }) =>
				new Map(
					changes
						.flatMap(entriesOf)
						.map((entry) => [cellKey(entry), carriedValue(workbook, entry.quantity, entry.value)])
				)
		)
	);
	return cells.map((cell) => {
		const key = cellKey(cell);
		const own = carriedValue(
			workbook,
			cell.quantity,
			inputAt(workbook, scenario, cell.quantity, cell.at).value
		);
		return Float64Array.from(choices, (choice) => {
			let value = own;
			choice.forEach((alternative, option) => {
				const given = carried[option]![alternative]!.get(key);
				if (given !== undefined) value = given;
			});
			return value;
		});
	});
}

export const optimiseTold: Told<OptimiseStudy, OptimiseResult> = {
	text({ direction, options }, result, { unit }) {
		const counts = [
			`${result.combinations} combinations`,
			...(result.beyondLimits > 0 ? [`${result.beyondLimits} beyond the limits`] : []),
			...(result.withoutAnswer > 0 ? [`${result.withoutAnswer} without an answer`] : [])
		].join(', ');
		const rows = result.ranked
			.slice(0, 10)
			.map(({ choice, value }) => [
				value,
				...choice.map(
					(alternative, option) => options[option]?.alternatives[alternative]?.label ?? ''
				)
			]);
		const best = result.ranked[0];
		return [
			best
				? `${direction === 'highest' ? 'Highest' : 'Lowest'}: ${figure(best.value)}${unit}; as it is: ${figure(result.asItIs.value)}${unit}\n`
				: 'No combination keeps the limits and has an answer.\n',
			`${counts}\n`,
			columnsOf([['', ...options.map(({ label }) => label)], ...rows])
		].join('');
	},
	data: ({ direction, options }, result) => ({
		direction,
		as_it_is: outcomeOrNull(result.asItIs),
		combinations: result.combinations,
		beyond_limits: result.beyondLimits,
		without_answer: result.withoutAnswer,
		ranked: result.ranked.slice(0, 20).map(({ choice, value }) => ({
			value,
			choice: choice.map((alternative, option) => ({
				option: options[option]?.label ?? '',
				alternative: options[option]?.alternatives[alternative]?.label ?? ''
			}))
		}))
	})
};
