/**
 * A scenario's plan: the programme derived, solved member by member, proven, and written as what the workbook keeps; or
 * the words that say why there is none.
 */
import { membersOf } from '$lib/engine/layout';
import { unitOfSides } from '$lib/engine/planner/sides';
import type { Model } from '$lib/engine/model';
import { OK } from '$lib/engine/state';
import type { Column } from '$lib/engine/scenarios';
import { findScenario } from '$lib/workbook/lookup';
import type { Programme, ProgrammePlan } from '$lib/workbook/programme-schema';
import { withValues, type ValueEntry } from '$lib/workbook/values';
import { derive } from './derive';
import { Memory } from './memory';
import { cellBeside, type Derivation, type Derived, type Part } from './part';
import type { Solver } from './highs';
import { movesAsDerived, scattered } from './proof';
import { sizeProblem, type SolveOutcome, type Solved, type SolveSettings } from './solve';
import { tieWeights } from './ties';
import { whyNoPlan } from './words';
import { worthFactor } from './worth';

export interface Priced {
	readonly quantity: string;
	readonly cell: number;
	/** The constraint's. */
	readonly of: number;
	/** Per unit of the constraint: with one more, and with one less where that differs; null where no plan is left. */
	readonly more: number | null;
	readonly less: number | null;
	/** Over how many units more, and over how many less, it holds. */
	readonly until: number;
	readonly untilLess: number;
}

export interface Planned {
	readonly programme: string;
	readonly scenario: string;
	readonly status: SolveOutcome['status'] | 'not-linear' | 'too-large';
	/** Why there is no plan; empty where there is one. */
	readonly problems: readonly string[];
	/** Null where there is none. */
	readonly plan: ProgrammePlan | null;
	readonly objective: number;
	/** Largest of the parts, relative. */
	readonly gap: number;
	/** Whether every part is proven best, and the derived numbers answer as the workbook does. */
	readonly proven: boolean;
	readonly prices: readonly Priced[];
	/** The decisions whose value differs from what stood there, by cell. */
	readonly changed: readonly number[];
	/** What was decided; null where there is no plan. */
	readonly chosen: readonly Chosen[] | null;
}

export interface Chosen {
	readonly cells: Int32Array;
	readonly values: Float64Array;
}

export interface PlanSettings extends Pick<SolveSettings, 'seconds' | 'gap'> {
	/** What was found before; nothing where it is left out. */
	readonly memory?: Memory;
	/** What the parent's plan decides, by cell; left out: as the workbook has it. */
	readonly near?: Column | undefined;
	readonly derivation?: Derivation;
}

export function planScenario(
	solver: Solver,
	model: Model,
	programme: Programme,
	scenario: string,
	settings: PlanSettings = {}
): Planned {
	const nothing = {
		programme: programme.name,
		scenario,
		plan: null,
		objective: NaN,
		gap: NaN,
		proven: false,
		prices: [],
		changed: [],
		chosen: null
	};
	const derivation = settings.derivation ?? derive(model, programme, scenario);
	if (!derivation.ok) {
		const status = derivation.isLate ? 'time-limit' : 'not-linear';
		return { ...nothing, status, problems: derivation.problems };
	}
	const { derived } = derivation;
	const large = derived.parts.flatMap((part) => sizeProblem(part.programme) ?? []);
	if (large.length > 0)
		return {
			...nothing,
			status: 'too-large',
			problems: large.map((line) => `${programme.title} is not solved: ${line}`)
		};
	const unlike = wrongUnits(model, programme);
	if (unlike.length > 0) return { ...nothing, status: 'not-linear', problems: unlike };
	const { seconds, gap, memory = new Memory() } = settings;
	const near = settings.near ?? parentColumn(model, scenario);
	const parent = findScenario(model.workbook, scenario)?.parent ?? scenario;
	const place = (of: string, { members }: Part) => [programme.name, of, ...members].join('\u0001');
	const answers = derived.parts.map((part, at) =>
		memory.solve(
			solver,
			part.programme,
			[
				place(scenario, part),
				place(parent, part),
				...derived.parts
					.slice(0, at)
					.reverse()
					.map((before) => place(scenario, before))
			],
			{
				seconds,
				gap,
				ties: { near: nearTo(near, part), weight: tieWeights(part.named), inside: true },
				priced: pricedRows(model, programme, part)
			}
		)
	);
	const failed = answers.find(({ status }) => status !== 'optimal');
	if (failed)
		return {
			...nothing,
			status: failed.status,
			problems: answers.flatMap((answer, at) =>
				whyNoPlan(model.plan, programme, derived.parts[at]!, answer)
			)
		};
	return planned(model, programme, scenario, derived, answers as Solved[]);
}

