/**
 * The inputs that a study varies: which cells in which scenarios follow a draw, and what a draw makes of the
 * value that stands there.
 *
 * A draw varies an entry where it was entered. Every scenario that takes the value from there follows; a
 * scenario with an entry of its own keeps it. `alone` keeps the draw to the studied scenario.
 */
import { scenarioTitle } from '$lib/workbook/lookup';
import { inputAt } from '$lib/workbook/scenario';
import type { Workbook } from '$lib/workbook/schema';
import { membersOf } from '$lib/engine/layout';
import type { Plan } from '$lib/engine/plan';
import type { Outcome } from '$lib/engine/results';
import { OK } from '$lib/engine/state';
import { inputCellsAt, type PlaceOfStudy } from './places';
import type { ScenarioOfStudy } from './scenarios';
import { answer, refuse, type Answer } from '../problem';

/** What a draw is: the value itself, a factor on the value that stands there, or an amount added to it. */
export type Mode = 'set' | 'scale' | 'add';

export interface Varied extends PlaceOfStudy {
	/** "set" when left out. */
	readonly mode?: Mode | undefined;
	/** Where nothing stands that a factor or an amount could change, nothing follows, and that is no problem. */
	readonly lenient?: boolean | undefined;
}

/** One varied entry of a study, as it came out. */
export interface VariedInput {
	readonly place: Varied;
	/** The cells that follow the draw, and what stands in them in the studied scenario. */
	readonly cells: readonly number[];
	readonly base: readonly Outcome[];
	/** Scenarios of the study that enter a value of their own for some of them, and keep it. */
	readonly keptIn: readonly string[];
}

export interface Step {
	/** Place among the varied inputs. */
	readonly input: number;
	readonly mode: Mode;
}

/** A cell of a scenario that follows one draw, or several in turn. */
export interface Driven {
	readonly scenario: number;
	readonly cell: number;
	readonly steps: readonly Step[];
}

export interface Inputs {
	readonly varied: readonly VariedInput[];
	readonly driven: readonly Driven[];
}

export interface InputsRequest {
	readonly plan: Plan;
	readonly workbook: Workbook;
	readonly scenarios: readonly ScenarioOfStudy[];
	readonly studied: number;
	readonly vary: readonly Varied[];
	readonly alone: boolean;
}

export function inputsOf(request: InputsRequest): Answer<Inputs> {
	const { plan, workbook, scenarios, studied, vary, alone } = request;
	const { id, column } = scenarios[studied]!;
	const driven = new Map<string, { scenario: number; cell: number; steps: Step[] }>();
	const varied: VariedInput[] = [];
	for (const [input, place] of vary.entries()) {
		const found = inputCellsAt(plan, place);
		if (!found.ok) return found;
		const mode = place.mode ?? 'set';
		const cells = found.value.filter((cell) => mode === 'set' || column.states[cell] === OK);
		if (cells.length === 0 && place.lenient !== true)
			return refuse(
				'no-value',
				`${place.quantity} has no value in ${scenarioTitle(workbook, id)} that a factor or an amount could change. Enter one, or give the study values of its own.`,
				place.quantity
			);
		const keptIn = new Set<string>();
		for (const cell of cells) {
			const at = membersOf(plan.layout, cell);
			const { from } = inputAt(workbook, id, place.quantity, at);
			scenarios.forEach((scenarioOfStudy, scenario) => {
				if (scenario !== studied) {
					if (alone) return;
					if (inputAt(workbook, scenarioOfStudy.id, place.quantity, at).from !== from) {
						keptIn.add(scenarioOfStudy.id);
						return;
					}
				}
				const key = `${scenario} ${cell}`;
				const known = driven.get(key) ?? { scenario, cell, steps: [] };
				known.steps.push({ input, mode });
				driven.set(key, known);
			});
		}
		const base = cells.map((cell) => ({
			value: column.values[cell]!,
			state: column.states[cell]!
		}));
		varied.push({ place, cells, base, keptIn: [...keptIn] });
	}
	return answer({ varied, driven: [...driven.values()] });
}
