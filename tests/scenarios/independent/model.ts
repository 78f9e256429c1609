/**
 * An independent model of the invented plant: plain arithmetic from plant.json by the trade's rules,
 * sharing no code, formula or unit conversion with the workbook that it checks.
 */
import { cardsOf, poolsOf, type Card, type Pools } from './cost';
import { investmentOf, type Investment } from './investment';
import type { Run } from './line';
import { allocate, type Allocation } from './allocation';
import { yearOf, type Made, type Year } from './metres';
import { netNetPrices } from './net-net';
import type { Pipe } from './pipe';
import { DEMAND_PATH, products, sum, type ScenarioId, type Setting } from './plant';
import { fullCostResult, yearResult, type FullCostResult, type YearResult } from './result';
import { netLineHours, scheduledHours } from './time';
import { at, worksOf } from './works';

export interface IndependentResults {
	readonly scenario: ScenarioId;
	readonly lines: readonly string[];
	readonly pipes: ReadonlyMap<string, Pipe>;
	/** By line, then product. */
	readonly runs: ReadonlyMap<string, ReadonlyMap<string, Run>>;
	readonly scheduledHours: ReadonlyMap<string, number>;
	readonly netHours: ReadonlyMap<string, number>;
	readonly pools: Pools;
	/** Of the plan as of today. */
	readonly cards: ReadonlyMap<string, Card>;
	readonly netNet: ReadonlyMap<string, number>;
	readonly contribution: ReadonlyMap<string, number>;
	/** Good metres of today's plan. */
	readonly goodMetres: ReadonlyMap<string, number>;
	/** Today, then the years of the demand path. */
	readonly years: readonly Year[];
	readonly results: readonly YearResult[];
	readonly ebit: number;
	readonly fullCost: FullCostResult;
	readonly investment: Investment | null;
}

/** One plan year of one scenario: what each line makes, and what holding the stock costs, EUR in the year. */
export interface PlanOfYear {
	readonly made: readonly Made[];
	readonly holding: number;
}
export type Plan = (id: ScenarioId, year: number) => PlanOfYear;

const allocations = new Map<string, Allocation>();

/** The best plan of a year by this model itself. */
export function allocationOf(id: ScenarioId, year: number): Allocation {
	const key = `${id} ${year}`;
	const allocation = allocations.get(key) ?? allocate(worksOf(id), year);
	allocations.set(key, allocation);
	return allocation;
}

const bestPlan: Plan = allocationOf;

const known = new Map<Plan, Map<ScenarioId, IndependentResults>>();

/** With the model's own best plan, or with another's: plans that earn the same may differ in who makes what. */
export function modelOf(id: ScenarioId, plan: Plan = bestPlan): IndependentResults {
	const models = known.get(plan) ?? new Map<ScenarioId, IndependentResults>();
	known.set(plan, models);
	const model = models.get(id) ?? build(id, plan);
	models.set(id, model);
	return model;
}

function build(id: ScenarioId, plan: Plan): IndependentResults {
	const works = worksOf(id);
	const pools = poolsOf(works);
	const plans = DEMAND_PATH.map((_, year) => plan(id, year));
	const years = plans.map(({ made }) => yearOf(works, made));
	const [today] = years;
	if (!today) throw new Error(`no year of ${id} is planned`);
	const results = years.map((year, at) =>
		yearResult(works, pools, year, plans[at]?.holding ?? NaN)
	);
	const cards = cardsOf(works, pools, today);
	const netNet = netNetPrices(works);
	const perProduct = (figure: (product: string) => number) =>
		new Map(products.map((product) => [product.id, figure(product.id)]));
	const perLine = (figure: (line: Setting['lines'][number]) => number) =>
		new Map(works.setting.lines.map((line) => [line.id, figure(line)]));
	return {
		scenario: id,
		lines: works.setting.lines.map((line) => line.id),
		pipes: works.pipes,
		runs: works.runs,
		scheduledHours: perLine(({ roster }) => scheduledHours(roster)),
		netHours: perLine(netLineHours),
		pools,
		cards,
		netNet,
		contribution: perProduct((product) => at(netNet, product) - at(cards, product).variable),
		goodMetres: perProduct((product) =>
			sum(today.made.map((made) => (made.product === product ? made.metres : 0)))
		),
		years,
		results,
		ebit: results[0]?.ebit ?? NaN,
		fullCost: fullCostResult(works, pools, today, plans[0]?.holding ?? NaN),
		investment:
			id === 'base'
				? null
				: investmentOf(works.setting.options, results, modelOf('base', plan).results)
	};
}
