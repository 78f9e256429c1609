/**
 * Thousands of columns: the results that a study asks for, for as many draws of its inputs as it likes.
 *
 * What neither the results need nor the inputs move is computed once, when the columns are opened. The rest runs
 * in blocks of a bounded size. A column's answer depends on its own draw alone, so how the draws
 * are cut up and who computes which of them never shows in a result.
 */
import { buildPlan } from '$lib/engine/planner/plan';
import { STRIDE } from '$lib/engine/interpreter/kernels/kernels';
import { Machine } from '$lib/engine/interpreter/machine';
import { schedule, type Program } from '$lib/engine/interpreter/program';
import { placeOf } from '$lib/engine/layout';
import type { Plan } from '$lib/engine/plan';
import { conditionsOf } from '$lib/engine/presence';
import type { Outcome, Place } from '$lib/engine/results';
import { findScenario } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import { effortOf, type Effort } from './effort';
import { ResultReader, seen, type ColumnsOut, type ColumnsRoom } from './result-reader';
import { InputWriter, InputBlock } from './input-writer';
import { inputsOf, type Driven, type Varied, type VariedInput } from './inputs';
import { cellsAt, type PlaceOfStudy } from './places';
import { planStudy, type CellOfScenario } from './plan';
import { scenariosOf, type ScenarioOfStudy } from './scenarios';
import { answer, refuse, type Answer } from '../problem';

export interface Asked extends PlaceOfStudy {
	/** The studied scenario when left out. */
	readonly scenario?: string | undefined;
}

export interface ColumnsRequest {
	readonly workbook: Workbook;
	/** Of this workbook; built when left out. */
	readonly plan?: Plan | undefined;
	readonly scenario: string;
	readonly vary: readonly Varied[];
	readonly ask: readonly Asked[];
	/** Keeps the draws to the studied scenario: what it is measured against stays as it is. */
	readonly alone?: boolean | undefined;
	readonly following?: Following | undefined;
}

/** Whatever follows what a draw puts in, before its results are read: plans that are made anew. */
export interface Following {
	run(
		columns: Columns,
		draws: readonly ArrayLike<number>[],
		from: number,
		count: number,
		into: ColumnsRoom
	): void;
	/** The draw as a workbook, with all that followed; null where nothing fits it. */
	drawn(columns: Columns, draws: readonly ArrayLike<number>[], draw: number): Workbook | null;
}

/** One asked cell. */
export interface ResultOfStudy extends Place {
	readonly scenario: string;
	/** Place in `ask`. */
	readonly asked: number;
	/** What it is where nothing is varied. */
	readonly base: Outcome;
}

/** Columns computed at a time: wide enough to make a step cheap, narrow enough to stay in the cache. */
export const BLOCK = 256;

export function openColumns(request: ColumnsRequest): Answer<Columns> {
	const { workbook, scenario: id } = request;
	const plan = request.plan ?? buildPlan(workbook);
	if (request.ask.length === 0)
		return refuse('nothing-asked', 'The study asks for no result. Choose at least one quantity.');
	for (const one of [id, ...request.ask.map(({ scenario }) => scenario ?? id)])
		if (!findScenario(workbook, one))
			return refuse(
				'no-such-scenario',
				`The study is of the scenario ${one}, but there is none of that name: it was deleted or renamed. Choose another in the study.`
			);
	const asked: (CellOfScenario & { readonly place: number; readonly of: string })[] = [];
	const scenarios = scenariosOf(plan, workbook, [
		id,
		...request.ask.map((asked) => asked.scenario ?? id)
	]);
	const placeOfScenario = (of: string) => scenarios.findIndex((scenario) => scenario.id === of);
	for (const [place, one] of request.ask.entries()) {
		const found = cellsAt(plan, one);
		if (!found.ok) return found;
		const of = one.scenario ?? id;
		for (const cell of found.value) asked.push({ scenario: placeOfScenario(of), cell, place, of });
	}
	const studied = placeOfScenario(id);
	const inputs = inputsOf({
		plan,
		workbook,
		scenarios,
		studied,
		vary: request.vary,
		alone: request.alone === true
	});
	if (!inputs.ok) return inputs;
	const { varied, driven } = inputs.value;
	return answer(new Columns({ ...request, plan }, scenarios, varied, driven, asked));
}

