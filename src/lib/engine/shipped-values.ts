/**
 * Values that the build computed for a shipped workbook, so that a fresh page has numbers before its own engine
 * has. They belong to one text of the workbook and one build of the program, and say to which: for any other they
 * are nothing. The page marks them, and its engine confirms or replaces each.
 */
import { hashOfText } from '$lib/workbook/hash';
import type { Workbook } from '$lib/workbook/schema';
import type { QuantityFault } from './faults';
import type { PlanProblem } from './plan';
import type { Results } from './results';

/** What the first screen needs of the engine's answers. */
export interface Answered {
	readonly problems: readonly PlanProblem[];
	/** The base comes first. */
	readonly results: readonly Results[];
	readonly faults: readonly (readonly QuantityFault[])[];
}

/** As it travels: JSON knows no NaN, and the scenarios mostly repeat the base. */
export interface ShippedValues {
	readonly program: string;
	/** The mark of the workbook's text. */
	readonly workbook: string;
	readonly problems: readonly PlanProblem[];
	readonly scenarios: readonly ShippedScenario[];
}

interface ShippedScenario {
	readonly id: string;
	/** Cells that differ from the base; of the base itself all, in order, and none is named. */
	readonly cells: readonly number[] | null;
	/** null where there is no number. */
	readonly values: readonly (number | null)[];
	readonly states: readonly number[];
	readonly faults: readonly QuantityFault[];
}

export function packValues(text: string, program: string, answered: Answered): ShippedValues {
	const [base] = answered.results;
	return {
		program,
		workbook: hashOfText(text),
		problems: answered.problems,
		scenarios: answered.results.map((results, at) => {
			const cells = base && results !== base ? differing(base, results) : null;
			const pick = <T>(of: ArrayLike<T>): T[] =>
				cells ? cells.map((cell) => of[cell] as T) : Array.from(of);
			return {
				id: results.scenario,
				cells,
				values: pick(results.values).map((value) => (Number.isNaN(value) ? null : value)),
				states: pick(results.states),
				faults: answered.faults[at] ?? []
			};
		})
	};
}

/** The answers again, or null where they are of another text or another build. */
export function unpackValues(
	shipped: ShippedValues,
	text: string,
	program: string
): Answered | null {
	if (shipped.program !== program || shipped.workbook !== hashOfText(text)) return null;
	const [first] = shipped.scenarios;
	if (!first || first.cells !== null) return null;
	const base = written(first, new Float64Array(first.values.length), new Uint8Array(first.states));
	return {
		problems: shipped.problems,
		results: shipped.scenarios.map((scenario) =>
			scenario === first ? base : written(scenario, base.values.slice(), base.states.slice())
		),
		faults: shipped.scenarios.map(({ faults }) => faults)
	};
}

/**
 * The workbook in a shipped text whose stamp fits: the build has checked it whole, so it is not checked again.
 * Only text that reads as it was loaded, nothing left out or brought up, gets a stamp.
 */
export const checkedWorkbook = (text: string): Workbook => JSON.parse(text) as Workbook;

function written(
	{ id, cells, values, states }: ShippedScenario,
	into: Float64Array,
	intoStates: Uint8Array
): Results {
	values.forEach((value, at) => {
		const cell = cells ? (cells[at] ?? 0) : at;
		into[cell] = value ?? NaN;
		intoStates[cell] = states[at] ?? 0;
	});
	return { scenario: id, values: into, states: intoStates };
}

function differing(base: Results, other: Results): number[] {
	const cells: number[] = [];
	for (let cell = 0; cell < base.values.length; cell++)
		if (
			!Object.is(base.values[cell], other.values[cell]) ||
			base.states[cell] !== other.states[cell]
		)
			cells.push(cell);
	return cells;
}