function planned(
	model: Model,
	programme: Programme,
	scenario: string,
	derived: Derived,
	answers: readonly Solved[]
): Planned {
	const { parts, digest } = derived;
	const chosen = answers.map((answer) => answer.chosen);
	const prices = parts.flatMap((part, at) => pricesOf(model, programme, part, answers[at]!));
	const objective = answers.reduce((sum, answer) => sum + answer.objective, 0);
	const proven =
		answers.every(({ certificate }) => certificate.holds) &&
		movesAsDerived(model, scenario, derived, [chosen, parts.map(scattered)]);
	const { values, states } = model.column(scenario);
	const changed = parts.flatMap((part, at) =>
		[...part.cells].filter(
			(cell, column) =>
				states[cell] !== OK ||
				Math.abs(values[cell]! - chosen[at]![column]!) > 1e-9 * Math.max(1, Math.abs(values[cell]!))
		)
	);
	return {
		programme: programme.name,
		scenario,
		status: 'optimal',
		problems: [],
		plan: {
			programme: programme.name,
			scenario,
			digest,
			objective,
			values: valuesOf(model, programme, parts, chosen, prices)
		},
		objective,
		gap: answers.reduce((most, { gap }) => Math.max(most, gap), 0),
		proven,
		prices,
		changed,
		chosen: parts.map(({ cells }, at) => ({ cells, values: chosen[at]! }))
	};
}

/** Quantities that could not be filled with a worth, as their unit is of another kind. */
export function wrongUnits(model: Model, programme: Programme): string[] {
	return Object.entries(programme.shadow_prices ?? {}).flatMap(([quantity, constraint]) => {
		const cell = model.layout.byName.get(constraint)?.base;
		if (cell === undefined) return [];
		const found = worthFactor(model.plan, programme, quantity, cell);
		return found.ok ? [] : [found.message];
	});
}

/** Where the parent's plan stands; null for the base, which has none. */
function parentColumn(model: Model, scenario: string): Column | null {
	const parent = findScenario(model.workbook, scenario)?.parent ?? null;
	return parent === null ? null : model.column(parent);
}

const nearTo = (column: Column | null, { cells }: Part): Float64Array =>
	Float64Array.from(cells, (cell) =>
		column && column.states[cell] === OK ? column.values[cell]! : 0
	);

/** The first row of each cell of a constraint that a worth is asked of. */
export function pricedRows(model: Model, programme: Programme, { rows }: Part): number[] {
	const asked = new Set(Object.values(programme.shadow_prices ?? {}));
	const seen = new Set<number>();
	return rows.flatMap(({ cell, left }, row) => {
		if (left < 0 || seen.has(cell) || !asked.has(quantityNamed(model, cell))) return [];
		seen.add(cell);
		return [row];
	});
}

const quantityNamed = ({ layout }: Model, cell: number): string =>
	layout.quantities[layout.quantityOfCell[cell]!]?.quantity.name ?? '';

/** The worth of one unit: what the objective gains, be it by becoming larger or smaller. */
export function pricesOf(
	model: Model,
	programme: Programme,
	part: Part,
	answer: Pick<Solved, 'prices'>
): Priced[] {
	const gain = part.programme.maximise ? 1 : -1;
	const { rowLower, rowUpper } = part.programme;
	const scales = new Map<string, number>();
	// Cells of one formula compare in one unit.
	const scaleOf = (quantity: string, cell: number): number => {
		const unit = unitOfSides(model.plan, cell);
		const key = `${quantity} ${unit?.text ?? ''}`;
		const known = scales.get(key);
		if (known !== undefined) return known;
		const found = worthFactor(model.plan, programme, quantity, cell);
		const scale = found.ok ? found.factor : NaN;
		scales.set(key, scale);
		return scale;
	};
	return Object.entries(programme.shadow_prices ?? {}).flatMap(([quantity, constraint]) =>
		answer.prices.flatMap(({ row, more, less }) => {
			const { cell } = part.rows[row]!;
			if (quantityNamed(model, cell) !== constraint) return [];
			const to = cellBeside(model.plan, cell, quantity);
			if (to < 0) return [];
			// Between equal sides there is no room: the objective's own change is told.
			const isEqual = rowLower[row] === rowUpper[row];
			const factor = (isEqual ? 1 : gain) * scaleOf(quantity, cell);
			// More room never takes from the best plan, nor does less give: a hair under nothing is rounding.
			const worth = (value: number) => (isEqual ? value : Math.max(0, value)) + 0;
			return [
				{
					quantity,
					cell: to,
					of: cell,
					more: more && worth(factor * more.price),
					less: less && worth(-factor * less.price),
					until: more?.until ?? 0,
					untilLess: less?.until ?? 0
				}
			];
		})
	);
}

function valuesOf(
	model: Model,
	programme: Programme,
	parts: readonly Part[],
	chosen: readonly Float64Array[],
	prices: readonly Priced[]
): ProgrammePlan['values'] {
	const { layout } = model;
	const entries = new Map<string, ValueEntry[]>();
	const add = (name: string, cell: number, value: number) => {
		if (value === 0) return;
		const list = entries.get(name) ?? [];
		const isYesNo = layout.byName.get(name)?.quantity.type === 'yes_no';
		list.push({ at: membersOf(layout, cell), value: isYesNo ? value !== 0 : value });
		entries.set(name, list);
	};
	parts.forEach((part, at) =>
		part.cells.forEach((cell, column) =>
			add(programme.decisions[part.named[column]!]!, cell, chosen[at]![column]!)
		)
	);
	for (const { quantity, cell, more } of prices) if (more !== null) add(quantity, cell, more);
	return [...entries].flatMap(([quantity, list]) => {
		const value = withValues(undefined, list);
		return value === undefined ? [] : [{ quantity, value }];
	});
}