export class Columns {
	readonly workbook: Workbook;
	readonly plan: Plan;
	readonly scenario: string;
	readonly alone: boolean;
	readonly following: Following | null;
	readonly results: readonly ResultOfStudy[];
	readonly inputs: readonly VariedInput[];
	/** Every cell that follows draws, with the scenario in which it does. */
	readonly driven: readonly (Driven & { readonly id: string })[];
	readonly #program: Program;
	readonly #drives: readonly InputWriter[];
	/** Those of `driven` that the results need. */
	readonly #ins: InputBlock;
	readonly #outs: ResultReader;
	#machine: Machine | null = null;

	constructor(
		request: ColumnsRequest & { readonly plan: Plan },
		scenarios: readonly ScenarioOfStudy[],
		varied: readonly VariedInput[],
		driven: readonly Driven[],
		asked: readonly (CellOfScenario & { readonly place: number; readonly of: string })[]
	) {
		const { plan } = request;
		this.workbook = request.workbook;
		this.plan = plan;
		this.scenario = request.scenario;
		this.alone = request.alone === true;
		this.following = request.following ?? null;
		this.inputs = varied;
		this.driven = driven.map((driven) => ({ ...driven, id: scenarios[driven.scenario]!.id }));
		const known = conditionsOf(plan);
		const guards = asked.map(({ scenario, cell }) =>
			(known.get(cell) ?? []).map((condition) => ({ scenario, cell: condition }))
		);
		const study = planStudy(plan, scenarios, driven, [...asked, ...guards.flat()]);
		let next = asked.length;
		const conditions = guards.map((own) => own.map(() => study.results[next++]!));
		this.#outs = new ResultReader(
			asked.map((_, i) => ({ from: study.results[i]!, conditions: conditions[i]! }))
		);
		this.#program = schedule(study.formulas, study.order, {
			wide: study.inputs.map(({ cell }) => cell)
		});
		const outcome = ({ scenario, cell }: CellOfScenario): Outcome => {
			const { values, states } = scenarios[scenario]!.column;
			return { value: values[cell]!, state: states[cell]! };
		};
		this.#drives = driven.map((driven) => new InputWriter(plan, driven, outcome(driven)));
		this.#ins = new InputBlock(
			study.inputs.map(({ cell }) => cell),
			study.inputs.map((input) => this.#drives[input.driven]!)
		);
		this.results = asked.map((one, i) => ({
			...placeOf(plan.layout, one.cell),
			scenario: one.of,
			asked: one.place,
			base: seen(outcome(one), guards[i]!.map(outcome))
		}));
	}

	/** Steps and arithmetic of one column: what its time is measured by. */
	get effort(): Effort {
		return effortOf(this.#program);
	}

	/** Bytes that a block of columns takes. */
	get blockBytes(): number {
		return (this.#program.narrow + this.#program.wide * BLOCK) * 9;
	}

	/** Room for the results of so many draws; what no draw moves stands in it already. */
	room(count: number): ColumnsRoom {
		return this.#outs.room(count);
	}

	/**
	 * The results for draws `from` to `from + count` of each varied input, in its own unit. `into` takes them where
	 * there is room from a run before.
	 */
	run(
		draws: readonly ArrayLike<number>[],
		from = 0,
		count = lengthOf(draws) - from,
		into: ColumnsRoom = this.room(count)
	): ColumnsOut {
		if (this.following) {
			this.following.run(this, draws, from, count, into);
			return into;
		}
		const machine = this.#machineFor(count);
		const { width } = machine;
		for (let start = 0; start < count; start += width) {
			const columns = Math.min(width, count - start);
			this.#ins.fill(machine, draws, from + start, columns);
			machine.runAll();
			this.#outs.take(machine, into, start, columns);
		}
		return into;
	}

	/** What a draw puts into the cells that follow it; NaN: nothing. */
	valuesOf(draws: readonly ArrayLike<number>[], draw: number): Float64Array {
		return Float64Array.from(this.#drives, (drive) => drive.valueAt(draws, draw));
	}

	#machineFor(count: number): Machine {
		// One column alone needs no block; a block is as wide as its loops like.
		const width = count === 1 ? 1 : Math.min(BLOCK, Math.ceil(count / STRIDE) * STRIDE);
		if (!this.#machine || this.#machine.width < width)
			this.#machine = new Machine(this.#program, width);
		return this.#machine;
	}
}

const lengthOf = (draws: readonly ArrayLike<number>[]) => draws[0]?.length ?? 1;
